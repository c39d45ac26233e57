/** The whole proof of the demo grand as PDF, against the same report without its drawings; the first one of a process apart. */
import { renderPdf } from '#files';
import { instrumentSchema } from '#instrument';
import { buildProof, proofInputOf } from '#proof';
import { createSay } from '#text';
import { demoShop, standingOf } from '#workshop';
import { duel, report } from './measure.mjs';

const [piano] = demoShop();
const proof = () => {
  const { sessions, readings } = standingOf(piano.steps);
  const instrument = instrumentSchema.parse({ ...piano.draft, id: 'demo', workshopId: 'demo', cycle: 1, demo: true });
  return buildProof(proofInputOf({ instrument, sessions, readings, cycle: 1, intent: piano.intent, head: null, printedAt: '2026-11-25', locale: 'en', say: createSay('en') }));
};
const plain = proof();
const undrawn = { ...plain, blocks: plain.blocks.filter(({ type }) => type !== 'figure') };

const start = performance.now();
await renderPdf(proof(), { paper: 'a4' });
const firstMs = performance.now() - start;
const result = await duel(() => renderPdf(proof(), { paper: 'a4' }), () => renderPdf(undrawn, { paper: 'a4' }), { runs: 12, warm: 2 });
report('proof-pdf', { unit: 'ms a document', firstMs, ...result });
