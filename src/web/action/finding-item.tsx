import type { Finding } from '#action';
import { useFigures, useSay } from '../language/use-say.ts';

/** A finding: cause, amount and its doubt, the evidence, and the remedies in the order to try them. */
export function FindingItem({ finding }: { readonly finding: Finding }) {
  const say = useSay();
  const figure = useFigures();
  const { cause, amountG, uncertaintyG, evidence, supportedBy, withinUncertainty, remedies } = finding;
  return (
    <li className={withinUncertainty ? 'finding finding-within' : 'finding'}>
      <p>
        <strong>{say(`cause.${cause}`)}</strong>
        {amountG !== undefined && (
          <>
            {' '}
            <span className="finding-amount">
              {figure(amountG, 1, 'g', true)}
              {uncertaintyG !== undefined && ` ± ${figure(uncertaintyG, 1, 'g')}`}
            </span>
          </>
        )}{' '}
        <span className="soft">{[evidence, ...supportedBy].map((line) => say(`evidence.${line}`)).join('; ')}</span>
      </p>
      <p>{say(`cause.${cause}.why`)}</p>
      {withinUncertainty && <p className="soft">{say('verdict.withinUncertainty')}</p>}
      {remedies.length > 0 && (
        <ol className="remedies">
          {remedies.map((remedy) => (
            <li key={remedy}>
              <details>
                <summary>{say(`remedy.${remedy}`)}</summary>
                <p>{say(`remedy.${remedy}.how`)}</p>
              </details>
            </li>
          ))}
        </ol>
      )}
    </li>
  );
}
