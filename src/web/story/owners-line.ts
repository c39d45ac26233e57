/** Days, months or years as far as they are known (ISO 8601): `1926`, `1926-05`, `1926-05-01`. */
type RoughDay = string;

/** Somebody who owned the piano; a beginning or an end that nobody stated is null. */
export interface Owned {
  readonly from: RoughDay | null;
  readonly until: RoughDay | null;
}

/** A stay in the shop, by the days of what was written then. */
export interface StayDays {
  readonly cycle: number;
  readonly from: RoughDay;
  readonly until: RoughDay;
}

/** One line of the story: an owner, years nobody is noted for, or a stay in the shop. */
export type LineRow<O extends Owned> =
  | { readonly kind: 'owner'; readonly from: RoughDay | null; readonly until: RoughDay | null; readonly owner: O }
  | { readonly kind: 'gap'; readonly from: RoughDay; readonly until: RoughDay }
  | ({ readonly kind: 'stay' } & StayDays);

/**
 * Owners and stays as one line of time. Years between two owners that nobody is noted for are named as such; where days are known
 * too roughly to tell whether there was a gap, none is named.
 * @param builtIn the year the piano was made, or null: before its first owner is a gap too
 */
export function ownersLine<O extends Owned>(owners: readonly O[], stays: readonly StayDays[], builtIn: number | null): readonly LineRow<O>[] {
  const rows: LineRow<O>[] = stays.map((stay) => ({ kind: 'stay', ...stay }));
  let until: RoughDay | null = builtIn === null ? null : String(builtIn);
  for (const owner of owners.toSorted((a, b) => compare(a.from, b.from))) {
    if (until !== null && owner.from !== null && isGap(until, owner.from)) rows.push({ kind: 'gap', from: until, until: owner.from });
    rows.push({ kind: 'owner', from: owner.from, until: owner.until, owner });
    until = later(until ?? '', owner.until ?? NEVER);
  }
  return rows.toSorted((a, b) => compare(a.from, b.from) || ORDER[a.kind] - ORDER[b.kind]);
}

/** After every day: somebody who owns it to this day leaves no gap behind. */
const NEVER = '9999';
const ORDER = { owner: 0, gap: 1, stay: 2 } as const;

const later = (a: RoughDay, b: RoughDay): RoughDay => (b < a ? a : b);
const compare = (a: RoughDay | null, b: RoughDay | null): number => ((a ?? '') < (b ?? '') ? -1 : (a ?? '') > (b ?? '') ? 1 : 0);

/** True where a day, month or year surely lies between the two, as roughly as the rougher of them is known. */
function isGap(until: RoughDay, from: RoughDay): boolean {
  const known = Math.min(until.length, from.length);
  return until !== NEVER && from.slice(0, known) > next(until.slice(0, known));
}

function next(day: RoughDay): RoughDay {
  const [year = 0, month, date] = day.split('-').map(Number);
  if (month === undefined) return String(year + 1).padStart(4, '0');
  const after = new Date(Date.UTC(year, date === undefined ? month : month - 1, date === undefined ? 1 : date + 1)).toISOString();
  return after.slice(0, day.length);
}
