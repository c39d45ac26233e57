import type { Compass, KeyNumber } from '#instrument';
import { midiOf } from '#instrument';

/** What is usual in one register of a grand, dampers lifted; grams. */
export interface Register {
  readonly name: 'bass' | 'middle' | 'treble';
  /** Usual friction; `slackG` either side is still ordinary. */
  readonly frictionG: readonly [number, number];
  readonly slackG: number;
  /** Least up weight a key should lift. */
  readonly upWeightMinG: number;
}

/** Common practice, no source; the treble friction was also read in a technicians’ list post. @source PRACTICE */
const BASS: Register = { name: 'bass', frictionG: [13, 15], slackG: 2, upWeightMinG: 20 };
const MIDDLE: Register = { name: 'middle', frictionG: [11, 13], slackG: 2, upWeightMinG: 21 };
const TREBLE: Register = { name: 'treble', frictionG: [10, 11], slackG: 2, upWeightMinG: 23 };

/** Last notes of bass and middle: keys 28 and 60 of an 88-note keyboard, by MIDI number, so that other compasses find their place. */
const LAST_BASS_MIDI = 48;
const LAST_MIDDLE_MIDI = 80;

/** Below this up weight repetition is slow whatever the down weight says; grams. @source PRACTICE */
export const SLOW_RETURN_G = 18;

/** Up to this the friction of the key alone is low; grams. @source PRACTICE */
export const KEY_FRICTION_LOW_G = 3;
/** Above this the friction of the key alone is high; grams. @source PRACTICE */
export const KEY_FRICTION_HIGH_G = 6;

/** The register a key belongs to by its pitch, whatever the compass. Grands only. @source PRACTICE */
export function registerOf(compass: Compass, key: KeyNumber): Register {
  const midi = midiOf(compass, key);
  if (midi <= LAST_BASS_MIDI) return BASS;
  return midi <= LAST_MIDDLE_MIDI ? MIDDLE : TREBLE;
}
