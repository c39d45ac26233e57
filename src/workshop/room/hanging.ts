import { type SurfaceName, surfaces } from '#materials';
import { type AbsorptionNeed, type PerBand, absorptionNeededOf, bassRatioOf, midOf, perBand, reverberationOf } from '#room';
import { type Seconds, squareMetres } from '#units';
import type { RoomConsequences } from './consequences.ts';
import type { RoomSide } from './record.ts';
import type { NamedSurface } from './room-input.ts';

/** What is commonly hung, laid or put up, and where it goes. @source PRACTICE */
export const hangings = [
  { material: 'carpet-on-felt', goesOn: 'floor' }, { material: 'heavy-velour-half', goesOn: 'wall' }, { material: 'folded-curtain-off-wall', goesOn: 'wall' },
  { material: 'mineral-wool-off-wall', goesOn: 'wall' }, { material: 'wooden-lining-on-frame', goesOn: 'wall' },
] as const satisfies readonly { readonly material: SurfaceName; readonly goesOn: 'floor' | 'wall' }[];
export type Hanging = (typeof hangings)[number];

/** Where the bass rings so much longer than the middle, it is called booming. @source PRACTICE */
const BOOMING = 1.2;

/** Whether the middle is dry, live or within what is wanted, whether the bass lingers, and what each material would do; nothing where no use is stated. */
export function hungOf(known: RoomConsequences) {
  const { target, times, model, bassRatio, midS } = known;
  if (target === undefined) return undefined;
  const middle = midS < target.lower[2] ? 'dry' : midS > target.upper[2] ? 'live' : 'within';
  return { middle, isBooming: times[model][0] > target.upper[0] || bassRatio > BOOMING, bassRatio, advices: hangingAdviceOf(known) } as const;
}

/** What one material would do. */
export interface HangingAdvice {
  readonly hanging: Hanging;
  /** The bare side it would cover, the largest there is. */
  readonly on: RoomSide;
  readonly freeM2: number;
  readonly needs: PerBand<AbsorptionNeed>;
  /** Area that brings 500 and 1000 Hz together to the target; none where the material is no help or nothing is missing. */
  readonly areaM2?: number | undefined;
  /** The room once so much hangs, as far as there is place for it. */
  readonly after?: { readonly hungM2: number; readonly times: PerBand<Seconds>; readonly midS: Seconds; readonly bassRatio: number; readonly isBooming: boolean } | undefined;
}

/** How much of each material the room asks for, band by band, and what it would leave. Nothing where no use is stated. @source SABINE-1922 */
export function hangingAdviceOf(known: RoomConsequences): readonly HangingAdvice[] {
  const { target, input, times, model } = known;
  if (target === undefined) return [];
  return hangings.flatMap((hanging): readonly HangingAdvice[] => {
    const covered = largestOf(input.surfaces, hanging.goesOn);
    if (covered === undefined) return [];
    const { absorption } = surfaces[hanging.material];
    const needs = absorptionNeededOf({ volumeM3: input.plan.volumeM3, present: times[model], target: perBand(() => target.seconds), material: absorption, covers: covered.absorption });
    const middle = [needs[2].areaM2, needs[3].areaM2];
    const areaM2 = middle.some((one) => one === null) ? undefined : ((middle[0] ?? 0) + (middle[1] ?? 0)) / 2;
    return [{ hanging, on: covered.on, freeM2: covered.areaM2, needs, areaM2, after: areaM2 === undefined || areaM2 <= 0 ? undefined : afterOf(known, covered, absorption, Math.min(areaM2, covered.areaM2)) }];
  });
}

const largestOf = (all: readonly NamedSurface[], goesOn: 'floor' | 'wall'): NamedSurface | undefined =>
  all.filter(({ on, thing, isPeople }) => thing === undefined && isPeople === undefined && (goesOn === 'floor' ? on === 'floor' : typeof on === 'number')).toSorted((a, b) => b.areaM2 - a.areaM2)[0];

function afterOf({ input: { room, surfaces: named }, model }: RoomConsequences, covered: NamedSurface, absorption: PerBand, hungM2: number): HangingAdvice['after'] {
  const left = named.map((one) => (one === covered ? { ...one, areaM2: squareMetres(one.areaM2 - hungM2) } : one));
  const times = reverberationOf({ ...room, surfaces: [...left, { areaM2: squareMetres(hungM2), absorption }] }, model);
  const bassRatio = bassRatioOf(times);
  return { hungM2, times, midS: midOf(times), bassRatio, isBooming: bassRatio > BOOMING };
}
