import { useSay } from '../language/use-say.ts';
import { Note } from '../ui/note.tsx';

/** The usual caution with strings under tension; whose call it is stands with it. */
export function Caution() {
  const say = useSay();
  return (
    <Note tone="warn" role="note">
      <p><strong><span aria-hidden="true">⚠ </span>{say('strings.caution.title')}</strong> {say('strings.caution.text')}</p>
      <p>{say('strings.caution.plate')}</p>
    </Note>
  );
}
