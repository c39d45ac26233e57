import { bridgeHeightFor } from '#belly';
import { type KeyNumber, type ObservationDraft, type QuantityName, type ScaleTermsDraft, type State, compass88, keysOf } from '#instrument';
import { degrees, millimetres } from '#units';
import type { DemoStep } from './demo-step.ts';
import { DEMO_TERMS, demoLengthOf } from './demo-strings.ts';
import { swaysFrom } from './demo-sway.ts';
import type { ReadingEntry } from './records.ts';

/** Last notes of bass and tenor of the invented grand, and the spot in its treble where the bearing is gone. */
const [LAST_BASS, LAST_TENOR] = [26, 50];
const [LOST_FROM, LOST_TO] = [60, 70];

/** What the invented shop states and asks of the bearing; the stiffness as from a push test. */
const DEMO_BEARING: ScaleTermsDraft = {
  ...DEMO_TERMS, heightUncertaintyMm: 0.03, bearingTargetDeg: 1, bearingToleranceDeg: 0.4, gaugeFrontSpanMm: 25, gaugeRearSpanMm: 25,
  boardStiffnessNPerMm: 1250, boardStiffnessUncertaintyNPerMm: 60,
};

/** Three heights and the back length of a note, millimetres over one datum. */
interface DemoNote {
  readonly backLengthMm: number;
  readonly frontHeightMm: number;
  readonly bridgeHeightMm: number;
  readonly rearHeightMm: number;
}

const radians = (angle: number): number => (angle * Math.PI) / 180;
const backLengthOf = (key: KeyNumber): number => (key <= LAST_BASS ? 96 - key : 40 + 1.6 * (88 - key));
const frontHeightOf = (key: KeyNumber): number => (key <= LAST_BASS ? 12 : key <= LAST_TENOR ? 6 - 0.02 * key : 5.2 - 0.01 * key);

/** Total angle as the piano came in: even in bass and tenor, and gone where the cap has sunk. */
function foundAngleOf(key: KeyNumber): number {
  if (key <= LAST_BASS) return 0.8;
  if (key <= LAST_TENOR) return 0.95;
  const middle = (LOST_FROM + LOST_TO) / 2;
  return 1.05 - 1.35 * Math.exp(-(((key - middle) / 4.2) ** 2));
}

/** Asked of the treble when it is recapped. */
const PLANNED_DEG = 1.1;

/** A third of the angle before the bridge, the rest behind it, as long as there is any. */
function foundNote(key: KeyNumber): DemoNote {
  const usual = key <= LAST_BASS ? 0.8 : key <= LAST_TENOR ? 0.95 : 1.05;
  const [front, back] = [frontHeightOf(key), backLengthOf(key)];
  const full = front + demoLengthOf(key) * Math.tan(radians(usual / 3));
  const rear = full - back * Math.tan(radians((2 * usual) / 3));
  return { backLengthMm: back, frontHeightMm: front, rearHeightMm: rear, bridgeHeightMm: heightAt(key, { backLengthMm: back, frontHeightMm: front, rearHeightMm: rear }, foundAngleOf(key)) };
}

function heightAt(key: KeyNumber, rests: Omit<DemoNote, 'bridgeHeightMm'>, totalDeg: number): number {
  return bridgeHeightFor({
    speakingLengthMm: millimetres(demoLengthOf(key)), backLengthMm: millimetres(rests.backLengthMm), frontHeightMm: millimetres(rests.frontHeightMm), rearHeightMm: millimetres(rests.rearHeightMm),
  }, degrees(totalDeg));
}

const finishedNote = (key: KeyNumber): DemoNote => (key <= LAST_TENOR ? foundNote(key) : { ...foundNote(key), bridgeHeightMm: heightAt(key, foundNote(key), PLANNED_DEG) });

/** Keys measured: stations of bass and tenor, every note of the treble. */
const isStation = (key: KeyNumber): boolean => key > LAST_TENOR || key % 5 === 0 || [1, LAST_BASS, LAST_BASS + 1, LAST_TENOR].includes(key);

/** The bearing of the invented grand: found with a lost spot in the treble, its bridge recapped there as planned and as finished; the climate each time, and what was seen. */
export function demoBelly(): { readonly found: readonly DemoStep[]; readonly finished: readonly DemoStep[] } {
  return {
    found: [
      { kind: 'scale', cycle: 1, terms: DEMO_BEARING },
      step('found', [...room({ crownMm: '2.5', roomTemperatureC: '17', roomHumidityPct: '68' }), ...keysOf(compass88).filter(isStation).flatMap(measured(foundNote, 1931)), ...gauged()]),
      ...SEEN.map((draft): DemoStep => ({ kind: 'observation', draft })),
      step('planned', keysOf(compass88).filter((key) => key > LAST_TENOR).map((key) => entry(key, 'bridgeHeightMm', finishedNote(key).bridgeHeightMm.toFixed(2)))),
    ],
    finished: [step('finished', [...room({ crownMm: '2', roomTemperatureC: '20', roomHumidityPct: '46' }), ...keysOf(compass88).filter(isStation).flatMap(measured(finishedNote, 1932))])],
  };
}

const SEEN: readonly ObservationDraft[] = [
  { cycle: 1, state: 'found', part: 'soundboard', fault: 'crack', fromKey: 55, toKey: 68, lengthMm: 240, remark: 'Invented for demonstration. Closed in damp air, open to a sheet of paper when the room was dry.' },
  { cycle: 1, state: 'found', part: 'bridge', fault: 'sunken', fromKey: LOST_FROM, toKey: LOST_TO, remark: 'Invented for demonstration. Cap crushed under the pins; strings can be lifted with a fingernail.' },
];

const step = (state: State, entries: readonly ReadingEntry[]): DemoStep => ({ kind: 'readings', sessionRef: null, batch: { cycle: 1, state, entries: [...entries] } });
const entry = (key: KeyNumber, quantity: QuantityName, typed: string): ReadingEntry => ({ quantity, scope: 'key', index: key, typed });
const room = (figures: Partial<Record<QuantityName, string>>): readonly ReadingEntry[] => Object.entries(figures).map(([quantity, typed]) => ({ quantity, scope: 'instrument', index: 0, typed }));

/** Heights as read on a scale, to a fiftieth of a millimetre and never quite sure; back lengths to half a millimetre. */
function measured(noteOf: (key: KeyNumber) => DemoNote, seed: number): (key: KeyNumber) => readonly ReadingEntry[] {
  const sway = swaysFrom(seed);
  const height = (value: number): string => (Math.round((value + 0.03 * sway()) * 50) / 50).toFixed(2);
  return (key) => {
    const { backLengthMm, frontHeightMm, bridgeHeightMm, rearHeightMm } = noteOf(key);
    return [
      entry(key, 'backLengthMm', (Math.round(backLengthMm * 2) / 2).toFixed(1)),
      entry(key, 'frontHeightMm', height(frontHeightMm)), entry(key, 'bridgeHeightMm', height(bridgeHeightMm)), entry(key, 'rearHeightMm', height(rearHeightMm)),
    ];
  };
}

/** Some notes read with a rocking gauge as well, feet 25 mm either side: r = s/2·(tan a + tan b). */
function gauged(): readonly ReadingEntry[] {
  return [30, 40, 55, 64, 65, 66, 75].map((key) => entry(key, 'bearingGaugeMm', (12.5 * Math.tan(radians(foundAngleOf(key)))).toFixed(2)));
}
