import type { CardOf } from '#workshop';
import { useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import { cardsOfKind, shopQuery } from '../shop/shop-queries.ts';

/** Targets of reverberation the shop owns; undefined while they are fetched. */
export function useStandards(): { readonly standards: readonly CardOf<'standard'>[] | undefined; readonly error: Error | null; readonly refetch: () => void } {
  const { data, error, refetch } = useQuery(shopQuery({ kinds: ['standard'] }));
  const standards = useMemo(() => (data === undefined ? undefined : cardsOfKind(data, 'standard')), [data]);
  return { standards, error, refetch: () => void refetch() };
}
