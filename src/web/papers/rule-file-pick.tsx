import type { PaperRuleFile } from '#law';
import type { Issue } from '#result';
import { useId, useState } from 'react';
import { ApiProblem } from '../api/problem.ts';
import { useDays, useSay } from '../language/use-say.ts';
import { IssueList } from '../shell/issue-list.tsx';
import { ProblemNote } from '../shell/problem-note.tsx';
import { checkedCard } from '../shop/card-form.ts';
import { addCard } from '../shop/shop-writing.ts';
import { Note } from '../ui/note.tsx';

const LIMIT_MB = 1;
const BYTES_PER_MB = 1024 * 1024;

type Said =
  | { readonly kind: 'words'; readonly text: string; readonly isBad: boolean }
  | { readonly kind: 'issues'; readonly issues: readonly Issue[] }
  | { readonly kind: 'problem'; readonly problem: unknown };

/** Takes in a newer file of rules, or says cell by cell why not; hands out the one in use. */
export function RuleFilePick({ inUse }: { readonly inUse: PaperRuleFile | undefined }) {
  const say = useSay();
  const day = useDays();
  const id = useId();
  const [said, setSaid] = useState<Said>();
  const take = async (file: File): Promise<Said> => {
    if (file.size > LIMIT_MB * BYTES_PER_MB) return { kind: 'words', text: say('papers.rules.tooLarge', { name: file.name, limit: LIMIT_MB }), isBad: true };
    const read = parsed(await file.text());
    if ('why' in read) return { kind: 'words', text: say('papers.rules.notJson', { name: file.name, why: read.why }), isBad: true };
    const card = checkedCard({ kind: 'ruleFile', file: read.value });
    if (!card.ok) return { kind: 'issues', issues: card.issues };
    const kept = await addCard(card.value);
    return { kind: 'words', text: kept.kind === 'ruleFile' ? say('papers.rules.taking', { count: kept.file.rules.length, day: day(kept.file.issued) }) : '', isBad: false };
  };
  const pick = (file: File | undefined): void => {
    setSaid(undefined);
    if (file !== undefined) take(file).then(setSaid, (problem: unknown) => { setSaid(problem instanceof ApiProblem && problem.errors.length > 0 ? { kind: 'issues', issues: problem.errors } : { kind: 'problem', problem }); });
  };
  return (
    <>
      <div className="row no-print">
        <label className="button photo-picker" htmlFor={id}>
          {say('papers.rules.take')}
          <input id={id} className="visually-hidden" type="file" accept="application/json,.json" onChange={(event) => { const [file] = event.target.files ?? []; pick(file); event.target.value = ''; }} />
        </label>
        {inUse !== undefined && <a className="button" href={`data:application/json;charset=utf-8,${encodeURIComponent(`${JSON.stringify(inUse, null, 1)}\n`)}`} download={`papers-rules-${inUse.issued}.json`}>{say('papers.rules.download')}</a>}
      </div>
      <div aria-live="polite">
        {said?.kind === 'words' && <Note tone={said.isBad ? 'bad' : 'good'}><p>{said.isBad && <span aria-hidden="true">✕ </span>}{said.text}</p></Note>}
        {said?.kind === 'issues' && <Note tone="bad"><IssueList issues={said.issues} /></Note>}
        {said?.kind === 'problem' && <ProblemNote problem={said.problem} />}
      </div>
    </>
  );
}

function parsed(text: string): { readonly value: unknown } | { readonly why: string } {
  try {
    return { value: JSON.parse(text) as unknown };
  } catch (error) {
    return { why: error instanceof Error ? error.message : String(error) };
  }
}
