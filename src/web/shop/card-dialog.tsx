import type { ShopCard, ShopCardChange, ShopCardDraft, ShopKind } from '#workshop';
import { TakenUp } from '../kept/taken-up.tsx';
import { useLocale, useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { useDialogForm } from '../terms/use-dialog-form.ts';
import { AppDialog } from '../ui/app-dialog.tsx';
import { cardFields } from './card-fields.ts';
import { type CardForm, cardChangeOf, cardDraftOf, cardFormOf } from './card-form.ts';
import { ConditionFields } from './condition-fields.tsx';
import { FieldControl } from './field-control.tsx';
import type { ShopBook } from './shop-queries.ts';
import { addCard, changeCard } from './shop-writing.ts';

interface CardDialogProps {
  readonly kind: ShopKind;
  readonly book: ShopBook;
  /** The card that is corrected; none for a new one. */
  readonly card?: ShopCard | undefined;
  /** What is known of a new card before it is typed, by the paths of its fields. */
  readonly known?: Readonly<Record<string, string>>;
  /** Fields that follow another that was just typed, by their paths. */
  readonly follow?: (path: string, fields: Readonly<Record<string, string>>) => Readonly<Record<string, string>>;
  readonly onClose: () => void;
  readonly onKept?: (card: ShopCard) => void;
}

/** A card of the shop: to make one, or to correct it. What was typed stays on the device until it is kept or given up. */
export default function CardDialog({ kind, book, card, known = {}, follow, onClose, onKept }: CardDialogProps) {
  const say = useSay();
  const locale = useLocale();
  const { form, draft, errorOf, problem, isBusy, submit } = useDialogForm<CardForm, ShopCardDraft, ShopCard>({
    name: `shop.${card?.id ?? `${kind}.${known['acquisition'] ?? known['person'] ?? known['details.name'] ?? 'new'}`}`,
    base: () => cardFormOf(kind, card, locale, known),
    stated: (typed) => cardDraftOf(kind, typed, locale),
    keep: (wanted) => (card === undefined ? addCard(wanted) : changeCard(card.id, cardChangeOf(card, wanted) satisfies ShopCardChange)),
    onKept: (kept) => {
      onClose();
      onKept?.(kept);
    },
  });
  const { typed, change } = draft;
  const set = (path: string, value: string): void => {
    change((now) => {
      const fields = { ...now.fields, [path]: value };
      return { ...now, fields: { ...fields, ...follow?.(path, fields) } };
    });
  };
  const fields = cardFields[kind].filter(({ isLater = false }) => !isLater || card !== undefined);
  return (
    <AppDialog title={say(`shop.kind.${kind}`)} isOpen onClose={onClose} form={kind === 'loan' ? 'wide' : 'usual'}>
      <form ref={form} className="card-form" onSubmit={submit} noValidate>
        {draft.isTakenUp && <TakenUp />}
        {fields.map((field) => (field.as === 'condition' ? (
          <ConditionFields
            key={field.path} side={field.path as 'before' | 'after'} form={typed[field.path as 'before' | 'after']} errorOf={errorOf}
            onChange={(turn) => { change((now) => ({ ...now, [field.path]: turn(now[field.path as 'before' | 'after']) })); }}
          />
        ) : (
          <FieldControl
            key={field.path} field={field} book={book} value={typed.fields[field.path] ?? ''} error={errorOf(field.path)} currency={typed.fields['currency'] ?? ''}
            onChange={(value) => { set(field.path, value); }}
          />
        )))}
        {problem !== undefined && <ProblemNote problem={problem} />}
        <div className="dialog-foot">
          <button type="button" className="button" onClick={() => { draft.drop(); onClose(); }}>{say('shell.cancel')}</button>
          <button type="submit" className="button button-main" disabled={isBusy}>{say('shell.save')}</button>
        </div>
      </form>
    </AppDialog>
  );
}
