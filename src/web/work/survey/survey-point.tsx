import { type Observation, type Reading, quantityOf } from '#instrument';
import { type SurveyedPoint, type WorkItem, type WorkItemDraft, figuresOfPart } from '#workshop';
import { useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { ObservationForm } from '../../belly/observations/observation-form.tsx';
import { SeenItem } from '../../belly/observations/seen-item.tsx';
import type { useObserving } from '../../belly/observations/use-observing.ts';
import { useFigures, useSay } from '../../language/use-say.ts';
import { toast } from '../../toast/toasts.ts';

interface SurveyPointProps {
  readonly point: SurveyedPoint;
  /** Standing readings as found. */
  readonly readings: readonly Reading[];
  readonly work: readonly WorkItem[];
  readonly onJob: (draft: WorkItemDraft) => void;
  readonly observing: ReturnType<typeof useObserving>;
}

/** One point of the survey: what to look for, what was read and seen there, and what each finding leads to. */
export function SurveyPointItem({ point: { part, ask, seen }, readings, work, onJob, observing }: SurveyPointProps) {
  const say = useSay();
  const figure = useFigures();
  const { cycle, isCurrent } = usePiano();
  const [open, setOpen] = useState<string>();
  const name = say(`observation.part.${part}`);
  const figures = figuresOfPart(part, readings);
  const close = (): void => { setOpen(undefined); };
  const jobOf = (one: Observation): WorkItem | undefined => work.find(({ observation, status }) => observation === one.id && status !== 'dropped');
  return (
    <li className="survey-point">
      <div className="row row-between">
        <h3>{name}</h3>
        {seen.length > 0 ? <span className="survey-looked"><span aria-hidden="true">✓ </span>{say('survey.seen')}</span> : <span className="soft">{say('survey.unseen')}</span>}
      </div>
      {ask !== '' && <p className="survey-ask">{ask}</p>}
      {figures.length > 0 && (
        <p className="soft">
          {figures.map(({ quantity, count, least, most }) => say('survey.read', {
            what: say(`quantity.${quantity}.name`), count, least: figure(least, quantityOf(quantity).decimals, quantityOf(quantity).unit), most: figure(most, quantityOf(quantity).decimals, quantityOf(quantity).unit),
          })).join(' · ')}
        </p>
      )}
      <ul>
        {seen.map((one) => (open === one.id ? <li key={one.id}><ObservationForm seen={one} state="found" part={part} onClose={close} /></li> : (
          <SeenItem
            key={one.id} seen={one}
            {...(isCurrent ? { onCorrect: () => { setOpen(one.id); }, onWithdraw: () => { observing.mutate({ kind: 'withdraw', id: one.id, onKept: () => { toast(say('belly.seen.withdrawn')); } }); } } : {})}
          >
            <Leads job={jobOf(one)} seen={one} onJob={() => { onJob({ cycle, key: one.fromKey, remedy: 'other', observation: one.id, stage: 5, remark: jobWords(one, name, say(`observation.fault.${one.fault}`)) }); }} />
          </SeenItem>
        )))}
      </ul>
      {open === 'new' && <ObservationForm state="found" part={part} onClose={close} />}
      {isCurrent && open === undefined && (
        <div className="row no-print">
          <button type="button" className="button" aria-label={`${say('survey.note')}: ${name}`} onClick={() => { setOpen('new'); }}>{say('survey.note')}</button>
          {seen.length === 0 && <button type="button" className="button" disabled={observing.isPending} aria-label={`${say('survey.fine')}: ${name}`} onClick={() => { observing.mutate({ kind: 'add', draft: { cycle, state: 'found', part, fault: 'sound' } }); }}>{say('survey.fine')}</button>}
        </div>
      )}
    </li>
  );
}

/** What a finding leads to: the job that stands, or the way to make one. What is in good order leads to nothing. */
function Leads({ job, seen, onJob }: { readonly job: WorkItem | undefined; readonly seen: Observation; readonly onJob: () => void }) {
  const say = useSay();
  if (seen.fault === 'sound') return null;
  if (job !== undefined) return <span>{say('survey.job', { status: job.status })}</span>;
  return <button type="button" className="button" onClick={onJob}>{say('survey.makeJob')}</button>;
}

function jobWords({ remark }: Observation, part: string, fault: string): string {
  return `${part}: ${fault}${remark === '' ? '' : `. ${remark}`}`.slice(0, 2000);
}
