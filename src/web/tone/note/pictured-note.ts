import type { StateTone } from '#workshop';
import type { WorkedPicture } from './use-picture.ts';

/** A note of one state with its pictures. */
export interface PicturedNote {
  readonly tone: StateTone;
  readonly picture: WorkedPicture;
}
