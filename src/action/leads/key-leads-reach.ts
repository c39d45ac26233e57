import type { Issue } from '#result';
import { millimetres } from '#units';
import type { KeyLeadsProblem } from './key-leads-problem.ts';
import type { Lead } from './lead.ts';
import { type KeyReach, leadsOffKey } from './on-key.ts';

/** Issues of old holes and grid places that do not lie on the key with their whole hole, the largest drill taken. */
export function placesOffKey({ existingHoles, gridMm, diametersMm }: Pick<KeyLeadsProblem, 'existingHoles' | 'gridMm' | 'diametersMm'>, reach: KeyReach): readonly Issue[] {
  const diameterMm = millimetres(Math.max(0, ...diametersMm));
  const issuesOf = (leads: readonly Lead[], path: (place: string) => string): readonly Issue[] =>
    leadsOffKey(leads, reach).map((issue) => ({ ...issue, path: path(/\[\d+\]/u.exec(issue.path)?.[0] ?? '') }));
  return [
    ...issuesOf(existingHoles, (place) => `existingHoles${place}.positionMm`),
    ...issuesOf(gridMm.map((positionMm) => ({ positionMm, diameterMm })), (place) => `gridMm${place}`),
  ];
}
