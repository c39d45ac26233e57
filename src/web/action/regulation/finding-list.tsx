import type { RegulatedKey, RegulationFinding, Turn } from '#action';
import { useFigures, useSay } from '../../language/use-say.ts';
import { Note } from '../../ui/note.tsx';

/** What is found of the regulation of a key, with what to turn; or that nothing is. */
export function RegulationFindings({ regulated: { read, asked, findings } }: { readonly regulated: RegulatedKey }) {
  const say = useSay();
  const names = Object.keys(read);
  if (names.length === 0) return <p className="soft">{say('regulation.key.nothing')}</p>;
  if (findings.length === 0) return names.some((name) => name in asked) ? <p><strong>{say('regulation.key.within')}</strong></p> : <p className="soft">{say('regulation.key.notAsked')}</p>;
  return (
    <>
      {findings.map((finding) => <Found key={`${finding.code} ${finding.name}`} finding={finding} />)}
      {findings.some(({ turns }) => turns.length > 0) && <p className="soft small">{say('regulation.turn.practice')}</p>}
    </>
  );
}

const GRAVE: ReadonlySet<RegulationFinding['code']> = new Set(['blocks', 'noEscape']);

function Found({ finding }: { readonly finding: RegulationFinding }) {
  const say = useSay();
  const figure = useFigures();
  const mm = (value: number): string => figure(value, 2, 'mm');
  const { code, name, figureMm, limitMm, toleranceMm, reach, turns } = finding;
  const way = figureMm > limitMm ? 'high' : 'low';
  const words = { name, what: say(`quantity.${name}.short`), figure: mm(figureMm), limit: mm(limitMm), by: mm(Math.abs(figureMm - limitMm)), tolerance: figure(toleranceMm ?? 0, 2), way, dip: mm(reach?.dipMm ?? 0), blow: mm(reach?.blowMm ?? 0) };
  const isGrave = GRAVE.has(code);
  return (
    <Note tone={isGrave ? 'bad' : 'warn'}>
      <p><strong><span aria-hidden="true">{isGrave ? '✕' : '▲'} </span>{say(`regulation.finding.${code}`, words)}</strong> · {say(`regulation.finding.${code}.evidence`, words)}</p>
      {turns.length > 0 && <ul className="turns" aria-label={say('regulation.turns')}>{turns.map((turn) => <li key={turn.code}><TurnWords turn={turn} /></li>)}</ul>}
    </Note>
  );
}

function TurnWords({ turn: { code, amountMm } }: { readonly turn: Turn }) {
  const say = useSay();
  const figure = useFigures();
  const turn = say(`regulation.turn.${code}`);
  return <>{amountMm === undefined ? turn : say('regulation.turn.amount', { turn, amount: figure(amountMm, 2, 'mm') })}</>;
}
