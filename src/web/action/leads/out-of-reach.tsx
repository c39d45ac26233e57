import { useFigures, useSay } from '../../language/use-say.ts';
import { Note } from '../../ui/note.tsx';
import { inGPerCm3 } from '../terms/densities.ts';
import type { LeadAnswer } from './leads-jobs.ts';

/** A change below this would be printed as nothing to two decimals. */
const SMALL = 0.01;

/** By how much a target is out of reach, and what would reach it, each by itself. */
export function OutOfReach({ answer: { missG, reachableG, wouldReach }, targetG }: { readonly answer: LeadAnswer; readonly targetG: number }) {
  const say = useSay();
  const figure = useFigures();
  const small = (change: number, unit: 'g' | '1'): string => figure(change, Math.abs(change) < SMALL ? 4 : 2, unit, true);
  const [least, most] = reachableG ?? [0, 0];
  const ways = wouldReach === undefined ? [] : [
    ...(wouldReach.maxLeads === undefined ? [] : [say('leads.would.maxLeads', { count: wouldReach.maxLeads })]),
    ...(wouldReach.diameterMm === undefined ? [] : [say('leads.would.diameterMm', { size: figure(wouldReach.diameterMm, 1, 'mm') })]),
    ...(wouldReach.densityGPerMm3 === undefined ? [] : [say('leads.would.densityGPerMm3', { density: figure(inGPerCm3(wouldReach.densityGPerMm3), 2, 'gcm3') })]),
    say('leads.would.targetChangeG', { change: small(wouldReach.targetChangeG, 'g') }),
    ...(wouldReach.hammerChangeG === undefined ? [] : [say('leads.would.hammerChangeG', { change: small(wouldReach.hammerChangeG, 'g') })]),
    ...(wouldReach.ratioChange === undefined ? [] : [say('leads.would.ratioChange', { change: small(wouldReach.ratioChange, '1') })]),
  ];
  return (
    <Note tone="warn">
      <p><strong>{say('leads.key.miss', { miss: figure(missG ?? 0, 2, 'g'), least: figure(least, 1, 'g'), most: figure(most, 1, 'g'), target: figure(targetG, 1, 'g') })}</strong></p>
      <p>{say('leads.key.would')}</p>
      <ul className="assumed">{ways.map((way) => <li key={way}>{way}</li>)}</ul>
    </Note>
  );
}
