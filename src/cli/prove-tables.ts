import path from 'node:path';
import { type Reading, type State, compassOf } from '#instrument';
import type { ProofMaterial } from '#proof';
import type { Issue } from '#result';
import { planImport, readingsOfTable } from '#workshop';
import { refused } from './failure.ts';
import { say } from './language.ts';
import { readNamed } from './named-file.ts';
import { note } from './output.ts';
import type { Statements } from './prove-statements.ts';

export interface TableProof {
  readonly found: string | undefined;
  readonly finished: string | undefined;
  readonly statements: Statements;
  readonly locale: string;
  /** When the tables were read, ISO 8601. */
  readonly at: string;
}

/** Reads one or two tables into what a proof is made of. Everything wrong in both is refused together; nothing is left out in silence. */
export async function materialOfTables({ found, finished, statements, locale, at }: TableProof): Promise<Pick<ProofMaterial, 'instrument' | 'sessions' | 'readings' | 'intent' | 'cycle' | 'head'>> {
  const { instrument, session, intent, weighedOn } = statements;
  const issues: Issue[] = [];
  const readings: Reading[] = [];
  const sessions: ProofMaterial['sessions'][number][] = [];
  for (const [state, file] of [['found', found], ['finished', finished]] as const) {
    if (file === undefined) continue;
    const read = await readState(file, { state, statements, locale, at });
    issues.push(...read.issues);
    readings.push(...read.readings);
    sessions.push({ ...blankSession, ...session, id: state, state, weighedOn: weighedOn[state], startedAt: null, repeats: Math.max(1, ...read.readings.map(({ repeat }) => repeat)) });
  }
  if (issues.length > 0) throw refused(issues);
  return { instrument, sessions, readings, intent, cycle: 1, head: null };
}

/** A session of which nothing was stated. */
const blankSession = {
  cycle: 1, weighedOn: null, placeOnKeyMm: null, stepG: null, weightClass: null, repeatabilityG: null, rule: null, dampers: null, helperSprings: null,
  regulated: null, temperatureC: null, humidityPct: null, equipment: null, remark: '',
} as const;

type StateReading = { readonly readings: readonly Reading[]; readonly issues: readonly Issue[] };

async function readState(file: string, { state, statements, locale, at }: Pick<TableProof, 'statements' | 'locale' | 'at'> & { readonly state: State }): Promise<StateReading> {
  const { readTable } = await import('#files');
  const name = path.basename(file);
  const bytes = await readNamed(file);
  if (!bytes.ok) return { readings: [], issues: bytes.issues };
  const read = await readTable({ bytes: bytes.value });
  if (!read.ok) return { readings: [], issues: inFile(name, read.issues) };
  const request = { table: read.value, compass: compassOf(statements.instrument), state, locale };
  const { columns, rows } = planImport({ ...request, cycle: 1, standing: [] });
  for (const { letter, header, target } of columns) if (target === null) note(say('cli.prove.leftOut', { file: name, letter, header }));
  for (const issue of inFile(name, rows.flatMap(({ warnings }) => warnings))) note(say('cli.prove.unlikely', { path: issue.path, given: String(issue.given), allowed: issue.allowed }));
  const readings = readingsOfTable({ ...request, sessionId: state, at, by: 'file' });
  return readings.ok ? { readings: readings.value, issues: [] } : { readings: [], issues: inFile(name, readings.issues) };
}

/** The same issues with the file named first: `found.csv, row 3, column B`. */
function inFile(name: string, issues: readonly Issue[]): readonly Issue[] {
  return issues.map((issue) => ({ ...issue, path: issue.path === '' || issue.path === 'file' ? name : `${name}, ${issue.path}` }));
}
