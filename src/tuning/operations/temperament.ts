import { pitchClasses } from '#instrument';
import { defineOperation, field } from '#operation';
import { ok } from '#result';
import { z } from 'zod';
import { fields } from '../schemas.ts';
import { temperedNotesOf } from '../temperament.ts';
import { temperaments } from '../temperaments.ts';

/** The twelve notes of a historical or equal temperament, worked out from its tempered fifths. */
export const temperamentOperation = defineOperation({
  name: 'temperament',
  input: z.strictObject({ temperament: fields.temperament, root: fields.root.default('C') }),
  output: z.strictObject({
    notes: z.array(z.strictObject({
      note: z.enum(pitchClasses),
      fromCCents: field.cents({ describe: 'Above C' }),
      offsetCents: field.cents({ describe: 'Off equal temperament with the same A' }),
      fifthCents: field.cents({ describe: 'Fifth upward, wide of 3:2' }),
      thirdCents: field.cents({ describe: 'Major third upward, wide of 5:4' }),
    })),
    definedIn: z.string().describe('Key of the source of this temperament'),
  }),
  formula: ['fifth = 1200·log₂(3/2) − p·P − s·S', 'P = 1200·log₂(3¹²/2¹⁹), S = 1200·log₂(81/80)', 'p, s: parts of the commas, as published for each fifth'],
  sources: ['PRACTICE', 'BOETHIUS', 'AARON-1523', 'WERCKMEISTER-1691', 'KIRNBERGER-1779', 'VALLOTTI-1779', 'YOUNG-1800'],
  example: { temperament: 'well1691', root: 'C' },
  run: ({ temperament, root }) => ok({ notes: [...temperedNotesOf(temperament, root)], definedIn: temperaments[temperament].source }),
});
