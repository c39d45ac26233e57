import { type ComparedStrike, type ToneState, toneChangeOf } from '#tone';
import { medianOf } from '#numerics';
import { useFigures, useSay } from '../../language/use-say.ts';
import type { StateTone } from './state-tone.ts';

/** Two states beside each other, as far as they may be: same microphone, shared partials, equal level. */
export function StatesCompared({ before, after }: { readonly before: StateTone; readonly after: StateTone }) {
  const say = useSay();
  const figure = useFigures();
  const states = [toneStateOf(before), toneStateOf(after)];
  const [was, is] = states;
  const changes = was === undefined || is === undefined ? undefined : toneChangeOf(was, is);
  const rows = changes?.ok === true ? changes.value : [];
  const bright = rows.flatMap(({ change }) => change ?? []);
  const decays = rows.flatMap(({ decayRatio }) => decayRatio ?? []);
  const apart = rows.filter(({ refusals }) => refusals.some(({ reason }) => reason === 'levels-apart')).length;
  return (
    <section className="panel" aria-labelledby="compare-title">
      <h2 id="compare-title">{say('tone.compare')}</h2>
      {changes?.ok !== true && <p>{say('tone.compare.refused', { why: say('tone.compare.moved') })}</p>}
      {bright.length > 0 && <p>{say('tone.compare.brightness', { change: figure(medianOf(bright), 2, undefined, true), count: bright.length })}</p>}
      {apart > 0 && <p>{say('tone.compare.levels', { count: apart })}</p>}
      {decays.length > 0 && <p>{say('tone.compare.decay', { ratio: figure(medianOf(decays), 2), count: decays.length })}</p>}
    </section>
  );
}

/** A state as it is compared; where more than one place or device was used, or none told, there is none. */
function toneStateOf({ byKey }: StateTone): ToneState | undefined {
  const notes = [...byKey];
  const [places, devices] = (['place', 'device'] as const).map((field) => new Set(notes.map(([, { worked }]) => worked.recording[field])));
  const [place] = places ?? [];
  if (place === undefined || place === '' || places?.size !== 1 || devices?.size !== 1) return undefined;
  return {
    microphonePlace: place, recordedWith: [...devices][0] ?? '',
    strikes: notes.flatMap(([key, { heard }]): readonly ComparedStrike[] => (heard.note === undefined || heard.levelDb === undefined || heard.heardKey !== key ? [] : [{ key, levelDb: heard.levelDb, partials: heard.note.partials, decayS: heard.decay?.edt10?.seconds }])),
  };
}
