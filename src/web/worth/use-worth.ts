import { type Currency, currencyOf, formatMoney } from '#money';
import type { Estimate, EstimateDraft, QuoteAnswer, QuoteDraft } from '#workshop';
import { queryOptions, useMutation, useQuery } from '@tanstack/react-query';
import { call } from '../api/client.ts';
import { usePiano } from '../api/piano.tsx';
import { refreshPiano } from '../api/queries.ts';
import { useLocale } from '../language/use-say.ts';
import { noteWritten } from '../undo/undo.ts';

/** Keeps the estimate of the stay; can be undone like any step. */
export function useStateEstimate() {
  const { id, cycle } = usePiano();
  return useMutation({
    scope: { id: `worth ${id}` },
    mutationFn: async ({ estimate }: { readonly estimate: EstimateDraft; readonly onKept?: () => void }) => {
      await call('setEstimate', { params: { id, cycle: String(cycle) }, body: estimate });
      await noteWritten(id, `c${String(cycle)}`);
    },
    onSuccess: async (_, { onKept }) => {
      onKept?.();
      await refreshPiano(id);
    },
  });
}

type Act =
  | { readonly kind: 'add'; readonly draft: QuoteDraft }
  | { readonly kind: 'change'; readonly id: string; readonly draft: QuoteDraft }
  | { readonly kind: 'withdraw'; readonly id: string }
  | { readonly kind: 'send'; readonly id: string; readonly on: string }
  | { readonly kind: 'answer'; readonly id: string; readonly answer: QuoteAnswer };

/** Writes at quotes. Drafts can be undone; what was sent or answered cannot, so Ctrl+Z is not told of it. */
export function useQuoting() {
  const { id } = usePiano();
  return useMutation({
    scope: { id: `worth ${id}` },
    mutationFn: async (act: Act & { readonly onKept?: () => void }) => {
      const written = await perform(id, act);
      if (written !== undefined) await noteWritten(id, written);
    },
    onSuccess: async (_, { onKept }) => {
      onKept?.();
      await refreshPiano(id);
    },
  });
}

async function perform(id: string, act: Act): Promise<string | undefined> {
  if (act.kind === 'add') return (await call('addQuote', { params: { id }, body: act.draft })).id;
  const params = { id, qid: act.id };
  switch (act.kind) {
    case 'change': {
      const { cycle: _cycle, replaces: _replaces, ...fields } = act.draft;
      return (await call('changeQuote', { params, body: fields })).id;
    }
    case 'withdraw':
      return (await call('withdrawQuote', { params })).id;
    case 'send':
      await call('sendQuote', { params, body: { on: act.on } });
      return undefined;
    case 'answer':
      await call('answerQuote', { params, body: act.answer });
      return undefined;
  }
}

const shopEstimatesQuery = (id: string) =>
  queryOptions({ queryKey: ['piano', id, 'shop-estimates'], queryFn: ({ signal }) => call('listShopEstimates', { params: { id }, signal }) });

/** Estimates of every piano of the workshop this one belongs to; nothing while they are on their way. */
export function useShopEstimates(): readonly Estimate[] | undefined {
  const { id } = usePiano();
  const { data } = useQuery(shopEstimatesQuery(id));
  return data?.estimates.map(({ estimate }) => estimate);
}

/** Prints amounts of one currency in the reader's locale. */
export function useMoney(code: string): (minor: number) => string {
  const locale = useLocale();
  const currency = currencyOf(code) ?? (code as Currency);
  return (minor) => formatMoney({ minor, currency }, locale);
}
