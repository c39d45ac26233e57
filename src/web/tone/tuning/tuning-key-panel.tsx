import { type KeyNumber, type State, noteNameOf } from '#instrument';
import { beatOf, upperPartialOf } from '#tuning';
import { hertz } from '#units';
import { type TunedOctave, stiffNoteOf } from '#workshop';
import type { ReactNode } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { Figure } from '../../figure/figure.tsx';
import { KeyPanelFrame } from '../../keys/key-panel-frame.tsx';
import { decimalsOfB } from '../../language/decimals-of-b.ts';
import { useFigures, useSay } from '../../language/use-say.ts';
import { StateMark } from '../../leaves/state-mark.tsx';
import { beatsStory, targetStory } from './tuning-stories.ts';
import type { Tuning } from './use-tuning.ts';

interface TuningKeyPanelProps {
  readonly keyNumber: KeyNumber;
  readonly tuning: Tuning;
  /** Whose strings the curve is laid over. */
  readonly state: State;
  readonly onKey: (key: KeyNumber) => void;
}

/** One key: where it is to be, what was read of it, and how its octaves beat with both notes on target. */
export function TuningKeyPanel({ keyNumber, tuning, state, onKey }: TuningKeyPanelProps) {
  const say = useSay();
  const { compass } = usePiano();
  const octaves = tuning.octaves.filter(({ lowerKey, upperKey }) => lowerKey === keyNumber || upperKey === keyNumber);
  return (
    <KeyPanelFrame keyNumber={keyNumber} onKey={onKey}>
      {tuning.targets.has(keyNumber) ? <TargetFigures keyNumber={keyNumber} tuning={tuning} state={state} /> : <p>{say('tuning.noTarget')}</p>}
      {tuning.read.length > 0 && <ReadTable keyNumber={keyNumber} tuning={tuning} />}
      {octaves.length > 0 && (
        <dl className="even-figures">
          {octaves.map((octave) => (
            <div key={`${octave.type} ${String(octave.lowerKey)}`}>
              <dt>{say(octave.lowerKey === keyNumber ? 'tuning.figure.octaveAbove' : 'tuning.figure.octaveBelow', { note: noteNameOf(compass, octave.lowerKey === keyNumber ? octave.upperKey : octave.lowerKey) })}, {octave.type}</dt>
              <dd><Beats octave={octave} tuning={tuning} /></dd>
            </div>
          ))}
        </dl>
      )}
    </KeyPanelFrame>
  );
}

function TargetFigures({ keyNumber, tuning, state }: Omit<TuningKeyPanelProps, 'onKey'>) {
  const say = useSay();
  const figure = useFigures();
  const { compass } = usePiano();
  const target = tuning.targets.get(keyNumber);
  const entry = tuning.gathered.input?.keys.find(({ key }) => key === keyNumber);
  const basis = tuning.gathered.bases.get(keyNumber);
  if (target === undefined || entry === undefined || basis === undefined) return null;
  const story = (what: string, output: 'offsetsCents' | 'stretchCents' | 'frequenciesHz') => () => targetStory(what, output, keyNumber, { tuning, state, compass });
  const line = (name: string, shown: ReactNode) => <div><dt>{name}</dt><dd>{shown}</dd></div>;
  return (
    <dl className="even-figures">
      {line(say('tuning.figure.target'), <><Figure value={target.offsetCt} decimals={2} unit="ct" signed story={story(say('tuning.figure.target'), 'offsetsCents')} />{target.uncertaintyCt !== undefined && <span className="soft"> ± {figure(2 * target.uncertaintyCt, 2)}</span>}</>)}
      {line(say('tuning.figure.frequency'), <Figure value={target.frequencyHz} decimals={3} unit="Hz" story={story(say('tuning.figure.frequency'), 'frequenciesHz')} />)}
      {line(say('tuning.figure.stretch'), <Figure value={target.stretchCt} decimals={2} unit="ct" signed story={story(say('tuning.figure.stretch'), 'stretchCents')} />)}
      {line(say('tuning.figure.inharmonicity'), <>{'inharmonicityB' in entry ? figure(entry.inharmonicityB, decimalsOfB(entry.inharmonicityB)) : say('tuning.byPartials')} <span className="soft">{say(`tuning.basis.${basis}`)}</span></>)}
    </dl>
  );
}

function ReadTable({ keyNumber, tuning: { read } }: Pick<TuningKeyPanelProps, 'keyNumber' | 'tuning'>) {
  const say = useSay();
  const figure = useFigures();
  const { compass } = usePiano();
  const row = (name: string, values: readonly (number | undefined)[], signed: boolean) => values.some((value) => value !== undefined) && (
    <tr><th scope="row">{name}</th>{values.map((value, index) => <td key={read[index]?.state}>{value === undefined ? <span className="soft">–</span> : figure(value, 2, 'ct', signed)}</td>)}</tr>
  );
  return (
    <div className="table-wrap">
      <table className="figures-table">
        <caption className="visually-hidden">{say('tuning.key.figures', { note: noteNameOf(compass, keyNumber) })}</caption>
        <thead><tr><th scope="col"><span className="visually-hidden">{say('action.figure')}</span></th>{read.map(({ state }) => <th key={state} scope="col"><StateMark state={state} /></th>)}</tr></thead>
        <tbody>
          {row(say('tuning.figure.pitch'), read.map(({ pitches }) => pitches.get(keyNumber)?.offsetCt), true)}
          {row(say('tuning.figure.off'), read.map(({ off }) => off.get(keyNumber)), true)}
          {row(say('tuning.figure.unison'), read.map(({ unisons }) => unisons.get(keyNumber)), false)}
        </tbody>
      </table>
    </div>
  );
}

/** Beats of an octave of the curve, both notes on target, and whether it is then wide. */
function Beats({ octave: { lowerKey, upperKey, type }, tuning: { gathered, targets } }: { readonly octave: TunedOctave; readonly tuning: Tuning }) {
  const say = useSay();
  const figure = useFigures();
  const { compass } = usePiano();
  const [lower, upper] = [lowerKey, upperKey].map((key) => gathered.input?.keys.find((entry) => entry.key === key));
  const [below, above] = [targets.get(lowerKey), targets.get(upperKey)];
  if (lower === undefined || upper === undefined || below === undefined || above === undefined) return null;
  const beat = beatOf({ frequencyHz: hertz(below.frequencyHz), string: stiffNoteOf(lower) }, { frequencyHz: hertz(above.frequencyHz), string: stiffNoteOf(upper) }, upperPartialOf(type));
  if (beat === undefined) return null;
  const story = beatsStory(`${say('field.beatsPerSecond')}, ${noteNameOf(compass, lowerKey)}–${noteNameOf(compass, upperKey)}`, type, [lower, upper], [below.frequencyHz, above.frequencyHz]);
  return <>{story === undefined ? figure(Math.abs(beat), 2) : <Figure value={Math.abs(beat)} decimals={2} story={() => story} />}/s <span className="soft">{say(beat >= 0 ? 'tuning.wide' : 'tuning.narrow')}</span></>;
}
