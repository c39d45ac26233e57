import type { Say } from '#text';
import { ApiProblem } from './problem.ts';

/** What went wrong as one sentence, in the language of the reader where the kind of problem is known. */
export function sayProblem(problem: unknown, say: Say): string {
  if (!(problem instanceof ApiProblem)) return String(problem);
  if (problem.status === 0) return say('shell.problem.noAnswer');
  const key = `shell.problem.${problem.type.split('#problem-').at(-1) ?? ''}`;
  return say.knows(key) ? say(key) : problem.message;
}
