export { problemKinds, problemOf } from './problem.ts';
export type { Problem, ProblemEntry, ProblemKind } from './problem.ts';
export { all, andThen, map, mustBe, ok, refuse, sayIssue, showGiven, under } from './result.ts';
export type { Issue, IssueCode, Result } from './result.ts';
