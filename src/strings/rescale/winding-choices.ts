import { steelWire } from '#materials';
import { type GramsPerMetre, type Hertz, type Millimetres, type Newtons, type Percent, newtons, percent } from '#units';
import { flexibleTensionOf } from '../plain-string.ts';
import { type CoreShape, sectionAreaMm2 } from '../section.ts';
import { type Wrap, windingFiguresOf } from '../winding.ts';
import { type StrengthModel, type WireStrengthQuestion, wireStrengthOf } from '../wire-strength.ts';

/** Core wire there is. */
export interface StockCore extends Pick<WireStrengthQuestion, 'certificateMPa'> {
  readonly diameterMm: Millimetres;
  readonly shape: CoreShape;
}

/** What wound strings can be made of. */
export interface WindingStock {
  readonly cores: readonly StockCore[];
  readonly wraps: readonly Wrap[];
  /** Whether two wraps may lie over each other. */
  readonly layers: 'single' | 'double' | 'either';
  readonly strengthModel?: StrengthModel | undefined;
}

/** A winding that can be made, whatever note it is for. */
export interface StockWinding {
  readonly core: StockCore;
  readonly wraps: readonly Wrap[];
  readonly linearDensityGPerM: GramsPerMetre;
  /** What breaks the core. */
  readonly breakingLoadN: Newtons;
}

/** Every winding of a stock: each core with each wrap, and with each pair of which the inner is not the stouter. @source PRACTICE */
export function windingsOf({ cores, wraps, layers, strengthModel }: WindingStock): readonly StockWinding[] {
  const single = layers === 'double' ? [] : wraps.map((wrap) => [wrap]);
  const double = layers === 'single' ? [] : wraps.flatMap((inner) => wraps.filter(({ wireDiameterMm }) => wireDiameterMm >= inner.wireDiameterMm).map((outer) => [inner, outer]));
  return cores.flatMap((core) => {
    const { diameterMm, shape, certificateMPa } = core;
    const { tensileStrengthMPa } = wireStrengthOf({ diameterMm, strengthModel, certificateMPa });
    const breakingLoadN = newtons(tensileStrengthMPa * sectionAreaMm2(diameterMm, shape));
    return [...single, ...double].flatMap((layer) => {
      const winding = windingFiguresOf({ coreDiameterMm: diameterMm, coreShape: shape, coreDensityKgM3: steelWire.densityKgM3.value, wraps: layer });
      return winding.ok ? [{ core, wraps: layer, linearDensityGPerM: winding.value.linearDensityGPerM, breakingLoadN }] : [];
    });
  });
}

/** Where a winding must come to lie, and how many are wanted. */
export interface WindingWish {
  readonly frequencyHz: Hertz;
  readonly speakingLengthMm: Millimetres;
  readonly minBreakingPct?: Percent | undefined;
  readonly maxBreakingPct?: Percent | undefined;
  readonly most: number;
}

/** Bare ends and stiffness move the share of breaking by less than this; nothing that might yet keep the limits is passed over. */
const SLACK = 1.05;
/** Without limits: outside this no core is loaded in a piano; per cent of breaking. @source PRACTICE */
const USUAL_PCT = { least: percent(10), most: percent(90) };

/**
 * The windings a note may choose among, at most `most`: those within the limits as flexible strings, spread evenly over
 * ln T, the cores taking turns. Where none is within, those that miss by least, so that a refusal can say by how much.
 * @source OWN
 */
export function windingChoicesFor(windings: readonly StockWinding[], { minBreakingPct = USUAL_PCT.least, maxBreakingPct = USUAL_PCT.most, most, ...note }: WindingWish): readonly StockWinding[] {
  const loaded = windings.map((winding) => {
    const tensionN = flexibleTensionOf({ ...note, linearDensityGPerM: winding.linearDensityGPerM });
    return { winding, tensionN, pct: (100 * tensionN) / winding.breakingLoadN };
  });
  const missOf = (pct: number): number => Math.max(minBreakingPct / SLACK - pct, pct - maxBreakingPct * SLACK, 0);
  const within = loaded.filter(({ pct }) => missOf(pct) === 0);
  if (within.length === 0) return loaded.toSorted((a, b) => missOf(a.pct) - missOf(b.pct)).slice(0, most).map(({ winding }) => winding);
  if (within.length <= most) return within.map(({ winding }) => winding);
  return spread(within.toSorted((a, b) => a.tensionN - b.tensionN), most).map(({ winding }) => winding);
}

/** One of each stretch of ln T, in turn another core's. */
function spread<T extends { readonly winding: StockWinding; readonly tensionN: number }>(sorted: readonly T[], most: number): readonly T[] {
  const [low, high] = [Math.log(sorted[0]?.tensionN ?? 1), Math.log(sorted.at(-1)?.tensionN ?? 1)];
  const stretches: T[][] = Array.from({ length: most }, () => []);
  for (const one of sorted) stretches[Math.min(most - 1, Math.floor(((Math.log(one.tensionN) - low) / (high - low)) * most))]?.push(one);
  return stretches.flatMap((stretch, turn) => {
    const byCore = stretch.toSorted((a, b) => a.winding.core.diameterMm - b.winding.core.diameterMm);
    return byCore[turn % Math.max(1, byCore.length)] ?? [];
  });
}
