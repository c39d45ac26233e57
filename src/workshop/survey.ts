import { type Instrument, type Observation, type ObservedPart, type QuantityName, type Reading, observedParts } from '#instrument';
import type { Say } from '#text';
import type { ShopCard } from './shop/records.ts';

/** One point of a survey: a part, and what to look for there. */
export interface SurveyPoint {
  readonly part: ObservedPart;
  readonly ask: string;
}

/** Parts an upright or a grand has no more of than the other; what is asked differs all the same. @source PRACTICE */
const ASKED_BY_KIND: ReadonlySet<ObservedPart> = new Set(['case', 'actionParts', 'dampers', 'castors', 'pedals']);

/** What is looked at by habit, part by part, in the order of a walk around the instrument. @source PRACTICE */
export function usualSurvey(kind: Instrument['kind'], say: Say): readonly SurveyPoint[] {
  return observedParts.map((part) => {
    const special = `survey.ask.${part}.${kind}`;
    return { part, ask: ASKED_BY_KIND.has(part) && say.knows(special) ? say(special) : say(`survey.ask.${part}`) };
  });
}

/** The template of the shop that is in use for instruments of a kind: the newest of their workshop, else none. */
export function templateInUse({ kind, workshopId }: Pick<Instrument, 'kind' | 'workshopId'>, cards: readonly ShopCard[]): Extract<ShopCard, { kind: 'template' }> | undefined {
  return cards.findLast((card): card is Extract<ShopCard, { kind: 'template' }> => card.kind === 'template' && card.instrument === kind && card.workshopId === workshopId);
}

/** Quantities that tell of a part in figures: read elsewhere, shown beside what was seen of it. @source PRACTICE */
const QUANTITIES: Partial<Readonly<Record<ObservedPart, readonly QuantityName[]>>> = {
  soundboard: ['crownMm'],
  bridge: ['frontBearingDeg', 'rearBearingDeg'],
  tuningPins: ['pinTorqueNm'],
  pinblock: ['pinTorqueNm'],
  strings: ['pitchOffsetCt', 'inharmonicityB'],
  dampers: ['damperG'],
  actionParts: ['downWeightG', 'upWeightG'],
  hammers: ['feltOverWoodMm', 'hammerWeightG'],
  keys: ['dipMm', 'keyFrictionG'],
};

/** The figures read of a part: least, most and how many. */
export interface PartFigures {
  readonly quantity: QuantityName;
  readonly count: number;
  readonly least: number;
  readonly most: number;
}

/** What was read of a part as found, quantity by quantity; those without a figure are left out. */
export function figuresOfPart(part: ObservedPart, readings: readonly Reading[]): readonly PartFigures[] {
  return (QUANTITIES[part] ?? []).flatMap((quantity): readonly PartFigures[] => {
    const values = readings.flatMap((reading) => (reading.quantity === quantity && reading.state === 'found' && reading.value !== null ? [reading.value] : []));
    return values.length === 0 ? [] : [{ quantity, count: values.length, least: Math.min(...values), most: Math.max(...values) }];
  });
}

/** A point with what was seen there in the stay; a part nobody looked at has nothing. */
export interface SurveyedPoint extends SurveyPoint {
  readonly seen: readonly Observation[];
}

/** A survey as it stands: every point with what was seen as found, and parts seen that no point asks for at the end. */
export function surveyedOf(points: readonly SurveyPoint[], observations: readonly Observation[]): readonly SurveyedPoint[] {
  const found = observations.filter(({ state }) => state === 'found');
  const first = new Map<ObservedPart, number>();
  points.forEach(({ part }, index) => { if (!first.has(part)) first.set(part, index); });
  const further = [...new Set(found.map(({ part }) => part))].filter((part) => !first.has(part));
  return [
    ...points.map((point, index) => ({ ...point, seen: first.get(point.part) === index ? found.filter(({ part }) => part === point.part) : [] })),
    ...further.map((part) => ({ part, ask: '', seen: found.filter((seen) => seen.part === part) })),
  ];
}
