import { type RoomRecord, USUAL_DISTANCES_MM } from '#workshop';
import { usePiano } from '../api/piano.tsx';
import { Figure } from '../figure/figure.tsx';
import { useSay } from '../language/use-say.ts';
import { ScrollTable } from '../ui/scroll-table.tsx';
import { levelStory, notesStory, planStory, reverberationStory, targetStory } from './room-stories.ts';
import { useRoom } from './use-room.ts';

const COLUMNS = ['volume', 'mid', 'wanted', 'bass125', 'bassRatio', 'booming', 'player'] as const;

/** The rooms of this stay beside each other. */
export function CompareRooms({ rooms }: { readonly rooms: readonly RoomRecord[] }) {
  const say = useSay();
  return (
    <section className="panel" aria-labelledby="room-compare">
      <h3 id="room-compare">{say('room.compare')}</h3>
      <ScrollTable label={say('room.figures', { what: say('room.compare') })} corner={say('room.title')} columns={COLUMNS.map((name) => ({ key: name, head: say(`room.compare.${name}`) }))}>
        {rooms.map((room) => <Line key={room.id} room={room} />)}
      </ScrollTable>
    </section>
  );
}

function Line({ room }: { readonly room: RoomRecord }) {
  const say = useSay();
  const { instrument } = usePiano();
  const result = useRoom(room);
  if (!result.ok) return <tr><th scope="row">{room.name}</th><td colSpan={COLUMNS.length}>{say('room.compare.refused')}</td></tr>;
  const known = result.value;
  const { input, midS, target, times, model, bassRatio, notes, loudness } = known;
  const of = (column: (typeof COLUMNS)[number]): string => `${say(`room.compare.${column}`)}, ${room.name}`;
  const unstated = <span className="soft">{say('room.notStated')}</span>;
  const held = notes.filter(({ booms }) => booms.some(({ partial }) => partial === 1)).length;
  return (
    <tr>
      <th scope="row">{room.name}</th>
      <td><Figure value={input.plan.volumeM3} decimals={1} story={() => planStory(of('volume'), known, 'volumeM3')} /> m³</td>
      <td><Figure value={midS} decimals={2} unit="s" story={() => reverberationStory(of('mid'), known, model, 'midS')} /></td>
      <td>{target === undefined ? unstated : <Figure value={target.seconds} decimals={2} unit="s" story={() => targetStory(of('wanted'), known, room, 'seconds')} />}</td>
      <td><Figure value={times[model][0]} decimals={2} unit="s" story={() => reverberationStory(of('bass125'), known, model, 'seconds[0]')} /></td>
      <td><Figure value={bassRatio} decimals={2} story={() => reverberationStory(of('bassRatio'), known, model, 'bassRatio')} /></td>
      <td><Figure value={held} decimals={0} story={() => notesStory(of('booming'), known, instrument.a4Hz)} /></td>
      <td>{loudness === undefined ? unstated : <><Figure value={loudness.playerDb} decimals={0} story={() => levelStory(of('player'), known, room, { output: 'levelsDb[0]', distancesMm: [room.playerMm ?? USUAL_DISTANCES_MM.player] })} /> {say('room.unit.decibels')}</>}</td>
    </tr>
  );
}
