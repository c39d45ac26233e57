import { type Block, type Cell, type TableBlock, asStated, cell, dayOf, statedOr } from '#report';
import type { TouchAnalysis } from '#action';
import { type ProofInput, type ProofSession, type Proved, otherPartsOf, provedStates } from './input.ts';
import { measurersOf } from './people.ts';
import { COVERAGE } from './plots.ts';
import { readingNoiseOf } from './summary.ts';
import { grams, statedGrams } from './words.ts';

/** How each state was weighed, with what, and how far the figures can be trusted. */
export function methodOf(input: ProofInput): readonly Block[] {
  const { say } = input;
  const head = [{ type: 'pageBreak' }, { type: 'heading', level: 1, text: say('proof.method') }] as const;
  if (otherPartsOf(input).length > 0) return measurersOf(input).length === 0 ? [] : [...head, ...measurersOf(input)];
  return [
    ...head,
    { type: 'paragraph', size: 'body', text: say('proof.method.how') },
    ...sessionsOf(input),
    ...measurersOf(input),
    { type: 'heading', level: 1, text: say('proof.uncertainty') },
    { type: 'paragraph', size: 'body', text: say('proof.uncertainty.how', { coverage: COVERAGE }) },
    { type: 'list', items: uncertaintiesOf(input) },
    ...(input.intent === null ? [] : [{ type: 'paragraph', size: 'body', text: say('proof.uncertainty.guard') } as const]),
  ];
}

/** Sessions side by side, four to a table; a state without one says so. */
function sessionsOf(input: ProofInput): readonly Block[] {
  const { say } = input;
  const held = provedStates(input).map(({ state }) => ({ name: say(`proof.state.${state}`), sessions: input.sessions.filter((session) => session.cycle === input.cycle && session.state === state) }));
  const stated = held.flatMap(({ name, sessions }) => sessions.map((session, index) => ({ session, label: sessions.length === 1 ? name : say('proof.session.of', { state: name, index: index + 1 }) })));
  const tables = Array.from({ length: Math.ceil(stated.length / SESSIONS_BESIDE) }, (_, index) => stated.slice(index * SESSIONS_BESIDE, (index + 1) * SESSIONS_BESIDE));
  return [
    ...tables.map((beside) => sessionTable(beside, input)),
    ...held.filter(({ sessions }) => sessions.length === 0).map(({ name }): Block => ({ type: 'note', text: `${name}: ${say('proof.session.none')}` })),
  ];
}

const SESSIONS_BESIDE = 4;

function sessionTable(beside: readonly { readonly session: ProofSession; readonly label: string }[], input: ProofInput): TableBlock {
  const { say } = input;
  const facts = beside.map(({ session }) => factsOf(session, input));
  const names = factNames.filter((name) => name !== 'remark' || beside.some(({ session }) => session.remark.trim() !== ''));
  return {
    type: 'table', strips: 1, rowHeads: true, caption: say('proof.method'),
    columns: [{ label: say('proof.session.fact'), align: 'start', width: 1.4 }, ...beside.map(({ label }) => ({ label, align: 'start', width: 1 } as const))],
    rows: names.map((name) => [cell(say(`proof.session.${name}`)), ...facts.map((fact) => fact[name])]),
  };
}

function factsOf(session: ProofSession, input: ProofInput): Readonly<Record<FactName, Cell>> {
  const { say } = input;
  const unit = (value: number | null, sign: string): Cell => statedOr(value === null ? null : `${asStated(value, input)}\u00A0${sign}`, input);
  const { weighedOn, rule, dampers, helperSprings, regulated } = session;
  return {
    date: statedOr(weighedOn === null ? null : dayOf(weighedOn, input), input),
    equipment: statedOr(session.equipment, input),
    weightClass: statedOr(session.weightClass, input),
    step: unit(session.stepG, 'g'),
    repeatability: unit(session.repeatabilityG, 'g'),
    repeats: cell(String(session.repeats)),
    rule: statedOr(rule === null ? null : say(`proof.rule.${rule}`), input),
    place: unit(session.placeOnKeyMm, 'mm'),
    dampers: statedOr(dampers === null ? null : say(`proof.dampers.${dampers}`), input),
    helperSprings: statedOr(helperSprings === null ? null : say(`proof.helperSprings.${helperSprings}`), input),
    regulated: statedOr(regulated === null ? null : say(regulated ? 'proof.yes' : 'proof.no'), input),
    temperature: unit(session.temperatureC, '°C'),
    humidity: unit(session.humidityPct, '%'),
    remark: cell(session.remark),
  };
}

const factNames = ['date', 'equipment', 'weightClass', 'step', 'repeatability', 'repeats', 'rule', 'place', 'dampers', 'helperSprings', 'regulated', 'temperature', 'humidity', 'remark'] as const;
type FactName = (typeof factNames)[number];

/** How sure the readings of each state are; states of which the same is to be said share a line. */
function uncertaintiesOf(input: ProofInput): readonly string[] {
  const proved = provedStates(input);
  const words = proved.map((each) => uncertaintyOf(each, '', input));
  return [...new Set(words)].map((said) => {
    const alike = proved.filter((_, index) => words[index] === said);
    const names = alike.map(({ state }) => input.say(`proof.state.${state}`)).join(', ');
    return alike[0] === undefined ? said : uncertaintyOf(alike[0], names, input);
  });
}

function uncertaintyOf({ touch }: Proved, name: string, input: ProofInput): string {
  const { say, intent } = input;
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
