import type { GatheredLeads } from '#workshop';
import { usePiano } from '../../api/piano.tsx';
import { useLocale, useSay } from '../../language/use-say.ts';
import { shownDensity } from '../terms/densities.ts';
import { wholeNumber } from '../../readings/grid/grid-block.ts';

/** What holds for the leads, in one line, and the way to change it. */
export function LeadsLine({ rules, onChange }: { readonly rules: GatheredLeads['rules']; readonly onChange: () => void }) {
  const say = useSay();
  const locale = useLocale();
  const { isCurrent } = usePiano();
  const whole = (value: number): string => wholeNumber(value, locale);
  return (
    <div className="row row-between terms-line">
      <p>
        {say('leads.terms.stated', { drills: rules.drillsMm.map(whole).join('; '), gap: whole(rules.gapMm), grid: whole(rules.gridMm), tolerance: whole(rules.toleranceG), most: rules.maxLeads, density: shownDensity(rules.leadDensityGPerMm3, locale) })}
        {rules.insert !== undefined && <> · <strong>{say('leads.terms.stated.insert', { metal: say(`actionTerms.insertMetal.${rules.insert.metal}`), density: shownDensity(rules.insert.densityGPerMm3, locale) })}</strong></>}
      </p>
      {isCurrent && <button type="button" className="button no-print" onClick={onChange}>{say('leads.terms.change')}</button>}
    </div>
  );
}
