import type { Say } from '#text';

/** The name of a place in the reader's language; of a country whose parts have laws of their own, the part. Intl knows the others. */
export function placeNameOf(place: string, say: Say, locale: string): string {
  const own = `papers.place.${place}`;
  return say.knows(own) ? say(own) : (new Intl.DisplayNames(locale, { type: 'region' }).of(place) ?? place);
}
