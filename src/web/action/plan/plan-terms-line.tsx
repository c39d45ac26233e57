import { usePiano } from '../../api/piano.tsx';
import { useFigures, useSay } from '../../language/use-say.ts';

/** What the plan reckons with, in one line, and the way to state or change it. */
export function PlanTermsLine({ onChange }: { readonly onChange: () => void }) {
  const say = useSay();
  const figure = useFigures();
  const { action, isCurrent } = usePiano();
  const curve = action?.hammerCurve ?? null;
  const ratios = [action?.weightRatioNatural, action?.weightRatioSharp].map((value) => (value == null ? say('plan.terms.asFound') : figure(value, 2)));
  return (
    <div className="row row-between terms-line">
      <p>
        {say('plan.line.hammers')}: <strong>{curve === null ? say('plan.terms.asFound') : say(`actionTerms.hammerCurve.${curve}`)}</strong>
        {' · '}{say('plan.line.ratio')}: <strong>{ratios.join(' / ')}</strong>
      </p>
      {isCurrent && <button type="button" className="button no-print" onClick={onChange}>{say('plan.terms.change')}</button>}
    </div>
  );
}
