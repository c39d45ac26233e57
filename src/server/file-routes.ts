import { states } from '#instrument';
import { photoTypes } from '#instrument';
import { z } from 'zod';

/** A route that takes or answers with a file instead of JSON of the workshop. */
export interface FileRoute {
  /** Left out: GET. */
  readonly method?: 'POST';
  /** What a body may be sent as. */
  readonly takes?: readonly string[];
  readonly path: string;
  readonly query: z.ZodType;
  readonly types: readonly string[];
}

const cycle = z.string().regex(/^[1-9]\d{0,8}$/u, 'a whole number from 1').optional();
const locale = z.string().max(35).optional();

/** The files a piano is handed out as. */
export const fileRoutes = {
  exportPiano: {
    path: '/api/pianos/:id/export',
    query: z.strictObject({ format: z.enum(['csv', 'tsv', 'xlsx']).default('csv'), cycle, state: z.enum(states).default('found'), locale }),
    types: ['text/csv', 'text/tab-separated-values', 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet'],
  },
  proofDocument: { path: '/api/pianos/:id/proof', query: z.strictObject({ cycle, locale }), types: ['application/json'] },
  proofPdf: { path: '/api/pianos/:id/proof.pdf', query: z.strictObject({ paper: z.enum(['a4', 'letter']).default('a4'), cycle, locale }), types: ['application/pdf'] },
  keepPhoto: { method: 'POST', path: '/api/photos', query: z.strictObject({}), takes: photoTypes, types: ['application/json'] },
  readPhoto: { path: '/api/photos/:hash', query: z.strictObject({}), types: photoTypes },
} as const satisfies Readonly<Record<string, FileRoute>>;
