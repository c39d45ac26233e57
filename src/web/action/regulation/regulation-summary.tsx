import { type RegulationOfRegister, type RegulationRow, regulationNames } from '#action';
import { noteNameOf } from '#instrument';
import { sayOfSpread } from '#workshop';
import { usePiano } from '../../api/piano.tsx';
import { Figure } from '../../figure/figure.tsx';
import { useFigures, useSay } from '../../language/use-say.ts';
import { StateMark } from '../../leaves/state-mark.tsx';
import { Note } from '../../ui/note.tsx';
import { ScrollTable } from '../../ui/scroll-table.tsx';
import { workedStory } from './regulation-stories.ts';
import type { StateRegulation } from './state-regulation.ts';

/** Every figure of the regulation over the keyboard: inside of judged, median and largest step, states side by side. */
export function RegulationSummary({ regulations }: { readonly regulations: readonly StateRegulation[] }) {
  const say = useSay();
  const shown = regulationNames.filter((name) => regulations.some(({ analysis }) => analysis.rows.some((row) => row.name === name)));
  return (
    <section className="panel" aria-labelledby="regulation-summary">
      <h2 id="regulation-summary">{say('regulation.summary')}</h2>
      <ScrollTable label={say('regulation.summary.table')} corner={<span className="visually-hidden">{say('action.figure')}</span>} columns={regulations.map(({ state }) => ({ key: state, head: <StateMark state={state} /> }))}>
        {shown.map((name) => (
          <tr key={name}>
            <th scope="row">{say(`quantity.${name}.short`)}</th>
            {regulations.map(({ state, analysis }) => <td key={state}><Counted row={analysis.rows.find((row) => row.name === name)} /></td>)}
          </tr>
        ))}
      </ScrollTable>
      <SpreadLines regulations={regulations} />
    </section>
  );
}

function Counted({ row }: { readonly row: RegulationRow | undefined }) {
  const say = useSay();
  const figure = useFigures();
  const { compass } = usePiano();
  if (row === undefined) return <span className="soft">–</span>;
  const { read, judged, inside, medianMm, largestStepMm, stepKeys } = row;
  const beside = [
    ...(medianMm === undefined ? [] : [say('regulation.summary.median', { median: figure(medianMm, 2, 'mm') })]),
    ...(largestStepMm === undefined || stepKeys === undefined ? [] : [say('regulation.summary.step', { step: figure(largestStepMm, 2, 'mm'), keys: stepKeys.map((key) => noteNameOf(compass, key)).join('–') })]),
  ];
  return (
    <>
      {judged === 0 ? say('regulation.summary.read', { read }) : <strong>{say('regulation.summary.inside', { inside, judged })}</strong>}
      <span className="soft small figure-doubt"> {beside.join(' · ')}</span>
    </>
  );
}

/** The spread as read beside what is asked, states one under the other. */
function SpreadLines({ regulations }: { readonly regulations: readonly StateRegulation[] }) {
  const say = useSay();
  const figure = useFigures();
  const known = regulations.flatMap(({ state, gathered: { spread } }) => (spread === undefined ? [] : [{ state, spread }]));
  if (known.length === 0) return null;
  return (
    <>
      <h3>{say('regulation.spread')}</h3>
      {known.map(({ state, spread }) => <p key={state}><StateMark state={state} /> {spread.isInside === false && <span aria-hidden="true">▲ </span>}{sayOfSpread(say, spread, (value) => figure(value, 1, 'mm'))}</p>)}
    </>
  );
}

/** What is asked, by register and colour, what follows opening to how it was worked out; and where the three do not fit. */
export function RegulationAsked({ regulation }: { readonly regulation: StateRegulation }) {
  const say = useSay();
  const figure = useFigures();
  const { asked } = regulation.analysis;
  if (asked.length === 0) return null;
  const columns = asked.filter(({ colour, worked, figures }) => colour === 'natural' || worked !== undefined || figures.sharpHeightMm !== undefined);
  const nameOf = ({ register, colour }: RegulationOfRegister): string => `${say(`register.${register}`)}, ${say(`colour.${colour}`)}`;
  const shown = regulationNames.filter((name) => columns.some(({ figures }) => figures[name] !== undefined));
  return (
    <section className="panel" aria-labelledby="regulation-asked">
      <h2 id="regulation-asked">{say('regulation.asked.table')}</h2>
      <ScrollTable label={say('regulation.asked.scroll')} corner={<span className="visually-hidden">{say('action.figure')}</span>} columns={shown.map((name) => ({ key: name, head: <>{say(`quantity.${name}.short`)}</> }))}>
        {columns.map((one) => (
          <tr key={`${one.register} ${one.colour}`}>
            <th scope="row">{nameOf(one)}</th>
            {shown.map((name) => {
              const value = one.figures[name];
              const story = one.worked === name ? workedStory(`${say(`quantity.${name}.name`)}, ${nameOf(one)}`, one, regulation) : undefined;
              return <td key={name}>{value === undefined ? <span className="soft">–</span> : story === undefined ? figure(value, 2) : <Figure value={value} decimals={2} story={() => story} />}</td>;
            })}
          </tr>
        ))}
      </ScrollTable>
      {columns.some(({ worked }) => worked !== undefined) && <p className="soft small">{say('regulation.asked.colours')}</p>}
      {asked.map((one) => one.misfit !== undefined && (
        <Note key={`${one.register} ${one.colour}`} tone="warn">
          <p><span aria-hidden="true">▲ </span>{say('regulation.asked.misfit', { register: say(`register.${one.register}`), colour: say(`colour.${one.colour}`), given: figure(one.misfit.givenAftertouchMm, 2, 'mm'), dip: figure(one.misfit.dipMm, 2, 'mm'), blow: figure(one.misfit.blowMm, 1, 'mm') })}</p>
        </Note>
      ))}
    </section>
  );
}
