import { defineOperation, field } from '#operation';
import { type Issue, type Result, ok, refuse } from '#result';
import { type Millimetres, millimetres } from '#units';
import { z } from 'zod';
import { type Regulation, type RegulationBase, aftertouchOf, blowFor, dipFor, travelToLetOffOf } from '../regulation.ts';
import { leadFields } from '../leads/schemas.ts';
import { fields } from '../schemas.ts';

const travel = (describe: string) => field.millimetres({ min: 0, max: 1000, describe });

const base = {
  letOffMm: travel('Hammer to string where the jack lets go'),
  distanceRatio: fields.weightRatio.describe('Action ratio by distance, not by weights'),
  keyEdgeMm: field.millimetres({ min: 0.01, max: 10_000, describe: 'Balance point to the front edge' }),
  keyFrontMm: leadFields.keyFrontMm,
  lossMm: travel('Key travel at the measuring point lost to felt and lost motion'),
} as const;
const blowMm = travel('Hammer at rest to string');
const dipMm = travel('Travel of the front edge');
const aftertouchMm = travel('Travel of the front edge left after let-off');

/** Blow, dip and aftertouch: any two give the third. */
export const regulationOperation = defineOperation({
  name: 'regulation',
  input: z.union([
    z.strictObject({ ...base, blowMm, dipMm }),
    z.strictObject({ ...base, blowMm, aftertouchMm }),
    z.strictObject({ ...base, dipMm, aftertouchMm }),
  ]),
  output: z.strictObject({
    dipMm: field.millimetres(),
    blowMm: field.millimetres(),
    aftertouchMm: field.millimetres({ describe: 'At the front edge; below 0 the key lands before the jack lets go' }),
    travelToLetOffMm: field.millimetres({ describe: 'Key travel at the measuring point where the jack lets go' }),
    edgeTravelToLetOffMm: field.millimetres({ describe: 'The same at the front edge' }),
    letsOff: z.boolean().describe('Whether the jack lets go before the key lands'),
  }),
  formula: ['y = (blow − let-off)/R_d + loss', 'aftertouch = dip − y·a_edge/a'],
  sources: ['OWN', 'PRACTICE'],
  example: { letOffMm: 1.5, distanceRatio: 5.3, keyEdgeMm: 238, keyFrontMm: 225, lossMm: 0.3, blowMm: 45, dipMm: 10 },
  run: (given) => {
    const issues = [...edgeIssues(given), ...('blowMm' in given ? letOffIssues(given.letOffMm, given.blowMm) : [])];
    if (issues.length > 0) return refuse(...issues);
    const whole = solved(given);
    if (!whole.ok) return whole;
    const travelToLetOffMm = travelToLetOffOf({ ...given, ...whole.value });
    return ok({ ...whole.value, travelToLetOffMm, edgeTravelToLetOffMm: millimetres((travelToLetOffMm * given.keyEdgeMm) / given.keyFrontMm), letsOff: whole.value.aftertouchMm >= 0 });
  },
});

type Two = Pick<Regulation, 'blowMm' | 'dipMm'> | Pick<Regulation, 'blowMm' | 'aftertouchMm'> | Pick<Regulation, 'dipMm' | 'aftertouchMm'>;

function solved(given: RegulationBase & Two): Result<Regulation> {
  if (!('blowMm' in given)) return blowSolved(given, given);
  const { blowMm } = given;
  if ('dipMm' in given) return ok({ blowMm, dipMm: given.dipMm, aftertouchMm: aftertouchOf(given, given) });
  return ok({ blowMm, dipMm: dipFor(given, given), aftertouchMm: given.aftertouchMm });
}

function blowSolved(given: RegulationBase, { dipMm, aftertouchMm }: Pick<Regulation, 'dipMm' | 'aftertouchMm'>): Result<Regulation> {
  const blowMm = blowFor(given, { dipMm, aftertouchMm });
  if (blowMm >= given.letOffMm) return ok({ blowMm, dipMm, aftertouchMm });
  const min = dipFor(given, { blowMm: given.letOffMm, aftertouchMm });
  const byMm = min - dipMm;
  return refuse({
    code: 'unreachable', path: 'dipMm', given: dipMm,
    allowed: `at least ${String(min)}, ${String(byMm)} mm more: aftertouch and lost motion leave the hammer no travel`,
    params: { reason: 'dipTooSmall', min, byMm },
  });
}

function edgeIssues({ keyEdgeMm, keyFrontMm }: RegulationBase): readonly Issue[] {
  if (keyEdgeMm >= keyFrontMm) return [];
  return [{ code: 'order', path: 'keyEdgeMm', given: keyEdgeMm, allowed: `at least the measuring point, ${String(keyFrontMm)}`, params: { reason: 'edgeBehindPoint', min: keyFrontMm } }];
}

function letOffIssues(letOffMm: Millimetres, blowMm: Millimetres): readonly Issue[] {
  if (letOffMm <= blowMm) return [];
  return [{ code: 'order', path: 'letOffMm', given: letOffMm, allowed: `at most the blow, ${String(blowMm)}`, params: { reason: 'letOffAboveBlow', max: blowMm } }];
}
