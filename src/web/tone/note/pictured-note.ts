import type { StateTone } from '../compass/state-tone.ts';
import type { WorkedPicture } from './use-picture.ts';

/** A note of one state with its pictures. */
export interface PicturedNote {
  readonly tone: StateTone;
  readonly picture: WorkedPicture;
}
