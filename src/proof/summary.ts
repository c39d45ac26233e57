import { type TouchAnalysis, askedUpWeightOf } from '#action';
import { type KeyNumber, type TouchIntent, compassOf } from '#instrument';
import { medianOf } from '#numerics';
import { type Block, type Cell, asStated, bare, cell, noteRuns, opening } from '#report';
import { type ProofInput, type Proved, provedStates } from './input.ts';
import { grams, intentWords, statedGrams } from './words.ts';

/** `output`: the field of `evenness` it opens to. */
type Row = readonly [label: string, of: (proved: Proved) => Cell, output?: string];

/** As found and as finished against the tolerance, side by side. */
export function summaryOf(input: ProofInput): readonly Block[] {
  const { say, intent, instrument } = input;
  const proved = provedStates(input);
  if (proved.length === 0) return [{ type: 'heading', level: 1, text: say('proof.summary') }, { type: 'note', text: say('proof.nothingMeasured') }];
  const rows = [...countRows(input), ...(intent === null ? [] : judgedRows(input, intent)), ...spreadRows(input)];
  return [
    { type: 'heading', level: 1, text: say('proof.summary') },
    { type: 'paragraph', size: 'body', text: intent === null ? say('proof.notJudged') : say('proof.judged', { intent: intentWords(intent, compassOf(instrument), input) }) },
    {
      type: 'table', strips: 1, rowHeads: true, caption: say('proof.summary'),
      columns: [{ label: say('proof.summary.figure'), align: 'start', width: 3 }, ...proved.map(({ state }) => ({ label: say(`proof.state.${state}`), align: 'start', width: 3 } as const))],
      rows: rows.map(([label, of, output]) => [cell(label), ...proved.map((one) => (output === undefined || of(one).tone === 'quiet' ? of(one) : opening(of(one), { of: 'keys', state: one.state, output, what: label })))]),
    },
    ...(intent === null ? [] : [{ type: 'paragraph', size: 'small', text: say('proof.capability.note') } as const]),
    ...contradictionNote(proved, input),
  ];
}

function countRows(input: ProofInput): readonly Row[] {
  const { say, instrument } = input;
  const outcomeKeys = (touch: TouchAnalysis): readonly number[] => touch.keys.filter(({ verdict }) => verdict === 'outcome').map(({ key }) => key);
  return [
    [say('proof.summary.measured'), ({ touch: { summary } }) => cell(say('proof.countOf', { count: summary.measured, total: summary.keys }))],
    [say('proof.summary.outcomes'), ({ touch }) => counted(touch.summary.outcomes, outcomeKeys(touch))],
    ...(provedStates(input).some(({ touch }) => contradictoryKeys(touch).length > 0) ? [[say('proof.summary.upAboveDown'), ({ touch }: Proved) => counted(contradictoryKeys(touch).length, contradictoryKeys(touch))] as const] : []),
  ];
  function counted(count: number, keys: readonly number[]): Cell {
    return count === 0 ? cell('0') : cell(`${String(count)} (${noteRuns(keys, compassOf(instrument))})`, 'flag');
  }
}

/** Keys whose up weight was read above their down weight. */
function contradictoryKeys({ keys }: TouchAnalysis): readonly KeyNumber[] {
  return keys.filter(({ upAboveDown }) => upAboveDown).map(({ key }) => key);
}

/** What is left open where the two weights contradict each other, in words. */
function contradictionNote(proved: readonly Proved[], { say, instrument }: ProofInput): readonly Block[] {
  const told = proved.flatMap(({ state, touch }) => {
    const keys = contradictoryKeys(touch);
    return keys.length === 0 ? [] : [`${noteRuns(keys, compassOf(instrument))} (${say(`proof.state.${state}`)})`];
  });
  return told.length === 0 ? [] : [{ type: 'note', text: say('proof.upAboveDown', { keys: told.join('; ') }) }];
}

function judgedRows(input: ProofInput, intent: TouchIntent): readonly Row[] {
  const { say, instrument } = input;
  const askedG = askedUpWeightOf(intent);
  const lowKeys = (touch: TouchAnalysis): string => noteRuns(touch.keys.filter(({ upWeightLow }) => upWeightLow).map(({ key }) => key), compassOf(instrument));
  return [
    [say('proof.summary.inside'), ({ touch: { summary } }) => cell(say('proof.countOf', { count: summary.inside, total: summary.judged }), 'strong'), 'inside'],
    [say('proof.summary.guarded'), ({ touch: { summary } }) => (summary.insideGuarded === undefined
      ? cell(say('proof.uncertaintyUnknown'), 'quiet')
      : cell(say('proof.countOf', { count: summary.insideGuarded, total: summary.judged }))), 'insideGuarded'],
    ...(askedG === undefined ? [] : [[say('proof.summary.upWeightLow', { limit: statedGrams(askedG, input) }), ({ touch }: Proved) => (touch.summary.upWeightLow === 0 ? cell('0') : cell(`${String(touch.summary.upWeightLow)} (${lowKeys(touch)})`, 'flag'))] as const]),
    [say('proof.summary.capability'), ({ touch }) => capabilityOf(touch, intent, input), 'capability'],
  ];
}

/** The figure never stands alone: beside it the count, and what the reading noise alone would allow. */
function capabilityOf(touch: TouchAnalysis, intent: TouchIntent, input: ProofInput): Cell {
  const { say } = input;
  const { capability, inside, judged } = touch.summary;
  if (capability === undefined) return cell(say('proof.capability.none'), 'quiet');
  const figure = bare(capability, input, { decimals: 2 });
  const count = say('proof.countOf', { count: inside, total: judged });
  const noise = readingNoiseOf(touch, intent);
  if (noise === undefined || noise === 0) return cell(say('proof.capability.beside', { figure, count }));
  return cell(say('proof.capability.noise', { figure, count, noise: grams(noise, input, { decimals: 2 }), most: bare(intent.toleranceG / (3 * noise), input, { decimals: 2 }) }));
}

/** Median standard uncertainty of the quantity that is judged; undefined when none is known. */
export function readingNoiseOf({ keys }: TouchAnalysis, intent: TouchIntent | null): number | undefined {
  const known = keys.flatMap(({ figures, standardUncertaintyG }) => (intent?.even === 'balanceWeight' ? standardUncertaintyG : figures.downWeightG?.standardUncertaintyG) ?? []);
  return known.length === 0 ? undefined : medianOf(known);
}

function spreadRows(input: ProofInput): readonly Row[] {
  const { say, instrument } = input;
  const compass = compassOf(instrument);
  const none = cell(say('proof.notMeasured'), 'quiet');
  return [
    [say('proof.summary.median', { figure: say(input.intent?.even === 'balanceWeight' ? 'proof.figure.balance' : 'proof.figure.down') }), ({ touch: { summary } }) => (summary.medianG === undefined ? none : cell(grams(summary.medianG, input))), 'median'],
    [say('proof.summary.largestStep'), ({ touch: { summary } }) => (summary.largestStepG === undefined
      ? none
      : cell(`${grams(summary.largestStepG, input)}${summary.largestStepKeys === undefined ? '' : ` (${noteRuns(summary.largestStepKeys, compass)})`}`)), 'largestStep'],
    [say('proof.summary.outliers'), ({ touch: { summary } }) => cell(summary.outliers.length === 0 ? '0' : `${asStated(summary.outliers.length, input)} (${noteRuns(summary.outliers, compass)})`), 'outliers'],
  ];
}
