import type { KeyNumber, ScaleTerms } from '#instrument';
import { type Issue, type Result, ok, refuse } from '#result';
import type { RescaleWeights, ScaleAnalysis } from '#strings';
import { type Millimetres, millimetres, newtons, parseMeasure, percent } from '#units';
import type { RescaleWish } from '#workshop';
import { type SeriesName, seriesSizes } from '../series.ts';

/** How much something weighs, in words. */
export const levels = ['none', 'little', 'some', 'much'] as const;
export type Level = (typeof levels)[number];

/** The form of a rescale, as typed and chosen. */
export interface RescaleDraft {
  readonly plain: SeriesName;
  readonly cores: SeriesName;
  readonly coreShape: 'round' | 'hex';
  readonly coreFromMm: string;
  readonly coreToMm: string;
  /** Wrap wires of the shop, or every size of a range. */
  readonly wraps: 'shop' | 'range';
  readonly wrapFromMm: string;
  readonly wrapToMm: string;
  readonly wrapStepMm: string;
  readonly layers: 'single' | 'either';
  readonly highestWoundKey: KeyNumber;
  readonly lockedKeys: readonly KeyNumber[];
  readonly leastPct: string;
  readonly mostPct: string;
  readonly total: 'free' | 'hold' | 'cap';
  readonly totalKN: string;
  /** Place on the way from even tension (0) to even inharmonicity (TRADE_STEPS − 1). */
  readonly trade: number;
  readonly sizeChange: Level;
  readonly nearTarget: Level;
  readonly target: 'standing' | 'line';
  readonly lowestN: string;
  readonly highestN: string;
  readonly acrossBreaks: boolean;
}

/** Points of the trade-off between even tension and even inharmonicity. */
export const TRADE_STEPS = 9;
/** Weight of inharmonicity over that of tension in the middle, and from one point to the next. */
const MIDDLE = 0.1;
const STEP = 10 ** 0.75;
/** A change of size against a squared bend of ln T: 0.001 is a bend of 3 %. */
const SIZE_CHANGE: Readonly<Record<Level, number>> = { none: 0, little: 1e-4, some: 1e-3, much: 1e-2 };
/** A squared distance from ln of the target against a squared bend of ln T. */
const NEAR_TARGET: Readonly<Record<Level, number>> = { none: 0, little: 0.01, some: 0.1, much: 1 };

/** The weights at one point of the trade-off; those of tension and inharmonicity add up to 1. */
export function weightsAt(trade: number, { sizeChange, nearTarget }: Pick<RescaleDraft, 'sizeChange' | 'nearTarget'>): RescaleWeights {
  const share = MIDDLE * STEP ** (trade - (TRADE_STEPS - 1) / 2);
  return { tensionSmoothness: 1 / (1 + share), inharmonicitySmoothness: share / (1 + share), sizeChange: SIZE_CHANGE[sizeChange], tensionDeviation: NEAR_TARGET[nearTarget] };
}

/** A form to begin with, after what is stated of the shop and what stands on the piano. */
export function usualDraft(terms: ScaleTerms | null, { notes, plate }: ScaleAnalysis, locale: string): RescaleDraft {
  const figure = new Intl.NumberFormat(locale, { useGrouping: false, maximumFractionDigits: 2 });
  const series = terms?.wireSeries ?? 'metric';
  const has = (use: 'plain' | 'core' | 'wrap'): boolean => (terms?.wires ?? []).some((wire) => wire.use === use);
  return {
    plain: series === 'shop' && !has('plain') ? 'metric' : series, cores: has('core') ? 'shop' : series === 'shop' ? 'metric' : series,
    coreShape: notes.some(({ wire }) => wire?.kind === 'wound' && wire.coreShape === 'hex') ? 'hex' : 'round',
    coreFromMm: figure.format(0.8), coreToMm: figure.format(1.6), wraps: has('wrap') ? 'shop' : 'range',
    wrapFromMm: figure.format(0.2), wrapToMm: figure.format(1.6), wrapStepMm: figure.format(0.05), layers: 'either',
    highestWoundKey: notes.findLast(({ wire }) => wire?.kind === 'wound')?.key ?? 0, lockedKeys: [],
    leastPct: terms?.leastBreakingPct == null ? '' : figure.format(terms.leastBreakingPct), mostPct: terms?.mostBreakingPct == null ? '' : figure.format(terms.mostBreakingPct),
    total: plate.counted > 0 ? 'hold' : 'free', totalKN: plate.counted === 0 ? '' : figure.format(plate.tensionN / 1000),
    trade: 4, sizeChange: 'little', nearTarget: 'little', target: 'standing', lowestN: '', highestN: '', acrossBreaks: false,
  };
}

const BOUNDS = { pct: { unit: 'pct', min: 1, max: 100 }, kN: { unit: '1', min: 0.1, max: 1000 }, mm: { unit: 'mm', min: 0.05, max: 6 }, n: { unit: 'N', min: 50, max: 5000 } } as const;

/** Reads the form, or says field by field what cannot be: `leastPct`, `wrapStepMm`, … */
export function wishOf(draft: RescaleDraft, terms: ScaleTerms | null, locale: string): Result<RescaleWish> {
  const issues: Issue[] = [];
  const read = (path: keyof RescaleDraft, kind: keyof typeof BOUNDS): number => {
    const { unit, min, max } = BOUNDS[kind];
    const text = String(draft[path]).trim();
    const parsed = parseMeasure(text, { unit, locale, path });
    if (!parsed.ok) issues.push(...parsed.issues);
    else if (parsed.value.value < min || parsed.value.value > max) issues.push({ code: 'range', path, given: text, allowed: `${String(min)} to ${String(max)}`, params: { min, max } });
    else return parsed.value.value;
    return Number.NaN;
  };
  const asked = (path: 'leastPct' | 'mostPct') => (draft[path].trim() === '' ? undefined : percent(read(path, 'pct')));
  const between = (sizes: readonly Millimetres[]): readonly Millimetres[] => {
    const [from, to] = [read('coreFromMm', 'mm'), read('coreToMm', 'mm')];
    return sizes.filter((size) => size >= from && size <= to);
  };
  const range = (): readonly Millimetres[] => {
    const [from, to, step] = [read('wrapFromMm', 'mm'), read('wrapToMm', 'mm'), read('wrapStepMm', 'mm')];
    const least = Math.ceil(1000 * ((to - from) / (MOST_WRAPS - 1))) / 1000;
    if (step < least) issues.push({ code: 'range', path: 'wrapStepMm', given: draft.wrapStepMm, allowed: `at least ${String(least)}`, params: { min: least } });
    if (to < from) issues.push({ code: 'range', path: 'wrapToMm', given: draft.wrapToMm, allowed: `at least ${String(from)}`, params: { min: from } });
    return rangeOf(from, to, step);
  };
  const isWound = draft.highestWoundKey > 0;
  const total = draft.total === 'free' ? undefined : newtons(1000 * read('totalKN', 'kN'));
  const wish: RescaleWish = {
    plainSizesMm: seriesSizes(terms, draft.plain, 'plain'),
    coreSizesMm: !isWound ? [] : draft.cores === 'shop' ? shopSizes(terms, 'core', ({ shape }) => shape === draft.coreShape) : between(seriesSizes(terms, draft.cores, 'core')),
    coreShape: draft.coreShape,
    wrapSizesMm: !isWound ? [] : draft.wraps === 'shop' ? shopSizes(terms, 'wrap', ({ metal }) => metal === (terms?.wrapMetal ?? 'copper')) : range(),
    layers: draft.layers, highestWoundKey: draft.highestWoundKey, lockedKeys: draft.lockedKeys,
    limits: { minBreakingPct: asked('leastPct'), maxBreakingPct: asked('mostPct'), ...(draft.total === 'hold' ? { totalTensionN: total } : draft.total === 'cap' ? { maxTotalTensionN: total } : {}) },
    weights: weightsAt(draft.trade, draft), acrossBreaks: draft.acrossBreaks,
    ...(draft.nearTarget === 'none' ? {} : { target: draft.target === 'standing' ? ('standing' as const) : { lowestN: newtons(read('lowestN', 'n')), highestN: newtons(read('highestN', 'n')) } }),
  };
  return issues.length > 0 ? refuse(...issues) : ok(wish);
}

function shopSizes(terms: ScaleTerms | null, use: 'core' | 'wrap', fits: (wire: ScaleTerms['wires'][number]) => boolean): readonly Millimetres[] {
  return seriesSizes({ wires: (terms?.wires ?? []).filter(fits) }, 'shop', use);
}

/** At most this many wrap sizes: the pairs of them are all tried with every core. */
const MOST_WRAPS = 40;

function rangeOf(from: number, to: number, step: number): readonly Millimetres[] {
  const count = Math.floor((to - from) / step + 1e-9) + 1;
  return count > 0 && count <= MOST_WRAPS ? Array.from({ length: count }, (_, place) => millimetres(Number((from + place * step).toFixed(4)))) : [];
}
