import type { HammerSection } from '#action';
import { noteNameOf } from '#instrument';
import { usePiano } from '../../api/piano.tsx';
import { useFigures, useSay } from '../../language/use-say.ts';
import { StateMark } from '../../leaves/state-mark.tsx';
import { ScrollTable } from '../../ui/scroll-table.tsx';
import type { StateHammers } from './state-hammers.ts';

const shown = [['boreMm', 1, 'mm'], ['levelBoreMm', 1, 'mm'], ['stringHeightMm', 1, 'mm'], ['shankDeg', 2, 'deg'], ['squarenessDeg', 2, 'deg'], ['strikeShiftMm', 2, 'mm']] as const;

/** How the hammers of each section stand at their strings: medians, one table a state. */
export function HammerSections({ hammers: { state, analysis } }: { readonly hammers: StateHammers }) {
  const say = useSay();
  const figure = useFigures();
  const { compass } = usePiano();
  if (!analysis.sections.some(({ bored }) => bored > 0)) return null;
  const nameOf = ({ name, firstKey, lastKey }: HammerSection) => <>{name} <span className="soft small">{noteNameOf(compass, firstKey)}–{noteNameOf(compass, lastKey)}</span></>;
  return (
    <section className="panel" aria-labelledby="hammer-sections">
      <h2 id="hammer-sections">{say('hammers.sections')} <StateMark state={state} /></h2>
      <ScrollTable label={say('hammers.sections.table')} corner={<span className="visually-hidden">{say('action.figure')}</span>} columns={analysis.sections.map((section) => ({ key: section.firstKey, head: <>{nameOf(section)}<br /><span className="soft small">{say('hammers.sections.bored', { bored: section.bored })}</span></> }))}>
        {shown.map(([name, decimals, unit]) => (
          <tr key={name}>
            <th scope="row">{say(`hammers.section.${name}`)}</th>
            {analysis.sections.map((section) => <td key={section.firstKey}>{section[name] === undefined ? <span className="soft">–</span> : figure(section[name], decimals, unit)}</td>)}
          </tr>
        ))}
      </ScrollTable>
      <p className="soft small">{say('hammers.section.medians')}</p>
    </section>
  );
}
