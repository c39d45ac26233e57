import type { AnalysedUpright, UprightInput } from '#action';
import type { QuantityName } from '#instrument';
import type { FigureStory, Origin } from '../../figure/figure-store.ts';
import { readingsAt } from '../origins.ts';
import type { StateUpright } from './state-upright.ts';

const OF_KEY = { frontWeightG: 'frontWeightG', wippenWeightG: 'wippenWeightG', hammerMassG: 'hammerWeightG', springTorqueGMm: 'springTorqueGMm', damperG: 'damperG' } as const satisfies Readonly<Record<string, QuantityName>>;
const ARMS = ['keyFrontMm', 'keyBackMm', 'wippenHeelMm', 'wippenJackMm', 'hammerMm'] as const satisfies readonly QuantityName[];

/** Fields of the answer of `upright-touch` that are told. */
export type UprightOutput = 'balanceWeightG' | 'actionRatio' | 'wippenG' | 'damperShareG' | 'springG' | 'hammerG';

/** How a figure of an upright key was made: the operation `upright-touch`, damper off unless it is the damper that is told. Nothing where a part is not known. */
export function uprightStory(title: string, output: UprightOutput, key: AnalysedUpright, upright: StateUpright): FigureStory | undefined {
  const { arms, tiltDeg } = upright.gathered.input;
  const input = inputOf(key, arms, tiltDeg, output === 'damperShareG');
  if (input === undefined) return undefined;
  const at = readingsAt(upright.readings.filter(({ state, scope }) => scope === 'colour' || state === upright.state));
  const origins: Readonly<Record<string, Origin>> = {
    ...Object.fromEntries(Object.entries(OF_KEY).map(([field, quantity]) => [field, { readings: at.ofKey(key.key, quantity) }])),
    ...Object.fromEntries(ARMS.map((arm) => [arm, { readings: at.ofColour(key.colour, arm) }])),
    buttMm: { how: 'actionTerms' }, tiltDeg: { how: 'actionTerms' },
    ...(output === 'damperShareG' ? {} : { damperG: { how: 'damperOff' } }),
  };
  return { title, output, operation: 'upright-touch', input, origins };
}

function inputOf({ read, colour }: AnalysedUpright, arms: UprightInput['arms'], tiltDeg: UprightInput['tiltDeg'], withDamper: boolean): Readonly<Record<string, number>> | undefined {
  const own = arms[colour];
  const { frontWeightG, wippenWeightG, hammerWeightG: hammerMassG, springTorqueGMm, damperG } = read;
  if (own === undefined || tiltDeg === undefined || frontWeightG === undefined || wippenWeightG === undefined || hammerMassG === undefined || springTorqueGMm === undefined) return undefined;
  return { ...own, wippenWeightG, damperG: withDamper ? (damperG ?? 0) : 0, springTorqueGMm, hammerMassG, tiltDeg, frontWeightG };
}
