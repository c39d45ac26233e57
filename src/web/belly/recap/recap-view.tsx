import type { KeyNumber } from '#instrument';
import { recapPlot } from '#plot';
import { explainIssue } from '#text';
import { useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useEnter, useReadings } from '../../api/use-readings.ts';
import { useDraft } from '../../kept/draft.ts';
import { sayRuns } from '../../keys/key-runs.ts';
import { useFigures, useLocale, useSay } from '../../language/use-say.ts';
import { SceneView } from '../../leaves/scene-view.tsx';
import { useWidth } from '../../leaves/use-width.ts';
import { wholeNumber } from '../../readings/grid/grid-block.ts';
import { toast } from '../../toast/toasts.ts';
import { Field } from '../../ui/field.tsx';
import { Note } from '../../ui/note.tsx';
import type { StateBelly } from '../state-belly.ts';
import { PushTestForm } from './push-test-form.tsx';
import { type RecapDraft, targetsOf } from './recap-draft.ts';
import { recapEntriesOf } from './recap-entries.ts';
import { RecapTable } from './recap-table.tsx';
import { type Recap, useRecap } from './use-recap.ts';

interface RecapViewProps {
  readonly found: StateBelly | undefined;
  readonly onKey: (key: KeyNumber) => void;
}

/** Recapping planned: the angle wanted section by section, bridge heights under load and slack, and the board they rest on. */
export function RecapView({ found, onKey }: RecapViewProps) {
  const say = useSay();
  const { isCurrent } = usePiano();
  return (
    <>
      {found === undefined ? <p className="soft">{say('belly.recap.nothing')}</p> : <Planning found={found} onKey={onKey} />}
      {isCurrent && <PushTestForm />}
    </>
  );
}

function Planning({ found, onKey }: { readonly found: StateBelly; readonly onKey: (key: KeyNumber) => void }) {
  const say = useSay();
  const locale = useLocale();
  const { id, cycle, instrument, compass, isCurrent, scale } = usePiano();
  const { sections } = instrument;
  const usual = scale?.bearingTargetDeg == null ? '' : wholeNumber(scale.bearingTargetDeg, locale);
  const draft = useDraft<RecapDraft>(`recap.${id}.${String(cycle)}`, () => ({ targets: Array.from({ length: Math.max(1, sections.length) }, () => usual) }));
  const targets = useMemo(() => targetsOf(draft.typed, sections, locale), [draft.typed, sections, locale]);
  const recap = useRecap(found, targets);
  const planned = useReadings('planned');
  const enter = useEnter();
  const keep = (): void => {
    const entries = recapEntriesOf(recap, planned.values(), locale);
    enter({ state: 'planned', sessionId: null }, entries);
    toast(say('belly.recap.kept', { count: recap.notes.length }));
  };
  const names = sections.length === 0 ? [say('belly.loads.whole')] : sections.map(({ name }) => name);
  return (
    <section className="panel" aria-labelledby="recap-title">
      <h2 id="recap-title">{say('belly.recap.title')}</h2>
      <p>{say('belly.recap.about')}</p>
      <div className="fields">
        {names.map((name, index) => {
          const issue = targets.issues[index];
          return (
            <Field
              key={`${name} ${String(index)}`} label={`${say('belly.recap.target', { section: name })} (°)`} inputMode="decimal" value={draft.typed.targets[index] ?? ''}
              error={issue === undefined ? undefined : explainIssue(say, issue, locale)}
              onChange={(typed) => { draft.change((now) => ({ targets: names.map((_, at) => (at === index ? typed : (now.targets[at] ?? ''))) })); }}
            />
          );
        })}
      </div>
      {recap.withoutPull.length > 0 && <Note tone="warn"><p>{say('belly.recap.withoutPull', { count: recap.withoutPull.length, notes: sayRuns(recap.withoutPull, compass) })}</p></Note>}
      {recap.notes.length === 0 ? <p className="soft">{say('belly.recap.none')}</p> : (
        <>
          <Settling recap={recap} />
          <ChangePlot recap={recap} onKey={onKey} />
          <RecapTable recap={recap} onKey={onKey} />
          <p className="soft small">{say('belly.recap.doubt')} {recap.notes.some(({ isEstimated }) => isEstimated) && say('belly.recap.estimated')}</p>
          {isCurrent && (
            <div className="row">
              <button type="button" className="button button-main" onClick={keep}>{say('belly.recap.keep', { count: recap.notes.length })}</button>
              <span className="soft small">{say(recap.spring === undefined ? 'belly.recap.keepsLoaded' : 'belly.recap.keepsBoth')}</span>
            </div>
          )}
        </>
      )}
    </section>
  );
}

/** What the board carries now and will, and how far it goes down under it; or that its stiffness is not stated. */
function Settling({ recap: { plan, notes } }: { readonly recap: Recap }) {
  const say = useSay();
  const figure = useFigures();
  const { compass } = usePiano();
  const of = compass.lastMidi - compass.firstMidi + 1;
  const { forceNowN, forceThenN, forceNowUncertaintyN, forceThenUncertaintyN, settling } = plan;
  const unsure = (force: number, standard: number | undefined): string => (standard === undefined ? `${figure(force, 0, 'N')} (${say('belly.doubt.unknown')})` : `${figure(force, 0)} ± ${figure(2 * standard, 0, 'N')}`);
  return (
    <>
      <p>{say('belly.recap.force', { now: unsure(forceNowN, forceNowUncertaintyN), then: unsure(forceThenN, forceThenUncertaintyN), counted: notes.length, of })}</p>
      {settling === undefined
        ? <Note><p>{say('belly.recap.noStiffness')}</p></Note>
        : <p>{say('belly.recap.settling', { now: figure(settling.nowMm, 2, 'mm'), then: figure(settling.thenMm, 2, 'mm') })} <span className="soft small">{say('belly.recap.spring')}</span></p>}
      {settling !== undefined && notes.length < of && <Note tone="warn"><p>{say('belly.recap.partly', { counted: notes.length, of })}</p></Note>}
    </>
  );
}

function ChangePlot({ recap: { notes, plan, spring }, onKey }: { readonly recap: Recap; readonly onKey: (key: KeyNumber) => void }) {
  const say = useSay();
  const locale = useLocale();
  const { compass } = usePiano();
  const [widthPx, ref] = useWidth(900);
  const scene = useMemo(() => {
    const name = say(spring === undefined ? 'belly.recap.plotLoaded' : 'belly.recap.plotSlack');
    const rows = notes.flatMap(({ key }, index) => (plan.rows[index] === undefined ? [] : [{ key, row: plan.rows[index] }]));
    return recapPlot({ rows, label: say('state.planned'), compass, locale, widthPx: Math.max(widthPx, 720), heightPx: 210, title: name, description: say('belly.recap.plotDescribed'), yLabel: name });
  }, [compass, locale, notes, plan, say, spring, widthPx]);
  // eslint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- what scrolls must be reachable by keyboard
  return <div className="keys-scroll" ref={ref} tabIndex={0} role="region" aria-label={say('belly.recap.plotRegion')}><SceneView scene={scene} onKey={onKey} /></div>;
}
