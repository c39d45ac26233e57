import { sumOf } from '#numerics';
import { newtons, ratio } from '#units';
import type { AnalysedNote, Load, ScaleBreak, ScaleSection, ScaleStep, SectionFigures } from './scale.ts';

/** Sum of the unisons whose tension and count are known, and of how many notes. @source OWN */
export function loadOf(notes: readonly AnalysedNote[]): Load {
  const known = notes.flatMap(({ unisonTensionN }) => unisonTensionN ?? []);
  return { tensionN: newtons(sumOf(known)), counted: known.length, of: notes.length };
}

/** Load and range of breaking of one section. */
export function sectionFiguresOf(section: ScaleSection, all: readonly AnalysedNote[]): SectionFigures {
  const { name, firstKey, lastKey } = section;
  const notes = all.filter(({ key }) => key >= firstKey && key <= lastKey);
  const shares = notes.flatMap(({ key, figures }) => (figures === undefined ? [] : [{ key, pct: figures.breakingPct }])).toSorted((a, b) => a.pct - b.pct);
  const [least, most] = [shares[0], shares.at(-1)];
  return { name, firstKey, lastKey, load: loadOf(notes), ...(least === undefined || most === undefined ? {} : { breaking: { least, most } }) };
}

/** Every step from a note to the next where both have figures. Ratios are upper over lower. @source OWN */
export function stepsOf(notes: readonly AnalysedNote[]): readonly ScaleStep[] {
  return notes.flatMap((upper, index) => {
    const lower = notes[index - 1];
    if (lower?.figures === undefined || upper.figures === undefined) return [];
    const [low, high] = [lower.figures, upper.figures];
    const unisons = lower.unisonImpedanceKgPerS === undefined || upper.unisonImpedanceKgPerS === undefined
      ? {} : { unisonImpedanceRatio: ratio(upper.unisonImpedanceKgPerS / lower.unisonImpedanceKgPerS) };
    return [{
      lowerKey: lower.key, upperKey: upper.key, tensionRatio: ratio(high.tensionN / low.tensionN),
      inharmonicityRatio: ratio(high.inharmonicityB / low.inharmonicityB), impedanceRatio: ratio(high.impedanceKgPerS / low.impedanceKgPerS), ...unisons,
    }];
  });
}

/** The steps at which a section ends or winding stops, told apart from the rest. */
export function breaksOf(steps: readonly ScaleStep[], notes: readonly AnalysedNote[], sections: readonly ScaleSection[]): readonly ScaleBreak[] {
  const kindAt = new Map(notes.map(({ key, wire }) => [key, wire?.kind]));
  return steps.flatMap((step) => {
    const isSection = sections.some(({ firstKey, lastKey }) => lastKey === step.lowerKey || firstKey === step.upperKey);
    const isWinding = kindAt.get(step.lowerKey) !== kindAt.get(step.upperKey);
    return isSection || isWinding ? [{ ...step, isSection, isWinding }] : [];
  });
}

/** The step with the greatest change of tension, up or down. */
export function largestOf(steps: readonly ScaleStep[]): ScaleStep | undefined {
  const sizeOf = ({ tensionRatio }: ScaleStep): number => Math.abs(Math.log(tensionRatio));
  return steps.reduce<ScaleStep | undefined>((largest, step) => (largest === undefined || sizeOf(step) > sizeOf(largest) ? step : largest), undefined);
}
