import { type RoomConsequences, type RoomGiven, USUAL_DISTANCES_MM } from '#workshop';
import { Figure } from '../figure/figure.tsx';
import { useFigures, useSay } from '../language/use-say.ts';
import { Note } from '../ui/note.tsx';
import { criticalStory, exposureStory, levelStory } from './room-stories.ts';

/** How loud the piano is for player and listeners, and what a day of it adds up to for the ear. */
export function LoudnessPanel({ given, known }: { readonly given: RoomGiven; readonly known: RoomConsequences }) {
  const say = useSay();
  const figure = useFigures();
  const { loudness, criticalM } = known;
  const [player, listener] = [given.playerMm ?? USUAL_DISTANCES_MM.player, given.listenerMm ?? USUAL_DISTANCES_MM.listener];
  const distancesMm = [player, listener];
  const story = (what: string, output: string) => () => levelStory(what, known, given, { output, distancesMm });
  const db = (label: string, value: number, output: string) => <div><dt>{label}</dt><dd><Figure value={value} decimals={0} story={story(label, output)} /> {say('room.unit.decibels')}</dd></div>;
  const metres = (mm: number): string => figure(mm / 1000, 1);
  return (
    <section className="panel" aria-labelledby="room-loud">
      <h3 id="room-loud">{say('room.loudness')}</h3>
      <dl className="facts">
        <div><dt>{say('room.critical')}</dt><dd><Figure value={1000 * criticalM} decimals={0} unit="mm" story={() => criticalStory(say('room.critical'), known)} /></dd></div>
        {loudness !== undefined && db(say('room.level.player', { metres: metres(player) }), loudness.playerDb, 'levelsDb[0]')}
        {loudness !== undefined && db(say('room.level.listener', { metres: metres(listener) }), loudness.listenerDb, 'levelsDb[1]')}
        {loudness !== undefined && db(say('room.level.room'), loudness.reverberantDb, 'reverberantDb')}
        {loudness?.daily !== undefined && given.hoursADay !== null && <div><dt>{say('room.exposure')}</dt><dd><Figure value={loudness.daily.dailyDbA} decimals={1} story={() => exposureStory(say('room.exposure'), loudness.playerDb, given.hoursADay ?? 0)} /> {say('room.unit.decibelsA')}</dd></div>}
      </dl>
      {loudness === undefined ? <p className="soft">{say('room.level.none')}</p> : <p className="soft small">{say('room.level.doubt')}</p>}
      {loudness?.daily !== undefined && <Note tone={loudness.daily.level === 'below' ? 'plain' : 'warn'}><p>{say(`room.exposure.${loudness.daily.level}`)} {say('room.exposure.caution')}</p></Note>}
    </section>
  );
}
