import type { KeyTouch, Measured } from '#action';
import { compassOf, noteNameOf } from '#instrument';
import { type Block, type Cell, bare, cell, opening } from '#report';
import { type ProofInput, type Proved, provedStates } from './input.ts';

const NO_FIGURE = '–';

/** One table of all keys for each state that was measured. */
export function tablesOf(input: ProofInput): readonly Block[] {
  return provedStates(input).flatMap((proved) => tableOf(proved, input));
}

function tableOf({ state, touch }: Proved, input: ProofInput): readonly Block[] {
  const { say } = input;
  const title = say('proof.table', { state: say(`proof.state.${state}`) });
  const head = (name: 'key' | 'note' | 'down' | 'up' | 'balance' | 'friction' | 'verdict', align: 'start' | 'end', width: number) => ({ label: say(`proof.column.${name}`), align, width });
  return [
    { type: 'pageBreak' },
    { type: 'heading', level: 1, text: title },
    { type: 'paragraph', size: 'small', text: say(input.intent === null ? 'proof.table.howPlain' : 'proof.table.how') },
    {
      type: 'table', strips: 2, rowHeads: true, caption: title,
      columns: [head('key', 'end', 1.9), head('note', 'start', 2.2), head('down', 'end', 2.9), head('up', 'end', 3.1), head('balance', 'end', 3.2), head('friction', 'end', 3.2), head('verdict', 'start', 7.2)],
      rows: touch.keys.map((key) => rowOf(key, state, input)),
    },
  ];
}

function rowOf(key: KeyTouch, state: Proved['state'], input: ProofInput): readonly Cell[] {
  const { figures, balanceWeightG, frictionG } = key;
  const number = (value: number | undefined): Cell => (value === undefined ? cell(NO_FIGURE, 'quiet') : cell(bare(value, input)));
  const derived = (value: number | undefined, output: string, what: string): Cell => (value === undefined ? number(value) : opening(number(value), { of: 'touch', state, output, what, key: key.key }));
  const measured = (figure: Measured | undefined): Cell => number(figure?.value);
  const up = measured(figures.upWeightG);
  return [
    cell(String(key.key)),
    cell(noteNameOf(compassOf(input.instrument), key.key), 'strong'),
    measured(figures.downWeightG),
    key.upWeightLow && input.intent !== null ? cell(`↓ ${up.text}`, 'flag') : up,
    derived(balanceWeightG, 'balanceWeightG', input.say('touch.balanceWeight')),
    derived(frictionG, 'frictionG', input.say('touch.friction')),
    verdictOf(key, input),
  ];
}

function verdictOf({ verdict, deviationG, doubtful, figures: { outcome } }: KeyTouch, input: ProofInput): Cell {
  const { say } = input;
  if (verdict === 'outcome') return cell(outcome === undefined ? say('proof.verdict.outcome') : say(`proof.outcome.${outcome}`), 'flag');
  const words = say(`proof.verdict.${verdict}`);
  const by = verdict === 'outside' && deviationG !== undefined ? ` ${bare(deviationG, input, { signed: true })}` : '';
  return cell(`${words}${by}${doubtful ? ' ~' : ''}`, verdict === 'outside' ? 'flag' : verdict === 'inside' ? 'plain' : 'quiet');
}
