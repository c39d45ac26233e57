import { photoTypes, states } from '#instrument';
import { type OrderFieldName, orderFieldNames } from '#order';
import { sheetNames } from '#sheets';
import { stockBooks, stockChoices, taxPeriods } from '#workshop';
import { z } from 'zod';
import { soundTypes } from './sound-types.ts';

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

const paper = z.enum(['a4', 'letter']).default('a4');
const figure = z.string().regex(/^\d{1,6}(?:\.\d{1,9})?$/u, 'a number such as 120 or 0.5').optional();
/** What may be stated of an order, and whose strings it is of. */
const ordered = {
  state: z.enum(states).default('planned'), cycle, locale,
  ...(Object.fromEntries(orderFieldNames.map((name) => [name, figure])) as Record<OrderFieldName, typeof figure>),
};

/** Which sheet, and whose keys it looks at. */
const sheeted = { sheet: z.enum(sheetNames), state: z.enum(states).default('found'), cycle, locale };

/** Which lines of the stock book, and what its totals are drawn up for. */
const stocked = { year: z.string().regex(/^[1-9]\d{3}$/u, 'a year such as 2031').optional(), which: z.enum(stockChoices).optional(), period: z.enum(taxPeriods).optional(), book: z.enum(stockBooks).optional(), locale };

/** The files a piano is handed out as. */
export const fileRoutes = {
  exportPiano: {
    path: '/api/pianos/:id/export',
    query: z.strictObject({ format: z.enum(['csv', 'tsv', 'xlsx']).default('csv'), cycle, state: z.enum(states).default('found'), locale }),
    types: ['text/csv', 'text/tab-separated-values', 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet'],
  },
  proofDocument: { path: '/api/pianos/:id/proof', query: z.strictObject({ cycle, locale }), types: ['application/json'] },
  proofPdf: { path: '/api/pianos/:id/proof.pdf', query: z.strictObject({ paper, cycle, locale }), types: ['application/pdf'] },
  orderPdf: { path: '/api/pianos/:id/string-order.pdf', query: z.strictObject({ paper, ...ordered }), types: ['application/pdf'] },
  orderCsv: { path: '/api/pianos/:id/string-order.csv', query: z.strictObject({ table: z.enum(['wound', 'wire']).default('wound'), ...ordered }), types: ['text/csv'] },
  chartPdf: { path: '/api/pianos/:id/stringing-chart.pdf', query: z.strictObject({ paper, ...ordered }), types: ['application/pdf'] },
  chartCsv: { path: '/api/pianos/:id/stringing-chart.csv', query: z.strictObject(ordered), types: ['text/csv'] },
  sheetPdf: { path: '/api/pianos/:id/sheet.pdf', query: z.strictObject({ paper, ...sheeted }), types: ['application/pdf'] },
  sheetCsv: { path: '/api/pianos/:id/sheet.csv', query: z.strictObject(sheeted), types: ['text/csv'] },
  quotePdf: { path: '/api/pianos/:id/quotes/:qid/quote.pdf', query: z.strictObject({ paper, locale }), types: ['application/pdf'] },
  quoteCsv: { path: '/api/pianos/:id/quotes/:qid/quote.csv', query: z.strictObject({ locale }), types: ['text/csv'] },
  estimateCsv: { path: '/api/pianos/:id/estimate.csv', query: z.strictObject({ cycle, locale }), types: ['text/csv'] },
  stockBookPdf: { path: '/api/shop/stock-book.pdf', query: z.strictObject({ paper, ...stocked }), types: ['application/pdf'] },
  stockBookCsv: { path: '/api/shop/stock-book.csv', query: z.strictObject({ table: z.enum(['lines', 'totals']).default('lines'), ...stocked }), types: ['text/csv'] },
  calendar: { path: '/api/shop/calendar.ics', query: z.strictObject({ locale }), types: ['text/calendar'] },
  keepPhoto: { method: 'POST', path: '/api/photos', query: z.strictObject({}), takes: photoTypes, types: ['application/json'] },
  keepRecording: { method: 'POST', path: '/api/recordings', query: z.strictObject({}), takes: ['application/octet-stream'], types: ['application/json'] },
  readRecording: { path: '/api/recordings/:hash', query: z.strictObject({}), types: Object.values(soundTypes) },
  readPhoto: { path: '/api/photos/:hash', query: z.strictObject({}), types: photoTypes },
} as const satisfies Readonly<Record<string, FileRoute>>;
