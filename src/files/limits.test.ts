import { compass88 } from '#instrument';
import { mustBe } from '#result';
import { strToU8, unzipSync, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { MAX_FILE_BYTES, MAX_ROWS } from './limits.ts';
import { planFile, readTable } from './index.ts';

const reasonOf = async (bytes: Uint8Array, sheet?: string) => {
  const read = await readTable({ bytes, ...(sheet === undefined ? {} : { sheet }) });
  return read.ok ? read.value.rows.length : (read.issues[0]?.params?.['reason'] ?? read.issues[0]?.code);
};
const utf8 = (text: string) => new TextEncoder().encode(text);

describe('huge files', () => {
  it('are refused by their size before they are read', async () => {
    expect(await reasonOf(new Uint8Array(MAX_FILE_BYTES + 1))).toBe('importFileLimit');
  });

  it.each([
    ['rows without end', '1\n'.repeat(MAX_ROWS + 1), 'importRowLimit'],
    ['blank rows without end', `${'\n'.repeat(MAX_ROWS + 1)}1`, 'importRowLimit'],
    ['columns without end', `key${',1'.repeat(600)}\n`, 'importColumnLimit'],
    ['one line without end', ','.repeat(200_000), 'importLineLimit'],
  ])('%s: refused by name', async (_, text, reason) => {
    expect(await reasonOf(utf8(text))).toBe(reason);
  });

  it('up to the limit are read whole, and every row beyond the keyboard is refused by count', async () => {
    const rows = Array.from({ length: MAX_ROWS - 1 }, (_, index) => `${String(index + 1)},49`).join('\n');
    const { plan } = mustBe(await planFile({ bytes: utf8(`key,downWeightG\n${rows}`) }, { compass: compass88, standing: [], cycle: 1, state: 'found' }));
    expect(plan.counts).toEqual({ create: 88, update: 0, same: 0, refused: MAX_ROWS - 1 - 88, empty: 0 });
  });
});

describe('a workbook', () => {
  it('that says it holds less than it does is refused, not unpacked beyond what it said', async () => {
    const bytes = zipSync({ 'xl/workbook.xml': strToU8('<a/>'), 'xl/worksheets/sheet1.xml': new Uint8Array(90 * 1024 * 1024) }, { level: 9 });
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    for (let at = 0; at < bytes.length - 4; at += 1) {
      if (view.getUint32(at, true) === 0x02014b50 && view.getUint32(at + 24, true) > 1000) view.setUint32(at + 24, 1000, true);
    }
    expect(unzipSync(bytes)['xl/worksheets/sheet1.xml']?.buffer.byteLength).toBe(1000);
    expect(await reasonOf(bytes)).toBe('importWorkbook');
  });

  it('of a thousand parts is refused', async () => {
    const parts = Object.fromEntries(Array.from({ length: 1001 }, (_, index) => [`p${String(index)}.xml`, new Uint8Array(1)]));
    expect(await reasonOf(zipSync(parts))).toBe('importUnpacked');
  });
});
