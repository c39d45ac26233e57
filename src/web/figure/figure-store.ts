import type { Reading } from '#instrument';
import { useSyncExternalStore } from 'react';

/** How an input came about that is no reading by itself; words under `shell.figure.origin.<name>`. */
export const originHows = ['intent', 'step', 'uncertainty', 'leverArms', 'neighbours', 'usualFriction', 'estimated', 'minutes', 'prices', 'noSpring', 'balance', 'missed', 'unmeasured', 'pitch', 'lengthBetween', 'stringTerms', 'assumedMetal', 'shopWire', 'tried', 'plan', 'bareFront', 'plannedTouch', 'leadRules', 'actionTerms', 'damperOff', 'sectionRatio', 'hammerCurve', 'hammerSmoothed', 'newTop', 'lessLeads', 'lessShank', 'ofString', 'stiffBetween', 'ofRecording', 'ofBearing', 'shortShare', 'ofLadders', 'ownLine', 'movedToLevel', 'asStruck', 'paperRecord', 'ofEstimate', 'waySum'] as const;

/** Where one input of a figure came from: readings, several where they were averaged, and how they were turned into it where they are not it. */
export interface Origin {
  readonly how?: (typeof originHows)[number];
  readonly readings?: readonly Reading[];
  /** Key the input belongs to, in a list of them. */
  readonly key?: number;
}

/** How one figure came about: the operation, what went in and where that came from. */
export interface FigureStory {
  /** What the figure is, in the reader's words: `Balance weight, C4`. */
  readonly title: string;
  /** Name of the operation, as `wrestplank calc` knows it. */
  readonly operation: string;
  /** Exactly what the operation is given; absent fields left out. */
  readonly input: Readonly<Record<string, unknown>>;
  /** The answer as it was kept, where it is not worked out anew: what a recording told that stays with the server. */
  readonly kept?: Readonly<Record<string, unknown>>;
  /** The field of the answer that is the figure. */
  readonly output?: string;
  /** The readings behind fields of the input, by field name; several where repeats were averaged. */
  readonly readings?: Readonly<Record<string, readonly Reading[]>>;
  /** Where every input came from, by its path: `downWeightG`, `target.frictionG`, `notes[3].keyRatio`, `values[12]`. */
  readonly origins?: Readonly<Record<string, Origin>>;
}

/** Every origin a story tells of, by path. */
export function originsOf({ readings = {}, origins = {} }: FigureStory): Readonly<Record<string, Origin>> {
  return { ...Object.fromEntries(Object.entries(readings).map(([path, behind]) => [path, { readings: behind }])), ...origins };
}

const listeners = new Set<() => void>();
let open: FigureStory | undefined;

/** Opens the panel on a figure, or closes it. */
export function openFigure(story: FigureStory | undefined): void {
  open = story;
  for (const listener of listeners) listener();
}

export function useOpenFigure(): FigureStory | undefined {
  return useSyncExternalStore((listener) => {
    listeners.add(listener);
    return () => listeners.delete(listener);
  }, () => open);
}
