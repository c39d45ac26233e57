import { buildProof, demoProof } from '#proof';
import { createSay } from '#text';
import { PDFArray, PDFDict, PDFDocument, PDFName, type PDFObject, PDFRawStream, PDFRef } from 'pdf-lib';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Paper, renderPdf } from './pdf.ts';

/** Text of each page, as a reader program takes it out. */
async function pagesOf(bytes: Uint8Array): Promise<readonly string[]> {
  const loading = getDocument({ data: Uint8Array.from(bytes), useSystemFonts: false, verbosity: 0 });
  const document = await loading.promise;
  const pages: string[] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const { items } = await (await document.getPage(number)).getTextContent();
    pages.push(items.map((item) => ('str' in item ? item.str + (item.hasEOL ? '\n' : '') : '')).join('').replaceAll('\u00A0', ' '));
  }
  await loading.destroy();
  return pages;
}

/** Height of the lowest words of each page above its foot, in points; the running foot left out. */
async function lowestOf(bytes: Uint8Array): Promise<readonly number[]> {
  const FOOT = 60;
  const loading = getDocument({ data: Uint8Array.from(bytes), useSystemFonts: false, verbosity: 0 });
  const document = await loading.promise;
  const heights = await Promise.all(Array.from({ length: document.numPages }, async (_, index) => {
    const { items } = await (await document.getPage(index + 1)).getTextContent();
    return Math.min(...items.flatMap((item) => ('str' in item && item.str.trim() !== '' && Number(item.transform[5]) > FOOT ? [Number(item.transform[5])] : [])));
  }));
  await loading.destroy();
  return heights;
}

function dictsOf(document: PDFDocument): readonly PDFDict[] {
  const isDict = (object: PDFObject): PDFDict[] => (object instanceof PDFDict ? [object] : object instanceof PDFRawStream ? [object.dict] : []);
  return document.context.enumerateIndirectObjects().flatMap(([, object]) => isDict(object));
}

/** Simple and descendant fonts: those that must carry a font file of their own. */
function fontsOf(document: PDFDocument): readonly { readonly name: string; readonly embedded: boolean }[] {
  return dictsOf(document).filter((dict) => dict.get(PDFName.of('Type')) === PDFName.of('Font') && !dict.has(PDFName.of('DescendantFonts'))).map((font) => {
    const descriptor = font.lookupMaybe(PDFName.of('FontDescriptor'), PDFDict);
    const embedded = ['FontFile', 'FontFile2', 'FontFile3'].some((key) => descriptor?.has(PDFName.of(key)) === true);
    return { name: String(font.get(PDFName.of('BaseFont'))), embedded };
  });
}

const struct = (document: PDFDocument, tag: string): readonly PDFDict[] => dictsOf(document).filter((dict) => dict.get(PDFName.of('S')) === PDFName.of(tag));
const kidsOf = (dict: PDFDict, document: PDFDocument): readonly PDFDict[] => {
  const kids = dict.lookup(PDFName.of('K'));
  if (!(kids instanceof PDFArray)) return [];
  return kids.asArray().map((kid) => (kid instanceof PDFRef ? document.context.lookup(kid) : kid)).filter((kid) => kid instanceof PDFDict);
};

const sizes = { a4: [595.28, 841.89], letter: [612, 792] } as const;

describe.each([['a4', 'en'], ['a4', 'de'], ['letter', 'en'], ['letter', 'de']] as const)('the demo proof on %s in %s', (paper: Paper, locale) => {
  const input = demoProof(locale);
  const report = buildProof(input);
  let document: PDFDocument;
  let pages: readonly string[];
  let lowest: readonly number[];

  beforeAll(async () => {
    const bytes = await renderPdf(report, { paper });
    document = await PDFDocument.load(bytes, { updateMetadata: false });
    pages = await pagesOf(bytes);
    lowest = await lowestOf(bytes);
  });

  it('has thirteen to fifteen pages of the paper asked for, three of them of strings, four of bearing and one of tuning', () => {
    expect(pages.length).toBeGreaterThanOrEqual(13);
    expect(pages.length).toBeLessThanOrEqual(15);
    for (const page of document.getPages()) {
      expect(page.getWidth()).toBeCloseTo(sizes[paper][0], 1);
      expect(page.getHeight()).toBeCloseTo(sizes[paper][1], 1);
    }
  });

  it('embeds every font and uses only its own faces', () => {
    const fonts = fontsOf(document);
    expect(fonts.length).toBeGreaterThanOrEqual(3);
    expect(fonts.filter(({ embedded }) => !embedded)).toEqual([]);
    for (const { name } of fonts) expect(name).toMatch(/SourceSans3|DejaVuSans/u);
  });

  it('is tagged, titled, in its language and says it keeps PDF/UA-1', () => {
    const catalog = document.catalog;
    expect(catalog.lookup(PDFName.of('MarkInfo'), PDFDict).get(PDFName.of('Marked'))?.toString()).toBe('true');
    expect(catalog.has(PDFName.of('StructTreeRoot'))).toBe(true);
    expect(String(catalog.get(PDFName.of('Lang')))).toContain(locale);
    expect(document.getTitle()).toBe(report.title);
    const metadata = catalog.lookup(PDFName.of('Metadata'));
    expect(metadata instanceof PDFRawStream ? new TextDecoder().decode(metadata.contents) : '').toMatch(/pdfuaid:part[^0-9]*1/u);
  });

  it('gives every figure words and every table a head', () => {
    const figures = struct(document, 'Figure');
    expect(figures).toHaveLength(report.blocks.filter(({ type }) => type === 'figure').length);
    for (const figure of figures) expect(figure.has(PDFName.of('Alt'))).toBe(true);
    const tables = struct(document, 'Table').filter((table) => kidsOf(table, document).some((kid) => kid.get(PDFName.of('S')) === PDFName.of('THead')));
    expect(tables.length).toBeGreaterThanOrEqual(report.blocks.filter(({ type }) => type === 'table').length);
  });

  it('has no page nearly empty: each is filled beyond its upper half', () => {
    expect(lowest.map((y) => y < sizes[paper][1] / 2)).toEqual(pages.map(() => true));
  });

  it('says DEMO and page n of m on every page', () => {
    const say = createSay(locale);
    pages.forEach((page, index) => {
      expect(page).toContain('DEMO');
      expect(page).toContain(say('proof.pageOf').replace('{page}', String(index + 1)).replace('{pages}', String(pages.length)));
    });
  });

  it('prints the counts of the analysis and what was not stated', () => {
    const all = pages.join('\n');
    const say = createSay(locale);
    for (const touch of [input.found, input.finished]) {
      if (touch === null) throw new Error('the demo has both states');
      const { inside, judged, measured, keys } = touch.summary;
      expect(all).toContain(say('proof.countOf', { count: inside, total: judged }));
      expect(all).toContain(say('proof.countOf', { count: measured, total: keys }));
    }
    expect(all).toContain(say('proof.notStated'));
    expect(all).toContain(input.head?.hash);
  });

  it('prints every key of both states', () => {
    const all = pages.join('\n');
    const count = (word: string): number => all.split(word).length - 1;
    const words = createSay(locale);
    const verdicts = [input.found, input.finished].flatMap((touch) => touch?.keys.filter(({ verdict }) => verdict === 'outside') ?? []).length;
    expect(count(`${words('proof.verdict.outside')} `)).toBeGreaterThanOrEqual(verdicts);
    expect(count('C8')).toBeGreaterThanOrEqual(2);
  });
});

describe('renderPdf', () => {
  it('makes the same bytes of the same report', async () => {
    const report = buildProof(demoProof('en', { finished: null }));
    const [first, second] = [await renderPdf(report, { paper: 'a4' }), await renderPdf(report, { paper: 'a4' })];
    expect(Buffer.from(first).equals(Buffer.from(second))).toBe(true);
  });

  it('takes words from users as words, not as markup', async () => {
    const name = '#let x = 1; *bold* $a$ <b> \\ "quoted" @ref [x]';
    const input = demoProof('en', { finished: null });
    const bytes = await renderPdf(buildProof({ ...input, instrument: { ...input.instrument, name } }), { paper: 'a4' });
    expect((await pagesOf(bytes))[0]?.replaceAll(/\s+/gu, ' ')).toContain(name);
  });

  it('still makes a document when a name has signs none of its faces can draw', async () => {
    const input = demoProof('en', { finished: null });
    const bytes = await renderPdf(buildProof({ ...input, instrument: { ...input.instrument, name: '\u{13080} \u{1F3B9}' } }), { paper: 'a4' });
    expect((await pagesOf(bytes)).length).toBeGreaterThan(3);
  });
});
