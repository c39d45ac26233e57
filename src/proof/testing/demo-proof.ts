import { analyseTouch } from '#action';
import { type Instrument, type Reading, type WeighingSession, instrumentSchema } from '#instrument';
import { createSay } from '#text';
import { demoShop, standingOf, touchInputOf } from '#workshop';
import type { ProofInput } from '../input.ts';

/** What a proof of the demo grand is made of, as it stands when both states are weighed. */
export function demoProof(locale = 'en', change: Partial<ProofInput> = {}): ProofInput {
  const [piano] = demoShop();
  if (piano === undefined) throw new Error('the demo is empty');
  const instrument: Instrument = instrumentSchema.parse({ ...piano.draft, id: 'demo', workshopId: 'demo', cycle: 1, demo: true });
  const { sessions, readings } = standingOf(piano.steps) as { readonly sessions: readonly WeighingSession[]; readonly readings: readonly Reading[] };
  const touch = (state: 'found' | 'finished') => analyseTouch(touchInputOf({ instrument, sessions, readings, cycle: 1, state, intent: piano.intent }));
  return {
    instrument, cycle: 1, intent: piano.intent, readings,
    sessions: sessions.map((session) => ({ ...session, startedAt: null })),
    found: touch('found'), finished: touch('finished'),
    head: { seq: 1234, hash: 'b94d27b9934d3e08a52e52d7da7dabfac484efe37a5380ee9088f7ace2efcde9' },
    printedAt: '2026-11-25T10:00:00Z', locale, say: createSay(locale), ...change,
  };
}
