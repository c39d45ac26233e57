import { observedParts } from '#instrument';
import type { SurveyPoint } from '#workshop';
import { useEffect, useRef } from 'react';
import { useSay } from '../../language/use-say.ts';

interface TemplatePointsProps {
  readonly points: readonly SurveyPoint[];
  readonly onChange: (turn: (points: readonly SurveyPoint[]) => readonly SurveyPoint[]) => void;
}

/** Points of a survey to be reworded, moved, left out and added; the focus goes along with what was moved. */
export function TemplatePoints({ points, onChange }: TemplatePointsProps) {
  const say = useSay();
  const list = useRef<HTMLDivElement>(null);
  const follow = useRef<readonly string[]>([]);
  useEffect(() => {
    const next = follow.current.map((place) => list.current?.querySelector<HTMLElement>(place)).find((found) => found != null);
    next?.focus();
    follow.current = [];
  }, [points]);
  const at = (index: number, what: string): string => `[data-point="${String(index)}"] [data-act="${what}"]:not(:disabled)`;
  const change = (index: number, part: Partial<SurveyPoint>): void => { onChange((now) => now.map((point, place) => (place === index ? { ...point, ...part } : point))); };
  const move = (index: number, to: number): void => {
    follow.current = to < index ? [at(to, 'up'), at(to, 'down')] : [at(to, 'down'), at(to, 'up')];
    onChange((now) => now.map((point, place) => (place === to ? now[index] : place === index ? now[to] : point) ?? point));
  };
  const remove = (index: number): void => {
    follow.current = [at(index, 'remove'), at(index - 1, 'remove'), '.template-add'];
    onChange((now) => now.filter((_, place) => place !== index));
  };
  const add = (): void => {
    follow.current = [at(points.length, 'part')];
    onChange((now) => [...now, { part: 'case', ask: '' }]);
  };
  return (
    <div className="template" ref={list}>
      <ol className="template-points">
        {points.map(({ part, ask }, index) => {
          const number = index + 1;
          return (
            <li key={index} data-point={index}>
              <select className="select" data-act="part" aria-label={say('survey.template.part', { number })} value={part} onChange={(event) => { change(index, { part: event.target.value as SurveyPoint['part'] }); }}>
                {observedParts.map((one) => <option key={one} value={one}>{say(`observation.part.${one}`)}</option>)}
              </select>
              <textarea className="input" rows={2} maxLength={400} aria-label={say('survey.template.ask', { number })} value={ask} onChange={(event) => { change(index, { ask: event.target.value }); }} />
              <span className="row">
                <button type="button" className="button" data-act="up" disabled={index === 0} aria-label={say('survey.template.up', { number })} onClick={() => { move(index, index - 1); }}><span aria-hidden="true">↑</span></button>
                <button type="button" className="button" data-act="down" disabled={number === points.length} aria-label={say('survey.template.down', { number })} onClick={() => { move(index, index + 1); }}><span aria-hidden="true">↓</span></button>
                <button type="button" className="button button-quiet" data-act="remove" aria-label={say('survey.template.remove', { number })} onClick={() => { remove(index); }}><span aria-hidden="true">✕</span></button>
              </span>
            </li>
          );
        })}
      </ol>
      <button type="button" className="button template-add" disabled={points.length >= MOST_POINTS} onClick={add}>{say('survey.template.add')}</button>
    </div>
  );
}

/** As many as a template may hold. */
const MOST_POINTS = 60;
