import { type KeyNumber, noteNameOf } from '#instrument';
import { evenProperties } from '#tone';
import { toneUnits } from '#plot';
import type { StandOuts, StateTone } from '#workshop';
import { usePiano } from '../../api/piano.tsx';
import { OpenFigure } from '../../figure/figure.tsx';
import { useFigures, useSay } from '../../language/use-say.ts';
import { evenStory, outlierStory } from './compass-stories.ts';

interface StandOutListProps {
  readonly tone: StateTone;
  readonly standOuts: StandOuts;
  readonly onKey: (key: KeyNumber) => void;
}

/** The keys that stand out from their neighbours, each with figure and curve, opening to how it was found. */
export function StandOutList({ tone, standOuts, onKey }: StandOutListProps) {
  const say = useSay();
  const figure = useFigures();
  const { compass } = usePiano();
  const { even, others } = standOuts;
  const known = evenProperties.filter((property) => even[property] !== undefined);
  const rows = [
    ...known.flatMap((property) => (even[property]?.outliers ?? []).flatMap((key) => {
      const own = even[property]?.keys.find((one) => one.key === key);
      const unit = toneUnits[property];
      const word = (value: number): string => `${figure(value, 1)}${unit === '' ? '' : ` ${unit}`}`;
      return own === undefined ? [] : [{ id: `${property} ${String(key)}`, key, words: say('tone.standOut.even', { what: say(`tone.figure.${property}`), value: word(own.value), curve: word(own.curve) }), story: () => evenStory(say(`tone.figure.${property}`), property, key, tone, compass) }];
    })),
    ...others.map(({ key, figure: name, value, curve, offset }) => ({ id: `${name} ${String(key)}`, key, words: say(`tone.standOut.${name}`, { value: figure(value, 1), curve: figure(curve, 1), offset: figure(offset, 1) }), story: () => outlierStory(say(`field.${name}`), name, key, standOuts, compass) })),
  ];
  return (
    <section className="panel" aria-labelledby="stand-out-title">
      <h2 id="stand-out-title">{say('tone.standOut')}</h2>
      {rows.length === 0 && <p>{say(known.length === 0 ? 'tone.standOut.few' : 'tone.standOut.none')}</p>}
      <ul className="design-list">
        {rows.map(({ id, key, words, story }) => <li key={id}><button type="button" className="button" onClick={() => { onKey(key); }}>{noteNameOf(compass, key)}</button> <OpenFigure story={story}>{words}</OpenFigure></li>)}
      </ul>
      {known.length > 0 && <p className="soft small">{say('tone.standOut.about')}</p>}
    </section>
  );
}
