import { type KeyNumber, noteNameOf } from '#instrument';
import type { HammerVoice } from '#tone';
import type { VoicedFigure } from '#workshop';
import { usePiano } from '../../api/piano.tsx';
import { Figure } from '../../figure/figure.tsx';
import { useSay } from '../../language/use-say.ts';
import type { StateVoicing } from './state-voicing.ts';
import { hammerStory } from './voicing-stories.ts';

interface HammerListProps {
  readonly voicing: StateVoicing;
  readonly figure: VoicedFigure;
  readonly onKey: (key: KeyNumber) => void;
}

/** Decimals and unit sign of what hammers are compared by. */
export const voicedPrint = { brightness: { decimals: 2, sign: '' }, balance: { decimals: 1, sign: ' dB' } } as const satisfies Readonly<Record<VoicedFigure, object>>;

/** Bright and dull hammers, the farthest first, each with how far it stands off and by how much that is beyond what striking again explains. */
export function HammerList({ voicing, figure, onKey }: HammerListProps) {
  const say = useSay();
  const { map, gathered: { lacks } } = voicing;
  const named = (map?.hammers ?? []).filter(({ voice }) => voice !== 'even').toSorted((a, b) => b.beyond - a.beyond);
  return (
    <section className="panel" aria-labelledby="hammer-list-title">
      <h2 id="hammer-list-title">{say('tone.voicing.hammers')}</h2>
      {lacks !== undefined && <p>{say(`tone.voicing.lacks.${lacks}`)}</p>}
      {map !== undefined && named.length === 0 && <p>{say('tone.voicing.even')}</p>}
      {named.length > 0 && (
        <div className="table-wrap">
          <table className="figures-table">
            <caption className="visually-hidden">{say('tone.voicing.hammers')}</caption>
            <thead><tr>{(['key', 'hammers', 'offset', 'beyond'] as const).map((column) => <th key={column} scope="col">{say(`tone.voicing.${column}`)}</th>)}</tr></thead>
            <tbody>{named.map((hammer) => <HammerRow key={hammer.key} hammer={hammer} voicing={voicing} figure={figure} onKey={onKey} />)}</tbody>
          </table>
        </div>
      )}
      {map !== undefined && <p className="soft small">{say('tone.voicing.ear')}</p>}
    </section>
  );
}

function HammerRow({ hammer: { key, voice, offset, beyond }, voicing, figure, onKey }: HammerListProps & { readonly hammer: HammerVoice }) {
  const say = useSay();
  const { compass } = usePiano();
  const { decimals, sign } = voicedPrint[figure];
  return (
    <tr>
      <th scope="row"><button type="button" className="button" onClick={() => { onKey(key); }}>{noteNameOf(compass, key)}</button></th>
      <td>{voice !== 'even' && say(`tone.voicing.${voice}`)}</td>
      <td><Figure value={offset} decimals={decimals} signed story={() => hammerStory(say('tone.voicing.offset'), 'offset', key, voicing, compass)} />{sign}</td>
      <td><Figure value={beyond} decimals={decimals} story={() => hammerStory(say('tone.voicing.beyond'), 'beyond', key, voicing, compass)} />{sign}</td>
    </tr>
  );
}
