import { type RegulationFigures, type RegulationInput, type RegulationLevers, type RegulationName, USUAL_LOSS_MM, leverRatiosOf, regulationNames, registerOf } from '#action';
import { type ActionTerms, type Instrument, type KeyColour, type QuantityName, type Reading, type State, colourOf, compassOf, keysOf, quantityOf } from '#instrument';
import { millimetres, ratio } from '#units';
import { type ColourSizes, colourSizesOf } from './colour-sizes.ts';
import { sizesAt } from './plan-sizes.ts';
import { type NoteSizes, sizesByKey } from './scale-sizes.ts';

/** What the regulation of one state of an instrument is judged from. */
export interface RegulationMaterial {
  readonly instrument: Pick<Instrument, 'kind' | 'firstMidi' | 'lastMidi'>;
  /** Standing readings; those of other cycles are passed over. */
  readonly readings: readonly Reading[];
  readonly cycle: number;
  readonly state: State;
  readonly terms: ActionTerms | null;
}

/** What had to be taken for granted, or left open, because it was not stated. */
export type RegulationAssumption = 'nothingAsked' | 'usualTolerance' | 'usualLoss' | 'ratioFromArms' | 'edgeIsPoint' | 'noRatio' | 'noLetOff' | 'armsAsFound';

export interface GatheredRegulation {
  readonly input: RegulationInput;
  readonly assumed: readonly RegulationAssumption[];
  /** Hammer centre to wippen centre of a grand; absent where neither read nor asked. */
  readonly spread?: JudgedSpread;
}

/** The spread as read beside the one asked. */
export interface JudgedSpread {
  readonly readMm?: number;
  readonly askedMm?: number;
  readonly toleranceMm: number;
  /** Absent where one of the two is not known. */
  readonly isInside?: boolean;
}

/** The term that states the tolerance of each figure: one for all that is judged at the key front, one of its own for each of the rest. */
const TOLERANCE_OF = {
  dipMm: 'regulationToleranceMm', aftertouchMm: 'regulationToleranceMm', keyLevelMm: 'regulationToleranceMm', sharpHeightMm: 'regulationToleranceMm',
  blowMm: 'blowToleranceMm', letOffMm: 'letOffToleranceMm', dropMm: 'dropToleranceMm', checkMm: 'checkToleranceMm',
} as const satisfies Readonly<Record<RegulationName, keyof ActionTerms>>;

/**
 * Gathers standing readings and the terms into what the analysis of the regulation takes, and lists what had to be assumed.
 * The ratio by distance is the one stated, or the product of the lever arms measured on naturals and sharps apart; never the
 * ratio by weights. Where the front edge was not measured, dip and aftertouch are taken as read at the measuring point.
 * @source OWN; PRACTICE tolerances and lost motion where not stated
 */
export function regulationInputOf({ instrument, readings, cycle, state, terms }: RegulationMaterial): GatheredRegulation {
  const compass = compassOf(instrument);
  const sizes = sizesByKey(readings, cycle, state, 'regulation');
  const colours = { natural: colourSizesOf(readings, cycle, state, 'natural'), sharp: colourSizesOf(readings, cycle, state, 'sharp') };
  const armed = (colour: ColourSizes): ColourSizes => (instrument.kind === 'grand' ? colour : withButt(colour, terms));
  const levers = { natural: leversOf(armed(colours.natural), terms?.distanceRatioNatural, terms), sharp: leversOf(armed(colours.sharp), terms?.distanceRatioSharp, terms) };
  const stated = statedOf(terms);
  const input: RegulationInput = {
    kind: instrument.kind,
    keys: keysOf(compass).map((key) => ({ key, colour: colourOf(compass, key), register: registerOf(compass, key).name, read: figuresOf(sizes.get(key)) })),
    stated, floats: terms?.regulationFloats ?? undefined, tolerances: tolerancesOf(terms),
    levers: { ...(levers.natural === undefined ? {} : { natural: levers.natural }), ...(levers.sharp === undefined ? {} : { sharp: levers.sharp }) },
  };
  const spread = instrument.kind === 'grand' ? spreadOf(readings, { cycle, state, terms }) : undefined;
  return { input, assumed: assumedOf(input, terms, colours), ...(spread === undefined ? {} : { spread }) };
}

function figuresOf(sizes: NoteSizes = {}): RegulationFigures {
  return Object.fromEntries(regulationNames.flatMap((name) => (sizes[name] === undefined ? [] : [[name, millimetres(sizes[name].value)]])));
}

function statedOf(terms: ActionTerms | null): RegulationInput['stated'] {
  if (terms === null) return {};
  const heights = { keyLevelMm: terms.keyLevelMm, sharpHeightMm: terms.sharpHeightMm };
  return Object.fromEntries((['bass', 'middle', 'treble'] as const).flatMap((register) => {
    const figures = stripped({ ...heights, ...terms.regulation.find((one) => one.register === register), register: null });
    return Object.keys(figures).length === 0 ? [] : [[register, figures]];
  }));
}

const stripped = (figures: Readonly<Record<string, number | null>>): RegulationFigures => Object.fromEntries(Object.entries(figures).filter(([, value]) => value !== null));

/** The spread read in this state, else as found. */
function spreadOf(readings: readonly Reading[], { cycle, state, terms }: Pick<RegulationMaterial, 'cycle' | 'state' | 'terms'>): JudgedSpread | undefined {
  const readMm = sizesAt(readings, cycle, state).ofWhole('spreadMm') ?? sizesAt(readings, cycle, 'found').ofWhole('spreadMm');
  const askedMm = terms?.spreadMm ?? undefined;
  const toleranceMm = terms?.spreadToleranceMm ?? quantityOf('spreadMm').tolerance ?? 0;
  if (readMm === undefined && askedMm === undefined) return undefined;
  return {
    toleranceMm, ...(readMm === undefined ? {} : { readMm }), ...(askedMm === undefined ? {} : { askedMm }),
    ...(readMm === undefined || askedMm === undefined ? {} : { isInside: Math.abs(readMm - askedMm) <= toleranceMm + HAIR_MM }),
  };
}

/** What is left of sums of decimals: nothing is outside by less. */
const HAIR_MM = 1e-9;

function tolerancesOf(terms: ActionTerms | null): RegulationInput['tolerances'] {
  return Object.fromEntries(regulationNames.map((name) => [name, terms?.[TOLERANCE_OF[name]] ?? quantityOf(name).tolerance ?? 0])) as RegulationInput['tolerances'];
}

const ARMS = ['keyFrontMm', 'keyBackMm', 'wippenHeelMm', 'wippenJackMm', 'rollerMm', 'hammerMm'] as const satisfies readonly QuantityName[];

/** In an upright the jack pushes the butt: its arm stands where that of the roller stands in a grand. */
function withButt({ sizes, isFromFound }: ColourSizes, terms: ActionTerms | null): ColourSizes {
  const { rollerMm: _, ...rest } = sizes;
  return { isFromFound, sizes: terms?.buttMm == null ? rest : { ...rest, rollerMm: terms.buttMm } };
}

function ratiosOf({ sizes }: ColourSizes): ReturnType<typeof leverRatiosOf> | undefined {
  if (ARMS.some((arm) => sizes[arm] === undefined)) return undefined;
  const arm = (name: (typeof ARMS)[number]) => millimetres(sizes[name] ?? 0);
  return leverRatiosOf({ keyFrontMm: arm('keyFrontMm'), keyBackMm: arm('keyBackMm'), wippenHeelMm: arm('wippenHeelMm'), wippenJackMm: arm('wippenJackMm'), rollerMm: arm('rollerMm'), hammerMm: arm('hammerMm') });
}

function leversOf(colour: ColourSizes, stated: number | null | undefined, terms: ActionTerms | null): RegulationLevers | undefined {
  const measured = ratiosOf(colour);
  const distance = stated ?? measured?.actionRatio;
  const { keyFrontMm, keyFrontLengthMm, keyBackLengthMm } = colour.sizes;
  const front = keyFrontMm ?? keyFrontLengthMm;
  if (distance === undefined || front === undefined) return undefined;
  return {
    distanceRatio: ratio(distance), keyFrontMm: millimetres(front), keyEdgeMm: millimetres(keyFrontLengthMm ?? front), lossMm: millimetres(terms?.lossMm ?? USUAL_LOSS_MM),
    ...(measured === undefined ? {} : { hammerPerCapstan: measured.wippenRatio * measured.hammerRatio }),
    ...(keyBackLengthMm === undefined ? {} : { keyBackLengthMm: millimetres(keyBackLengthMm) }),
  };
}

function assumedOf({ stated, levers, floats, keys }: RegulationInput, terms: ActionTerms | null, colours: Readonly<Record<KeyColour, ColourSizes>>): readonly RegulationAssumption[] {
  const isRead = keys.some(({ read }) => Object.keys(read).length > 0);
  const used = (['natural', 'sharp'] as const).filter((colour) => levers[colour] !== undefined);
  const asked = Object.values(stated);
  const holds: Readonly<Record<RegulationAssumption, boolean>> = {
    nothingAsked: asked.length === 0,
    usualTolerance: asked.some((figures) => regulationNames.some((name) => figures[name] !== undefined && terms?.[TOLERANCE_OF[name]] == null)),
    usualLoss: used.length > 0 && terms?.lossMm == null,
    ratioFromArms: used.some((colour) => (colour === 'natural' ? terms?.distanceRatioNatural : terms?.distanceRatioSharp) == null),
    armsAsFound: used.some((colour) => colours[colour].isFromFound),
    edgeIsPoint: used.some((colour) => colours[colour].sizes.keyFrontLengthMm === undefined || colours[colour].sizes.keyFrontMm === undefined),
    noRatio: used.length < 2 && (floats !== undefined || isRead),
    noLetOff: floats !== undefined && asked.some(({ letOffMm }) => letOffMm === undefined),
  };
  return (Object.keys(holds) as RegulationAssumption[]).filter((name) => holds[name]);
}
