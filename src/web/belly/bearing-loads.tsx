import type { CountedLoad } from '#belly';
import { noteNameOf } from '#instrument';
import { usePiano } from '../api/piano.tsx';
import { useFigures, useSay } from '../language/use-say.ts';
import { StateMark } from '../leaves/state-mark.tsx';
import { ScrollTable } from '../ui/scroll-table.tsx';
import type { StateBelly } from './state-belly.ts';

/** What the strings press on the board with: section by section and whole, with its share of their tension, states side by side. */
export function BearingLoads({ bellies }: { readonly bellies: readonly StateBelly[] }) {
  const say = useSay();
  const { compass, instrument } = usePiano();
  return (
    <section className="panel" aria-labelledby="bearing-loads">
      <h2 id="bearing-loads">{say('belly.loads')}</h2>
      <ScrollTable label={say('belly.loads.table')} corner={say('strings.loads.section')} columns={bellies.map(({ state }) => ({ key: state, head: <StateMark state={state} /> }))}>
        {instrument.sections.map(({ name, firstKey, lastKey }, index) => (
          <tr key={`${name} ${String(index)}`}>
            <th scope="row">{name} <span className="soft small">{noteNameOf(compass, firstKey)}–{noteNameOf(compass, lastKey)}</span></th>
            {bellies.map(({ state, analysis }) => <td key={state}><Counted load={analysis.sections[index]} /></td>)}
          </tr>
        ))}
        <tr className="split-sum">
          <th scope="row">{say('belly.loads.whole')}</th>
          {bellies.map(({ state, analysis }) => <td key={state}><strong><Counted load={analysis.whole} /></strong></td>)}
        </tr>
      </ScrollTable>
      <p className="soft small">{say('belly.loads.about')}</p>
    </section>
  );
}

function Counted({ load: counted }: { readonly load: CountedLoad | undefined }) {
  const say = useSay();
  const figure = useFigures();
  if (counted?.load === undefined) return <span className="soft">–</span>;
  const { load: { forceN, loadPct, forceUncertaintyN }, counted: notes, of } = counted;
  return (
    <>
      {figure(forceN, 0, 'N')}{forceUncertaintyN !== undefined && <span className="soft"> ± {figure(2 * forceUncertaintyN, 0)}</span>}
      <span className="soft small figure-doubt"> {say('belly.loads.share', { share: figure(loadPct, 2), counted: notes, of })}</span>
    </>
  );
}
