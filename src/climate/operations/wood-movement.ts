import { grainDirections, woodMovements, woodSpecies } from '#materials';
import { defineOperation, field } from '#operation';
import { ok } from '#result';
import { percent, ratio } from '#units';
import { z } from 'zod';
import { MEASURED_BETWEEN_PCT, woodMovementOf } from '../wood-movement.ts';

const moisture = (describe: string) => field.percent({ min: 0, max: 30, describe });

/** How much a board swells or shrinks across the grain. */
export const woodMovementOperation = defineOperation({
  name: 'wood-movement',
  input: z.strictObject({
    species: z.enum(woodSpecies).describe('The wood'),
    direction: z.enum(grainDirections).describe('radial: quarter-sawn, across the rings; tangential: slab-sawn, along the rings'),
    widthMm: field.millimetres({ above: 0, max: 10_000, describe: 'Width across the grain' }),
    fromPct: moisture('Moisture of the wood before'),
    toPct: moisture('Moisture of the wood after'),
  }),
  output: z.strictObject({
    changeMm: field.millimetres({ describe: 'How much wider, free to move; below nought where it shrinks' }),
    changePct: field.percent({ describe: 'The same as a share of the width' }),
    coefficientPerPct: field.ratio({ describe: 'Change for one per cent of moisture, as a share of the width' }),
    outsideMeasured: z.boolean().describe('Whether a moisture lies outside 6 to 14 %, where the coefficients were measured'),
    borrowedFrom: z.enum(woodSpecies).describe('The wood whose figures were taken, no own ones being known').optional(),
  }),
  formula: ['ΔD = D·C·(M₁ − M₀)', 'C between 6 and 14 % of moisture'],
  sources: ['FPL-190-13', 'FPL-190-13-MEMORY'],
  example: { species: 'european-spruce', direction: 'radial', widthMm: 1400, fromPct: 8, toPct: 5.4 },
  run: ({ fromPct, toPct, ...board }) => {
    const movement = woodMovements[board.species];
    const changeMm = woodMovementOf(board, { fromPct, toPct });
    return ok({
      changeMm,
      changePct: percent(100 * movement[board.direction] * (toPct - fromPct)),
      coefficientPerPct: ratio(movement[board.direction]),
      outsideMeasured: [fromPct, toPct].some((moisturePct) => moisturePct < MEASURED_BETWEEN_PCT.from || moisturePct > MEASURED_BETWEEN_PCT.to),
      ...('borrowedFrom' in movement ? { borrowedFrom: movement.borrowedFrom } : {}),
    });
  },
});
