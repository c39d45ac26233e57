import { useSay } from '../language/use-say.ts';

/** Says of a form that it opens as it was left. */
export function TakenUp() {
  const say = useSay();
  return <p className="soft small" role="note">{say('shell.draft.takenUp')}</p>;
}
