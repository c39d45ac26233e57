import type { NaivePlan } from '#action';
import { type Block, type Cell, cell } from '#report';
import { sayMinutes } from '#workshop';
import type { ProofInput } from './input.ts';

/** What the work was planned to take, beside plans made without looking. Nothing where no job was taken from such a plan. */
export function leastWorkOf(input: ProofInput): readonly Block[] {
  const { say, leastWork } = input;
  if (leastWork === undefined) return [];
  const { minutes, planned, already, outOfReach, replaceAll, leadOnly } = leastWork;
  const column = (label: string, width: number, align: 'start' | 'end' = 'start') => ({ label, align, width });
  const naive = (name: string, plan: NaivePlan): readonly Cell[] => [cell(name), cell(sayMinutes(plan.minutes, input)), cell(String(plan.outside.length))];
  return [
    { type: 'heading', level: 1, text: say('proof.leastWork') },
    { type: 'paragraph', size: 'body', text: say('proof.leastWork.how', { count: say('leastWork.answer.count', { planned, already, out: outOfReach.length }) }) },
    {
      type: 'table', strips: 1, rowHeads: true, caption: say('proof.leastWork'),
      columns: [column(say('leastWork.compare.plan'), 4), column(say('leastWork.compare.time'), 3, 'end'), column(say('leastWork.compare.outside'), 3, 'end')],
      rows: [[cell(say('leastWork.compare.least'), 'strong'), cell(sayMinutes(minutes, input), 'strong'), cell(String(outOfReach.length), 'strong')], naive(say('leastWork.compare.all'), replaceAll), naive(say('leastWork.compare.lead'), leadOnly)],
    },
  ];
}
