import { type TouchSummary, askedUpWeightOf } from '#action';
import { compassOf, keyCountOf, noteNameOf } from '#instrument';
import { type KeySign, keyboardScene, signsOf } from '#plot';
import { type Block, type HeadlineBlock, type KeyValuesBlock, asStated, cell, dayOf, statedOr } from '#report';
import { type ProofInput, type Proved, provedParts, provedStates } from './input.ts';
import { leftOutOf } from './left-out.ts';
import { fewRemarksOf } from './remarks.ts';
import { intentWords, statedGrams } from './words.ts';

/** Width every drawing of a proof is made at; the paper scales it. */
export const DRAWING_WIDTH_PX = 690;

/** First page: the instrument, the keyboard as found and as finished, one figure for each state that was measured, and a few remarks. */
export function coverOf(input: ProofInput): readonly Block[] {
  const { say, instrument } = input;
  const proved = provedStates(input);
  return [
    ...(instrument.demo ? [{ type: 'caution', text: say('proof.demo.note') } as const] : []),
    ...(proved.length === 0 ? [] : [headlineOf(proved, input)]),
    ...proved.map((one) => keyboardOf(one, input)),
    { type: 'heading', level: 1, text: say('proof.instrument') },
    instrumentFacts(input),
    ...(proved.length === 0 ? leftOutOf(input) : []),
    ...fewRemarksOf(input),
    ...(instrument.kind === 'upright' && proved.length > 0 ? [{ type: 'note', text: say('proof.upright') } as const] : []),
  ];
}

function headlineOf(proved: readonly Proved[], input: ProofInput): HeadlineBlock {
  const { say, intent } = input;
  return {
    type: 'headline',
    items: proved.map(({ state, touch: { summary } }) => ({
      state,
      label: say(`proof.state.${state}`),
      value: say('proof.countOf', intent === null ? { count: summary.measured, total: summary.keys } : { count: summary.inside, total: summary.judged }),
      detail: detailOf(summary, input),
      ...(intent === null ? {} : { opens: { of: 'keys', state, output: 'inside', what: say('proof.summary.inside') } as const }),
    })),
  };
}

function detailOf({ upWeightLow }: TouchSummary, input: ProofInput): string {
  const { say, intent, instrument } = input;
  if (intent === null) return say('proof.headline.measured');
  const inside = say('proof.headline.inside', { intent: intentWords(intent, compassOf(instrument), input) });
  return askedUpWeightOf(intent) === undefined ? inside : `${inside}; ${say('proof.headline.slow', { count: upWeightLow })}`;
}

function instrumentFacts(input: ProofInput): KeyValuesBlock {
  const { say, instrument, intent, head } = input;
  const compass = compassOf(instrument);
  const askedG = askedUpWeightOf(intent);
  const number = (value: number | null, unit: string): string | null => (value === null ? null : `${asStated(value, input)}${unit}`);
  const first = noteNameOf(compass, 1);
  const last = noteNameOf(compass, keyCountOf(compass));
  return {
    type: 'keyValues',
    rows: [
      { label: say('proof.fact.name'), value: statedOr(instrument.name, input) },
      { label: say('proof.fact.kind'), value: statedOr(instrument.kind === null ? null : say(`proof.kind.${instrument.kind}`), input) },
      { label: say('proof.fact.maker'), value: statedOr(instrument.maker, input) },
      { label: say('proof.fact.serial'), value: statedOr(instrument.serial, input) },
      { label: say('proof.fact.year'), value: statedOr(number(instrument.year, ''), input) },
      { label: say('proof.fact.length'), value: statedOr(number(instrument.lengthMm, '\u00A0mm'), input) },
      { label: say('proof.fact.compass'), value: cell(say(instrument.compassAssumed === true ? 'proof.compassAssumed' : 'proof.compass', { keys: keyCountOf(compass), first, last })) },
      ...(head === null ? [] : [{ label: say('proof.fact.cycle'), value: cell(String(input.cycle)) }]),
      ...(!provedParts(input).touch && intent === null ? [] : [{ label: say('proof.fact.asked'), value: intent === null ? cell(say('proof.intent.none'), 'quiet') : cell(intentWords(intent, compass, input)) },
      { label: say('proof.fact.upWeightMin'), value: statedOr(askedG === undefined ? null : statedGrams(askedG, input), input) }]),
      { label: say('proof.fact.printed'), value: cell(dayOf(input.printedAt, input)) },
      { label: say('proof.fact.record'), value: head === null ? cell(say('proof.record.none'), 'quiet') : cell(say('proof.record.head', { seq: head.seq, hash: head.hash })) },
    ],
  };
}

function keyboardOf({ state, touch }: Proved, { say, instrument }: ProofInput): Block {
  const signs = signsOf(touch.keys);
  const counts = [...signs.values()].reduce<Partial<Record<KeySign, number>>>((sum, sign) => ({ ...sum, [sign]: (sum[sign] ?? 0) + 1 }), {});
  const told = (['inside', 'doubtful', 'heavy', 'light', 'slow', 'work', 'outcome', 'unmeasured'] as const).flatMap((sign) => {
    const count = counts[sign];
    return count === undefined ? [] : [say(`proof.sign.${sign}`, { count })];
  });
  const title = say('proof.keyboard', { state: say(`proof.state.${state}`) });
  const alt = told.length === 0 ? `${title}.` : `${title}: ${told.join('; ')}.`;
  return {
    type: 'figure', alt,
    caption: told.length === 0 ? title : `${title}: ${told.join(' · ')}`,
    scene: keyboardScene({ compass: compassOf(instrument), signs, title, description: alt, widthPx: DRAWING_WIDTH_PX }),
  };
}
