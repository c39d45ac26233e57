import type { Dice } from './dice.ts';

const RATE_HZ = 48_000;
const BANDWIDTHS_HZ = [80, 110, 160];

/** Something like speech: pulses of a gliding pitch, and hisses, through three formants, syllable after syllable. */
export function babble(dice: Dice, lengthS = 3): Float64Array {
  const out = new Float64Array(lengthS * RATE_HZ);
  const base = dice.between(90, 230);
  for (let from = 0; from < out.length;) {
    const to = Math.min(out.length, from + Math.floor(RATE_HZ * dice.between(0.12, 0.45)));
    syllable(out.subarray(from, to), base, dice);
    from = to;
  }
  const peak = out.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  return out.map((x) => (0.4 * x) / peak + 1e-4 * dice.normal());
}

function syllable(out: Float64Array, base: number, dice: Dice): void {
  const formants = [dice.between(300, 800), dice.between(900, 2200), dice.between(2300, 3200)];
  const [isVoiced, glide] = [dice.even() < 0.75, dice.between(-4, 4)];
  const held = formants.map(() => [0, 0] as [number, number]);
  let phase = 0;
  for (let at = 0; at < out.length; at++) {
    const share = at / out.length;
    phase += (base * 2 ** ((glide * (share - 0.5) + 0.15 * Math.sin((2 * Math.PI * 5 * at) / RATE_HZ)) / 12)) / RATE_HZ;
    const pulse = phase >= 1 ? 1 : 0;
    phase -= pulse;
    let x = Math.sin(Math.PI * share) ** 0.7 * (isVoiced ? pulse : 0.02 * dice.normal());
    for (const [k, frequencyHz] of formants.entries()) {
      const shrink = Math.exp((-Math.PI * (BANDWIDTHS_HZ[k] ?? 100)) / RATE_HZ);
      const state = held[k] ?? [0, 0];
      x = x * (1 - shrink) + 2 * shrink * Math.cos((2 * Math.PI * frequencyHz) / RATE_HZ) * state[0] - shrink ** 2 * state[1];
      held[k] = [x, state[0]];
    }
    out[at] = x;
  }
}
