import type { AnalysedHammer } from '#action';
import { type Compass, type QuantityName, type Reading, noteNameOf } from '#instrument';
import type { FigureStory } from '../../figure/figure-store.ts';
import type { StateHammers } from './state-hammers.ts';

interface Behind {
  readonly hammers: StateHammers;
  readonly compass: Compass;
}

/** How the strike ratio of a key was made. */
export function strikeRatioStory(what: string, hammer: AnalysedHammer, { hammers, compass }: Behind): FigureStory | undefined {
  const { strikeDistanceMm, speakingLengthMm } = hammer;
  if (strikeDistanceMm === undefined || speakingLengthMm === undefined) return undefined;
  return { title: `${what}, ${noteNameOf(compass, hammer.key)}`, operation: 'strike-ratio', output: 'strikeRatio', input: { strikeDistanceMm, speakingLengthMm }, readings: readingsOf(hammer.key, ['strikeDistanceMm', 'speakingLengthMm'], hammers) };
}

/** How the stand of a hammer at its string was made. */
export function strikeStory(what: string, output: 'shankDeg' | 'squarenessDeg' | 'strikeShiftMm' | 'levelBoreMm', hammer: AnalysedHammer, { hammers, compass }: Behind): FigureStory | undefined {
  const { boreMm, rakeDeg, stringHeightMm } = hammer;
  const { centreHeightMm, hammerMm } = hammers.gathered.input;
  if (boreMm === undefined || rakeDeg === undefined || stringHeightMm === undefined || centreHeightMm === undefined || hammerMm === undefined) return undefined;
  return {
    title: `${what}, ${noteNameOf(compass, hammer.key)}`, operation: 'hammer-bore', output, input: { stringHeightMm, centreHeightMm, boreMm, hammerMm, rakeDeg },
    readings: {
      ...readingsOf(hammer.key, ['boreMm', 'rakeDeg', 'stringHeightMm'], hammers),
      centreHeightMm: hammers.readings.filter(({ quantity }) => quantity === 'hammerCentreHeightMm'),
      hammerMm: hammers.readings.filter(({ quantity, scope, index }) => quantity === 'hammerMm' && scope === 'colour' && index === 0),
    },
  };
}

function readingsOf(key: number, names: readonly QuantityName[], { readings, state }: StateHammers): Readonly<Record<string, readonly Reading[]>> {
  return Object.fromEntries(names.flatMap((name) => {
    const named = readings.filter(({ quantity, scope, index }) => quantity === name && scope === 'key' && index === key);
    const own = named.filter((reading) => reading.state === state);
    return named.length === 0 ? [] : [[name, own.length > 0 ? own : named]];
  }));
}
