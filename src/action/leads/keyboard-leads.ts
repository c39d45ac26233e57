import type { KeyNumber } from '#instrument';
import { type Result, all, map, under } from '#result';
import { type Grams, type GramsPerCubicMillimetre, type Millimetres, grams } from '#units';
import type { KeyLeads, KeyLeadsProblem } from './key-leads-problem.ts';
import { keyLeads } from './key-leads.ts';
import type { Lead } from './lead.ts';

/** What is asked of the leads of one key of a keyboard. */
export interface KeyLeadsQuestion extends KeyLeadsProblem {
  readonly key: KeyNumber;
}

/** How many of one diameter and metal. */
export interface LeadCount {
  readonly diameterMm: Millimetres;
  /** Of a metal that is not the usual one. */
  readonly densityGPerMm3?: GramsPerCubicMillimetre;
  /** Leads in old holes and in new ones. */
  readonly refilled: number;
  readonly drilled: number;
  /** Old holes that held such a lead, to be plugged. */
  readonly plugged: number;
  /** Metal of all those leads: what is to be at hand, gross. */
  readonly metalG: Grams;
}

/** The leads of one key of a keyboard. */
export interface SolvedKey extends KeyLeads {
  readonly key: KeyNumber;
}

export interface KeyboardLeads {
  readonly keys: readonly SolvedKey[];
  /** By diameter, smallest first, and metal, the usual one first. */
  readonly sizes: readonly LeadCount[];
  readonly leads: number;
  readonly newHoles: number;
  readonly plugs: number;
  readonly feasible: number;
  readonly proven: number;
  /** Keys whose target is out of reach. */
  readonly missed: readonly KeyNumber[];
}

/**
 * The leads of every key, each an optimum by itself, with what there is to buy, drill and plug.
 * Issues stand under `[i]`, the place of the key in the list.
 * @source OWN
 */
export function keyboardLeads(questions: readonly KeyLeadsQuestion[]): Result<KeyboardLeads> {
  const solved = questions.map((question, place): Result<SolvedKey> => {
    const result = keyLeads(question);
    return result.ok ? { ok: true, value: { key: question.key, ...result.value } } : { ok: false, issues: under(`[${String(place)}]`, result.issues) };
  });
  return map(all(solved), (keys) => keyboardOf(keys, questions));
}

/** What the leads of keys come to together: what there is to buy, drill and plug. The keys in the order of their questions. */
export function keyboardOf(keys: readonly SolvedKey[], questions: readonly Pick<KeyLeadsQuestion, 'keyWidthMm' | 'leadDensityGPerMm3'>[]): KeyboardLeads {
  return {
    keys,
    sizes: sizesOf(keys, questions),
    leads: keys.reduce((sum, { leads }) => sum + leads.length, 0),
    newHoles: keys.reduce((sum, { leads }) => sum + leads.filter(({ hole }) => hole === 'new').length, 0),
    plugs: keys.reduce((sum, { plugs }) => sum + plugs.length, 0),
    feasible: keys.filter(({ feasible }) => feasible).length,
    proven: keys.filter(({ proven }) => proven).length,
    missed: keys.flatMap(({ feasible, key }) => (feasible ? [] : [key])),
  };
}

function sizesOf(keys: readonly SolvedKey[], questions: readonly Pick<KeyLeadsQuestion, 'keyWidthMm' | 'leadDensityGPerMm3'>[]): readonly LeadCount[] {
  const all = keys.flatMap(({ leads, plugs }): readonly Lead[] => [...leads, ...plugs]);
  const kinds = [...new Map(all.map((lead) => [`${String(lead.diameterMm)} ${String(lead.densityGPerMm3)}`, lead])).values()]
    .sort((a, b) => a.diameterMm - b.diameterMm || (a.densityGPerMm3 ?? 0) - (b.densityGPerMm3 ?? 0));
  return kinds.map(({ diameterMm, densityGPerMm3 }) => {
    const ofKind = <T extends Lead>(list: readonly T[]): readonly T[] => list.filter((lead) => lead.diameterMm === diameterMm && lead.densityGPerMm3 === densityGPerMm3);
    const leads = keys.flatMap((key) => ofKind(key.leads));
    const metal = keys.reduce((sum, key, place) => {
      const { keyWidthMm = 0, leadDensityGPerMm3 = 0 } = questions[place] ?? {};
      return sum + ofKind(key.leads).length * (densityGPerMm3 ?? leadDensityGPerMm3) * Math.PI * (diameterMm / 2) ** 2 * keyWidthMm;
    }, 0);
    return {
      diameterMm,
      ...(densityGPerMm3 === undefined ? {} : { densityGPerMm3 }),
      refilled: leads.filter(({ hole }) => hole === 'existing').length,
      drilled: leads.filter(({ hole }) => hole === 'new').length,
      plugged: keys.reduce((sum, { plugs }) => sum + ofKind(plugs).length, 0),
      metalG: grams(metal),
    };
  });
}
