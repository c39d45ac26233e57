import { type Block, type Cell, type KeyValuesBlock, cell } from '#report';
import type { TouchAnalysis } from '#action';
import { type ProofInput, type ProofSession, type Proved, provedStates } from './input.ts';
import { COVERAGE } from './plots.ts';
import { readingNoiseOf } from './summary.ts';
import { asStated, dayOf, grams, statedGrams, statedOr } from './words.ts';

/** How each state was weighed, with what, and how far the figures can be trusted. */
export function methodOf(input: ProofInput): readonly Block[] {
  const { say } = input;
  return [
    { type: 'pageBreak' },
    { type: 'heading', level: 1, text: say('proof.method') },
    { type: 'paragraph', size: 'body', text: say('proof.method.how') },
    ...provedStates(input).flatMap((proved) => sessionsOf(proved, input)),
    { type: 'heading', level: 1, text: say('proof.uncertainty') },
    { type: 'paragraph', size: 'body', text: say('proof.uncertainty.how', { coverage: COVERAGE }) },
    { type: 'list', items: provedStates(input).map((proved) => uncertaintyOf(proved, input)) },
    { type: 'paragraph', size: 'body', text: say('proof.uncertainty.guard') },
  ];
}

function sessionsOf({ state }: Proved, input: ProofInput): readonly Block[] {
  const { say } = input;
  const sessions = input.sessions.filter((session) => session.cycle === input.cycle && session.state === state);
  const name = say(`proof.state.${state}`);
  if (sessions.length === 0) return [{ type: 'heading', level: 2, text: name }, { type: 'paragraph', size: 'body', text: say('proof.session.none') }];
  return sessions.flatMap((session, index): readonly Block[] => [
    { type: 'heading', level: 2, text: sessions.length === 1 ? name : say('proof.session.of', { state: name, index: index + 1, count: sessions.length }) },
    sessionFacts(session, input),
  ]);
}

function sessionFacts(session: ProofSession, input: ProofInput): KeyValuesBlock {
  const { say } = input;
  const unit = (value: number | null, sign: string): string | null => (value === null ? null : `${asStated(value, input)}\u00A0${sign}`);
  const row = (name: FactName, value: Cell): { label: string; value: Cell } => ({ label: say(`proof.session.${name}`), value });
  const stated = (name: FactName, value: string | null): { label: string; value: Cell } => row(name, statedOr(value, input));
  return {
    type: 'keyValues',
    rows: [
      stated('date', session.startedAt === null ? null : dayOf(session.startedAt, input)),
      stated('equipment', session.equipment),
      stated('weightClass', session.weightClass),
      stated('step', unit(session.stepG, 'g')),
      stated('repeatability', unit(session.repeatabilityG, 'g')),
      stated('repeats', String(session.repeats)),
      stated('rule', session.rule === null ? null : say(`proof.rule.${session.rule}`)),
      stated('place', unit(session.placeOnKeyMm, 'mm')),
      stated('dampers', session.dampers === null ? null : say(`proof.dampers.${session.dampers}`)),
      stated('helperSprings', session.helperSprings === null ? null : say(`proof.helperSprings.${session.helperSprings}`)),
      stated('regulated', session.regulated === null ? null : say(session.regulated ? 'proof.yes' : 'proof.no')),
      stated('temperature', unit(session.temperatureC, '°C')),
      stated('humidity', unit(session.humidityPct, '%')),
      ...(session.remark.trim() === '' ? [] : [row('remark', cell(session.remark))]),
    ],
  };
}

type FactName = 'date' | 'equipment' | 'weightClass' | 'step' | 'repeatability' | 'repeats' | 'rule' | 'place' | 'dampers' | 'helperSprings' | 'regulated' | 'temperature' | 'humidity' | 'remark';

function uncertaintyOf({ state, touch }: Proved, input: ProofInput): string {
  const { say, intent } = input;
  const name = say(`proof.state.${state}`);
  const noise = readingNoiseOf(touch, intent);
  if (noise === undefined) return say('proof.uncertainty.unknown', { state: name });
  return say('proof.uncertainty.known', { state: name, standard: grams(noise, input, { decimals: 2 }), expanded: grams(COVERAGE * noise, input, { decimals: 2 }), bias: biasWords(touch, input) });
}

/** What the weight steps add to the friction, when the same for all keys. */
function biasWords({ keys }: TouchAnalysis, input: ProofInput): string {
  const biases = new Set(keys.flatMap(({ figures }) => figures.frictionBiasG ?? []));
  const [bias] = biases;
  return biases.size !== 1 || bias === undefined || bias === 0 ? '' : ` ${input.say('proof.uncertainty.bias', { bias: statedGrams(bias, input) })}`;
}
