import { kilogramsPerSecond, newtons, percent } from '#units';
import { type NoteQuestion, noteFiguresOf, questionOf } from './note-figures.ts';
import type { AnalysedNote, AskedBreaking, BreakingVerdict, NoteFigures, ScaleAnalysis, ScaleInput, ScaleNote } from './scale.ts';
import { breaksOf, largestOf, loadOf, sectionFiguresOf, stepsOf } from './scale-loads.ts';

/** Coverage factor of the bands. @source JCGM-100 clause 6.3.3 */
const COVERAGE = 2;

/**
 * Works out every note of a scale, the load of each section and of the plate, and the steps where it breaks.
 * Nothing is judged but the share of breaking, and that only where bounds are asked. What is not known is left out of sums,
 * and the sums say of how many notes they are.
 *
 * `before` is an earlier analysis: a note whose sizes did not change keeps its figures, so that one changed size costs one note.
 * @source OWN
 */
export function analyseScale(input: ScaleInput, before?: ScaleAnalysis): ScaleAnalysis {
  const known = new Map(before?.notes.map((note) => [note.key, note]));
  const notes = input.notes.map((note) => analysedNote(note, input, known.get(note.key)));
  const steps = stepsOf(notes);
  const breaks = breaksOf(steps, notes, input.sections);
  const broken = new Set(breaks.map(({ upperKey }) => upperKey));
  const largestStep = largestOf(steps.filter(({ upperKey }) => !broken.has(upperKey)));
  return {
    notes,
    sections: input.sections.map((section) => sectionFiguresOf(section, notes)),
    plate: loadOf(notes),
    breaks,
    ...(largestStep === undefined ? {} : { largestStep }),
  };
}

/** Questions notes were worked out from, so that the same one need not be put twice. */
const asked = new WeakMap<AnalysedNote, string>();

function analysedNote(note: ScaleNote, { strengthModel, asked: bounds }: ScaleInput, before: AnalysedNote | undefined): AnalysedNote {
  const question = questionOf(note, strengthModel);
  const text = JSON.stringify([note, strengthModel, bounds]);
  if (before !== undefined && asked.get(before) === text) return before;
  const analysed = workOut(note, question, bounds);
  asked.set(analysed, text);
  return analysed;
}

function workOut(note: ScaleNote, question: NoteQuestion | undefined, bounds: AskedBreaking): AnalysedNote {
  if (question === undefined) return { ...note, issues: [] };
  const result = noteFiguresOf(question);
  if (!result.ok) return { ...note, issues: result.issues };
  const figures = result.value;
  const verdict = verdictOf(figures, bounds);
  const unison = note.strings === undefined ? {} : {
    unisonTensionN: newtons(note.strings * figures.tensionN), unisonImpedanceKgPerS: kilogramsPerSecond(note.strings * figures.impedanceKgPerS),
  };
  return { ...note, figures, issues: [], ...unison, ...(verdict === undefined ? {} : { verdict }) };
}

function verdictOf({ breakingPct, uncertainty }: NoteFigures, { leastPct, mostPct }: AskedBreaking): BreakingVerdict | undefined {
  const margins = [
    ...(leastPct === undefined ? [] : [{ side: 'under' as const, outside: leastPct - breakingPct }]),
    ...(mostPct === undefined ? [] : [{ side: 'over' as const, outside: breakingPct - mostPct }]),
  ].toSorted((a, b) => b.outside - a.outside);
  const [nearest] = margins;
  if (nearest === undefined) return undefined;
  const { side, outside } = nearest;
  return { side: outside > 0 ? side : 'within', marginPct: percent(Math.abs(outside)), isDoubtful: Math.abs(outside) < COVERAGE * (uncertainty?.breakingUncertaintyPct ?? 0) };
}
