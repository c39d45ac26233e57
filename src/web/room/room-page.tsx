import type { RoomRecord } from '#workshop';
import { useMemo, useState } from 'react';
import { SheetLinks } from '../action/regulation/sheet-links.tsx';
import { usePiano } from '../api/piano.tsx';
import { type Command, useCommands } from '../commands/registry.ts';
import { useKept } from '../kept/kept.ts';
import { useSay } from '../language/use-say.ts';
import { IssueList } from '../shell/issue-list.tsx';
import { ProblemNote } from '../shell/problem-note.tsx';
import { Choice } from '../ui/choice.tsx';
import { Note } from '../ui/note.tsx';
import { CompareRooms } from './compare-rooms.tsx';
import { Consequences } from './consequences.tsx';
import { RoomDesk } from './room-desk.tsx';
import { StandardsPanel } from './standards-panel.tsx';
import { useRoom } from './use-room.ts';
import { useRoomWriting } from './use-rooms.ts';
import './room.css';

type Opened = 'new' | 'copy' | 'change' | undefined;

/** Where the piano stands or may stand: rooms as choices beside each other, and what follows from each. */
export function RoomPage() {
  const say = useSay();
  const { id, rooms, isCurrent } = usePiano();
  const [chosen, choose] = useKept(`wrestplank.room.${id}`, '');
  const [opened, open] = useState<Opened>();
  const room = rooms.find((one) => one.id === chosen) ?? rooms[0];
  const commands = useMemo((): readonly Command[] => (isCurrent && opened === undefined ? [{ id: 'room.add', label: 'command.room.add', group: 'command.group.room', perform: () => { open('new'); } }] : []), [isCurrent, opened]);
  useCommands(commands);
  const close = (): void => { open(undefined); };
  const kept = (roomId: string): void => { choose(roomId); close(); };
  return (
    <section className="page room-page" aria-labelledby="room-title">
      <h2 id="room-title" className="visually-hidden">{say('room.title')}</h2>
      {room === undefined && opened === undefined && <NoRoom canAdd={isCurrent} onAdd={() => { open('new'); }} />}
      {rooms.length > 0 && opened === undefined && (
        <div className="row row-between">
          <Choice label={say('room.choose')} value={room?.id ?? ''} options={rooms.map((one) => ({ value: one.id, label: one.name }))} onChange={choose} />
          {isCurrent && room !== undefined && <RoomDoings room={room} onOpen={open} />}
        </div>
      )}
      {opened !== undefined && <RoomDesk key={`${opened} ${room?.id ?? ''}`} room={opened === 'new' ? undefined : room} isCopy={opened === 'copy'} onKept={kept} onClose={close} />}
      {room !== undefined && opened === undefined && <StandingRoom key={room.id} room={room} />}
      {rooms.length > 1 && opened === undefined && <CompareRooms rooms={rooms} />}
      {opened === undefined && <StandardsPanel />}
      {rooms.length > 0 && opened === undefined && <SheetLinks sheet="room" state="found" />}
    </section>
  );
}

function RoomDoings({ room, onOpen }: { readonly room: RoomRecord; readonly onOpen: (opened: Opened) => void }) {
  const say = useSay();
  const writing = useRoomWriting();
  return (
    <div className="row no-print">
      <button type="button" className="button button-main" onClick={() => { onOpen('change'); }}>{say('room.change')}</button>
      <button type="button" className="button" onClick={() => { onOpen('copy'); }}>{say('room.copy')}</button>
      <button type="button" className="button" onClick={() => { onOpen('new'); }}>{say('room.add')}</button>
      <button type="button" className="button button-quiet" disabled={writing.isPending} onClick={() => { writing.mutate({ kind: 'withdraw', id: room.id }); }}>{say('room.withdraw')}</button>
      {writing.error !== null && <ProblemNote problem={writing.error} />}
    </div>
  );
}

function StandingRoom({ room }: { readonly room: RoomRecord }) {
  const known = useRoom(room);
  if (!known.ok) return <Note tone="bad" role="alert"><IssueList issues={known.issues} /></Note>;
  return <Consequences given={room} known={known.value} room={room} />;
}

function NoRoom({ canAdd, onAdd }: { readonly canAdd: boolean; readonly onAdd: () => void }) {
  const say = useSay();
  return (
    <section className="panel">
      <h2>{say('room.empty.title')}</h2>
      <p>{say('room.empty.text')}</p>
      {canAdd && <div><button type="button" className="button button-main" onClick={onAdd}>{say('room.add')}</button></div>}
    </section>
  );
}
