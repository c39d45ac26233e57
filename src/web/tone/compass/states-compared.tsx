import { medianOf } from '#numerics';
import { toneChangeOf } from '#tone';
import { type StateTone, comparedStateOf } from '#workshop';
import { OpenFigure } from '../../figure/figure.tsx';
import { useFigures, useSay } from '../../language/use-say.ts';
import { compareStory } from './compass-stories.ts';

/** Two states beside each other, as far as they may be: same microphone, shared partials, equal level. */
export function StatesCompared({ before, after }: { readonly before: StateTone; readonly after: StateTone }) {
  const say = useSay();
  const figure = useFigures();
  const states = [comparedStateOf(before), comparedStateOf(after)];
  const [was, is] = states;
  const changes = was === undefined || is === undefined ? undefined : toneChangeOf(was, is);
  const rows = changes?.ok === true ? changes.value : [];
  const bright = rows.flatMap(({ change }) => change ?? []);
  const decays = rows.flatMap(({ decayRatio }) => decayRatio ?? []);
  const apart = rows.filter(({ refusals }) => refusals.some(({ reason }) => reason === 'levels-apart')).length;
  const opened = (output: 'brightnessChange' | 'decayRatio', words: string) => (was === undefined || is === undefined ? words : <OpenFigure story={() => compareStory(say('tone.compare'), output, [was, is], say('tone.key.unknown'))}>{words}</OpenFigure>);
  return (
    <section className="panel" aria-labelledby="compare-title">
      <h2 id="compare-title">{say('tone.compare')}</h2>
      {changes?.ok !== true && <p>{say('tone.compare.refused', { why: say('tone.compare.moved') })}</p>}
      {bright.length > 0 && <p>{opened('brightnessChange', say('tone.compare.brightness', { change: figure(medianOf(bright), 2, undefined, true), count: bright.length }))}</p>}
      {apart > 0 && <p>{say('tone.compare.levels', { count: apart })}</p>}
      {decays.length > 0 && <p>{opened('decayRatio', say('tone.compare.decay', { ratio: figure(medianOf(decays), 2), count: decays.length }))}</p>}
    </section>
  );
}
