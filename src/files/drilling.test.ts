import { type QuantityName, type Reading, instrumentSchema } from '#instrument';
import { type SheetMaterial, sheets } from '#sheets';
import { createSay } from '#text';
import { describe, expect, it } from 'vitest';
import { type Paper, renderPdf } from './pdf.ts';
import { type DrawnLine, linesOf } from './testing/pdf-lines.ts';

const reading = (quantity: QuantityName, index: number, value: number, state: Reading['state'] = 'found', scope: Reading['scope'] = 'key'): Reading => ({
  id: `${state} ${quantity} ${String(index)}`, cycle: 1, state, quantity, scope, index, repeat: 1, typed: String(value), value, outcome: null, uncertainty: null, basis: 'measured', remark: '', sessionId: null, at: '', by: '',
});

/** An invented key whose front reaches further than either paper is wide: a lead far in front, one behind, an old hole to plug. */
const material: SheetMaterial = {
  instrument: instrumentSchema.parse({ name: 'Long keys', kind: 'grand', id: 'g', workshopId: 'w', cycle: 1, demo: false, sections: [] }),
  readings: [
    ...(['keyFrontMm', 'keyFrontLengthMm'] as const).map((name) => reading(name, 0, name === 'keyFrontMm' ? 285 : 298, 'found', 'colour')), reading('keyWidthMm', 0, 13, 'found', 'colour'),
    reading('frontWeightG', 40, 24), reading('lead1PositionMm', 40, 180), reading('lead1DiameterMm', 40, 12.7),
    reading('lead1PositionMm', 40, 272, 'planned'), reading('lead1DiameterMm', 40, 12.7, 'planned'), reading('lead2PositionMm', 40, 251, 'planned'), reading('lead2DiameterMm', 40, 11, 'planned'),
  ],
  cycle: 1, state: 'planned', action: null, tuning: null, observations: [], scale: null, intent: null, sessions: [], head: { seq: 1, hash: 'ab'.repeat(32) }, printedAt: '2026-11-25T10:00:00Z', locale: 'en', say: createSay('en'),
};

const lengthOf = ({ x1, y1, x2, y2 }: DrawnLine): number => Math.hypot(x2 - x1, y2 - y1);
const isLevel = ({ y1, y2 }: DrawnLine): boolean => Math.abs(y2 - y1) < 1e-3;

/** The strip is 14 mm high; its datum line and the cross of a new hole reach a little beyond. */
const PX = 1 / 4;
const isDatum = (line: DrawnLine): boolean => !isLevel(line) && Math.abs(lengthOf(line) - 14 - 8 * PX) < 0.01;
const isCentre = (line: DrawnLine): boolean => !isLevel(line) && [12.7, 11].some((drill) => Math.abs(lengthOf(line) - drill - 4 * PX) < 0.01);

describe.each(['a4', 'letter'] as const satisfies readonly Paper[])('the drilling sheet on %s', async (paper) => {
  const lines = await linesOf(await renderPdf(sheets.drilling.document(material), { paper }));

  it('has on its first page and on every page of strips a line of 100 mm that measures 100 mm on paper', () => {
    const checks = lines.filter((line) => isLevel(line) && Math.abs(lengthOf(line) - 100) < 2);
    expect(new Set(checks.map(({ page }) => page))).toEqual(new Set([1, ...lines.filter(isDatum).map(({ page }) => page)]));
    expect(checks.length).toBeGreaterThan(1);
    for (const check of checks) expect(lengthOf(check)).toBeCloseTo(100, 2);
  });

  it('sets the middle of each new hole as far from the datum line as it is on the key, over the joint too', () => {
    // Two upright lines of that height: the datum, and the joint at either side of it; both pieces begin at the same margin.
    const [datum, ...joints] = lines.filter(isDatum).toSorted((a, b) => b.y1 - a.y1 || a.x1 - b.x1);
    const centres = lines.filter(isCentre);
    if (datum === undefined) return expect.fail();
    const [cut, left] = [joints.find(({ y1 }) => y1 === datum.y1), joints.find(({ y1 }) => y1 !== datum.y1)];
    if (cut === undefined || left === undefined) return expect.fail();
    const places = centres.map((line) => (Math.abs(line.y1 - datum.y1) < 10 ? line.x1 - datum.x1 : cut.x1 - datum.x1 + line.x1 - left.x1)).sort((a, b) => a - b);
    expect(places).toHaveLength(2);
    expect(places[0]).toBeCloseTo(251, 2);
    expect(places[1]).toBeCloseTo(272, 2);
  });
});
