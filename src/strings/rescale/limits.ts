import type { Issue } from '#result';
import type { CandidateFigures, LimitName, RescaleLimits, RescaleNote, StringLimits } from './problem.ts';

type StringLimit = keyof StringLimits;

const LIMITS: Readonly<Record<StringLimit, (figures: CandidateFigures, limit: number) => number>> = {
  minBreakingPct: ({ breakingPct }, limit) => limit - breakingPct,
  maxBreakingPct: ({ breakingPct }, limit) => breakingPct - limit,
  minTensionN: ({ tensionN }, limit) => limit - tensionN,
  maxTensionN: ({ tensionN }, limit) => tensionN - limit,
};

const entriesOf = (limits: StringLimits): readonly (readonly [StringLimit, number])[] =>
  (Object.keys(LIMITS) as StringLimit[]).flatMap((name) => (limits[name] === undefined ? [] : [[name, limits[name]] as const]));

const limitsAt = (note: RescaleNote, limits: RescaleLimits): StringLimits => ({ ...limits, ...note.limits });

/** The limits that each candidate of a note breaks; a lock is broken by all but one. */
export function brokenLimitsOf(note: RescaleNote, figures: readonly CandidateFigures[], limits: RescaleLimits): readonly (readonly LimitName[])[] {
  const asked = entriesOf(limitsAt(note, limits));
  return figures.map((candidate, index) => [
    ...asked.filter(([name, limit]) => LIMITS[name](candidate, limit) > 0).map(([name]) => name),
    ...(note.lockedCandidate !== undefined && note.lockedCandidate !== index ? (['lockedCandidate'] as const) : []),
  ]);
}

/**
 * Why a note has no candidate left: each limit that none of its candidates keeps (of a locked note: the one), and by how
 * much the nearest misses it; where no limit alone is to blame, the candidate that misses least and what it breaks.
 */
export function noneLeftIssues(note: RescaleNote, place: number, figures: readonly CandidateFigures[], limits: RescaleLimits): readonly Issue[] {
  const eligible = figures.filter((_, index) => note.lockedCandidate === undefined || note.lockedCandidate === index);
  const missed = entriesOf(limitsAt(note, limits)).map(([name, limit]) => ({ name, limit, short: Math.min(...eligible.map((candidate) => LIMITS[name](candidate, limit))) }));
  const alone = missed.filter(({ short }) => short > 0);
  const where = (name: StringLimit) => (note.limits?.[name] === undefined ? `limits.${name}` : `notes[${String(place)}].limits.${name}`);
  if (alone.length > 0) {
    return alone.map(({ name, limit, short }) => {
      const nearest = name.startsWith('min') ? limit - short : limit + short;
      return {
        code: 'unreachable', path: where(name), given: limit,
        allowed: `${String(nearest)}, the nearest that key ${String(note.key)} can be strung with: ${String(short)} away`,
        params: { reason: 'noCandidateWithin', limit: name, key: note.key, nearest, short },
      };
    });
  }
  const names = missed.map(({ name }) => name).join(', ');
  return [{ code: 'unreachable', path: `notes[${String(place)}].candidates`, given: figures.length, allowed: `a candidate for key ${String(note.key)} that keeps to ${names} together`, params: { reason: 'limitsTogether', key: note.key, limits: names } }];
}
