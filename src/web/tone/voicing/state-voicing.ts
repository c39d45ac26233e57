import type { KeyNumber, State } from '#instrument';
import { type VoicingMap, brightnessAt, levelLineOf, voicingMapOf } from '#tone';
import { type GatheredVoicing, type StateTone, type VoicedFigure, voicingInputOf } from '#workshop';

/** The hammers of one state: what was gathered, and the map where one can be laid. */
export interface StateVoicing {
  readonly state: State;
  readonly gathered: GatheredVoicing;
  readonly map: VoicingMap | undefined;
}

/** The hammers of a state; nothing where no strike has the figure they are compared by. */
export function voicingOf(tone: StateTone, figure: VoicedFigure): StateVoicing | undefined {
  const gathered = voicingInputOf(tone, figure);
  if (gathered === undefined) return undefined;
  const { input } = gathered;
  const map = input === undefined ? undefined : voicingMapOf(input.notes.map(({ key, brightness, uncertainty }) => ({ key, value: brightness, uncertainty })), input.repeatability);
  return { state: tone.state, gathered, map: map?.ok === true ? map.value : undefined };
}

/** The strikes of one key, softest first. */
export function strikesOf({ gathered }: StateVoicing, key: KeyNumber): GatheredVoicing['strikes'] {
  return gathered.strikes.filter((strike) => strike.key === key).toSorted((a, b) => a.levelDb - b.levelDb);
}

/** Brightness on the line through strikes. */
export function lineThrough(strikes: GatheredVoicing['strikes']): (levelDb: number) => number {
  const line = levelLineOf(strikes);
  return (levelDb) => brightnessAt(line, levelDb).brightness;
}
