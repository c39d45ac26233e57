import type { Change } from '#workshop';

/**
 * What of an instrument an event changes or rests on, as short names that can be compared:
 * `reading/c1/found/downWeightG/key/40/1`, `session/<id>` for its being there, `session/<id>/stepG` for a field of it, `cycle/2`.
 * Two events whose aspects do not meet can be undone in any order.
 */
export function touchedBy(change: Change): readonly string[] {
  const whole = `${change.entity}/${change.place}`;
  const isCard = change.entity === 'instrument' || change.entity === 'session' || change.entity === 'observation' || change.entity === 'recording' || change.entity === 'pass' || change.entity === 'work' || change.entity === 'quote' || change.entity === 'room' || change.entity === 'paper' || change.entity === 'care' || change.entity === 'shop';
  if (!isCard || change.before === null || change.after === null) return [whole];
  const fields = Object.keys(change.after as object);
  const cycle = change.entity === 'instrument' ? cyclesOf(change) : [];
  return [...fields.map((field) => `${whole}/${field}`), ...cycle];
}

/** What an event rests on besides what it was told: the cards it changes fields of, and the instrument itself. */
export function usedBy(changes: readonly Change[], instrument: string, further: readonly string[] = []): readonly string[] {
  const touched = new Set(changes.flatMap(touchedBy));
  const cards = changes.filter(({ entity }) => entity !== 'reading').map(({ entity, place }) => `${entity}/${place}`);
  return [...new Set([`instrument/${instrument}`, ...cards, ...further])].filter((aspect) => !touched.has(aspect));
}

/** The aspect of a stay in the shop; the first one comes with the instrument. */
export function cycleAspect(cycle: number, instrument: string): string {
  return cycle === 1 ? `instrument/${instrument}` : `cycle/${String(cycle)}`;
}

/** An instrument whose cycle changes opens or takes back the later of the two. */
function cyclesOf({ before, after }: Change): readonly string[] {
  const [from, to] = [before, after].map((body) => (body as { cycle?: number }).cycle);
  return from === undefined || to === undefined ? [] : [`cycle/${String(Math.max(from, to))}`];
}
