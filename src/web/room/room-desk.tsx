import type { RoomDraft, RoomGiven, RoomRecord, RoomStandard } from '#workshop';
import { useCallback, useEffect, useMemo, useRef } from 'react';
import { usePiano } from '../api/piano.tsx';
import { TakenUp } from '../kept/taken-up.tsx';
import { useLocale, useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { useDraftForm } from '../terms/use-draft-form.ts';
import { Consequences } from './consequences.tsx';
import { LoudnessFields } from './loudness-fields.tsx';
import { PianoFields } from './piano-fields.tsx';
import { type RoomForm, emptyRoom, roomFormOf, roomOf } from './room-draft.ts';
import type { RoomPart } from './room-part.ts';
import { ShapeFields } from './shape-fields.tsx';
import { SurfaceFields } from './surface-fields.tsx';
import { ThingFields } from './thing-fields.tsx';
import { useKeptTimes, useRoom } from './use-room.ts';
import { useRoomWriting } from './use-rooms.ts';
import { useStandards } from './use-standards.ts';

interface RoomDeskProps {
  /** Absent for a new one. */
  readonly room: RoomRecord | undefined;
  /** Another choice that begins as the room is. */
  readonly isCopy: boolean;
  readonly onKept: (roomId: string) => void;
  readonly onClose: () => void;
}

/** A room being described, changed or only tried: what is typed shows all its consequences at once, beside those of what is kept. */
export function RoomDesk({ room, isCopy, onKept, onClose }: RoomDeskProps) {
  const say = useSay();
  const locale = useLocale();
  const { id, cycle, instrument } = usePiano();
  const name = `room.${id}.${room === undefined ? `new.${String(cycle)}` : `${isCopy ? 'copy.' : ''}${room.id}`}`;
  const measured = isCopy || room === undefined ? NONE : room.measured;
  const kept = room?.standard ?? null;
  const { standards: cards } = useStandards();
  const standards = useMemo(() => (cards ?? []).map(({ id: of, target }): RoomStandard => ({ ...target, id: of })), [cards]);
  const writing = useRoomWriting();
  const form = useDraftForm<RoomForm, RoomGiven>({
    name,
    base: () => (room === undefined ? emptyRoom(instrument, locale) : { ...roomFormOf(room, instrument, locale), ...(isCopy ? { name: say('room.copyOf', { name: room.name }).slice(0, 120) } : {}) }),
    stated: useCallback((typed) => roomOf(typed, { cycle: isCopy ? cycle : (room?.cycle ?? cycle), measured, locale, standards, kept }), [isCopy, room, cycle, measured, locale, standards, kept]),
    onState: (stated, drop) => {
      const then = { onKept: (roomId: string): void => { drop(); onKept(roomId); } };
      writing.mutate(room === undefined || isCopy ? { kind: 'add', draft: stated, ...then } : { kind: 'change', id: room.id, draft: changesOf(stated), ...then });
    },
  });
  const { draft, set, result, wrong } = form;
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => { heading.current?.focus(); }, []);
  const part: RoomPart = { form: draft.typed, set, errorOf: form.errorOf, standards, kept };
  return (
    <div className="room-desk">
      <form className="panel room-form" onSubmit={form.submit} noValidate aria-labelledby="room-form">
        <h2 id="room-form" ref={heading} tabIndex={-1}>{say(room === undefined || isCopy ? 'room.add' : 'room.change')}</h2>
        {draft.isTakenUp && <TakenUp />}
        <p className="soft small">{say('room.tried')}</p>
        <ShapeFields {...part} />
        <SurfaceFields {...part} />
        <ThingFields {...part} />
        <PianoFields {...part} />
        <LoudnessFields {...part} />
        {wrong > 0 && <p className="field-error" role="alert">{say('worth.wrong', { count: wrong })}</p>}
        {writing.error !== null && <ProblemNote problem={writing.error} />}
        <div className="row room-keep">
          <button type="submit" className="button button-main" disabled={writing.isPending}>{say('room.keep')}</button>
          <button type="button" className="button" onClick={() => { draft.drop(); onClose(); }}>{say('action.intent.cancel')}</button>
        </div>
      </form>
      <div className="room-follows">
        {result.ok ? <Tried given={result.value} kept={isCopy ? undefined : room} onPlace={set} /> : <p className="soft" role="status">{say('room.unfinished')}</p>}
      </div>
    </div>
  );
}

const NONE: RoomGiven['measured'] = [];

/** What a form may change: what was measured is written by itself. */
function changesOf({ measured: _measured, cycle: _cycle, ...fields }: RoomGiven): Partial<RoomDraft> {
  return fields;
}

function Tried({ given, kept, onPlace }: { readonly given: RoomGiven; readonly kept: RoomRecord | undefined; readonly onPlace: (fields: Partial<RoomForm>) => void }) {
  const known = useRoom(given);
  const before = useKeptTimes(kept);
  return known.ok ? <Consequences given={given} known={known.value} before={before} onPlace={onPlace} /> : null;
}
