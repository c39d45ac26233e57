import { noteNameOf } from '#instrument';
import { usePiano } from '../api/piano.tsx';
import { Figure } from '../figure/figure.tsx';
import { useSay } from '../language/use-say.ts';
import { type Behind, diagnosisStory } from './stories.ts';

const parts = ['ratio', 'hammer', 'wippen', 'front', 'friction'] as const;

/** Where a key's departure comes from: the grams of every part, summing exactly, each to be opened. Shown where every part was weighed. */
export function KeySplit({ behind }: { readonly behind: Behind }) {
  const say = useSay();
  const { compass } = usePiano();
  const { key, shares, reference } = behind.touch;
  if (shares === undefined || reference === undefined) return null;
  const total = parts.reduce((sum, part) => sum + shares[`${part}G`], 0);
  const reach = Math.max(1, ...parts.map((part) => Math.abs(shares[`${part}G`])), Math.abs(total));
  const row = (name: string, output: string, value: number, isSum: boolean) => (
    <tr key={output} className={isSum ? 'split-sum' : undefined}>
      <th scope="row">{name}</th>
      <td className="split-bar"><Bar share={value / reach} /></td>
      <td><Figure value={value} decimals={1} unit="g" signed story={() => diagnosisStory(`${name}, ${noteNameOf(compass, key)}`, output, behind)} /></td>
    </tr>
  );
  return (
    <div className="table-wrap">
      <table className="figures-table split-table">
        <caption>{say('action.split')}</caption>
        <thead className="visually-hidden">
          <tr>
            <th scope="col">{say('action.split.part')}</th>
            <th scope="col">{say('action.split.bar')}</th>
            <th scope="col">{say('action.split.grams')}</th>
          </tr>
        </thead>
        <tbody>
          {parts.map((part) => row(say(`touch.share.${part}`), `${part}G`, shares[`${part}G`], false))}
          {row(say('action.split.sum'), 'downWeightChangeG', total, true)}
        </tbody>
      </table>
    </div>
  );
}

/** A bar from the middle: lighter to the left, heavier to the right. */
function Bar({ share }: { readonly share: number }) {
  const width = Math.abs(share) * 50;
  return (
    <svg viewBox="0 0 100 12" preserveAspectRatio="none" aria-hidden="true">
      <rect x={share < 0 ? 50 - width : 50} y={2} width={width} height={8} className={share < 0 ? 'bar-lighter' : 'bar-heavier'} />
      <line x1={50} x2={50} y1={0} y2={12} className="bar-middle" />
    </svg>
  );
}
