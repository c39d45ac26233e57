import { type KeyNumber, compassOf, noteNameOf } from '#instrument';
import { type Issue, all, ok, refuse } from '#result';
import { questionOf } from '#strings';
import { millimetres, parseMeasure } from '#units';
import { type CardOf, receiptCheckOf, scaleInputOf, stayOf } from '#workshop';
import { useQuery } from '@tanstack/react-query';
import { type SyntheticEvent, useMemo, useState } from 'react';
import { type PianoFile, pianoQuery, readingsQuery } from '../api/queries.ts';
import { useDraft } from '../kept/draft.ts';
import { useLocale, useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { type ShopBook, cardsOfKind } from '../shop/shop-queries.ts';
import { addCard } from '../shop/shop-writing.ts';
import { errorAt } from '../terms/error-at.ts';
import { dayHere } from '../ui/day-here.ts';
import { Field } from '../ui/field.tsx';
import { SelectField } from '../ui/select-field.tsx';
import type { OrderedWound } from './ordered-wound.ts';
import { ReceiptTable } from './receipt-table.tsx';

interface ReceiptCheckProps {
  readonly purchase: CardOf<'purchase'>;
  readonly pianoId: string;
  readonly book: ShopBook;
}

/** A sample of the wound strings a purchase brought, measured, against what was planned for the piano. */
export function ReceiptCheck({ purchase, pianoId, book }: ReceiptCheckProps) {
  const say = useSay();
  const { data: file } = useQuery(pianoQuery(pianoId));
  const cycle = file?.instrument.cycle ?? 1;
  const { data: readings } = useQuery({ ...readingsQuery(pianoId, cycle), enabled: file !== undefined });
  const ordered = useMemo(() => (file === undefined || readings === undefined ? undefined : woundOf(file, readings)), [file, readings]);
  if (file === undefined || ordered === undefined) return null;
  if (ordered.size === 0) return <p className="soft">{say('parts.receipt.noWound')}</p>;
  const receipts = cardsOfKind(book.cards, 'receipt').filter((receipt) => receipt.purchase === purchase.id);
  return (
    <details className="receipt" open={receipts.length > 0}>
      <summary>{say('parts.receipt')}</summary>
      <p className="soft small">{say('parts.receipt.about')}</p>
      {receipts.map((receipt) => <ReceiptTable key={receipt.id} receipt={receipt} ordered={ordered} compass={compassOf(file.instrument)} />)}
      <SampleForm purchase={purchase} pianoId={pianoId} file={file} ordered={ordered} />
    </details>
  );
}

/** The wound notes planned, by key. */
function woundOf(file: PianoFile, readings: Parameters<typeof scaleInputOf>[0]['readings']): ReadonlyMap<KeyNumber, OrderedWound> {
  const { instrument } = file;
  const { input } = scaleInputOf({ instrument, readings, cycle: instrument.cycle, state: 'planned', terms: stayOf(file, instrument.cycle).scale });
  return new Map(input.notes.flatMap((note) => {
    const question = questionOf(note, input.strengthModel);
    return question?.wire.kind === 'wound' ? [[note.key, question as OrderedWound] as const] : [];
  }));
}

const EMPTY = { key: '', core: '', overall: '' };

function SampleForm({ purchase, pianoId, file, ordered }: Omit<ReceiptCheckProps, 'book'> & { readonly file: PianoFile; readonly ordered: ReadonlyMap<KeyNumber, OrderedWound> }) {
  const say = useSay();
  const locale = useLocale();
  const { typed, change, drop } = useDraft<{ readonly samples: readonly typeof EMPTY[] }>(`receipt.${purchase.id}`, () => ({ samples: [EMPTY] }));
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const [problem, setProblem] = useState<unknown>();
  const compass = compassOf(file.instrument);
  const errorOf = (path: string): string | undefined => errorAt(issues, path, say, locale);
  const set = (index: number, part: Partial<typeof EMPTY>): void => { change(({ samples }) => ({ samples: samples.map((sample, place) => (place === index ? { ...sample, ...part } : sample)) })); };
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    const samples = all(typed.samples.map(({ key, core, overall }, index) => {
      const path = `samples[${String(index)}]`;
      const [coreMm, overallMm] = [parseMeasure(core, { unit: 'mm', path: `${path}.coreDiameterMm`, locale }), parseMeasure(overall, { unit: 'mm', path: `${path}.overallDiameterMm`, locale })];
      const note = ordered.get(Number(key));
      if (note === undefined) return refuse({ code: 'required' as const, path: `${path}.key`, given: key, allowed: 'a wound note' });
      if (!coreMm.ok) return coreMm;
      if (!overallMm.ok) return overallMm;
      const sizes = { coreDiameterMm: coreMm.value.value, overallDiameterMm: overallMm.value.value };
      const check = receiptCheckOf(note, { coreDiameterMm: millimetres(sizes.coreDiameterMm), overallDiameterMm: millimetres(sizes.overallDiameterMm) });
      return check.ok ? ok({ key: Number(key), ...sizes }) : refuse(...check.issues.map((issue) => ({ ...issue, path: `${path}.${issue.path}` })));
    }));
    setIssues(samples.ok ? [] : samples.issues);
    if (!samples.ok) return;
    setProblem(undefined);
    addCard({ kind: 'receipt', purchase: purchase.id, pianoId, on: dayHere(), samples: [...samples.value] })
      .then(() => { drop(); change(() => ({ samples: [EMPTY] })); }, setProblem);
  };
  return (
    <form className="card-form" onSubmit={submit} noValidate>
      <ul className="sample-list">
        {typed.samples.map(({ key, core, overall }, index) => (
          <li key={index}>
            <SelectField label={say('parts.receipt.note')} value={key} error={errorOf(`samples[${String(index)}].key`)} options={[{ value: '', label: '–' }, ...[...ordered.keys()].map((one) => ({ value: String(one), label: noteNameOf(compass, one) }))]} onChange={(next) => { set(index, { key: next }); }} />
            <Field label={say('parts.receipt.core')} value={core} inputMode="decimal" error={errorOf(`samples[${String(index)}].coreDiameterMm`)} onChange={(next) => { set(index, { core: next }); }} />
            <Field label={say('parts.receipt.overall')} value={overall} inputMode="decimal" error={errorOf(`samples[${String(index)}].overallDiameterMm`)} onChange={(next) => { set(index, { overall: next }); }} />
          </li>
        ))}
      </ul>
      {problem !== undefined && <ProblemNote problem={problem} />}
      <div className="row">
        <button type="button" className="button" onClick={() => { change(({ samples }) => ({ samples: [...samples, EMPTY] })); }}>{say('parts.receipt.another')}</button>
        <button type="submit" className="button">{say('parts.receipt.keep')}</button>
      </div>
    </form>
  );
}
