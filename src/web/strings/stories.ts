import { type QuantityName, type Reading, type State, noteNameOf } from '#instrument';
import type { AnalysedNote, StrengthModel } from '#strings';
import type { Compass } from '#instrument';
import type { FigureStory } from '../figure/figure-store.ts';

/** The fields of the string operations and the quantities they are read as. */
const READ_AS: Readonly<Record<string, readonly QuantityName[]>> = {
  speakingLengthMm: ['speakingLengthMm'], diameterMm: ['wireDiameterMm'], coreDiameterMm: ['wireDiameterMm', 'hexCoreMm'], wraps: ['innerWrapMm', 'outerWrapMm'],
  overallDiameterMm: ['overallDiameterMm'], bareFrontMm: ['bareFrontMm'], bareRearMm: ['bareRearMm'], stepFrontMm: ['stepFrontMm'], stepRearMm: ['stepRearMm'], frequencyHz: ['pitchOffsetCt'],
};

/** What stands behind the figures of one note. */
export interface BehindNote {
  readonly note: AnalysedNote;
  readonly state: State;
  readonly strengthModel: StrengthModel | undefined;
  readonly readings: readonly Reading[];
  readonly compass: Compass;
}

/** How one figure of a note was made: the operation `plain-string` or `wound-string`, with the readings of the note. */
export function stringStory(what: string, output: string, { note, state, strengthModel, readings, compass }: BehindNote): FigureStory | undefined {
  const { wire, frequencyHz, speakingLengthMm, certificateMPa, key } = note;
  if (wire === undefined || speakingLengthMm === undefined) return undefined;
  const { kind, ...sizes } = wire;
  const input = {
    frequencyHz, speakingLengthMm, ...sizes,
    ...(strengthModel === undefined ? {} : { strengthModel }), ...(certificateMPa === undefined ? {} : { certificateMPa }),
  };
  return { title: `${what}, ${noteNameOf(compass, key)}`, operation: `${kind}-string`, output, input, readings: readingsBehind(Object.keys(input), readings, { key, state }) };
}

/** The readings of each field: of the state itself, or of the state as found where a plan leaves it as it was. */
function readingsBehind(fields: readonly string[], readings: readonly Reading[], { key, state }: { readonly key: number; readonly state: State }): Readonly<Record<string, readonly Reading[]>> {
  const ofKey = readings.filter(({ scope, index, id }) => scope === 'key' && index === key && !id.startsWith('trial '));
  return Object.fromEntries(fields.flatMap((field) => {
    const named = ofKey.filter(({ quantity }) => READ_AS[field]?.includes(quantity) === true);
    const own = named.filter((reading) => reading.state === state);
    return named.length === 0 ? [] : [[field, own.length > 0 ? own : named]];
  }));
}
