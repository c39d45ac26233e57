import { type StrokeMeasures, keyStrokeOf } from '#action';
import { type KeyNumber, type QuantityName, keyCountOf } from '#instrument';
import { explainIssue } from '#text';
import { strokeInputOf } from '#workshop';
import { useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useReadings } from '../../api/use-readings.ts';
import { useKept } from '../../kept/kept.ts';
import { useLocale, useSay } from '../../language/use-say.ts';
import { Note } from '../../ui/note.tsx';
import { useTakePart } from '../taken/take-part.ts';
import { KeyPanelFrame } from '../../keys/key-panel-frame.tsx';
import { StrokeFacts } from './stroke-facts.tsx';
import { StrokePlayer } from './stroke-player.tsx';
import './movement.css';

/** Positions a stroke is followed through. */
const POSITIONS = 81;

/** One key followed through its stroke: drawn to scale and stepped, its curves, and what they say; or what is to be measured first. */
export function MovementView() {
  const say = useSay();
  const { id, instrument, cycle, action, compass } = usePiano();
  const [kept, setKey] = useKept<KeyNumber>(`wrestplank.movement.key.${id}`, Math.ceil(keyCountOf(compass) / 2));
  const key = Math.min(Math.max(1, kept), keyCountOf(compass));
  const found = useReadings('found');
  const gathered = useMemo(() => strokeInputOf({ instrument, readings: [...found.values()], cycle, terms: action, key }), [instrument, found, cycle, action, key]);
  if (instrument.kind !== 'grand') return <Note>{say('movement.upright')}</Note>;
  return (
    <div className="movement">
      <section className="panel" aria-labelledby="movement-title">
        <h2 id="movement-title">{say('movement.title')}</h2>
        <p className="soft small">{say('movement.about')}</p>
      </section>
      <KeyPanelFrame keyNumber={key} onKey={setKey}>
        {gathered.measures === undefined ? <Missing names={gathered.missing} /> : <Followed key={key} measures={gathered.measures} dropMm={gathered.dropMm} />}
      </KeyPanelFrame>
      {gathered.assumed.length > 0 && (
        <section className="panel" aria-labelledby="movement-assumed">
          <h2 id="movement-assumed">{say('movement.assumed')}</h2>
          <ul className="assumed">{gathered.assumed.map((what) => <li key={what}>{say(`movement.assumed.${what}`)}</li>)}</ul>
        </section>
      )}
    </div>
  );
}

function Missing({ names }: { readonly names: readonly QuantityName[] }) {
  const say = useSay();
  const { isCurrent } = usePiano();
  const take = useTakePart();
  return (
    <>
      <h3>{say('movement.missing')}</h3>
      <p>{say('movement.missing.why')}</p>
      <ul className="assumed">{names.map((name) => <li key={name}>{say(`quantity.${name}.name`)} <span className="soft small">{say(`quantity.${name}.howTo`)}</span></li>)}</ul>
      {isCurrent && <p><button type="button" className="button button-main" onClick={() => { take('hammers'); }}>{say('movement.take')}</button></p>}
    </>
  );
}

function Followed({ measures, dropMm }: { readonly measures: StrokeMeasures; readonly dropMm: number | undefined }) {
  const say = useSay();
  const locale = useLocale();
  const result = useMemo(() => keyStrokeOf(measures, POSITIONS), [measures]);
  if (!result.ok) return <Note tone="bad" role="alert"><p><strong>{say('movement.refused')}</strong></p><ul>{result.issues.map((issue) => <li key={issue.path + issue.allowed}>{explainIssue(say, issue, locale)}</li>)}</ul></Note>;
  return (
    <>
      <StrokePlayer stroke={result.value} measures={measures} dropMm={dropMm} />
      <StrokeFacts stroke={result.value} measures={measures} dropMm={dropMm} />
    </>
  );
}
