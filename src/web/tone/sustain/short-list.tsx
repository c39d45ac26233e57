import { type KeyNumber, type Reading, noteNameOf } from '#instrument';
import type { ShortStretch, SustainMap } from '#tone';
import { SHORT_PCT, type SustainInput } from '#workshop';
import { usePiano } from '../../api/piano.tsx';
import { Figure } from '../../figure/figure.tsx';
import { useFigures, useSay } from '../../language/use-say.ts';
import { stretchStory } from './sustain-story.ts';

interface ShortListProps {
  /** Nothing where too few keys have a decay. */
  readonly map: SustainMap | undefined;
  readonly input: SustainInput;
  readonly humidity: Reading | undefined;
  readonly onKey: (key: KeyNumber) => void;
}

/** Stretches that ring short, each with what to look at there; never a verdict. */
export function ShortList({ map, ...rest }: ShortListProps) {
  const say = useSay();
  return (
    <section className="panel" aria-labelledby="short-title">
      <h2 id="short-title">{say('tone.sustain.short')}</h2>
      {map === undefined && <p>{say('tone.sustain.few')}</p>}
      {map?.short.length === 0 && <p>{say('tone.sustain.none', { share: SHORT_PCT })}</p>}
      <ul className="design-list">{map?.short.map((stretch, place) => <Stretch key={stretch.fromKey} stretch={stretch} place={place} {...rest} />)}</ul>
      {map !== undefined && map.short.length > 0 && <p className="soft small">{say('tone.sustain.claim')}</p>}
    </section>
  );
}

function Stretch({ stretch: { fromKey, toKey, medianRatio, lookAt, bearingDeg, bearingElsewhereDeg }, place, input, humidity, onKey }: Omit<ShortListProps, 'map'> & { readonly stretch: ShortStretch; readonly place: number }) {
  const say = useSay();
  const figure = useFigures();
  const { compass } = usePiano();
  const name = `${noteNameOf(compass, fromKey)}–${noteNameOf(compass, toKey)}`;
  const keys = input.notes.filter(({ key }) => key >= fromKey && key <= toKey).length;
  const degrees = (value: number): string => `${figure(value, 2)}°`;
  const [before, after] = say('tone.sustain.stretch', { ratio: SPLIT, count: keys }).split(SPLIT);
  return (
    <li>
      <button type="button" className="button" onClick={() => { onKey(fromKey); }}>{name}</button>{' '}
      {before}<Figure value={medianRatio} decimals={2} story={() => stretchStory(`${say('field.medianRatio')}, ${name}`, `short[${String(place)}].medianRatio`, input, humidity)} />{after}{' '}
      <strong>{say('tone.sustain.question')}</strong>{' '}
      {bearingDeg !== undefined && say(bearingElsewhereDeg === undefined ? 'tone.sustain.bearingHere' : 'tone.sustain.bearing', { own: degrees(bearingDeg), elsewhere: degrees(bearingElsewhereDeg ?? 0) })}{' '}
      {say('tone.look.at', { what: lookAt.map((look) => say(`tone.look.${look}`)).join('; ') })}
    </li>
  );
}

/** Stands in a sentence where a figure that opens is put. */
const SPLIT = '\uFFFC';
