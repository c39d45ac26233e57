import { expectedInharmonicityOf } from '../comb.ts';
import { type ListenOptions, type NothingHeard, type ToneNote, listenToNote } from '../listen.ts';
import { type Dice, drawnSeed, diceOf } from './dice.ts';
import { type SyntheticNote, type SyntheticSpec, syntheticNote } from './synthetic.ts';

/** Equal-tempered pitch of a key of 88. */
export const keyHz = (key: number): number => 440 * 2 ** ((key - 49) / 12);

/** Dice of a seed drawn for a test, and what to say of it where the test fails. */
export function testDice(): { readonly dice: Dice; readonly said: string } {
  const seed = drawnSeed();
  return { dice: diceOf(seed), said: `seed ${String(seed)}` };
}

/** A made-up note of a key: the stiffness expected of it unless said otherwise. */
export function noteOfKey(dice: Dice, key: number, spec: Partial<SyntheticSpec> = {}): SyntheticNote & { readonly f0Hz: number; readonly inharmonicityB: number } {
  const f0Hz = spec.f0Hz ?? keyHz(key) * 2 ** (dice.between(-15, 15) / 1200);
  const inharmonicityB = spec.inharmonicityB ?? expectedInharmonicityOf(f0Hz) * dice.between(0.6, 1.6);
  return { ...syntheticNote({ seconds: 4.6, ...spec, seed: Math.floor(dice.even() * 2 ** 31), f0Hz, inharmonicityB }), f0Hz, inharmonicityB };
}

/** How far an answer is off. */
export interface Miss {
  readonly note: ToneNote;
  readonly cents: number;
  readonly relativeB: number;
}

/** Listens, and compares with the truth; `undefined` where nothing was heard. */
export function missOf(made: SyntheticNote & { readonly f0Hz: number; readonly inharmonicityB: number }, options: ListenOptions = {}): Miss | undefined {
  const heard: ToneNote | NothingHeard = listenToNote(made.samples, options);
  return heard.heard ? { note: heard, cents: 1200 * Math.log2(heard.f0Hz / made.f0Hz), relativeB: (heard.inharmonicityB ?? Number.NaN) / made.inharmonicityB - 1 } : undefined;
}

/** Root of the mean square. */
export const rmsOf = (list: readonly number[]): number => Math.sqrt(list.reduce((sum, x) => sum + x * x, 0) / list.length);
