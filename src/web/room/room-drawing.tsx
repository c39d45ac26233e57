import { roomScaleOf, roomScene } from '#plot';
import { GRAND_WIDTH_MM, footprintOf, isInside } from '#room';
import { millimetres } from '#units';
import type { RoomConsequences, RoomGiven } from '#workshop';
import { type PointerEvent, useMemo } from 'react';
import { usePiano } from '../api/piano.tsx';
import { Figure } from '../figure/figure.tsx';
import { useFigures, useLocale, useSay } from '../language/use-say.ts';
import { SceneView } from '../leaves/scene-view.tsx';
import { useWidth } from '../leaves/use-width.ts';
import { Note } from '../ui/note.tsx';
import type { ProposedPlace } from './proposed-place.ts';
import type { RoomForm } from './room-draft.ts';
import { planStory } from './room-stories.ts';
import { shownFigure } from '../action/terms/typed-figures.ts';

const MOST_HEIGHT_PX = 440;
const STEP_MM = 10;

interface RoomDrawingProps {
  readonly given: RoomGiven;
  readonly known: RoomConsequences;
  readonly places: readonly ProposedPlace[];
  readonly onPlace: ((fields: Partial<RoomForm>) => void) | undefined;
}

/** The room from above, true to scale. While it is being described the piano is dragged or set down by a press; typed fields say the same. */
export function RoomDrawing({ given, known, places, onPlace }: RoomDrawingProps) {
  const say = useSay();
  const locale = useLocale();
  const figure = useFigures();
  const { instrument } = usePiano();
  const [width, ref] = useWidth(560);
  const { points, plan } = known.input;
  const { piano } = given;
  const scene = useMemo(() => roomScene({
    points, widthPx: width, mostHeightPx: MOST_HEIGHT_PX, title: given.name,
    description: say('room.drawing.described', { length: figure(known.input.box.lengthMm / 1000, 2), width: figure(known.input.box.widthMm / 1000, 2), corners: points.length }),
    piano: piano === null ? undefined : { ...piano, kind: instrument.kind, widthMm: GRAND_WIDTH_MM },
    places: places.map(({ alongMm, acrossMm }, index) => ({ alongMm, acrossMm, label: String(index + 1) })),
    wallName: (number) => say('room.side.wall', { number }), lidName: say('room.drawing.lid'), scale: { mm: 1000, label: say('room.drawing.metre') },
    // eslint-disable-next-line react-hooks/exhaustive-deps -- words follow from the locale
  }), [points, width, given.name, piano, instrument.kind, places, locale]);
  const put = (event: PointerEvent<HTMLDivElement>): void => {
    const svg = event.currentTarget.querySelector('svg')?.getBoundingClientRect();
    if (onPlace === undefined || svg === undefined || event.buttons === 0) return;
    const [x, y] = roomScaleOf({ points, widthPx: width, mostHeightPx: MOST_HEIGHT_PX }).toMm(((event.clientX - svg.left) * scene.widthPx) / svg.width, ((event.clientY - svg.top) * scene.heightPx) / svg.height);
    const [alongMm, acrossMm] = [x, y].map((mm) => STEP_MM * Math.round(mm / STEP_MM)) as [number, number];
    if (isInside(points, { alongMm, acrossMm })) onPlace({ pianoXMm: shownFigure(alongMm, locale), pianoYMm: shownFigure(acrossMm, locale) });
  };
  const stands = piano === null || footprintOf(piano, { lengthMm: millimetres(piano.lengthMm), widthMm: GRAND_WIDTH_MM }, piano.tailDeg).every((corner) => isInside(points, corner));
  return (
    <section className="panel" aria-labelledby="room-drawing">
      <h3 id="room-drawing">{given.name === '' ? say('room.title') : given.name}</h3>
      <div ref={ref} className={onPlace === undefined ? undefined : 'room-drag'} onPointerDown={put} onPointerMove={put}><SceneView scene={scene} /></div>
      {onPlace !== undefined && <p className="soft small">{say('room.drawing.drag')}</p>}
      {!stands && <Note tone="warn"><p>{say('room.drawing.tight')}</p></Note>}
      <dl className="facts">
        <div><dt>{say('room.floorArea')}</dt><dd><Figure value={plan.floorM2} decimals={1} story={() => planStory(say('room.floorArea'), known, 'floorM2')} /> m²</dd></div>
        <div><dt>{say('room.volume')}</dt><dd><Figure value={plan.volumeM3} decimals={1} story={() => planStory(say('room.volume'), known, 'volumeM3')} /> m³</dd></div>
      </dl>
      {given.remark !== '' && <p className="remark">{given.remark}</p>}
    </section>
  );
}
