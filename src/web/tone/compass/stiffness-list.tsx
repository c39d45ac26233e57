import { type KeyNumber, noteNameOf } from '#instrument';
import type { StiffnessFinding } from '#workshop';
import { usePiano } from '../../api/piano.tsx';
import { useFigures, useSay } from '../../language/use-say.ts';

interface StiffnessListProps {
  readonly findings: readonly StiffnessFinding[];
  readonly hasStrings: boolean;
  readonly onKey: (key: KeyNumber) => void;
}

/** Notes that sound stiffer or softer than their strings should be, each with what to look at; never a verdict. */
export function StiffnessList({ findings, hasStrings, onKey }: StiffnessListProps) {
  const say = useSay();
  const figure = useFigures();
  const { compass } = usePiano();
  return (
    <section className="panel" aria-labelledby="stiffness-title">
      <h2 id="stiffness-title">{say('tone.design')}</h2>
      {!hasStrings && <p className="soft">{say('tone.design.noStrings')}</p>}
      {hasStrings && findings.length === 0 && <p>{say('tone.design.agrees')}</p>}
      <ul className="design-list">
        {findings.map(({ key, side, scope, ratio, isShort }) => (
          <li key={key}>
            <button type="button" className="button" onClick={() => { onKey(key); }}>{noteNameOf(compass, key)}</button>{' '}
            {say('tone.design.ratio', { ratio: figure(ratio, 2) })} {say(`tone.design.${side}.${scope}`)} {isShort && say('tone.design.short')}
          </li>
        ))}
      </ul>
      {hasStrings && <p className="soft small">{say('tone.design.about')}</p>}
    </section>
  );
}
