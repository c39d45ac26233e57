import type { Reading } from '#instrument';
import type { Block } from '#report';
import { whoWrote } from '#workshop';
import { type ProofInput, statesTold } from './input.ts';

/** Who took the figures of each state, with how many of them; what nobody's name stands behind is told as not stated. */
export function measurersOf(input: ProofInput): readonly Block[] {
  const { say, readings = [], cycle } = input;
  if (readings.length === 0) return [];
  const told = statesTold(input).map((state) => say('proof.measuredBy.of', { state: say(`proof.state.${state}`), people: peopleOf(readings.filter((reading) => reading.cycle === cycle && reading.state === state), input) }));
  return told.length === 0 ? [] : [{ type: 'paragraph', size: 'body', text: say('proof.measuredBy', { states: told.join('; ') }) }];
}

function peopleOf(readings: readonly Reading[], { say, people = [] }: ProofInput): string {
  const counts = new Map<string, number>();
  for (const { by } of readings) {
    const who = whoWrote(by, people);
    const name = who.kind === 'named' ? who.name : say(who.kind === 'forgotten' ? 'people.forgotten' : 'people.nobody');
    counts.set(name, (counts.get(name) ?? 0) + 1);
  }
  const nobody = say('people.nobody');
  if ([...counts.keys()].every((name) => name === nobody)) return say('proof.measuredBy.none');
  return [...counts].sort(([a], [b]) => a.localeCompare(b)).map(([name, count]) => say('proof.measuredBy.one', { name, count })).join('; ');
}
