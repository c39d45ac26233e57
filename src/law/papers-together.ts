import type { FactName } from './facts.ts';
import { type PaperReason, type PapersNeeded, papersNeededOf, type PaperQuestion } from './papers-needed.ts';
import type { ListedMaterial } from './materials.ts';
import { outcomes } from './outcome.ts';
import type { PaperRule } from './rule.ts';

/**
 * The papers of one shipment whose materials are each known by facts of their own: the worst of all wins, and what is said
 * of a place and of no material is said once.
 * @source OWN
 */
export function papersTogether(questions: readonly PaperQuestion[], rules: readonly PaperRule[]): PapersNeeded {
  const said = new Map<string, PaperReason>();
  for (const question of questions) {
    for (const reason of papersNeededOf(question, rules).reasons) {
      const { kind, place, material, rule } = reason;
      const name = [kind, place, material ?? '', rule?.id ?? ''].join(' ');
      said.set(name, worse(said.get(name), reason));
    }
  }
  const reasons = [...said.values()].sort((a, b) => outcomes.indexOf(a.outcome) - outcomes.indexOf(b.outcome));
  return { outcome: reasons[0]?.outcome ?? 'ask', reasons };
}

/** Two pieces of one material under one rule: the worse of the two, with every fact either wants. */
function worse(before: PaperReason | undefined, now: PaperReason): PaperReason {
  if (before === undefined) return now;
  const kept = outcomes.indexOf(now.outcome) < outcomes.indexOf(before.outcome) ? now : before;
  return { ...kept, missing: [...new Set([...before.missing, ...now.missing])] };
}

/** Papers the reasons ask for, each once, worst first. */
export function papersAsked(reasons: readonly PaperReason[]): readonly PaperRule['papers'][number][] {
  const asked = reasons.filter(({ outcome, kind }) => outcome === 'papers' && kind === 'holds').flatMap(({ rule }) => rule?.papers ?? []);
  return asked.filter((words, index) => asked.findIndex(({ en }) => en === words.en) === index);
}

/** Whether what is not known yet may still turn out to be barred, though the outcome is milder so far. */
export function mayBeBarred({ outcome, reasons }: PapersNeeded): boolean {
  return outcome !== 'prohibited' && reasons.some(({ wouldBe }) => wouldBe === 'prohibited');
}

/** Materials whose species is still to be found out, each once. */
export function speciesMissing(reasons: readonly PaperReason[]): readonly ListedMaterial[] {
  return [...new Set(reasons.flatMap(({ kind, material }) => (kind === 'species' && material !== undefined ? [material] : [])))];
}

/** Facts still to be found out, each once. */
export function factsMissing(reasons: readonly PaperReason[]): readonly FactName[] {
  return [...new Set(reasons.flatMap(({ missing }) => missing))];
}
