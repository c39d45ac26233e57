import { type KeyStroke, type StrokeMeasures, drawingOf } from '#action';
import { frameOf, strokeScene } from '#plot';
import { useEffect, useMemo, useState } from 'react';
import { useFigures, useSay } from '../../language/use-say.ts';
import { SceneView } from '../../leaves/scene-view.tsx';
import { useWidth } from '../../leaves/use-width.ts';
import { StrokeCurves } from './stroke-curves.tsx';

interface StrokePlayerProps {
  readonly stroke: KeyStroke;
  readonly measures: StrokeMeasures;
  readonly dropMm: number | undefined;
}

/** Time a position is shown for while played: slow enough to follow with the eye. */
const FRAME_MS = 60;

const asksForLittleMotion = (): boolean => window.matchMedia('(prefers-reduced-motion: reduce)').matches;

/** The action at one place of its stroke, stepped by hand or played once when asked, with its curves under it. */
export function StrokePlayer({ stroke, measures, dropMm }: StrokePlayerProps) {
  const say = useSay();
  const figure = useFigures();
  const [at, setAt] = useState(0);
  const [isPlaying, setPlaying] = useState(false);
  const [width, ref] = useWidth(720);
  const last = stroke.positions.length - 1;
  useEffect(() => {
    if (!isPlaying) return undefined;
    const timer = setTimeout(() => { if (at >= last) setPlaying(false); else setAt(at + 1); }, FRAME_MS);
    return () => { clearTimeout(timer); };
  }, [isPlaying, at, last]);
  const scale = useMemo(() => ({ keyEdgeMm: measures.keyEdgeMm, stringHeightMm: measures.stringHeightMm }), [measures]);
  const frameMm = useMemo(() => frameOf(stroke.positions.map(({ pose }) => drawingOf(stroke.assembly, pose, scale)), measures.stringHeightMm), [stroke, scale, measures]);
  const position = stroke.positions[at];
  if (position === undefined) return null;
  const words = say('movement.at', { travel: figure(position.edgeTravelMm, 2, 'mm'), dip: figure(measures.dipMm, 1, 'mm'), below: figure(position.hammerToStringMm, 1, 'mm'), phase: say(`movement.phase.${position.phase}`) });
  const scene = strokeScene({ drawing: drawingOf(stroke.assembly, position.pose, scale), stringHeightMm: measures.stringHeightMm, frameMm, widthPx: Math.max(300, width), title: say('movement.drawing'), description: words, stringWord: say('movement.string') });
  const to = (place: number): void => { setPlaying(false); setAt(Math.min(last, Math.max(0, place))); };
  const letOff = stroke.positions.findIndex(({ phase }) => phase === 'free');
  return (
    <div className="stroke" ref={ref}>
      <SceneView scene={scene} />
      <p>{words} {position.rates === undefined || position.departurePct === undefined ? say('movement.at.none') : say('movement.at.ratio', { ratio: figure(position.rates.actionRatio, 2), departure: figure(position.departurePct, 1, 'pct', true) })}</p>
      <label className="stroke-travel">
        {say('movement.travel')}
        <input type="range" min={0} max={last} step={1} value={at} aria-valuetext={words} onChange={(event) => { to(Number(event.target.value)); }} />
      </label>
      <div className="row">
        <button type="button" className="button" onClick={() => { to(0); }}>{say('movement.start')}</button>
        <button type="button" className="button" disabled={at === 0} onClick={() => { to(at - 1); }}>{say('movement.back')}</button>
        <button type="button" className="button" disabled={at === last} onClick={() => { to(at + 1); }}>{say('movement.on')}</button>
        {letOff > 0 && <button type="button" className="button" onClick={() => { to(letOff); }}>{say('movement.toLetOff')}</button>}
        {asksForLittleMotion() ? <span className="soft small">{say('movement.still')}</span> : (
          <button type="button" className="button" onClick={() => { if (at >= last) setAt(0); setPlaying(!isPlaying); }}>{isPlaying ? say('movement.pause') : say('movement.play')}</button>
        )}
      </div>
      <StrokeCurves stroke={stroke} measures={measures} dropMm={dropMm} at={position} widthPx={Math.max(300, width)} />
    </div>
  );
}
