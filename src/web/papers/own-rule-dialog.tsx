import type { CardOf } from '#workshop';
import { useState } from 'react';
import { useLocale, useSay } from '../language/use-say.ts';
import { cardChangeOf } from '../shop/card-form.ts';
import { addCard, changeCard } from '../shop/shop-writing.ts';
import { ConditionFields } from './condition-fields.tsx';
import { FieldsDialog } from './fields-dialog.tsx';
import { ownRuleDraftOf, ownRuleFields, ownRuleFormOf } from './own-rule-form.ts';

/** A rule of the shop's own, beside every file. */
export function OwnRuleDialog({ card, onClose }: { readonly card: CardOf<'ownRule'> | undefined; readonly onClose: () => void }) {
  const say = useSay();
  const locale = useLocale();
  const [id] = useState(() => card?.rule.id ?? `own-${Date.now().toString(36)}`);
  return (
    <FieldsDialog
      title={say('shop.kind.ownRule')} name={`papers.ownRule.${card?.id ?? 'new'}`} fields={ownRuleFields} base={() => ownRuleFormOf(card?.rule, locale)}
      stated={(form) => ownRuleDraftOf(form, id, locale)} keep={(draft) => (card === undefined ? addCard(draft) : changeCard(card.id, cardChangeOf(card, draft)))} onClose={onClose}
      more={(part) => <ConditionFields {...part} />}
    />
  );
}
