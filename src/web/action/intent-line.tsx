import { askedUpWeightOf } from '#action';
import { type TouchIntent, noteNameOf } from '#instrument';
import { usePiano } from '../api/piano.tsx';
import { useFigures, useSay } from '../language/use-say.ts';

/** What was asked for, in one line, and the way to change it. */
export function IntentLine({ intent, onChange }: { readonly intent: TouchIntent; readonly onChange: () => void }) {
  const say = useSay();
  const figure = useFigures();
  const { compass, isCurrent } = usePiano();
  const weight = (value: number): string => figure(value, Number.isInteger(value) ? 0 : 1, 'g');
  const leastG = askedUpWeightOf(intent);
  const tolerance = weight(intent.toleranceG);
  const target = intent.even === 'curve'
    ? intent.anchors.map(({ key, downWeightG }) => `${noteNameOf(compass, key)} ${weight(downWeightG)}`).join(', ')
    : weight(intent.targetG);
  return (
    <div className="row intent-line">
      <p>
        <strong>{say(`intent.${intent.even}`)}</strong>: {leastG === undefined ? say('action.intent.lineNoLeast', { target, tolerance }) : say('action.intent.line', { target, tolerance, least: weight(leastG) })}
      </p>
      {isCurrent && <button type="button" className="button no-print" onClick={onChange}>{say('action.intent.change')}</button>}
    </div>
  );
}
