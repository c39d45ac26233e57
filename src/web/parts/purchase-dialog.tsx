import { type CardOf, type ShopCardDraft, stockUnits } from '#workshop';
import { useState } from 'react';
import { TakenUp } from '../kept/taken-up.tsx';
import { useLocale, useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { cardChangeOf } from '../shop/card-form.ts';
import { type ShopBook, cardsOfKind } from '../shop/shop-queries.ts';
import { addCard, changeCard } from '../shop/shop-writing.ts';
import { useDialogForm } from '../terms/use-dialog-form.ts';
import { AppDialog } from '../ui/app-dialog.tsx';
import { DayField } from '../ui/day-field.tsx';
import { Field } from '../ui/field.tsx';
import { SelectField } from '../ui/select-field.tsx';
import { MoneyField } from '../worth/money-field.tsx';
import { type PlanKind, planKinds, plannedLines } from './planned-lines.ts';
import { type LineForm, type PurchaseForm, emptyLine, lineFormOf, purchaseFormOf, purchaseOf } from './purchase-form.ts';

type PurchaseDraft = Extract<ShopCardDraft, { kind: 'purchase' }>;

interface PurchaseDialogProps {
  readonly purchase: CardOf<'purchase'> | undefined;
  readonly book: ShopBook;
  readonly onClose: () => void;
}

/** What is ordered of a supplier, line by line; the lines of strings can be taken from the plan of a piano. */
export function PurchaseDialog({ purchase, book, onClose }: PurchaseDialogProps) {
  const say = useSay();
  const locale = useLocale();
  const { form, draft, errorOf, problem: refusal, isBusy, submit } = useDialogForm<PurchaseForm, PurchaseDraft, unknown>({
    name: `purchase.${purchase?.id ?? 'new'}`,
    base: () => purchaseFormOf(purchase, locale),
    stated: (now) => purchaseOf(now, purchase?.receivedOn ?? null, locale),
    keep: (wanted) => (purchase === undefined ? addCard(wanted) : changeCard(purchase.id, cardChangeOf(purchase, wanted))),
    onKept: onClose,
  });
  const { typed, change } = draft;
  const [planProblem, setPlanProblem] = useState<unknown>();
  const [isEmpty, setEmpty] = useState(false);
  const set = (part: Partial<PurchaseForm>): void => { change((now) => ({ ...now, ...part })); };
  const setLine = (index: number, part: Partial<LineForm>): void => { change((now) => ({ ...now, lines: now.lines.map((line, place) => (place === index ? { ...line, ...part } : line)) })); };
  const stocks = cardsOfKind(book.cards, 'stock');
  const takePlanned = async (plan: PlanKind): Promise<void> => {
    setPlanProblem(undefined);
    try {
      const lines = await plannedLines(plan, typed.pianoId, { stocks, locale, say });
      setEmpty(lines.length === 0);
      change((now) => ({ ...now, lines: [...now.lines.filter(({ name, stock }) => name !== '' || stock !== ''), ...lines] }));
    } catch (failure) {
      setPlanProblem(failure);
    }
  };
  const problem = refusal ?? planProblem;
  const suppliers = [...book.contacts.values()].filter(({ details, roles }) => details !== null && roles.includes('supplier'));
  return (
    <AppDialog title={say('shop.kind.purchase')} isOpen onClose={onClose} form="wide">
      <form ref={form} className="card-form" onSubmit={submit} noValidate>
        {draft.isTakenUp && <TakenUp />}
        <div className="fields">
          <SelectField label={say('parts.order.supplier')} value={typed.person} error={errorOf('person')} options={[{ value: '', label: say('shop.field.person.none') }, ...suppliers.map(({ id, details }) => ({ value: id, label: details?.name ?? '' }))]} onChange={(person) => { set({ person }); }} />
          <SelectField label={say('shop.field.pianoId')} value={typed.pianoId} error={errorOf('pianoId')} options={[{ value: '', label: say('shop.field.pianoId.none') }, ...[...book.pianos].map(([value, label]) => ({ value, label }))]} onChange={(pianoId) => { set({ pianoId }); }} />
          <SelectField label={say('shop.field.status')} value={typed.status} options={(['draft', 'ordered', 'received', 'cancelled'] as const).map((value) => ({ value, label: say(`parts.status.${value}`) }))} onChange={(status) => { set({ status }); }} />
          <DayField label={say('parts.order.orderedOn')} value={typed.orderedOn} hint={say('shop.hint.day')} error={errorOf('orderedOn')} onChange={(orderedOn) => { set({ orderedOn }); }} />
          <DayField label={say('parts.order.expectedOn')} value={typed.expectedOn} hint={say('shop.hint.day')} error={errorOf('expectedOn')} onChange={(expectedOn) => { set({ expectedOn }); }} />
          <Field label={say('parts.order.currency')} value={typed.currency} maxLength={3} hint={say('parts.order.currencyHint')} error={errorOf('currency')} onChange={(currency) => { set({ currency }); }} />
        </div>
        {typed.pianoId !== '' && <div className="row"><span>{say('parts.order.fromPlan')}:</span>{planKinds.map((plan) => <button key={plan} type="button" className="button" onClick={() => void takePlanned(plan)}>{say(`parts.order.plan.${plan}`)}</button>)}{isEmpty && <span className="field-warning" role="status">{say('parts.order.noPlan')}</span>}</div>}
        <ol className="line-list">
          {typed.lines.map((line, index) => (
            <li key={index}>
              <SelectField label={say('parts.line.stock')} value={line.stock} options={[{ value: '', label: say('parts.line.noStock') }, ...stocks.map(({ id, name }) => ({ value: id, label: name }))]} onChange={(stock) => { const known = stocks.find(({ id }) => id === stock); setLine(index, known === undefined ? { stock } : { ...lineFormOf({ stock, name: known.name, sizeMm: known.sizeMm, amount: 1, unit: known.unit }, locale), amount: line.amount, price: line.price }); }} />
              <Field label={say('parts.line.name')} value={line.name} error={errorOf(`lines[${String(index)}].name`)} maxLength={200} onChange={(name) => { setLine(index, { name }); }} />
              <Field label={say('shop.field.sizeMm')} value={line.size} inputMode="decimal" error={errorOf(`lines[${String(index)}].sizeMm`)} onChange={(size) => { setLine(index, { size }); }} />
              <Field label={say('parts.line.amount')} value={line.amount} inputMode="decimal" error={errorOf(`lines[${String(index)}].amount`)} onChange={(amount) => { setLine(index, { amount }); }} />
              <SelectField label={say('shop.field.unit')} value={line.unit} options={stockUnits.map((value) => ({ value, label: say(`shop.unit.${value}`) }))} onChange={(unit) => { setLine(index, { unit }); }} />
              <MoneyField label={say('parts.line.price')} value={line.price} currency={typed.currency.trim().toUpperCase()} error={errorOf(`lines[${String(index)}].priceMinor`)} onChange={(price) => { setLine(index, { price }); }} />
              <button type="button" className="button button-quiet" aria-label={say('parts.line.remove', { number: index + 1 })} onClick={() => { change((now) => ({ ...now, lines: now.lines.filter((_, place) => place !== index) })); }}><span aria-hidden="true">✕</span></button>
            </li>
          ))}
        </ol>
        <div className="row"><button type="button" className="button" onClick={() => { change((now) => ({ ...now, lines: [...now.lines, emptyLine] })); }}>{say('parts.line.add')}</button></div>
        <Field label={say('shop.field.details.words')} value={typed.words} lines={2} maxLength={4000} onChange={(words) => { set({ words }); }} />
        {problem !== undefined && <ProblemNote problem={problem} />}
        {errorOf('lines') !== undefined && <p className="field-error" role="alert">{errorOf('lines')}</p>}
        <div className="dialog-foot">
          <button type="button" className="button" onClick={() => { draft.drop(); onClose(); }}>{say('shell.cancel')}</button>
          <button type="submit" className="button button-main" disabled={isBusy}>{say('shell.save')}</button>
        </div>
      </form>
    </AppDialog>
  );
}
