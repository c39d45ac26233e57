import { type Issue, type Problem, type ProblemKind, problemOf } from '#result';
import { explainIssue } from '#text';
import { locale, say } from './language.ts';
import { note, noteProblem } from './output.ts';

/** Why a command ends without its answer: 2 when something given was refused, 1 when the program or the machine failed. */
export class CliFailure extends Error {
  readonly exitCode: 1 | 2;
  readonly problem: Problem;
  /** What a person is told, in the language of the shell. */
  readonly words: readonly string[];

  constructor(exitCode: 1 | 2, problem: Problem, words: readonly string[]) {
    super(words[0] ?? problem.detail);
    this.name = 'CliFailure';
    this.exitCode = exitCode;
    this.problem = problem;
    this.words = words;
  }
}

/** Refuses what was given: exit code 2, one line or entry for each bad field. */
export function refused(issues: readonly Issue[], detail?: string, kind: ProblemKind = 'refused'): CliFailure {
  const lines = issues.map((issue) => (issue.path === '' ? '' : `${issue.path}: `) + explainIssue(say, issue, locale));
  return new CliFailure(2, problemOf(kind, issues, detail), detail === undefined ? lines : [detail, ...lines]);
}

/** Says that the machine or the program is at fault: exit code 1. */
export function failed(words: string, kind: ProblemKind = 'internal'): CliFailure {
  return new CliFailure(1, problemOf(kind, [], words), [words]);
}

/** Tells a failure on standard error, as a problem document where a script listens, and answers the exit code. */
export function tell(error: unknown, asJson: boolean): number {
  const failure = error instanceof CliFailure ? error : failed(say('cli.failed', { message: error instanceof Error ? error.message : String(error) }));
  if (asJson) noteProblem(failure.problem);
  else failure.words.forEach(note);
  if (failure !== error && process.env['WRESTPLANK_DEBUG'] !== undefined && error instanceof Error) note(error.stack ?? '');
  return failure.exitCode;
}
