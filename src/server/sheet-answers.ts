import { renderPdf, typeOfFormat, writeTable } from '#files';
import { checkInput } from '#operation';
import { type Sheet, type SheetMaterial, type SheetName, sheets } from '#sheets';
import type { State } from '#instrument';
import type { BenchStore } from '#store';
import { createSay } from '#text';
import type { Context, Hono } from 'hono';
import { Refusal, accepted } from './failure.ts';
import { fileAnswer, idOf } from './file-answer.ts';
import { fileRoutes } from './file-routes.ts';
import { localeOf } from './locale.ts';
import { sheetSourceOf } from './material.ts';
import type { Bench } from './mount.ts';

interface SheetQuery {
  readonly sheet: SheetName;
  readonly state: State;
  readonly cycle?: string | undefined;
}

/** Mounts the sheets for the bench, as PDF and as CSV. */
export function mountSheets(app: Hono, { store, clock }: Bench): void {
  const materialOf = async (context: Context, query: SheetQuery): Promise<SheetMaterial> => sheetMaterialOf(await store(), idOf(context), query, { locale: localeOf(context), printedAt: clock().toISOString() });
  app.get(fileRoutes.sheetPdf.path, async (context) => {
    const { paper, ...query } = accepted(checkInput(fileRoutes.sheetPdf.query, context.req.query()));
    const material = await materialOf(context, query);
    const sheet: Sheet = sheets[query.sheet];
    return fileAnswer(await renderPdf(sheet.document(material), { paper }), 'application/pdf', `${sheet.title(material)}.pdf`, 'inline');
  });
  app.get(fileRoutes.sheetCsv.path, async (context) => {
    const query = accepted(checkInput(fileRoutes.sheetCsv.query, context.req.query()));
    const material = await materialOf(context, query);
    const { locale } = query;
    return fileAnswer(await writeTable(sheets[query.sheet].table(material), 'csv', locale === undefined ? {} : { locale }), typeOfFormat('csv'), `${material.instrument.name} ${query.sheet}.csv`);
  });
}

async function sheetMaterialOf(store: BenchStore, id: string, { sheet, state, cycle }: SheetQuery, made: { readonly locale: string; readonly printedAt: string }): Promise<SheetMaterial> {
  const source = await sheetSourceOf(store, id, { sheet, state, cycle: cycle === undefined ? undefined : Number(cycle) });
  const material: SheetMaterial = { ...source, say: createSay(made.locale), ...made };
  const nothing = sheets[sheet].nothing(material);
  if (nothing !== undefined) throw new Refusal('refused', [], nothing);
  return material;
}
