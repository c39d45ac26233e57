import type { Options } from 'yargs';
import { say } from './language.ts';

const GROUPS = { asked: say('cli.prove.group.asked'), weighing: say('cli.prove.group.weighing'), instrument: say('cli.prove.group.instrument') };

const words = (group: keyof typeof GROUPS, describe: string): Options & { readonly type: 'string' } => ({ type: 'string', requiresArg: true, group: GROUPS[group], describe });
const choice = <const C extends readonly string[]>(group: keyof typeof GROUPS, describe: string, choices: C) => ({ ...words(group, describe), choices });

/** Options of any proof. */
export const documentOptions = {
  out: { type: 'string', demandOption: true, requiresArg: true, describe: say('cli.prove.out') },
  paper: { type: 'string', requiresArg: true, choices: ['a4', 'letter'], describe: say('cli.prove.paper') },
  lang: { type: 'string', requiresArg: true, describe: say('cli.prove.lang') },
  title: { type: 'string', requiresArg: true, describe: say('cli.prove.title') },
  json: { type: 'boolean', default: false, describe: say('cli.prove.json') },
} as const;

/** Options of a proof from tables. Figures are words here, so that a decimal comma is read as one. */
export const tableOptions = {
  found: { type: 'string', requiresArg: true, describe: say('cli.prove.found') },
  finished: { type: 'string', requiresArg: true, describe: say('cli.prove.finished') },
  even: choice('asked', say('cli.prove.even'), ['downWeight', 'balanceWeight']),
  'target-g': words('asked', say('cli.prove.targetG')),
  'tolerance-g': words('asked', say('cli.prove.toleranceG')),
  'up-weight-min-g': words('asked', say('cli.prove.upWeightMinG')),
  'found-on': words('weighing', say('cli.prove.foundOn')),
  'finished-on': words('weighing', say('cli.prove.finishedOn')),
  'step-g': words('weighing', say('cli.prove.stepG')),
  'repeatability-g': words('weighing', say('cli.prove.repeatabilityG')),
  rule: choice('weighing', say('cli.prove.rule'), ['firstMovesLastLifts', 'interpolated']),
  dampers: choice('weighing', say('cli.prove.dampers'), ['lifted', 'resting', 'none']),
  'helper-springs': choice('weighing', say('cli.prove.helperSprings'), ['none', 'engaged', 'unhooked']),
  regulated: choice('weighing', say('cli.prove.regulated'), ['yes', 'no']),
  'weight-class': words('weighing', say('cli.prove.weightClass')),
  equipment: words('weighing', say('cli.prove.equipment')),
  'place-on-key-mm': words('weighing', say('cli.prove.placeOnKeyMm')),
  'temperature-c': words('weighing', say('cli.prove.temperatureC')),
  'humidity-pct': words('weighing', say('cli.prove.humidityPct')),
  name: words('instrument', say('cli.prove.name')),
  kind: choice('instrument', say('cli.prove.kind'), ['grand', 'upright']),
  'first-note': words('instrument', say('cli.prove.firstNote')),
  'last-note': words('instrument', say('cli.prove.lastNote')),
  maker: words('instrument', say('cli.prove.maker')),
  serial: words('instrument', say('cli.prove.serial')),
  year: words('instrument', say('cli.prove.year')),
  'length-mm': words('instrument', say('cli.prove.lengthMm')),
  demo: { type: 'boolean', group: GROUPS.instrument, describe: say('cli.prove.demo') },
} as const;

/** Name of an option as typed, such as `--step-g`, of the field it fills, such as `stepG`. */
export function optionOf(field: string): string {
  return `--${field.replace(/[A-Z]/gu, (letter) => `-${letter.toLowerCase()}`)}`;
}
