import { useFigures, useSay } from '../../language/use-say.ts';
import { sayObjective } from './say-objective.ts';
import type { RescaleState } from './use-rescale.ts';

/** How far the reckoning came, the best so far, and the button that stops it. */
export function RunState({ state: { isRunning, at, of, progress }, onStop }: { readonly state: RescaleState; readonly onStop: () => void }) {
  const say = useSay();
  const figure = useFigures();
  if (!isRunning) return null;
  const phase = say(`rescale.phase.${progress?.phase ?? 'figures'}`);
  const best = progress?.best;
  return (
    <div className="rescale-part" role="status">
      <p>{say('rescale.progress', { at: at + 1, of, phase })}</p>
      <progress className="rescale-progress" aria-label={phase} max={of} value={at + (progress === undefined ? 0 : shareDone(progress.phase, progress.share))} />
      <p className="soft small">{best === undefined ? say('rescale.soFar.none') : say('rescale.soFar', { total: figure(best.totalTensionN / 1000, 2), objective: sayObjective(best.objective, figure), bound: sayObjective(best.lowerBound, figure) })}</p>
      <div><button type="button" className="button" onClick={onStop}>{say('rescale.stop')}</button></div>
    </div>
  );
}

const PHASES = ['figures', 'optimum', 'load', 'proof'] as const;

/** Share of one problem that is done; the phases count alike, since none knows how long the others take. */
function shareDone(phase: (typeof PHASES)[number], share: number): number {
  return (PHASES.indexOf(phase) + share) / PHASES.length;
}
