import { type DatedFacts, type FactName, type PaperAction, type PaperFacts, factsOn } from './facts.ts';
import { holds, missingFacts } from './condition.ts';
import { type ListedMaterial, belongsTo } from './materials.ts';
import { type PaperOutcome, outcomes } from './outcome.ts';
import { hasOwnRules, isWithin, jurisdictionsOf } from './places.ts';
import type { Deed, PaperRule } from './rule.ts';

/** Why a rule, or the want of one, counts: it holds; a fact or the species is wanting; it is past its review; nothing is known. */
export const reasonKinds = ['holds', 'missing-fact', 'species', 'past-review', 'no-rules-known', 'no-rule-matched'] as const;
export type ReasonKind = (typeof reasonKinds)[number];

export interface PaperReason {
  readonly kind: ReasonKind;
  readonly outcome: PaperOutcome;
  /** Country whose end of the journey it is. */
  readonly place: string;
  readonly material?: ListedMaterial;
  readonly rule?: PaperRule;
  readonly missing: readonly FactName[];
  /** Where something is wanting: the worst the rule may come to once it is known. */
  readonly wouldBe?: PaperOutcome;
}

export interface PaperQuestion {
  readonly facts: PaperFacts;
  /** ISO 3166-1, or GB-NIR. */
  readonly from: string;
  readonly to: string;
  readonly action: PaperAction;
  /** ISO 8601 day. */
  readonly date: string;
}

export interface PapersNeeded {
  readonly outcome: PaperOutcome;
  /** Worst first. */
  readonly reasons: readonly PaperReason[];
}

type End = { readonly place: string; readonly deeds: readonly Deed[] };

const SOLD: ReadonlySet<PaperAction> = new Set(['sell', 'buy', 'hire', 'ship-sold']);

/** What an action comes to at either end. */
function endsOf({ from, to, action }: PaperQuestion): readonly End[] {
  const own: readonly Deed[] = action === 'ship-sold' ? ['sell'] : action === 'move-own' ? [] : [action];
  if (from === to) return [{ place: from, deeds: own }];
  const within = isWithin(from, to);
  const across = (kind: 'export' | 'import'): readonly Deed[] => {
    if (SOLD.has(action)) return [within ? 'move-sold' : `${kind}-sold`];
    return action === 'move-own' ? (within ? [] : [`${kind}-own`]) : [];
  };
  return [{ place: from, deeds: [...own, ...across('export')] }, { place: to, deeds: [...(action === 'travel' || action === 'buy' ? own : []), ...across('import')] }];
}

const isInForce = ({ effectiveFrom, effectiveUntil }: PaperRule, date: string): boolean => effectiveFrom <= date && (effectiveUntil === undefined || date <= effectiveUntil);

const worstOf = (found: readonly PaperOutcome[]): PaperOutcome => outcomes.find((one) => found.includes(one)) ?? 'ask';

type Known = { readonly facts: DatedFacts; readonly date: string };

/** What one rule says of one material, if it speaks of it. */
function heard(rule: PaperRule, material: ListedMaterial, place: string, { facts, date }: Known): readonly PaperReason[] {
  const kinds = rule.materials.map((group) => belongsTo(material, group));
  if (kinds.every((kind) => kind === 'no')) return [];
  const verdict = rule.when === undefined ? 'yes' : holds(rule.when, facts);
  const outcome = verdict === 'no' ? rule.otherwise : rule.outcome;
  if (outcome === undefined) return [];
  const wouldBe = verdict === 'unknown' ? worstOf([rule.outcome, rule.otherwise ?? rule.outcome]) : outcome;
  const reason = (kind: ReasonKind, found: PaperOutcome, missing: readonly FactName[] = []): PaperReason => ({ kind, outcome: found, place, material, rule, missing });
  const stale = date > rule.reviewBy ? [reason('past-review', 'ask')] : [];
  if (!kinds.includes('yes') || facts.speciesProven === false) return [{ ...reason('species', 'ask'), wouldBe }, ...stale];
  if (verdict === 'unknown' && rule.when !== undefined) return [{ ...reason('missing-fact', 'ask', [...new Set(missingFacts(rule.when, facts))]), wouldBe }, ...stale];
  return [reason('holds', outcome), ...stale];
}

/**
 * Every rule that speaks of a material at either end, the worst outcome winning: prohibited, papers, ask, note. What is not known,
 * whether fact, species, country or rule, is a question for the authority. A checklist, never advice that something is allowed.
 * @source OWN the way of deciding; each rule names its own source
 */
export function papersNeededOf(question: PaperQuestion, rules: readonly PaperRule[]): PapersNeeded {
  const { material } = question.facts;
  const materials = typeof material === 'string' ? [material] : material;
  const known: Known = { facts: factsOn(question.date, question.facts), date: question.date };
  const reasons = endsOf(question).flatMap(({ place, deeds }): readonly PaperReason[] => {
    const held = new Set<string>(jurisdictionsOf(place));
    const inForce = rules.filter((rule) => isInForce(rule, question.date) && rule.jurisdictions.some((one) => held.has(one)) && rule.deeds.some((deed) => deeds.includes(deed)));
    const unknown: readonly PaperReason[] = hasOwnRules(place) ? [] : [{ kind: 'no-rules-known', outcome: 'ask', place, missing: [] }];
    return [...unknown, ...materials.flatMap((each) => inForce.flatMap((rule) => heard(rule, each, place, known)))];
  });
  const silent = materials.filter((each) => !reasons.some((reason) => reason.material === each))
    .map((each): PaperReason => ({ kind: 'no-rule-matched', outcome: 'ask', place: question.from, material: each, missing: [] }));
  const all = [...reasons, ...silent].sort((a, b) => outcomes.indexOf(a.outcome) - outcomes.indexOf(b.outcome));
  return { outcome: all[0]?.outcome ?? 'ask', reasons: all };
}
