import type { Instrument, KeyNumber } from '#instrument';
import type { Issue } from '#result';
import { type Degrees, degrees, parseMeasure } from '#units';

/** The angle wanted of each section, as typed, bass first; one for the whole where the card names no sections. An empty text leaves a section out. */
export interface RecapDraft {
  readonly targets: readonly string[];
}

/** The angles wanted by key, or what is wrong with the texts, by their place in the list. */
export interface RecapTargets {
  readonly of: (key: KeyNumber) => Degrees | undefined;
  readonly issues: readonly (Issue | undefined)[];
}

/** Beyond this no bearing of a piano is meant. */
const MOST_DEG = 20;

export function targetsOf({ targets }: RecapDraft, sections: Instrument['sections'], locale: string): RecapTargets {
  const read = targets.map((typed, index) => angleOf(typed, `targets[${String(index)}]`, locale));
  const at = (key: KeyNumber): number => (sections.length === 0 ? 0 : sections.findIndex(({ firstKey, lastKey }) => key >= firstKey && key <= lastKey));
  return { of: (key) => read[at(key)]?.value, issues: read.map(({ issue }) => issue) };
}

function angleOf(typed: string, path: string, locale: string): { readonly value?: Degrees; readonly issue?: Issue } {
  if (typed.trim() === '') return {};
  const parsed = parseMeasure(typed, { unit: 'deg', path, locale });
  if (!parsed.ok) return parsed.issues[0] === undefined ? {} : { issue: parsed.issues[0] };
  const { value } = parsed.value;
  if (Math.abs(value) > MOST_DEG) return { issue: { code: 'range', path, given: value, allowed: `${String(-MOST_DEG)} to ${String(MOST_DEG)}`, params: { min: -MOST_DEG, max: MOST_DEG } } };
  return { value: degrees(value) };
}
