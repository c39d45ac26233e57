import { surveyedOf, templateInUse, usualSurvey } from '#workshop';
import { useMemo, useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useReadingBook } from '../../api/use-readings.ts';
import { useObserving } from '../../belly/observations/use-observing.ts';
import { useLocale, useSay } from '../../language/use-say.ts';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { useShopBook } from '../../shop/shop-queries.ts';
import { useWorkWriting } from '../use-work-writing.ts';
import { SurveyPointItem } from './survey-point.tsx';
import { TemplateDialog } from './template-dialog.tsx';

/** A walk around the instrument, part by part: what was seen and read there as found, how serious it is, and the job it leads to. */
export function SurveyView() {
  const say = useSay();
  const locale = useLocale();
  const { id, instrument, observations, cycle } = usePiano();
  const { book } = useShopBook({ kinds: ['template'] });
  const { found } = useReadingBook();
  const writing = useWorkWriting();
  const observing = useObserving();
  const [isEditing, setEditing] = useState(false);
  const template = book === undefined ? undefined : templateInUse(instrument, book.cards);
  const points = useMemo(() => template?.points ?? usualSurvey(instrument.kind, say), [template, instrument.kind, say]);
  const surveyed = surveyedOf(points, observations);
  const parts = new Set(points.map(({ part }) => part));
  const looked = new Set(surveyed.filter(({ part, seen }) => seen.length > 0 && parts.has(part)).map(({ part }) => part)).size;
  const readings = useMemo(() => [...found.values()], [found]);
  const sheet = (ext: 'pdf' | 'csv'): string => `/api/pianos/${encodeURIComponent(id)}/sheet.${ext}?sheet=survey&cycle=${String(cycle)}&locale=${locale}`;
  return (
    <section className="page survey" aria-labelledby="survey-title">
      <div className="row row-between">
        <h2 id="survey-title">{say('survey.title')}</h2>
        <p role="status">{say('survey.looked', { looked, all: parts.size })}</p>
      </div>
      <p className="soft survey-ask">{say('survey.about')}</p>
      <div className="row no-print">
        <a className="button" href={sheet('pdf')} target="_blank" rel="noreferrer">{say('sheet.survey.pdf')}</a>
        <a className="button" href={sheet('csv')} download>{say('sheet.survey.csv')}</a>
        {book !== undefined && <button type="button" className="button" onClick={() => { setEditing(true); }}>{say('survey.template.edit')}</button>}
        <span className="soft small">{say(template === undefined ? 'survey.template.usual' : 'survey.template.own', { kind: instrument.kind })}</span>
      </div>
      {writing.problem !== null && <ProblemNote problem={writing.problem} />}
      {observing.error !== null && <ProblemNote problem={observing.error} />}
      <ul className="survey-points">
        {surveyed.map((point, index) => (
          <SurveyPointItem key={`${point.part} ${String(index)}`} point={point} readings={readings} work={writing.work} onJob={(draft) => { writing.add([draft]); }} observing={observing} />
        ))}
      </ul>
      {isEditing && book !== undefined && <TemplateDialog template={template} points={points} onClose={() => { setEditing(false); }} />}
    </section>
  );
}
