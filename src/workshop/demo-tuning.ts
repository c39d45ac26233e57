import { type KeyNumber, type State, type TuningPassDraft, type TuningTermsDraft, compass88, equalTemperedHzOf, keysOf } from '#instrument';
import type { DemoStep } from './demo-step.ts';
import { swaysFrom } from './demo-sway.ts';
import type { ReadingEntry } from './records.ts';

/** What the invented shop asks of the tuning. */
const TERMS: TuningTermsDraft = { temperament: 'equal', curveToleranceCt: 1.5, unisonToleranceCt: 1, strungOn: '2026-03-02', driftToleranceCt: 3, remark: 'Invented for demonstration.' };

/** A rough stretch such as a worn tuning has: flat as a whole, the treble most; cents. */
const foundCtOf = (key: KeyNumber): number => -34 - 9 * Math.sin((key - 20) / 17) + ((key - 49) / 13) ** 3 * 0.35;
/** Near the curve of the planned strings; cents. */
const finishedCtOf = (key: KeyNumber): number => (key <= 49 ? -0.0083 * (49 - key) ** 2 : 0.38 * (key - 49) + 10 * (Math.max(0, key - 69) / 16) ** 2);

/** The invented pitches, unisons and passes: flat and restless as found, raised in three passes, followed for the first months. */
export function demoTuning(): { readonly found: readonly DemoStep[]; readonly finished: readonly DemoStep[] } {
  const sway = swaysFrom(440);
  const step = (state: State, centsOf: (key: KeyNumber) => number, rough: number, spread: number): DemoStep => ({
    kind: 'readings', sessionRef: null,
    batch: { cycle: 1, state, entries: keysOf(compass88).flatMap((key): readonly ReadingEntry[] => [
      { quantity: 'pitchHz', scope: 'key', index: key, typed: (equalTemperedHzOf(compass88, key) * 2 ** ((centsOf(key) + rough * sway()) / 1200)).toFixed(3) },
      ...(key % 3 === 1 && key > 10 ? [{ quantity: 'unisonSpreadCt', scope: 'key', index: key, typed: Math.abs(spread * (1 + sway())).toFixed(2) } as const] : []),
    ]) },
  });
  return {
    found: [step('found', foundCtOf, 6, 3), { kind: 'tuning', cycle: 1, terms: TERMS }],
    finished: [step('finished', finishedCtOf, 0.7, 0.45), ...demoPasses().map((draft): DemoStep => ({ kind: 'pass', draft }))],
  };
}

const pass = (day: string, time: string | null, stretch: TuningPassDraft['stretch'], pitch: Pick<TuningPassDraft, 'foundCt' | 'leftCt'>, [temperatureC, humidityPct]: readonly [number, number]): TuningPassDraft =>
  ({ cycle: 1, day, time, stretch, ...pitch, temperatureC, humidityPct });
const WINTER = [19, 44] as const;

/** Days of the raises on new wire, and where each left the strings. */
const RAISES = [['2026-03-02', -80], ['2026-03-03', -25], ['2026-03-04', 14], ['2026-03-06', 12], ['2026-03-09', 2]] as const;
/** Share of a raise that each stretch of the invented grand gives back. */
const LOST = { bass: 0.16, tenor: 0.22, treble: 0.27, highTreble: 0.31 } as const;
/** Where new wire stands after chipping up; cents. */
const CHIPPED_CT = -200;

/** The raises of one stretch: each finds what the one before it lost. */
function raisesOf(stretch: keyof typeof LOST, time: string, sway: () => number): readonly TuningPassDraft[] {
  let standsAt = CHIPPED_CT;
  return RAISES.map(([day, leftCt]) => {
    const foundCt = Number(standsAt.toFixed(1));
    standsAt = leftCt - LOST[stretch] * (leftCt - standsAt) + 0.8 * sway();
    return pass(day, time, stretch, { foundCt, leftCt }, WINTER);
  });
}

/** Five raises on new wire by stretches, then tunings of the whole. */
function demoPasses(): readonly TuningPassDraft[] {
  const sway = swaysFrom(1926);
  return [
    ...raisesOf('bass', '09:30', sway), ...raisesOf('tenor', '10:30', sway), ...raisesOf('treble', '11:30', sway), ...raisesOf('highTreble', '12:30', sway),
    ...([['2026-03-10', 1.9, 20, 45], ['2026-03-19', -1.9, 20, 47], ['2026-04-17', -2.9, 20, 46], ['2026-06-22', 0.5, 23, 58], ['2026-08-31', -1.4, 22, 57], ['2026-11-09', -4.4, 20, 44]] as const)
      .map(([day, foundCt, temperatureC, humidityPct]) => pass(day, null, 'whole', { foundCt, leftCt: 0 }, [temperatureC, humidityPct])),
  ];
}
