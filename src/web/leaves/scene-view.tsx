import type { KeyNumber } from '#instrument';
import { type Mark, type Scene, keyUnder } from '#plot';
import { type PointerEvent, memo, use, useMemo, useRef } from 'react';
import { MarkView, sameMarks } from './mark-view.tsx';
import { pointAtKey, usePointedKey } from './pointed-key.ts';
import { frameOf } from './scene-frame.ts';
import { ScrolledPlots } from './scrolled-plots.ts';
import './leaves.css';

interface SceneViewProps {
  readonly scene: Scene;
  /** The key chosen: its strip is laid over the drawing. */
  readonly selected?: KeyNumber | undefined;
  /** Called with the key that was pressed. The same must be reachable without a pointer elsewhere on the page. */
  readonly onKey?: (key: KeyNumber) => void;
}

/** A drawing on screen: its marks in the tokens' inks, the key pointed at anywhere lit in it too. Where plots scroll sideways, values and name stay in view. */
export function SceneView({ scene, selected, onKey }: SceneViewProps) {
  const isScrolled = use(ScrolledPlots);
  const keyAt = (event: PointerEvent<SVGSVGElement>): KeyNumber | undefined => {
    const box = event.currentTarget.getBoundingClientRect();
    return keyUnder(scene, ((event.clientX - box.left) * scene.widthPx) / box.width);
  };
  const { heightPx, title, description } = scene;
  const axisPx = scene.columns[0]?.xPx ?? 0;
  const { axis, moving } = useMemo(() => {
    const isAxis = (mark: Mark): boolean => isScrolled && mark.type === 'text' && mark.x < axisPx && mark.anchor !== 'middle';
    return { axis: scene.marks.filter(isAxis), moving: isScrolled ? { ...scene, marks: scene.marks.filter((mark) => !isAxis(mark)) } : scene };
  }, [axisPx, isScrolled, scene]);
  const drawing = (
    <svg
      className={onKey === undefined ? 'scene' : 'scene scene-pressable'}
      {...frameOf(scene)}
      role="img"
      aria-label={`${title}. ${description}`}
      onPointerMove={(event) => {
        pointAtKey(keyAt(event));
      }}
      onPointerLeave={() => {
        pointAtKey(undefined);
      }}
      onPointerUp={(event) => {
        const key = keyAt(event);
        if (key !== undefined) onKey?.(key);
      }}
    >
      <Marks scene={moving} />
      <Strip scene={scene} keyNumber={selected} className="scene-chosen" />
      <PointedStrip scene={scene} />
    </svg>
  );
  if (!isScrolled) return drawing;
  return (
    <div className="scene-with-axis">
      {drawing}
      <svg className="scene-axis" viewBox={`0 0 ${String(axisPx)} ${String(heightPx)}`} width={axisPx} height={heightPx} aria-hidden="true">
        <Run marks={axis} />
      </svg>
    </div>
  );
}

/** The marks of a drawing; drawn anew only for another drawing, and of that only the runs that differ. */
export const Marks = memo(function Marks({ scene: { marks } }: { readonly scene: Scene }) {
  const runs = useRuns(marks);
  return runs.map((run, index) => <Run key={`${String(index)} ${run[0]?.role ?? ''}`} marks={run} />);
});

/** Marks of one role that follow each other. */
const Run = memo(function Run({ marks }: { readonly marks: readonly Mark[] }) {
  return marks.map((mark, index) => <MarkView key={`${String(index)} ${mark.type}`} mark={mark} />);
});

/** Marks in runs of one role; a run that draws the same as before keeps its identity, so that a state that did not move is passed over. */
function useRuns(marks: readonly Mark[]): readonly (readonly Mark[])[] {
  const before = useRef<readonly (readonly Mark[])[]>([]);
  return useMemo(() => {
    const runs: Mark[][] = [];
    for (const mark of marks) {
      const last = runs.at(-1);
      if (last?.[0]?.role === mark.role) last.push(mark);
      else runs.push([mark]);
    }
    before.current = runs.map((run, index) => {
      const known = before.current[index];
      return known?.length === run.length && known.every((mark, at) => sameMarks(mark, run[at])) ? known : run;
    });
    return before.current;
  }, [marks]);
}

/** The strip of the key pointed at; alone in following the pointer, so that the marks need not. */
function PointedStrip({ scene }: { readonly scene: Scene }) {
  return <Strip scene={scene} keyNumber={usePointedKey()} className="scene-strip" />;
}

function Strip({ scene, keyNumber, className }: { readonly scene: Scene; readonly keyNumber: KeyNumber | undefined; readonly className: string }) {
  const column = keyNumber === undefined ? undefined : scene.columns.find(({ key }) => key === keyNumber);
  if (column === undefined) return null;
  return <rect className={className} x={column.xPx} y={0} width={column.widthPx} height={scene.heightPx} />;
}
