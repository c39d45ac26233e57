export { all, andThen, map, mustBe, ok, refuse, sayIssue, showGiven, under } from './result.ts';
export type { Issue, IssueCode, Result } from './result.ts';
