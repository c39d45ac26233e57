import { shippedRules } from '#law';
import { createSay } from '#text';
import { describe, expect, it } from 'vitest';
import { orderIssues } from '../shop/checks.ts';
import { shopCardDraftSchema } from '../shop/records.ts';
import { paperIssues } from './checks.ts';
import { allIvoryOf, massOf } from './ivory.ts';
import { type PaperDraft, type PaperMaterial, type PaperRecord, paperDraftSchema, paperRecordSchema } from './records.ts';
import { type Shipment, judgeShipment, ruleBookOf } from './shipment.ts';
import { papersToldOf } from './told.ts';

const kept = (draft: PaperDraft): PaperRecord => paperRecordSchema.parse({ ...draft, id: JSON.stringify(draft).slice(0, 40), at: '2026-01-01T00:00:00Z' });
const material = (draft: Omit<Extract<PaperDraft, { kind: 'material' }>, 'kind'>): PaperMaterial => kept({ kind: 'material', ...draft }) as PaperMaterial;
const shipment = (rest: Partial<Shipment> = {}): Shipment => ({ kind: 'shipment', id: 's', workshopId: 'shop', at: '2026-01-01T00:00:00Z', changedAt: '2026-01-01T00:00:00Z', sequence: 0, person: null, pianoId: 'p', on: '2026-12-01', action: 'ship-sold', from: 'DE', to: 'US', hasCrate: false, status: 'planned', details: { words: '' }, ...rest });
const book = ruleBookOf([]);

const measured = material({
  material: 'ivory:african-elephant', where: 'tops', species: 'proven', isRaw: false, isFixed: true, densityGPerCm3: 1.8,
  pieces: [{ areaMm2: 23 * 50 + 13 * 98, count: 52, thicknessesMm: [0.8, 0.8, 0.8, 0.8], gaugeUncertaintyMm: 0.01 }],
});

describe('mass of ivory', () => {
  // 52 naturals, head 23 × 50 mm and tail 13 × 98 mm, 0.8 mm at 1.8 g/cm³: 182 g, worked by hand; 0.01 of 0.8 mm is 2.27 g.
  it('follows from measured pieces, with the doubt of the gauge', () => {
    const mass = massOf(measured);
    expect(mass?.massG).toBeCloseTo(1.8 * 126.048 * 0.8, 9);
    expect(mass?.uncertaintyG).toBeCloseTo(1.8 * 126.048 * 0.01, 9);
    expect(mass?.how).toBe('measured');
  });

  it('is what was stated, where it was', () => {
    expect(massOf({ ...measured, massG: 190, massUncertaintyG: 2, massHow: 'weighed' })).toEqual({ massG: 190, uncertaintyG: 2, how: 'weighed' });
  });

  it('of all rows adds masses and doubts, and is as sure as the least sure; one row unknown leaves it open', () => {
    const weighed = material({ material: 'ivory', where: 'fronts', species: 'proven', massG: 20, massUncertaintyG: 1, massHow: 'estimated' });
    expect(allIvoryOf([measured, weighed])).toMatchObject({ how: 'estimated' });
    expect(allIvoryOf([measured, weighed])?.uncertaintyG).toBeCloseTo(1 + 1.8 * 126.048 * 0.01, 9);
    expect(allIvoryOf([measured, { ...weighed, massG: null }])).toBeUndefined();
  });
});

describe('a shipment', () => {
  const history = kept({ kind: 'history', yearMade: 1950, ivoryVolumePct: 0.1, ivoryValuePct: 2, isRepairedWithListedSince1973: true, isImportedToUsBefore1990: true });
  const inTheStates = shipment({ action: 'sell', from: 'US', to: 'US' });

  // 50 CFR 17.40(e)(3): less than 200 g in all, by measurement and not by estimate.
  it('within the United States counts all ivory together against 200 g', () => {
    expect(judgeShipment(inTheStates, [measured, history], book).outcome).toBe('papers');
    const more = material({ material: 'ivory:african-elephant', where: 'fronts', species: 'proven', isRaw: false, isFixed: true, massG: 30, massUncertaintyG: 1, massHow: 'weighed' });
    expect(judgeShipment(inTheStates, [measured, more, history], book).outcome).toBe('prohibited');
  });

  it('is not decided by a mass without an uncertainty', () => {
    const bare = { ...measured, massG: 150, massHow: 'weighed', massUncertaintyG: null } as const;
    expect(judgeShipment(inTheStates, [bare, history], book)).toMatchObject({ outcome: 'ask' });
  });

  it('asks about a doubtful species as the widest kind it is of', () => {
    const veneer = material({ material: 'wood:brazilian-rosewood', where: 'case', species: 'doubtful', isFinished: true });
    const { reasons } = judgeShipment(shipment({ to: 'JP' }), [veneer], book);
    expect(reasons.map(({ material: of }) => of)).toContain('wood');
    expect(reasons.every(({ outcome }) => outcome === 'ask')).toBe(true);
    expect(judgeShipment(shipment({ to: 'JP' }), [{ ...veneer, species: 'proven' }], book).outcome).toBe('papers');
  });

  it('tells what the crate asks for, and asks where nothing is noted', () => {
    expect(judgeShipment(shipment({ hasCrate: true }), [], book).reasons.map(({ rule }) => rule?.id)).toContain('crate-mark');
    expect(judgeShipment(shipment(), [], book)).toMatchObject({ outcome: 'ask', reasons: [], materials: [] });
  });

  it('says of a place without rules once that nobody knows them, however many the materials', () => {
    const { reasons } = judgeShipment(shipment({ to: 'JP' }), [measured, material({ material: 'bone', where: 'fronts', species: 'proven' })], book);
    expect(reasons.filter(({ kind }) => kind === 'no-rules-known')).toHaveLength(1);
  });

  it('is told in print without the person and without what was called off', () => {
    const told = papersToldOf('p', [measured], [shipment({ person: 'somebody', details: { words: 'private words' } }), shipment({ id: 't', status: 'cancelled' })]);
    expect(told?.shipments).toHaveLength(1);
    expect(JSON.stringify(told)).not.toMatch(/somebody|private words/u);
    expect(papersToldOf('p', [], [])).toBeUndefined();
  });
});

describe('bad input', () => {
  const refusedAt = (draft: object): readonly string[] => paperDraftSchema.safeParse({ kind: 'material', material: 'ivory', where: 'tops', species: 'proven', ...draft }).error?.issues.map(({ path }) => path.join('.')) ?? [];
  it.each([
    [{ massG: -1 }, 'massG'], [{ material: 'plastic' }, 'material'], [{ where: '  ' }, 'where'],
    [{ pieces: [{ areaMm2: 2424, count: 52, thicknessesMm: [0.8, 0.9, 0.8], gaugeUncertaintyMm: 0 }] }, 'pieces.0.thicknessesMm'],
    [{ documents: [{ name: 'Invoice', sha256: 'abc' }] }, 'documents.0.sha256'],
  ])('%j is refused at %s', (draft, path) => {
    expect(refusedAt(draft)).toEqual([path]);
  });

  it('names what is wanting beside what was stated', () => {
    const issues = paperIssues(paperDraftSchema.parse({ kind: 'material', material: 'ivory', where: 'tops', species: 'proven', massG: 100 }));
    expect(issues).toMatchObject([{ code: 'required', path: 'massHow' }]);
  });

  it('refuses an unknown place and a file of rules no newer than the program’s', () => {
    expect(shopCardDraftSchema.safeParse({ kind: 'shipment', pianoId: 'p', on: '2026-12-01', action: 'sell', from: 'XX', to: 'DE' }).error?.issues[0]?.path).toEqual(['from']);
    expect(orderIssues(shopCardDraftSchema.parse({ kind: 'ruleFile', file: shippedRules }))).toMatchObject([{ code: 'order', path: 'file.issued' }]);
  });

  it('is said in both languages', () => {
    for (const language of ['en', 'de']) expect(createSay(language)('issue.order.rulesOlder', { given: '2026-01-01', first: '2026-11-26' })).toContain('2026-01-01');
  });
});
