import { useSay } from '../language/use-say.ts';
import { Note } from '../ui/note.tsx';

const always = ['tension', 'eyes', 'plate', 'lifting'] as const;

/** The usual cautions of work at the belly; whose call it is stands with them. */
export function Cautions() {
  const say = useSay();
  return (
    <Note tone="warn" role="note">
      <p><strong><span aria-hidden="true">⚠ </span>{say('belly.caution.title')}</strong></p>
      <ul>{always.map((about) => <li key={about}>{say(`belly.caution.${about}`)}</li>)}</ul>
      <p>{say('belly.caution.defer')}</p>
    </Note>
  );
}
