import { noteNameOf } from '#instrument';
import type { ReadingEntry, StateTone } from '#workshop';
import { usePiano } from '../../api/piano.tsx';
import { useEnter } from '../../api/use-readings.ts';
import { useLocale, useSay } from '../../language/use-say.ts';
import { wholeNumber } from '../../readings/grid/grid-block.ts';
import { toast } from '../../toast/toasts.ts';

/** Pitch and inharmonicity as heard, taken over as readings in one step that is seen first and can be undone. */
export function TakeOver({ tone }: { readonly tone: StateTone }) {
  const say = useSay();
  const locale = useLocale();
  const { compass, isCurrent } = usePiano();
  const enter = useEnter();
  const entries = entriesOf(tone, locale);
  if (!isCurrent || entries.length === 0) return null;
  const keys = new Set(entries.map(({ index }) => index)).size;
  return (
    <section className="panel" aria-labelledby="take-over-title">
      <h2 id="take-over-title">{say('tone.takeOver')}</h2>
      <p className="soft small">{say('tone.takeOver.about')}</p>
      <details>
        <summary>{say('tone.takeOver.see', { count: entries.length })}</summary>
        <ul className="doubtful-list">{entries.map(({ quantity, index, typed }) => <li key={`${quantity} ${String(index)}`}>{noteNameOf(compass, index)}: {say(`quantity.${quantity}.short`)} {typed}</li>)}</ul>
      </details>
      <div><button type="button" className="button" onClick={() => { enter({ state: tone.state, sessionId: null }, entries); toast(say('tone.takeOver.done', { count: entries.length })); }}>{say('tone.takeOver.do', { keys })}</button></div>
    </section>
  );
}

type Taken = ReadingEntry & { readonly quantity: 'pitchHz' | 'inharmonicityB'; readonly typed: string };

/** Partial 1 by the law of the string in tenths of a millihertz, B to five digits; never of a note heard as another key than told. */
function entriesOf({ byKey }: StateTone, locale: string): readonly Taken[] {
  return [...byKey].toSorted(([a], [b]) => a - b).flatMap(([key, { heard, recording }]): readonly Taken[] => {
    const { note, heardKey } = heard;
    if (heardKey !== key) return [];
    const place = { scope: 'key', index: key, basis: 'measured', remark: recording.fileName } as const;
    const pitch: Taken = { ...place, quantity: 'pitchHz', typed: wholeNumber(Number(note.firstPartialHz.toFixed(4)), locale) };
    return note.inharmonicityB === undefined || note.inharmonicityB <= 0 ? [pitch] : [pitch, { ...place, quantity: 'inharmonicityB', typed: wholeNumber(Number(note.inharmonicityB.toPrecision(5)), locale) }];
  });
}
