import { paperPlaces, placeNameOf } from '#law';
import { useMemo } from 'react';
import { useLocale, useSay } from '../language/use-say.ts';

const NONE: readonly { readonly value: string; readonly label: string }[] = [];

/** Every place a shipment may begin or end at, by name; none where they are not asked for. */
export function usePlaceOptions(isAsked: boolean): readonly { readonly value: string; readonly label: string }[] {
  const say = useSay();
  const locale = useLocale();
  return useMemo(() => (isAsked ? [{ value: '', label: say('papers.truth.none') }, ...paperPlaces.map((place) => ({ value: place, label: placeNameOf(place, say, locale) })).toSorted((a, b) => a.label.localeCompare(b.label, locale))] : NONE), [isAsked, say, locale]);
}
