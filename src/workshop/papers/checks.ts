import type { Issue } from '#result';
import type { PaperGiven } from './records.ts';

/** What of a record does not fit together though each field by itself may stand. */
export function paperIssues(record: PaperGiven): readonly Issue[] {
  if (record.kind === 'history') return [];
  const { massG, massHow, massUncertaintyG, densityGPerCm3, densityUncertaintyGPerCm3 } = record;
  return [
    ...(massG !== null && massHow === null ? [wanted('massHow', 'how the mass is known')] : []),
    ...(massG === null && massUncertaintyG !== null ? [wanted('massG', 'the mass the uncertainty is of')] : []),
    ...(densityGPerCm3 === null && densityUncertaintyGPerCm3 !== null ? [wanted('densityGPerCm3', 'the density the uncertainty is of')] : []),
  ];
}

function wanted(path: string, allowed: string): Issue {
  return { code: 'required', path, given: undefined, allowed };
}
