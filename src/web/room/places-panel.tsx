import type { PlacedPiano, StandingPiano } from '#room';
import { type PlacesQuestion, type RoomConsequences, type RoomGiven, placesInRoom, placesQuestionOf } from '#workshop';
import { useEffect, useMemo } from 'react';
import { shownFigure } from '../action/terms/typed-figures.ts';
import { usePiano } from '../api/piano.tsx';
import { Figure } from '../figure/figure.tsx';
import { useFigures, useLocale, useSay } from '../language/use-say.ts';
import { Note } from '../ui/note.tsx';
import { ScrollTable } from '../ui/scroll-table.tsx';
import { type ThreadKind, useThread } from '../ui/use-thread.ts';
import type { ProposedPlace } from './proposed-place.ts';
import type { PlacesNews } from './places-jobs.ts';
import type { RoomForm } from './room-draft.ts';

const NONE: readonly PlacedPiano[] = [];

interface Known {
  readonly part: number;
  readonly places: readonly (PlacedPiano | StandingPiano)[] | undefined;
}
const trying: ThreadKind<PlacesQuestion, PlacesNews, Known> = {
  make: () => new Worker(new URL('./places.worker.ts', import.meta.url), { type: 'module' }),
  nothing: { part: 0, places: undefined },
  heard: (known, news) => (news.type === 'progress' ? { ...known, part: news.part } : { part: 1, places: news.places }),
};

interface PlacesPanelProps {
  readonly given: RoomGiven;
  readonly known: RoomConsequences;
  readonly onPlaces: (places: readonly ProposedPlace[]) => void;
  readonly onPlace: ((fields: Partial<RoomForm>) => void) | undefined;
}

/** Places for the piano, the bass most even first, and the side its lid would best open to; tried on a thread of its own. */
export function PlacesPanel({ given, known, onPlaces, onPlace }: PlacesPanelProps) {
  const say = useSay();
  const { instrument } = usePiano();
  const order = useMemo(() => placesQuestionOf(given, known, instrument), [given, known, instrument]);
  const { state, start, end } = useThread(trying);
  const isOld = state.order !== undefined && JSON.stringify(state.order) !== JSON.stringify(order);
  const places = isOld ? undefined : state.known.places;
  const best = useMemo(() => (places === undefined ? NONE : placesInRoom(places, known)), [places, known]);
  useEffect(() => { onPlaces(best); }, [best, onPlaces]);
  return (
    <section className="panel" aria-labelledby="room-places">
      <h3 id="room-places">{say('room.places')}</h3>
      <p className="soft small">{say('room.places.about', { grid: order.grid.gridMm })} {!known.input.isBox && say('room.places.enclosing')}</p>
      <div className="row no-print">
        {state.isRunning
          ? <><progress max={1} value={state.known.part} aria-label={say('room.places')} /><button type="button" className="button" onClick={end}>{say('room.stop')}</button></>
          : <button type="button" className="button" onClick={() => { start(order); }}>{say('room.places.try')}</button>}
      </div>
      <p role="status">{state.hasFailed ? say('room.places.failed') : state.wasEnded ? say('room.stopped') : isOld ? say('room.places.old') : places === undefined ? '' : say('room.places.found', { count: places.length })}</p>
      {places !== undefined && best.length > 0 && <PlacesTable best={best} worst={places.at(-1)?.spreadDb ?? 0} order={order} onPlace={onPlace} />}
      {places?.length === 0 && <p>{say('room.places.none')}</p>}
      <Note tone="warn"><p>{say('room.places.caution')}</p></Note>
    </section>
  );
}

interface PlacesTableProps {
  readonly best: readonly (PlacedPiano | StandingPiano)[];
  readonly worst: number;
  readonly order: PlacesQuestion;
  readonly onPlace: PlacesPanelProps['onPlace'];
}

function PlacesTable({ best, worst, order: { grid, standing }, onPlace }: PlacesTableProps) {
  const say = useSay();
  const figure = useFigures();
  const locale = useLocale();
  const story = { title: say('room.spread'), operation: 'room-positions', input: { ...grid, points: standing.points, ...(standing.piano === undefined ? {} : { piano: standing.piano }) } };
  const columns = ['along', 'across', 'spread', ...(standing.piano === undefined ? [] : ['tail', 'open']), ...(onPlace === undefined ? [] : ['put'])] as const;
  return (
    <>
      <ScrollTable label={say('room.figures', { what: say('room.places') })} corner={say('room.places.rank')} columns={columns.map((name) => ({ key: name, head: say(`room.places.${name as 'along'}`) }))}>
        {best.map((place, index) => (
          <tr key={`${String(place.alongMm)} ${String(place.acrossMm)}`}>
            <th scope="row">{index + 1}</th>
            <td>{figure(place.alongMm, 0, 'mm')}</td><td>{figure(place.acrossMm, 0, 'mm')}</td>
            <td><Figure value={place.spreadDb} decimals={2} story={() => ({ ...story, output: `places[${String(index)}].spreadDb` })} /> {say('room.unit.decibels')}</td>
            {standing.piano !== undefined && <td>{'tailDeg' in place ? say(`room.turn.${String(place.tailDeg) as '0'}`) : ''}</td>}
            {standing.piano !== undefined && <td>{'openMm' in place ? figure(place.openMm, 0, 'mm') : ''}</td>}
            {onPlace !== undefined && <td><button type="button" className="button button-quiet" aria-label={say('room.places.putAt', { rank: index + 1 })} onClick={() => { onPlace({ pianoXMm: shownFigure(place.alongMm, locale), pianoYMm: shownFigure(place.acrossMm, locale), ...('tailDeg' in place ? { tailDeg: String(place.tailDeg) } : {}) }); }}>{say('room.places.put')}</button></td>}
          </tr>
        ))}
      </ScrollTable>
      <p className="soft small">{say('room.places.worst', { worst: figure(worst, 2) })}</p>
    </>
  );
}
