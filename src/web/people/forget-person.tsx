import { useState } from 'react';
import { useSay } from '../language/use-say.ts';

interface ForgetPersonProps {
  readonly name: string;
  readonly onForget: () => Promise<boolean>;
}

/** Erases a name on two presses, after saying what that means: this cannot be undone. */
export function ForgetPerson({ name, onForget }: ForgetPersonProps) {
  const say = useSay();
  const [asked, setAsked] = useState(false);
  if (!asked) return <p><button type="button" className="button" onClick={() => { setAsked(true); }}>{say('people.forget')}</button></p>;
  return (
    <>
      <p role="alert">{say('people.forget.hint', { name })}</p>
      <p className="row">
        <button type="button" className="button" onClick={() => { setAsked(false); }}>{say('shell.cancel')}</button>
        <button type="button" className="button button-main" onClick={() => void onForget()}>{say('people.forget.do', { name })}</button>
      </p>
    </>
  );
}
