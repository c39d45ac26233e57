import type { Issue } from '#result';
import type { RescaleProblem } from '#strings';
import { explainIssue } from '#text';
import { usePiano } from '../../api/piano.tsx';
import { useFigures, useLocale, useSay } from '../../language/use-say.ts';
import { Note } from '../../ui/note.tsx';
import { keysSaid } from './key-runs.ts';

/** Why nothing was reckoned: which limit or field, which notes, and by how much. */
export function Refusal({ issues, problem }: { readonly issues: readonly Issue[]; readonly problem?: RescaleProblem }) {
  const say = useSay();
  const lines = useLines(issues, problem);
  const isOfForm = problem === undefined && issues.every(({ params }) => params?.['keys'] === undefined);
  return (
    <Note tone="bad" role="alert">
      <p><strong><span aria-hidden="true">✕ </span>{isOfForm ? say('rescale.wrong', { count: issues.length }) : say('rescale.refused')}</strong></p>
      {!isOfForm && <ul>{lines.map((line) => <li key={line}>{line}</li>)}</ul>}
    </Note>
  );
}

const WITH_KEYS = ['noLengths', 'noLength', 'noCount', 'nothingToKeep', 'noPlainSizes', 'noWindings'] as const;

/** The issues in words, those of one limit drawn together with the notes they are of. */
function useLines(issues: readonly Issue[], problem: RescaleProblem | undefined): readonly string[] {
  const say = useSay();
  const locale = useLocale();
  const figure = useFigures();
  const { compass } = usePiano();
  const named = (keys: readonly number[]): string => (keys.length === 0 ? '' : ` ${keysSaid(compass, keys)}`);
  const groups = new Map<string, Issue[]>();
  for (const issue of issues) groups.set(groupOf(issue), [...(groups.get(groupOf(issue)) ?? []), issue]);
  return [...groups.values()].map((group) => {
    const [worst = group[0]] = group.toSorted((a, b) => Number(b.params?.['short'] ?? 0) - Number(a.params?.['short'] ?? 0));
    if (worst === undefined) return '';
    const number = (name: string): number => Number(worst.params?.[name] ?? Number.NaN);
    const reason = WITH_KEYS.find((one) => one === worst.params?.['reason']);
    if (reason !== undefined) return `${say(`rescale.refused.${reason}`)}${named(String(worst.params?.['keys']).split(' ').filter(Boolean).map(Number))}`;
    const keys = group.flatMap(({ params }) => (params?.['key'] === undefined ? [] : [Number(params['key'])]));
    const word = `rescale.limit.${worst.path.replace(/^.*limits\./u, '')}`;
    const limit = say.knows(word) ? say(word) : worst.path;
    switch (worst.params?.['reason']) {
      case 'noCandidateWithin': return `${say('rescale.refused.noCandidateWithin', { limit, given: figure(Number(worst.given), 1), nearest: figure(number('nearest'), 1), short: figure(number('short'), 1) })}${named(keys)}`;
      case 'limitsTogether': return `${say('rescale.refused.limitsTogether')}${named(keys)}`;
      case 'totalOutOfReach': return say('rescale.refused.total', { limit, given: figure(Number(worst.given) / 1000, 2), min: figure(number('min') / 1000, 2), max: figure(number('max') / 1000, 2), short: figure(number('short') / 1000, 2) });
      case 'totalBetweenStrings': return say('rescale.refused.totalBetween', { limit, given: figure(Number(worst.given) / 1000, 2), nearest: figure(number('nearest') / 1000, 2) });
      default: {
        const place = Number(/^notes\[(\d+)\]/u.exec(worst.path)?.[1] ?? Number.NaN);
        const key = problem?.notes[place]?.key;
        return `${say('rescale.refused.candidate')}${named(key === undefined ? [] : [key])} ${explainIssue(say, worst, locale)}`;
      }
    }
  });
}

/** What issues are told together by: the limit they are of, or their reason and place. */
function groupOf({ path, params }: Issue): string {
  if (params?.['reason'] === 'noCandidateWithin') return path;
  return `${String(params?.['reason'])} ${String(params?.['limits'] ?? path)}`;
}
