import { KEY_WOOD_DENSITY_G_PER_MM3, type PlanShifts } from '#action';
import type { ActionTerms } from '#instrument';
import { grams, gramsPerCubicMillimetre, millimetres, percent, squareMillimetres } from '#units';

/** The terms that say what is changed on every key alike. */
export type ShiftTerms = Pick<ActionTerms, 'rollerShiftMm' | 'capstanShiftMm' | 'boreShiftMm' | 'hammerChangeG' | 'hammerChangePct' | 'topOldMm' | 'topOldGPerMm3' | 'topNewMm' | 'topNewGPerMm3' | 'topAreaMm2' | 'topCentroidMm' | 'topPlanedMm' | 'woodGPerMm3'>;

/** What of new key tops must be known before they count. */
export const topFields = ['topOldMm', 'topOldGPerMm3', 'topNewMm', 'topNewGPerMm3', 'topAreaMm2', 'topCentroidMm'] as const satisfies readonly (keyof ShiftTerms)[];

/** The shifts that the terms state; what is not stated stays. New key tops count once all of them is known, nothing planed where it is not said. */
export function shiftsOf(terms: ShiftTerms): PlanShifts {
  const [old, oldDensity, fresh, freshDensity, area, centroid] = topFields.map((field) => terms[field]);
  const isTop = old != null && oldDensity != null && fresh != null && freshDensity != null && area != null && centroid != null;
  return {
    rollerOutMm: millimetres(terms.rollerShiftMm ?? 0), capstanAwayMm: millimetres(terms.capstanShiftMm ?? 0), boreMm: millimetres(terms.boreShiftMm ?? 0),
    hammerG: grams(terms.hammerChangeG ?? 0), hammerPct: percent(terms.hammerChangePct ?? 0),
    ...(isTop ? {
      top: {
        oldThicknessMm: millimetres(old), oldDensityGPerMm3: gramsPerCubicMillimetre(oldDensity), newThicknessMm: millimetres(fresh), newDensityGPerMm3: gramsPerCubicMillimetre(freshDensity),
        areaMm2: squareMillimetres(area), centroidMm: millimetres(centroid), planedMm: millimetres(terms.topPlanedMm ?? 0),
        woodDensityGPerMm3: terms.woodGPerMm3 === null ? KEY_WOOD_DENSITY_G_PER_MM3 : gramsPerCubicMillimetre(terms.woodGPerMm3),
      },
    } : {}),
  };
}
