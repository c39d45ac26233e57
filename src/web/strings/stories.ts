import { type Compass, type KeyNumber, type QuantityName, type Reading, type ScaleTerms, type State, noteNameOf } from '#instrument';
import type { AnalysedNote, ScaleWire } from '#strings';
import type { FigureStory, Origin } from '../figure/figure-store.ts';

/** What stands behind the figures of one note. */
export interface BehindNote {
  readonly note: AnalysedNote;
  readonly state: State;
  readonly terms: ScaleTerms | null;
  /** Readings of the state, and those as found behind a plan. */
  readonly readings: readonly Reading[];
  readonly compass: Compass;
}

/** How one figure of a note was made: the operation `plain-string` or `wound-string`, with where each input came from; `undefined` while the note has no string. */
export function stringStory(what: string, output: string, behind: BehindNote): FigureStory | undefined {
  const { note, terms, compass } = behind;
  const { wire, frequencyHz, speakingLengthMm, certificateMPa, key } = note;
  if (wire === undefined || speakingLengthMm === undefined) return undefined;
  const { kind, ...sizes } = wire;
  const input = {
    frequencyHz, speakingLengthMm, ...sizes,
    ...(terms?.strengthModel == null ? {} : { strengthModel: terms.strengthModel }), ...(certificateMPa === undefined ? {} : { certificateMPa }),
  };
  return { title: `${what}, ${noteNameOf(compass, key)}`, operation: `${kind}-string`, output, input, origins: originsOf(wire, behind) };
}

function originsOf(wire: ScaleWire, behind: BehindNote): Readonly<Record<string, Origin>> {
  const { note, terms, readings } = behind;
  const read = (...quantities: readonly QuantityName[]): Origin => originOf(quantities, behind);
  const metal: Origin = { how: terms?.wrapMetal == null ? 'assumedMetal' : 'stringTerms' };
  const ends = Object.fromEntries((['bareFrontMm', 'bareRearMm', 'stepFrontMm', 'stepRearMm'] as const).map((name) => [name, read(name)]));
  const shared = {
    frequencyHz: { how: 'pitch', readings: read('pitchOffsetCt').readings ?? [] } as const,
    speakingLengthMm: note.isLengthEstimated ? betweenOf(note.key, readings) : read('speakingLengthMm'),
    strengthModel: { how: 'stringTerms' } as const,
    certificateMPa: { how: 'shopWire' } as const,
  };
  if (wire.kind === 'plain') return { ...shared, diameterMm: read('wireDiameterMm') };
  const core = { coreDiameterMm: read('wireDiameterMm', 'hexCoreMm'), ...ends };
  if (!('wraps' in wire)) return { ...shared, ...core, overallDiameterMm: read('overallDiameterMm'), packing: { how: 'stringTerms' }, wrapDensityKgM3: metal };
  const wraps = wire.wraps.flatMap((_, index): readonly (readonly [string, Origin])[] => {
    const isOuter = index === wire.wraps.length - 1;
    return [[`wraps[${String(index)}].wireDiameterMm`, read(isOuter ? 'outerWrapMm' : 'innerWrapMm')], [`wraps[${String(index)}].densityKgM3`, metal]];
  });
  return { ...shared, ...core, ...Object.fromEntries(wraps) };
}

/** The readings of a size: of the state itself, or as found where a plan leaves it as it was; or that it is only tried. */
function originOf(quantities: readonly QuantityName[], { note, state, readings }: BehindNote): Origin {
  const named = readings.filter(({ scope, index, quantity }) => scope === 'key' && index === note.key && quantities.includes(quantity));
  const own = named.filter((reading) => reading.state === state);
  const standing = own.length > 0 ? own : named;
  return standing.some(({ id }) => id.startsWith('trial ')) ? { how: 'tried' } : { readings: standing };
}

/** The measured lengths either side that a missing one was laid between. */
function betweenOf(key: KeyNumber, readings: readonly Reading[]): Origin {
  const lengths = readings.filter(({ quantity }) => quantity === 'speakingLengthMm').toSorted((a, b) => a.index - b.index);
  const either = [lengths.findLast(({ index }) => index <= key), lengths.find(({ index }) => index >= key)].flatMap((reading) => reading ?? []);
  return { how: 'lengthBetween', readings: either };
}
