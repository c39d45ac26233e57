import type { Issue } from '#result';
import type { StrokeMeasures } from './assembly.ts';
import type { Miss } from './pose.ts';

/** The measure most to be doubted where a contact does not come about. */
const DOUBTED = { capstan: 'capstanHeightMm', jack: 'jackTopHeightMm', edge: 'jack.overlapMm', toe: 'jack.overlapMm', string: 'stringHeightMm' } as const;

/** Says which parts do not meet, and by how much. */
export function issueOfMiss(given: StrokeMeasures, { contact, missMm }: Miss): Issue {
  const path = DOUBTED[contact];
  const value = path === 'jack.overlapMm' ? given.jack?.overlapMm : given[path];
  if (contact === 'edge') return slipped(value ?? 0, missMm);
  return { code: 'unsolvable', path, given: value, allowed: `parts that meet: ${WORDS[contact]} by ${String(missMm)} mm`, params: { reason: `${contact}Missed`, byMm: missMm } };
}

/** A roller that leaves the jack before it trips: more overlap would hold it. */
function slipped(overlapMm: number, byMm: number): Issue {
  const min = overlapMm + byMm;
  return { code: 'unreachable', path: DOUBTED.edge, given: overlapMm, allowed: `at least ${String(min)}, ${String(byMm)} mm more: the roller slips off the standing jack before let-off`, params: { reason: 'rollerSlips', min, byMm } };
}

const WORDS = {
  capstan: 'heel and capstan miss each other somewhere in the stroke',
  jack: 'jack top and roller miss each other somewhere in the stroke',
  toe: 'the toe would have to be held before the stroke begins, or farther than it reaches,',
  string: 'the hammer passes under the string',
} as const;

/** What one measure says against another. */
export function issuesOfMeasures({ levers, keyEdgeMm, letOffMm, blowMm, hammerCentreHeightMm, stringHeightMm }: StrokeMeasures): readonly Issue[] {
  const byMm = hammerCentreHeightMm - stringHeightMm;
  return [
    ...(keyEdgeMm >= levers.keyFrontMm ? [] : [{ code: 'order' as const, path: 'keyEdgeMm', given: keyEdgeMm, allowed: `at least the measuring point, ${String(levers.keyFrontMm)}`, params: { reason: 'edgeBehindPoint', min: levers.keyFrontMm } }]),
    ...(letOffMm < blowMm ? [] : [{ code: 'order' as const, path: 'letOffMm', given: letOffMm, allowed: `less than the blow, ${String(blowMm)}`, params: { reason: 'letOffAboveBlow', max: blowMm } }]),
    ...(byMm < 0 ? [] : [{ code: 'order' as const, path: 'hammerCentreHeightMm', given: hammerCentreHeightMm, allowed: `below the string, ${String(stringHeightMm)}; it is ${String(byMm)} mm above`, params: { reason: 'centreAboveString', below: stringHeightMm, byMm } }]),
  ];
}
