import type { Role } from './scene.ts';

/** The inks a drawing is made with. */
export const inks = ['paper', 'ink', 'soft', 'rule', 'band', 'accent', 'found', 'planned', 'finished', 'flag', 'natural', 'sharp', 'keyMark', 'keyFlag', 'highlight'] as const;
export type Ink = (typeof inks)[number];

/** How a role is inked. Absent fill or stroke: none. */
export interface Paint {
  readonly fill?: Ink;
  readonly stroke?: Ink;
  readonly strokeWidth?: number;
  readonly dash?: string;
  readonly opacity?: number;
}

/** Ink of every role, for all themes alike. */
export const paintOf: Readonly<Record<Role, Paint>> = {
  axis: { stroke: 'soft', strokeWidth: 1 },
  grid: { stroke: 'rule', strokeWidth: 0.75 },
  octave: { stroke: 'rule', strokeWidth: 0.75, dash: '1 3' },
  band: { fill: 'band' },
  target: { stroke: 'accent', strokeWidth: 1 },
  limit: { stroke: 'accent', strokeWidth: 1, dash: '5 3' },
  found: { fill: 'found', stroke: 'found', strokeWidth: 1 },
  planned: { fill: 'planned', stroke: 'planned', strokeWidth: 1 },
  finished: { fill: 'finished', stroke: 'finished', strokeWidth: 0.6 },
  rival: { fill: 'accent', stroke: 'accent', strokeWidth: 1 },
  uncertainty: { stroke: 'soft', strokeWidth: 0.8 },
  outcome: { stroke: 'flag', strokeWidth: 1.4 },
  flag: { fill: 'flag', stroke: 'flag', strokeWidth: 1.3 },
  naturalKey: { fill: 'natural', stroke: 'soft', strokeWidth: 0.6 },
  sharpKey: { fill: 'sharp', stroke: 'sharp', strokeWidth: 0.6 },
  highlight: { fill: 'highlight', opacity: 0.35 },
  highlightKey: { fill: 'highlight', stroke: 'accent', strokeWidth: 1.2 },
  onNatural: { fill: 'keyMark', stroke: 'keyMark', strokeWidth: 1.4 },
  flagOnNatural: { fill: 'keyFlag', stroke: 'keyFlag', strokeWidth: 1.3 },
  onSharp: { fill: 'natural', stroke: 'natural', strokeWidth: 1.4 },
  part: { stroke: 'ink', strokeWidth: 2.2 },
  partLit: { stroke: 'accent', strokeWidth: 2.6 },
  label: { fill: 'ink' },
  note: { fill: 'soft' },
};

/** Token of each ink in the screens' token file. */
const tokens: Readonly<Record<Ink, string>> = {
  paper: '--paper-raised', ink: '--ink', soft: '--ink-soft', rule: '--line', band: '--good-wash', accent: '--accent',
  found: '--state-found', planned: '--state-planned', finished: '--state-finished', flag: '--bad',
  natural: '--key-natural', sharp: '--key-sharp', keyMark: '--key-mark', keyFlag: '--key-flag', highlight: '--key-pointed',
};

/** Name of the CSS variable of an ink. */
export function tokenOf(ink: Ink): string {
  return tokens[ink];
}
