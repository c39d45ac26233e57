import { tuningStretches } from '#instrument';
import { defineOperation, field } from '#operation';
import { ok } from '#result';
import { z } from 'zod';
import { LEAST_PASSES, learntDropsOf, raisePlanOf } from '../pitch-raise.ts';
import { fields } from '../schemas.ts';

const section = z.enum(tuningStretches);

/** How far to raise beyond the pitch wanted, learnt from earlier passes of this shop. */
export const pitchRaiseOperation = defineOperation({
  name: 'pitch-raise',
  input: z.strictObject({
    passes: z.array(z.strictObject({ section, fromCents: fields.cents('Where it stood'), setCents: fields.cents('Where it was set'), settledCents: fields.cents('Where it was found afterwards') })).max(5000).describe('Passes so far, cents off the pitch wanted'),
    standing: z.array(z.strictObject({ section, fromCents: fields.cents('Where it stands'), targetCents: fields.cents('Where it is to settle').default(0 as never) })).max(100).describe('Sections to be raised').default([]),
  }),
  output: z.strictObject({
    sections: z.array(z.strictObject({
      section, passCount: field.count(), missingPassCount: field.count({ describe: 'Passes still wanted before anything is learnt' }),
      dropShare: field.ratio({ describe: 'Share of a raise that is lost again' }).optional(),
      dropShareUncertainty: field.ratio({ describe: 'Standard uncertainty' }).optional(),
      scatterCents: field.cents({ describe: 'Standard deviation of a pass about the line' }).optional(),
    })),
    plans: z.array(z.strictObject({
      section, setCents: field.cents({ describe: 'Where to set it' }), overshootCents: field.cents({ describe: 'Above the pitch wanted' }),
      settlesWithinCents: field.cents({ describe: 'Half-width of the range it should settle in, 95 %' }),
    })),
  }),
  formula: ['set − settled = k·(set − from), least squares through the origin', 'set = (target − k·from)/(1 − k)', '± t₉₅·√(s² + (u(k)·(set − from))²)'],
  sources: ['OWN', 'JCGM-100'],
  example: {
    passes: [[-60, 15, -4], [-40, 10, -1], [-80, 20, -6], [-30, 8, -2]].map(([fromCents, setCents, settledCents]) => ({ section: 'tenor', fromCents, setCents, settledCents })),
    standing: [{ section: 'tenor', fromCents: -50, targetCents: 0 }],
  },
  run: ({ passes, standing }) => {
    const learnt = learntDropsOf(passes);
    return ok({
      sections: learnt.map(({ section: name, passes: passCount, drop }) => ({
        section: name, passCount, missingPassCount: Math.max(0, LEAST_PASSES - passCount),
        ...(drop === undefined ? {} : { dropShare: drop.share, dropShareUncertainty: drop.shareUncertainty, scatterCents: drop.scatterCents }),
      })),
      plans: standing.flatMap(({ section: name, fromCents, targetCents }) => {
        const own = learnt.find((one) => one.section === name);
        return (own === undefined ? undefined : raisePlanOf(own, fromCents, targetCents)) ?? [];
      }),
    });
  },
});
