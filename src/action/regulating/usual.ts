import { type Millimetres, millimetres } from '#units';
import type { Register } from '../register.ts';
import type { RegulationFigures, RegulationName } from './asked.ts';

const figures = (of: Partial<Readonly<Record<RegulationName, number>>>): RegulationFigures => of as RegulationFigures;

const GRAND = { blowMm: 45, dipMm: 10, dropMm: 1.75, aftertouchMm: 1, checkMm: 14 };
const UPRIGHT = { blowMm: 46.5, dipMm: 10, aftertouchMm: 1.2 };

/**
 * What is usual, for a shop that has no figures of its own yet; millimetres. Grands: blow within 43 to 48 and dip within 9.9
 * to 11 as in six manuals, the rest common practice. Uprights: dip, blow, let-off and travel after it as in one post; no drop.
 * @source TECH-LIST-2002 grands, TECH-LIST-UPRIGHT uprights, PRACTICE the rest
 */
export const usualRegulation: Readonly<Record<'grand' | 'upright', Readonly<Record<Register['name'], RegulationFigures>>>> = {
  grand: { bass: figures({ ...GRAND, letOffMm: 2.5 }), middle: figures({ ...GRAND, letOffMm: 1.5 }), treble: figures({ ...GRAND, letOffMm: 1.5 }) },
  upright: { bass: figures({ ...UPRIGHT, letOffMm: 3 }), middle: figures({ ...UPRIGHT, letOffMm: 2.5 }), treble: figures({ ...UPRIGHT, letOffMm: 2 }) },
};

/** Key level and height of the sharps as usual, grands and uprights. @source TECH-LIST-UPRIGHT sharps, PRACTICE level */
export const usualKeyHeights = { keyLevelMm: millimetres(0), sharpHeightMm: millimetres(12) } as const satisfies RegulationFigures;

/** Key travel that felt and lost motion take before the hammer moves, mm; 0.2 to 0.4. @source PRACTICE */
export const USUAL_LOSS_MM: Millimetres = millimetres(0.3);
