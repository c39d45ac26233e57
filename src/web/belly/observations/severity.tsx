import type { Observation } from '#instrument';
import { useSay } from '../../language/use-say.ts';

/** Signs that grow with what is at stake; the word says it. */
const SIGNS = { slight: '○', moderate: '◐', serious: '●', stop: '⚠' } as const;

/** How serious a fault is, by word and sign. */
export function Severity({ severity }: { readonly severity: NonNullable<Observation['severity']> }) {
  const say = useSay();
  return <span className={`severity severity-${severity}`}><span aria-hidden="true">{SIGNS[severity]} </span>{say(`observation.severity.${severity}`)}</span>;
}
