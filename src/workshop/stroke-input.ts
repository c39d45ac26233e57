import { type Levers, type StrokeMeasures, registerOf } from '#action';
import { type ActionTerms, type Instrument, type KeyNumber, type QuantityName, type Reading, colourOf, compassOf, keysOf } from '#instrument';
import { medianOf } from '#numerics';
import { degrees, millimetres, percent } from '#units';
import { USUAL_LOSS_MM } from './plan-bed.ts';
import { sizesAt } from './plan-sizes.ts';

/** What the stroke of a key is read from. */
export interface StrokeMaterial {
  readonly instrument: Pick<Instrument, 'kind' | 'firstMidi' | 'lastMidi' | 'sections'>;
  readonly readings: readonly Reading[];
  readonly cycle: number;
  readonly terms: ActionTerms | null;
  readonly key: KeyNumber;
}

/** What was taken for granted; words under `movement.assumed.<name>`. */
export type StrokeAssumption = 'lossUsual' | 'halfStroke' | 'facesLevel' | 'letsGoAtOnce' | 'heightOfSection' | 'asAsked';

export interface GatheredStroke {
  /** Absent while something is missing. */
  readonly measures?: StrokeMeasures;
  /** As read on the key, else as asked of its register. */
  readonly dropMm?: number;
  /** What is to be measured before the stroke can be followed. */
  readonly missing: readonly QuantityName[];
  readonly assumed: readonly StrokeAssumption[];
}

const ARMS = ['keyFrontMm', 'keyBackMm', 'wippenHeelMm', 'wippenJackMm', 'rollerMm', 'hammerMm'] as const satisfies readonly (keyof Levers & QuantityName)[];
const OF_COLOUR = [...ARMS, 'keyFrontLengthMm', 'balanceHeightMm', 'capstanHeightMm'] as const satisfies readonly QuantityName[];
const OF_WHOLE = ['wippenCentreHeightMm', 'jackTopHeightMm', 'hammerCentreHeightMm', 'capstanDiameterMm', 'rollerDiameterMm'] as const satisfies readonly QuantityName[];
const OF_KEY = ['stringHeightMm', 'blowMm', 'letOffMm', 'dipMm'] as const satisfies readonly QuantityName[];
const ASKED = ['blowMm', 'letOffMm', 'dipMm'] as const;
type Needed = (typeof OF_COLOUR)[number] | (typeof OF_WHOLE)[number] | (typeof OF_KEY)[number];

/**
 * Gathers what the stroke of one key is followed from, as found: arms and heights by colour or for the whole action, regulation of
 * the key itself, else as asked of its register. The arms are taken as measured at half stroke with level faces.
 * @source OWN; PRACTICE lost travel where none is stated
 */
export function strokeInputOf({ instrument, readings, cycle, terms, key }: StrokeMaterial): GatheredStroke {
  const compass = compassOf(instrument);
  const sizes = sizesAt(readings, cycle, 'found');
  const colour = colourOf(compass, key);
  const asked = terms?.regulation.find(({ register }) => register === registerOf(compass, key).name);
  const section = instrument.sections.find(({ firstKey, lastKey }) => key >= firstKey && key <= lastKey);
  const nearby = keysOf(compass).filter((one) => section !== undefined && one >= section.firstKey && one <= section.lastKey).flatMap((one) => sizes.ofKey(one, 'stringHeightMm') ?? []);
  const own = (name: QuantityName): number | undefined => sizes.ofKey(key, name);
  const fallBack: Partial<Record<Needed, number | null | undefined>> = { stringHeightMm: nearby.length === 0 ? undefined : medianOf(nearby), blowMm: asked?.blowMm, letOffMm: asked?.letOffMm, dipMm: asked?.dipMm };
  const known = new Map<Needed, number | undefined>([
    ...OF_COLOUR.map((name) => [name, sizes.ofColour(colour, name)] as const), ...OF_WHOLE.map((name) => [name, sizes.ofWhole(name)] as const), ...OF_KEY.map((name) => [name, own(name) ?? fallBack[name] ?? undefined] as const),
  ]);
  const missing = [...OF_COLOUR, ...OF_WHOLE, ...OF_KEY].filter((name) => known.get(name) === undefined);
  if (missing.length > 0) return { missing, assumed: [] };
  const mm = (name: Needed) => millimetres(known.get(name) ?? 0);
  const jack = jackOf(sizes.ofWhole);
  const holds: Readonly<Record<StrokeAssumption, boolean>> = {
    lossUsual: terms?.lossMm == null, halfStroke: true, facesLevel: true, letsGoAtOnce: jack === undefined, heightOfSection: own('stringHeightMm') === undefined, asAsked: ASKED.some((name) => own(name) === undefined),
  };
  const dropMm = own('dropMm') ?? asked?.dropMm ?? undefined;
  return {
    ...(dropMm === undefined ? {} : { dropMm }),
    missing, assumed: (Object.keys(holds) as StrokeAssumption[]).filter((name) => holds[name]),
    measures: {
      levers: Object.fromEntries(ARMS.map((arm) => [arm, mm(arm)])) as unknown as Levers,
      keyEdgeMm: mm('keyFrontLengthMm'), balanceHeightMm: mm('balanceHeightMm'), capstanHeightMm: mm('capstanHeightMm'), wippenCentreHeightMm: mm('wippenCentreHeightMm'), jackTopHeightMm: mm('jackTopHeightMm'),
      hammerCentreHeightMm: mm('hammerCentreHeightMm'), stringHeightMm: mm('stringHeightMm'), capstanRadiusMm: millimetres(mm('capstanDiameterMm') / 2), rollerDiameterMm: mm('rollerDiameterMm'),
      blowMm: mm('blowMm'), letOffMm: mm('letOffMm'), dipMm: mm('dipMm'), lossMm: millimetres(terms?.lossMm ?? USUAL_LOSS_MM), measuredAtPct: percent(50), heelTiltDeg: degrees(0), jackTiltDeg: degrees(0),
      ...(jack === undefined ? {} : { jack }),
    },
  };
}

/** The jack, where all three of its measures are known. */
function jackOf(ofWhole: (name: QuantityName) => number | undefined): StrokeMeasures['jack'] {
  const [height, toe, overlap] = [ofWhole('jackHeightMm'), ofWhole('jackToeMm'), ofWhole('jackOverlapMm')];
  return height === undefined || toe === undefined || overlap === undefined ? undefined : { heightMm: millimetres(height), toeMm: millimetres(toe), overlapMm: millimetres(overlap) };
}
