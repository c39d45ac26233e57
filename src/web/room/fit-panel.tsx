import { sideWords } from '#report';
import { octaveBands } from '#room';
import { type RoomConsequences, type RoomFit, type RoomMeasured, type RoomRecord, doubtsOf, measuredTimesOf, roomCalculated, roomFitOf } from '#workshop';
import { useState } from 'react';
import { openFigure } from '../figure/figure-store.ts';
import type { useFigures } from '../language/use-say.ts';
import { useSay } from '../language/use-say.ts';
import { ScrollTable } from '../ui/scroll-table.tsx';
import { useRoomWriting } from './use-rooms.ts';

interface FitPanelProps {
  readonly room: RoomRecord;
  readonly known: RoomConsequences;
  readonly measured: RoomMeasured;
  readonly canWrite: boolean;
  readonly figure: ReturnType<typeof useFigures>;
}

/** Surfaces that would ring as measured, moved as little as that takes within their doubt: a proposal, accepted or left. */
export function FitPanel({ room, known, measured, canWrite, figure }: FitPanelProps) {
  const say = useSay();
  const [fit, setFit] = useState<RoomFit>();
  const writing = useRoomWriting();
  if (measuredTimesOf(measured).every((time) => time === null)) return null;
  if (fit === undefined) return canWrite ? <div className="no-print"><button type="button" className="button" onClick={() => { setFit(roomFitOf(room, known.input, known.model, measured)); }}>{say('room.fit')}</button></div> : null;
  const moved = fit.surfaces.filter(({ fitted, absorption }) => fitted.some((share, band) => Math.abs(share - (absorption[band] ?? 0)) >= 0.0005));
  const held = octaveBands.filter((_, band) => fit.outcomes[band] === 'held');
  const nameOf = ({ thing, on, isPeople, face }: RoomFit['surfaces'][number]): string => (isPeople === true ? say('room.field.people') : [thing === undefined ? sideWords(on, say) : room.things[thing]?.words, face.surface === null ? '' : say(`room.surface.${face.surface}`)].filter((part) => part !== undefined && part !== '').join(', '));
  const story = (): void => { openFigure({ title: say('room.fit'), operation: 'room-fit', input: { room: { ...roomCalculated(known.input), model: known.model }, measuredS: measuredTimesOf(measured), doubts: doubtsOf(known.input) }, output: 'absorption' }); };
  return (
    <div className="room-heard">
      <h4>{say('room.fit.title')}</h4>
      <p className="soft small">{say('room.fit.about')}</p>
      <ScrollTable label={say('room.fit.title')} corner={say('room.fit.shares')} columns={octaveBands.map((band) => ({ key: band, head: `${String(band)} Hz` }))}>
        {moved.map((surface) => <tr key={`${String(surface.on)} ${String(surface.thing)}`}><th scope="row">{nameOf(surface)}</th>{octaveBands.map((name, band) => <td key={name}>{figure(surface.absorption[band] ?? 0, 2)} → {figure(surface.fitted[band] ?? 0, 3)}</td>)}</tr>)}
        <tr><th scope="row">{say('room.fit.times')}</th>{octaveBands.map((name, band) => <td key={name}>{figure(fit.times[band] ?? 0, 2)}</td>)}</tr>
      </ScrollTable>
      {held.length > 0 && <p>{say('room.fit.held', { bands: held.join(', ') })}</p>}
      <div className="row no-print">
        <button type="button" className="button button-main" disabled={writing.isPending} onClick={() => { writing.mutate({ kind: 'change', id: room.id, draft: fit.faces, onKept: () => { setFit(undefined); } }); }}>{say('room.fit.accept')}</button>
        <button type="button" className="button" onClick={() => { setFit(undefined); }}>{say('room.fit.leave')}</button>
        <button type="button" className="button button-quiet" onClick={story}>{say('shell.figure.open')}</button>
      </div>
    </div>
  );
}
