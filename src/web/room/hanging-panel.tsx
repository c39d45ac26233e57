import { hangingWords, hungWords, sideWords } from '#report';
import { octaveBands } from '#room';
import { type HangingAdvice, type RoomConsequences, hungOf, roomCalculated } from '#workshop';
import { useMemo } from 'react';
import { Figure } from '../figure/figure.tsx';
import type { FigureStory } from '../figure/figure-store.ts';
import { useLocale, useSay } from '../language/use-say.ts';
import { Note } from '../ui/note.tsx';
import { ScrollTable } from '../ui/scroll-table.tsx';

/** What to hang or lay, how much, in which band it helps and where not. Says nothing where no use is stated. */
export function HangingPanel({ known }: { readonly known: RoomConsequences }) {
  const say = useSay();
  const locale = useLocale();
  const hung = useMemo(() => hungOf(known), [known]);
  if (hung === undefined) return null;
  return (
    <section className="panel" aria-labelledby="room-hang">
      <h3 id="room-hang">{say('room.hang')}</h3>
      <p>{hungWords(hung, say)}</p>
      <ScrollTable label={say('room.figures', { what: say('room.hang') })} corner={say('room.hang.area.m2')} columns={hung.advices.map(({ hanging, on }) => ({ key: hanging.material, head: <>{say(`room.surface.${hanging.material}`)} <span className="soft small">{sideWords(on, say)}</span></> }))}>
        {octaveBands.map((name, band) => <tr key={name}><th scope="row">{`${String(name)}\u00A0${say('room.unit.hertz')}`}</th>{hung.advices.map((advice) => <Needed key={advice.hanging.material} advice={advice} band={band} known={known} />)}</tr>)}
      </ScrollTable>
      {hung.middle === 'live' && <ul>{hung.advices.map((advice) => <li key={advice.hanging.material}>{hangingWords(advice, hung.bassRatio, { say, locale })}</li>)}</ul>}
      <Note tone="warn"><p>{say('room.hang.caution')}</p></Note>
    </section>
  );
}

/** How much of one material a band asks for. */
function Needed({ advice: { hanging, on, needs }, band, known }: { readonly advice: HangingAdvice; readonly band: number; readonly known: RoomConsequences }) {
  const say = useSay();
  const areaM2 = needs[band]?.areaM2 ?? null;
  const covered = known.input.surfaces.find((one) => one.on === on && one.thing === undefined);
  const story = (): FigureStory => ({
    title: say(`room.surface.${hanging.material}`), operation: 'absorption-needed', output: `areaM2[${String(band)}]`,
    input: { room: { ...roomCalculated(known.input), model: known.model }, target: known.target?.seconds ?? 1, material: hanging.material, ...(covered === undefined ? {} : { coversMaterial: covered.face.own ?? covered.face.surface }) },
  });
  return <td>{areaM2 === null ? <span className="soft">{say('room.hang.noHelp')}</span> : <Figure value={areaM2} decimals={1} signed story={story} />}</td>;
}
