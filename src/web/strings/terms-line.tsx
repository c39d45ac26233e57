import { usePiano } from '../api/piano.tsx';
import { useFigures, useSay } from '../language/use-say.ts';
import { decimalsFor } from '../story/say-event.ts';

/** What is asked of the strings, in one line, and the way to state or change it. */
export function TermsLine({ onChange }: { readonly onChange: () => void }) {
  const say = useSay();
  const figure = useFigures();
  const { scale, isCurrent } = usePiano();
  const share = (value: number): string => figure(value, decimalsFor(value, 1), 'pct');
  const [least, most] = [scale?.leastBreakingPct ?? null, scale?.mostBreakingPct ?? null];
  const asked = least !== null && most !== null ? say('strings.terms.between', { least: share(least), most: share(most) })
    : most !== null ? say('strings.terms.upTo', { most: share(most) }) : least !== null ? say('strings.terms.from', { least: share(least) }) : say('strings.terms.nothing');
  return (
    <div className="row row-between terms-line">
      <p>
        <strong>{asked}</strong>
        {scale?.strengthModel != null && ` · ${say(`scale.strengthModel.${scale.strengthModel}`)}`}
        {scale?.wireSeries != null && ` · ${say(`scale.wireSeries.${scale.wireSeries}`)}`}
      </p>
      {isCurrent && <button type="button" className="button no-print" onClick={onChange}>{say('strings.terms.change')}</button>}
    </div>
  );
}
