import type { Recording } from '#recording';
import { type Result, refuse } from '#result';
import type { AnalysisInput, AnalysisMethod } from '#workshop';

type Method = (recording: Recording, input: AnalysisInput, onProgress: (part: number) => void) => Result<unknown>;

const unknown: Method = () => refuse({ code: 'unknown', path: 'method', given: '', allowed: 'a method this program knows' });

/** What each method works out of a sound. */
export const methods: Readonly<Record<AnalysisMethod, Method>> = { 'tone-note': unknown, 'tone-run': unknown };
