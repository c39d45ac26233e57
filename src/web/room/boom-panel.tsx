import { type KeyNumber, noteNameOf } from '#instrument';
import { type KeySign } from '#plot';
import type { RoomConsequences, RoomGiven } from '#workshop';
import { useMemo, useState } from 'react';
import { usePiano } from '../api/piano.tsx';
import { Figure } from '../figure/figure.tsx';
import { useFigures, useSay } from '../language/use-say.ts';
import { KeyboardRow } from '../leaves/keyboard-row.tsx';
import { useWidth } from '../leaves/use-width.ts';
import { ScrollTable } from '../ui/scroll-table.tsx';
import { modesStory, notesStory } from './room-stories.ts';

/** From this volume down a grand is commonly told to be large for its room. @source POP-2019 */
const SMALL_M3 = 80;
/** From this length a grand is long. @source PRACTICE */
const LONG_MM = 2000;

/** Which notes the room holds and which it leaves thin, on the keys; the lowest standing waves; what a small room asks of a long piano. */
export function BoomPanel({ given, known }: { readonly given: RoomGiven; readonly known: RoomConsequences }) {
  const say = useSay();
  const { compass, instrument } = usePiano();
  const [key, select] = useState<KeyNumber>();
  const [width, ref] = useWidth(520);
  const { notes, schroederHz, coincident, input } = known;
  const signs = useMemo(() => new Map(notes.flatMap((note): readonly (readonly [KeyNumber, KeySign])[] => (note.booms.length > 0 ? [[note.key, 'over']] : note.thin ? [[note.key, 'under']] : []))), [notes]);
  const named = (keys: readonly number[]): string => keys.map((one) => noteNameOf(compass, one)).join(', ');
  const booms = notes.filter((note) => note.booms.some(({ partial }) => partial === 1));
  const thin = notes.filter((note) => note.thin && note.booms.length === 0);
  const length = given.piano?.lengthMm ?? instrument.lengthMm;
  const chosen = notes.find((note) => note.key === key);
  return (
    <section className="panel" aria-labelledby="room-boom">
      <h3 id="room-boom">{say('room.boom')}</h3>
      <p className="soft small">{say(input.isBox ? 'room.boom.about' : 'room.boom.enclosing')}</p>
      <div ref={ref} className="room-keys"><KeyboardRow compass={compass} signs={signs} widthPx={Math.max(width, 480)} label={say('room.boom')} selected={key} onSelect={select} describe={(one) => noteWords(one)} keyHeightPx={64} /></div>
      <p className="small">{say('room.boom.signs')}</p>
      <p>{booms.length === 0 ? say('room.boom.none') : say('room.boom.these', { notes: named(booms.map((note) => note.key)) })} {thin.length > 0 && say('room.boom.thin', { notes: named(thin.map((note) => note.key)) })}</p>
      {chosen !== undefined && <p role="status">{noteNameOf(compass, chosen.key)}: {noteWords(chosen.key)}</p>}
      <dl className="facts">
        <div><dt>{say('room.schroeder')}</dt><dd><Figure value={schroederHz} decimals={0} unit="Hz" story={() => modesStory(say('room.schroeder'), known, 'schroederHz')} /></dd></div>
        <div><dt>{say('room.modeWidth')}</dt><dd><Figure value={known.modeWidthHz} decimals={1} unit="Hz" story={() => ({ ...notesStory(say('room.modeWidth'), known, instrument.a4Hz), output: 'modeWidthHz' })} /></dd></div>
      </dl>
      <ModesTable known={known} />
      {coincident.length > 0 && <p>{say('room.coincident', { count: coincident.length })}</p>}
      {instrument.kind === 'grand' && length !== null && length >= LONG_MM && input.plan.volumeM3 < SMALL_M3 && <p>{say('room.smallForLong')}</p>}
    </section>
  );

  function noteWords(one: KeyNumber): string {
    const note = notes.find((each) => each.key === one);
    if (note === undefined) return say('room.note.above');
    if (note.booms.length > 0) return say('room.note.booms', { partials: note.booms.map(({ partial, mode }) => say('room.note.partial', { partial, hz: Math.round(mode.frequencyHz) })).join('; ') });
    return say(note.thin ? 'room.note.thin' : 'room.note.plain');
  }

}

function ModesTable({ known }: { readonly known: RoomConsequences }) {
  const say = useSay();
  const figure = useFigures();
  return (
    <ScrollTable label={say('room.modes')} corner={say('room.modes')} columns={[{ key: 'hertz', head: say('room.unit.hertz') }, { key: 'between', head: say('room.modes.between') }]}>
      {known.firstModes.map((mode, index) => (
        <tr key={mode.order.join(' ')}>
          <th scope="row">{mode.order.map((one) => figure(one, 0)).join('')}</th>
          <td><Figure value={mode.frequencyHz} decimals={1} story={() => modesStory(say('room.modes'), known, `modes[${String(index)}].frequencyHz`)} /></td>
          <td>{say(`room.mode.${mode.kind}`)}</td>
        </tr>
      ))}
    </ScrollTable>
  );
}
