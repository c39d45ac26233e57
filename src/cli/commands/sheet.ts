import path from 'node:path';
import { type Instrument, states } from '#instrument';
import { type SheetMaterial, type SheetName, sheetNames, sheets } from '#sheets';
import { createSay } from '#text';
import type { CommandModule, InferredOptionTypes } from 'yargs';
import { localeAsked, paperFor, writeWhole } from '../document-file.ts';
import { refused } from '../failure.ts';
import { cycleOf } from '../file-options.ts';
import { say } from '../language.ts';
import { note, printJson } from '../output.ts';
import { documentOptions } from '../prove-options.ts';
import { dataOption, findInstrument, instrumentPositional, withStore } from '../with-store.ts';

const { paper, lang, json } = documentOptions;
const options = {
  out: { type: 'string', demandOption: true, requiresArg: true, describe: say('cli.sheet.out') },
  state: { choices: states, default: 'found' as const, describe: say('cli.sheet.state') },
  cycle: { type: 'string', requiresArg: true, describe: say('cli.cycle') },
  paper, lang, json, ...dataOption,
} as const;

type SheetArguments = InferredOptionTypes<typeof options> & { readonly sheet: SheetName; readonly instrument: string };

/** `sheet regulation INSTRUMENT --out sheet.pdf`; a name ending in .csv writes its table. */
export const sheet: CommandModule<object, SheetArguments> = {
  command: 'sheet <sheet> <instrument>',
  describe: say('cli.sheet'),
  builder: (yargs) => yargs.positional('sheet', { choices: sheetNames, demandOption: true, describe: say('cli.sheet.kind') }).positional('instrument', instrumentPositional).options(options),
  handler: async (given) => {
    const locale = localeAsked(given.lang);
    const kind = path.extname(given.out).toLowerCase();
    if (kind !== '.pdf' && kind !== '.csv') throw refused([{ code: 'choice', path: '--out', given: given.out, allowed: 'a name ending in .pdf or .csv', params: { choices: '.pdf, .csv' } }]);
    const material = await materialOf(given, locale);
    await writeWhole(given.out, await (kind === '.pdf' ? pdfOf(given, material) : csvOf(given, material)));
    if (given.json) return printJson({ out: given.out, sheet: given.sheet, state: given.state });
    note(say('cli.sheet.written', { path: given.out }));
  },
};

async function materialOf(given: SheetArguments, locale: string): Promise<SheetMaterial> {
  return withStore(given, async (store) => {
    const { id, cycle: current }: Instrument = await findInstrument(store, given.instrument);
    const cycle = cycleOf(given.cycle, current);
    const { sheetSourceOf } = await import('#server');
    const material: SheetMaterial = { ...(await sheetSourceOf(store, id, { sheet: given.sheet, state: given.state, cycle })), printedAt: new Date().toISOString(), locale, say: createSay(locale) };
    const nothing = sheets[given.sheet].nothing(material);
    if (nothing !== undefined) throw refused([], nothing);
    return material;
  });
}

async function pdfOf({ sheet: name, paper: named }: SheetArguments, material: SheetMaterial): Promise<Uint8Array> {
  const { renderPdf } = await import('#files');
  return renderPdf(sheets[name].document(material), { paper: paperFor(named, material.locale) });
}

async function csvOf({ sheet: name, lang }: SheetArguments, material: SheetMaterial): Promise<Uint8Array> {
  const { writeTable } = await import('#files');
  return writeTable(sheets[name].table(material), 'csv', lang === undefined ? {} : { locale: material.locale });
}
