import type { NaivePlan } from '#action';
import { type Block, type Cell, cell } from '#report';
import { sayMinutes } from '#workshop';
import type { ProofInput } from './input.ts';

/** What the work was planned to take, beside plans made without looking. Nothing where no job was taken from such a plan. */
export function leastWorkOf(input: ProofInput): readonly Block[] {
  const { say, leastWork } = input;
  if (leastWork === undefined) return [];
  const { minutes, planned, already, outOfReach, replaceAll, leadOnly } = leastWork;
  const told = (time: number, outside: number): Cell => cell(say('sheet.leastWork.naive', { time: sayMinutes(time, input), outside }));
  const naive = (label: string, plan: NaivePlan) => ({ label, value: told(plan.minutes, plan.outside.length) });
  return [
    { type: 'heading', level: 1, text: say('proof.leastWork') },
    { type: 'paragraph', size: 'body', text: say('proof.leastWork.how', { count: say('leastWork.answer.count', { planned, already, out: outOfReach.length }) }) },
    { type: 'keyValues', rows: [{ label: say('leastWork.compare.least'), value: told(minutes, outOfReach.length) }, naive(say('leastWork.compare.all'), replaceAll), naive(say('leastWork.compare.lead'), leadOnly)] },
  ];
}
