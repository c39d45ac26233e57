import { useFigures, useSay } from '../../language/use-say.ts';
import { Note } from '../../ui/note.tsx';
import type { LeadAnswer } from './leads-jobs.ts';

/** By how much a target is out of reach, and what would reach it, each by itself. */
export function OutOfReach({ answer: { missG, reachableG, wouldReach }, targetG }: { readonly answer: LeadAnswer; readonly targetG: number }) {
  const say = useSay();
  const figure = useFigures();
  const [least, most] = reachableG ?? [0, 0];
  const ways = wouldReach === undefined ? [] : [
    ...(wouldReach.maxLeads === undefined ? [] : [say('leads.would.maxLeads', { count: wouldReach.maxLeads })]),
    ...(wouldReach.diameterMm === undefined ? [] : [say('leads.would.diameterMm', { size: figure(wouldReach.diameterMm, 1, 'mm') })]),
    ...(wouldReach.densityGPerMm3 === undefined ? [] : [say('leads.would.densityGPerMm3', { density: `${figure(wouldReach.densityGPerMm3, 4)} g/mm³` })]),
    say('leads.would.targetChangeG', { change: figure(wouldReach.targetChangeG, 2, 'g', true) }),
    ...(wouldReach.hammerChangeG === undefined ? [] : [say('leads.would.hammerChangeG', { change: figure(wouldReach.hammerChangeG, 2, 'g', true) })]),
    ...(wouldReach.ratioChange === undefined ? [] : [say('leads.would.ratioChange', { change: figure(wouldReach.ratioChange, 2, '1', true) })]),
  ];
  return (
    <Note tone="warn">
      <p><strong>{say('leads.key.miss', { miss: figure(missG ?? 0, 2, 'g'), least: figure(least, 1, 'g'), most: figure(most, 1, 'g'), target: figure(targetG, 1, 'g') })}</strong></p>
      <p>{say('leads.key.would')}</p>
      <ul className="assumed">{ways.map((way) => <li key={way}>{way}</li>)}</ul>
    </Note>
  );
}
