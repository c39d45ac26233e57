import type { KeyTouch } from '#action';
import type { QuantityName, Reading } from '#instrument';
import type { FigureStory } from '../figure/figure-store.ts';

/** Input fields of the touch operations that carry the name of the quantity they were read as. */
const FIELDS = ['downWeightG', 'upWeightG', 'frontWeightG', 'hammerWeightG', 'wippenWeightG', 'helperSpringG'] as const satisfies readonly QuantityName[];

/** What stands behind the derived figures of one key. */
export interface Behind {
  readonly touch: KeyTouch;
  /** Standing readings of the state. */
  readonly readings: Iterable<Reading>;
}

function inputOf({ figures }: KeyTouch, fields: readonly (typeof FIELDS)[number][]): Readonly<Record<string, number>> {
  return Object.fromEntries(fields.flatMap((field) => (figures[field] === undefined ? [] : [[field, figures[field].value]])));
}

function readingsOf({ touch, readings }: Behind): Readonly<Record<string, readonly Reading[]>> {
  const of: Record<string, Reading[]> = {};
  for (const reading of readings) {
    if (reading.scope === 'key' && reading.index === touch.key) (of[reading.quantity] ??= []).push(reading);
  }
  return of;
}

/** Balance weight and friction: the operation `touch-weight`. */
export function touchWeightStory(title: string, output: string, behind: Behind): FigureStory {
  const { touch } = behind;
  const { frictionBiasG = 0 } = touch.figures;
  return {
    title, output, operation: 'touch-weight', readings: readingsOf(behind),
    input: { ...inputOf(touch, ['downWeightG', 'upWeightG', 'frontWeightG']), ...(frictionBiasG === 0 ? {} : { stepG: 2 * frictionBiasG }) },
  };
}

/** Action ratio by weights of one note: the operation `weight-ratio`. */
export function weightRatioStory(title: string, behind: Behind): FigureStory {
  const { touch } = behind;
  return { title, output: 'weightRatio', operation: 'weight-ratio', readings: readingsOf(behind), input: { ...inputOf(touch, FIELDS), keyRatio: touch.keyRatio } };
}
