import { type KeyNumber, noteNameOf } from '#instrument';
import { strikesPlot } from '#plot';
import { type SoftToLoudKey, softToLoudOf } from '#tone';
import type { VoicedFigure } from '#workshop';
import { type ReactNode, useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { Figure } from '../../figure/figure.tsx';
import { KeyPanelFrame } from '../../keys/key-panel-frame.tsx';
import { sayMaybe, useLocale, useSay } from '../../language/use-say.ts';
import { SceneView } from '../../leaves/scene-view.tsx';
import { StateMark } from '../../leaves/state-mark.tsx';
import { useWidth } from '../../leaves/use-width.ts';
import { ExportPlot } from '../compass/export-plot.tsx';
import { voicedPrint } from './hammer-list.tsx';
import { type StateVoicing, lineThrough, strikesOf } from './state-voicing.ts';
import { strikesStory } from './voicing-stories.ts';

interface StrikesPanelProps {
  readonly keyNumber: KeyNumber;
  readonly figure: VoicedFigure;
  readonly voicings: readonly StateVoicing[];
  readonly onKey: (key: KeyNumber) => void;
}

/** The strikes of one key in one state, with what they tell from soft to loud. */
interface OfState {
  readonly voicing: StateVoicing;
  readonly strikes: ReturnType<typeof strikesOf>;
  readonly told: SoftToLoudKey;
}

/** One key from soft to loud: its strikes over their level with the line through them, a state each, and what they tell. */
export function StrikesPanel({ keyNumber, figure, voicings, onKey }: StrikesPanelProps) {
  const say = useSay();
  const { compass } = usePiano();
  const states = useMemo(() => voicings.flatMap((voicing): readonly OfState[] => {
    const strikes = strikesOf(voicing, keyNumber);
    const [told] = strikes.length === 0 ? [] : softToLoudOf(strikes, voicing.gathered.level?.atLevelDb).keys;
    return told === undefined ? [] : [{ voicing, strikes, told }];
  }), [keyNumber, voicings]);
  return (
    <KeyPanelFrame keyNumber={keyNumber} onKey={onKey} className="key-panel">
      <h3>{say('tone.strikes')}</h3>
      {states.length === 0 ? <p>{say('tone.strikes.none', { note: noteNameOf(compass, keyNumber) })}</p> : <><StrikesPlot keyNumber={keyNumber} figure={figure} states={states} /><StrikesTable keyNumber={keyNumber} figure={figure} states={states} /></>}
    </KeyPanelFrame>
  );
}

interface ShownProps extends Pick<StrikesPanelProps, 'keyNumber' | 'figure'> {
  readonly states: readonly OfState[];
}

function StrikesPlot({ keyNumber, figure, states }: ShownProps) {
  const say = useSay();
  const locale = useLocale();
  const { compass } = usePiano();
  const [width, ref] = useWidth(420);
  const note = noteNameOf(compass, keyNumber);
  const scene = useMemo(() => {
    const name = say(`tone.figure.${figure}`);
    const keys = states.map(({ voicing: { state }, strikes, told }) => ({ state, label: say(`state.${state}`), strikes, brightnessAt: told.slopePer10Db === undefined ? undefined : lineThrough(strikes) }));
    return strikesPlot({ keys, places: [], locale, widthPx: Math.max(280, width), heightPx: 210, xLabel: say('tone.strikes.x'), yLabel: `${name}${figure === 'balance' ? ' (dB)' : ''}`, title: say('tone.strikes'), description: say('tone.strikes.described', { figure: name, note, states: keys.map(({ label }) => label).join(', ') }) });
  }, [figure, locale, note, say, states, width]);
  const rows = () => [['key', 'note', 'state', 'levelDb', figure, 'uncertainty'], ...states.flatMap(({ voicing: { state }, strikes }) => strikes.map(({ key, levelDb, brightness, uncertainty = '' }) => [key, note, state, levelDb, brightness, uncertainty]))];
  return (
    <figure ref={ref} className="tone-figure note-curves">
      <SceneView scene={scene} />
      <figcaption className="soft small"><ExportPlot scene={scene} name={`strikes ${note} ${figure}`} rows={rows} /></figcaption>
    </figure>
  );
}

function StrikesTable({ keyNumber, figure, states }: ShownProps) {
  const say = useSay();
  const { compass } = usePiano();
  const { decimals, sign } = voicedPrint[figure];
  const note = noteNameOf(compass, keyNumber);
  const row = (name: string, cell: (state: OfState) => ReactNode) => <tr><th scope="row">{name}</th>{states.map((state) => <td key={state.voicing.state}>{cell(state)}</td>)}</tr>;
  const opened = (name: string, output: 'softestDb' | 'loudestDb' | 'slopePer10Db' | 'brightness', digits: number, unit: string) => row(name, ({ voicing, strikes, told }) => {
    const value = told[output];
    if (value === undefined) return <span className="soft small">{sayMaybe(say, `tone.refusal.${told.refusals[0]?.reason ?? ''}`)}</span>;
    return <><Figure value={value} decimals={digits} story={() => strikesStory(`${name}, ${note}`, `keys[0].${output}`, strikes, voicing.gathered.level?.atLevelDb)} />{unit}</>;
  });
  return (
    <div className="table-wrap">
      <table className="figures-table">
        <caption className="visually-hidden">{say('tone.strikes.caption', { note })}</caption>
        <thead><tr><th scope="col"><span className="visually-hidden">{say('action.figure')}</span></th>{states.map(({ voicing: { state } }) => <th key={state} scope="col"><StateMark state={state} /></th>)}</tr></thead>
        <tbody>
          {row(say('tone.strikes.count'), ({ told }) => told.strikes)}
          {opened(say('tone.strikes.softest'), 'softestDb', 1, ' dB')}
          {opened(say('tone.strikes.loudest'), 'loudestDb', 1, ' dB')}
          {opened(say('tone.strikes.slope'), 'slopePer10Db', decimals, sign)}
          {opened(say(`tone.figure.${figure}`), 'brightness', decimals, sign)}
        </tbody>
      </table>
    </div>
  );
}
