import { useFigures, useSay } from '../../language/use-say.ts';
import type { Level } from './level.ts';

const LOWEST_DB = -80;

/** How loud it is now, as a bar and as a figure; what is cut off is said in words at once. */
export function LevelMeter({ level, wasClipped }: { readonly level: Level | undefined; readonly wasClipped: boolean }) {
  const say = useSay();
  const figure = useFigures();
  const peak = level?.peakDb ?? LOWEST_DB;
  return (
    <div className="level-meter">
      <div className="row">
        <meter min={LOWEST_DB} max={0} high={-3} value={Math.max(LOWEST_DB, peak)} aria-label={say('tone.live.level')} />
        <span className="level-figure">{say('tone.decibels', { value: figure(peak, 0) })}</span>
      </div>
      <p role="alert" className="field-error">{(wasClipped || level?.isClipped === true) && <><span aria-hidden="true">▲ </span>{say('tone.live.clipped')}</>}</p>
    </div>
  );
}
