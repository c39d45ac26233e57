import type { RoomStandard } from '#workshop';
import type { RoomForm } from './room-draft.ts';

/** One part of the form: what is typed, how it is changed, and what is wrong with a field once it was asked for. */
export interface RoomPart {
  readonly form: RoomForm;
  /** The same function as long as the form is open. */
  readonly set: (fields: Partial<RoomForm> | ((now: RoomForm) => Partial<RoomForm>)) => void;
  readonly errorOf: (path: string) => string | undefined;
  /** Targets of the shop’s own, and the one the room took over before. */
  readonly standards: readonly RoomStandard[];
  readonly kept: RoomStandard | null;
}
