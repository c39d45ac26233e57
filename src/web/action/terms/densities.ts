import type { ActionTerms } from '#instrument';
import type { Issue } from '#result';
import { wholeNumber } from '../../readings/grid/grid-block.ts';

/** Cubic millimetres in a cubic centimetre: densities are stored in g/mm³, as lengths are, and typed in g/cm³, as metal is sold. */
const PER_CM3 = 1000;
/** Figures kept of a quotient, so that 11.34 typed comes back as 11.34. */
const FIGURES = 14;

const tidy = (value: number): number => Number(value.toPrecision(FIGURES));

/** The terms that are densities. */
export type DensityName = Extract<keyof ActionTerms, `${string}GPerMm3`>;
export const isDensity = (name: string): name is DensityName => name.endsWith('GPerMm3');

/** A density as a field shows it, in g/cm³, every decimal of it. */
export function shownDensity(value: number | null | undefined, locale: string): string {
  return value == null ? '' : wholeNumber(inGPerCm3(value), locale);
}

/** A density in g/cm³. */
export function inGPerCm3(gPerMm3: number): number {
  return tidy(gPerMm3 * PER_CM3);
}

/** A density typed in g/cm³ as it is stored. */
export function fromGPerCm3(typed: number): number {
  return tidy(typed / PER_CM3);
}

/** What is wrong with a density, its figures as they are typed. */
export function issueAsTyped(issue: Issue): Issue {
  if (!isDensity(issue.path)) return issue;
  const params = Object.fromEntries(Object.entries(issue.params ?? {}).map(([name, value]) => [name, typeof value === 'number' ? inGPerCm3(value) : value]));
  return { ...issue, ...(typeof issue.given === 'number' ? { given: inGPerCm3(issue.given) } : {}), params };
}
