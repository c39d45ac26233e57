import type { BellyAnalysis } from '#belly';
import type { Reading, State } from '#instrument';
import type { StateTone } from './tone-states.ts';

/** Below this share of the curve keys ring short. @source PRACTICE */
export const SHORT_PCT = 70;

/** What the operation `sustain-map` is given. */
export interface SustainInput {
  readonly notes: readonly { readonly key: number; readonly decayS: number; readonly uncertaintyS?: number; readonly bearingDeg?: number }[];
  readonly humidityPct?: number;
  readonly shortPct: number;
}

export interface SustainMaterial {
  readonly tone: StateTone;
  /** The bearing of that state, where any was read. */
  readonly belly: BellyAnalysis | undefined;
  /** Standing readings of that state, for the climate noted with its bearing. */
  readonly readings: readonly Reading[];
  readonly cycle: number;
}

/** Gathers the early decay of every key of a state with the down bearing read there (front and rear together) and the humidity noted then. @source OWN */
export function sustainInputOf({ tone, belly, readings, cycle }: SustainMaterial): SustainInput {
  const bearings = new Map(belly?.notes.flatMap(({ key, figures }) => (figures?.totalDeg === undefined ? [] : [[key, figures.totalDeg] as const])));
  const humidityPct = humidityOf(readings, cycle, tone.state)?.value ?? undefined;
  return {
    notes: tone.notes.flatMap(({ key, figures: { sustain } }) => {
      const bearingDeg = bearings.get(key);
      return sustain === undefined ? [] : [{ key, decayS: sustain.value, ...(sustain.uncertainty === undefined ? {} : { uncertaintyS: sustain.uncertainty }), ...(bearingDeg === undefined ? {} : { bearingDeg }) }];
    }),
    ...(humidityPct === undefined ? {} : { humidityPct }), shortPct: SHORT_PCT,
  };
}

/** The humidity noted with the bearing of a state. */
export function humidityOf(readings: readonly Reading[], cycle: number, state: State): Reading | undefined {
  return readings.find((reading) => reading.cycle === cycle && reading.state === state && reading.quantity === 'roomHumidityPct' && reading.value !== null);
}
