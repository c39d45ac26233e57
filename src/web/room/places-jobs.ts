import { type PlacedPiano, type StandingPiano, mostEvenFirst, placementRowsOf, standingsOf } from '#room';
import type { PlacesQuestion } from '#workshop';
import type { ThreadWatch } from '../ui/thread.ts';

export type PlacesNews = { readonly type: 'progress'; readonly part: number } | { readonly type: 'places'; readonly places: readonly (PlacedPiano | StandingPiano)[] };

const PAUSE_EVERY_MS = 60;

/** Tries the places row by row, telling how far it came. */
export async function tryPlaces({ grid, standing }: PlacesQuestion, { onNews, pause, nowMs }: ThreadWatch<PlacesNews>): Promise<void> {
  const found: PlacedPiano[] = [];
  let spoken = nowMs();
  for (const { places, done, of } of placementRowsOf(grid)) {
    found.push(...places);
    if (nowMs() - spoken < PAUSE_EVERY_MS) continue;
    onNews({ type: 'progress', part: done / of });
    await pause();
    spoken = nowMs();
  }
  onNews({ type: 'places', places: standingsOf(mostEvenFirst(found), standing) });
}
