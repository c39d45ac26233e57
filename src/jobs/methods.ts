import type { Recording } from '#recording';
import { type Result, ok } from '#result';
import { type AnalysisInput, type AnalysisMethod, noteFiguresOf, runFiguresOf } from '#workshop';

type Method = (recording: Recording, input: AnalysisInput, onProgress: (part: number) => void) => Result<unknown>;

/** What each method works out of a sound. */
export const methods: Readonly<Record<AnalysisMethod, Method>> = {
  'tone-note': ({ samples }, input) => ok(noteFiguresOf(samples, input)),
  'tone-run': ({ samples }, input, onProgress) => ok(runFiguresOf(samples, input, onProgress)),
};
