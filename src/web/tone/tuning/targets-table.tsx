import { type State, noteNameOf } from '#instrument';
import { unitSign } from '#units';
import { usePiano } from '../../api/piano.tsx';
import { Figure } from '../../figure/figure.tsx';
import { useFigures, useSay } from '../../language/use-say.ts';
import { targetStory } from './tuning-stories.ts';
import type { Tuning } from './use-tuning.ts';

/** Every target in one table, with what was read against it. */
export function TargetsTable({ tuning, state }: { readonly tuning: Tuning; readonly state: State }) {
  const say = useSay();
  const figure = useFigures();
  const { compass, instrument } = usePiano();
  const { targets, read } = tuning;
  const off = read.filter((one) => one.off.size > 0);
  const unisons = read.filter((one) => one.unisons.size > 0);
  const [cents, hertz] = [say('tuning.column.target'), say('tuning.column.frequency')];
  const cell = (value: number | undefined, signed: boolean) => (value === undefined ? <span className="soft">–</span> : figure(value, 1, undefined, signed));
  return (
    <details className="panel">
      <summary><h2>{say('tuning.targets')}</h2></summary>
      <p className="soft small">{say('tuning.targets.how', { a4: figure(instrument.a4Hz, Number.isInteger(instrument.a4Hz) ? 0 : 1, 'Hz') })}</p>
      {/* eslint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- what scrolls must be reachable by keyboard */}
      <div className="table-wrap targets-scroll" tabIndex={0} role="region" aria-label={say('tuning.targets')}>
        <table className="figures-table">
          <caption className="visually-hidden">{say('tuning.targets')}</caption>
          <thead>
            <tr>
              <th scope="col">{say('tuning.column.key')}</th><th scope="col">{say('tuning.column.note')}</th><th scope="col">{cents} ({unitSign.ct})</th><th scope="col">{hertz} ({unitSign.Hz})</th>
              {off.map((one) => <th key={one.state} scope="col">{say('tuning.column.off', { state: say(`state.${one.state}`) })} ({unitSign.ct})</th>)}
              {unisons.map((one) => <th key={one.state} scope="col">{say('tuning.column.unison', { state: say(`state.${one.state}`) })} ({unitSign.ct})</th>)}
            </tr>
          </thead>
          <tbody>
            {[...targets].map(([key, { offsetCt, frequencyHz }]) => (
              <tr key={key}>
                <td>{key}</td><th scope="row">{noteNameOf(compass, key)}</th>
                <td><Figure value={offsetCt} decimals={1} signed story={() => targetStory(cents, 'offsetsCents', key, { tuning, state, compass })} /></td>
                <td><Figure value={frequencyHz} decimals={2} story={() => targetStory(hertz, 'frequenciesHz', key, { tuning, state, compass })} /></td>
                {off.map((one) => <td key={one.state}>{cell(one.off.get(key), true)}</td>)}
                {unisons.map((one) => <td key={one.state}>{cell(one.unisons.get(key), false)}</td>)}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}
