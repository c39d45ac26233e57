import type { PlacedLead, SolvedKey } from '#action';
import { actionTermsSchema } from '#instrument';
import { grams, millimetres } from '#units';
import { describe, expect, it } from 'vitest';
import { leadEntriesOf } from './lead-entries.ts';
import { type LeadsNews, solveJobs } from './leads-jobs.ts';
import { leadsFormOf, leadsTermsOf } from './leads-terms.ts';

const lead = (positionMm: number, diameterMm: number, hole: PlacedLead['hole'] = 'new'): PlacedLead => ({ positionMm: millimetres(positionMm), diameterMm: millimetres(diameterMm), hole });
const standing = (quantity: 'lead1PositionMm' | 'lead3PositionMm', repeat = 1) => ({ id: 'r', cycle: 1, state: 'planned', quantity, scope: 'key', index: 40, repeat, typed: '1', value: 1, outcome: null, uncertainty: null, basis: 'derived', remark: '', sessionId: null, at: '', by: '' } as const);

describe('keeping leads as planned', () => {
  it('notes position and diameter from the front, in the reader’s decimal sign, and withdraws what stood beyond', () => {
    const entries = leadEntriesOf([{ key: 40, leads: [lead(100, 11), lead(178.25, 12.7)] }], [standing('lead3PositionMm'), standing('lead1PositionMm', 2)], 'de-DE');
    expect(entries.map(({ quantity, typed, clear, repeat }) => [quantity, typed ?? clear, repeat])).toEqual([
      ['lead1PositionMm', '178,25', undefined], ['lead1PositionMm', true, 2], ['lead1DiameterMm', '12,7', undefined], ['lead2PositionMm', '100', undefined], ['lead2DiameterMm', '11', undefined], ['lead3PositionMm', true, 1],
    ]);
  });

  it('notes a key that is to have no lead as such, so that its old holes are plugged', () => {
    expect(leadEntriesOf([{ key: 40, leads: [] }], [], 'en')).toEqual([{ quantity: 'lead1PositionMm', scope: 'key', index: 40, outcome: 'missing', basis: 'derived' }]);
  });
});

describe('the form of what holds for leads', () => {
  const terms = actionTermsSchema.parse({ drillsMm: [9.5, 12.7], leadGapMm: 3.5, mostLeads: 4, keepOuts: [{ fromMm: -35, toMm: 38.5 }], shankG: 4 });

  it('shows what stands and states it again unchanged', () => {
    const form = leadsFormOf(terms, 'de-DE');
    expect(form).toMatchObject({ drills: '9,5; 12,7', leadGapMm: '3,5', keepOuts: [{ from: '-35', to: '38,5' }] });
    expect(leadsTermsOf(form, terms, 'de-DE')).toEqual({ ok: true, value: terms });
  });

  it.each([
    [{ drills: '9.5; wide' }, 'drillsMm'], [{ drills: '120' }, 'drillsMm'], [{ mostLeads: '2.5' }, 'mostLeads'], [{ keepOuts: [{ from: '4', to: '' }] }, 'keepOuts[0].toMm'], [{ keepOuts: [{ from: '40', to: '-40' }] }, 'keepOuts[0].toMm'],
  ])('names what is wrong: %o', (part, path) => {
    const result = leadsTermsOf({ ...leadsFormOf(terms, 'en'), ...part }, terms, 'en');
    expect(result.ok ? [] : result.issues.map((issue) => issue.path)).toContain(path);
  });
});

describe('the working out beside the page', () => {
  const question = {
    key: 40, keyFrontMm: millimetres(225), keyWidthMm: millimetres(13), gapMm: millimetres(3), bareFrontWeightG: grams(2), targetFrontWeightG: grams(14), toleranceG: grams(0.1), maxLeads: 1,
    gridMm: [150, 151, 152, 153, 154, 155, 156, 157, 158].map(millimetres), diametersMm: [millimetres(12.7)], existingHoles: [], newHoleCostG: grams(0), leadDensityGPerMm3: 0.01134 as never, woodDensityGPerMm3: 0.00045 as never,
  };

  it('tells key by key, and what would reach a target out of reach', async () => {
    const news: LeadsNews[] = [];
    await solveJobs([{ question, above: {} }, { question: { ...question, key: 41, targetFrontWeightG: grams(30) }, above: { hammerWeightG: grams(9) } }], { onNews: (one) => news.push(one), shouldStop: () => false, pause: () => Promise.resolve() });
    expect(news.map(({ type }) => type)).toEqual(['key', 'key']);
    const [met, missed] = news.flatMap((one): readonly (SolvedKey & { readonly wouldReach?: unknown })[] => (one.type === 'key' ? [one.answer] : []));
    // m = 10.89e-3·π·12.7²/4·13 = 17.93 g; 17.93·x/225 within 12 ± 0.1 from x = 150: 11.95.
    expect(met).toMatchObject({ key: 40, feasible: true, proven: true, leads: [{ positionMm: 150 }] });
    expect(missed).toMatchObject({ key: 41, feasible: false, wouldReach: { targetChangeG: expect.any(Number) as number, ratioChange: expect.any(Number) as number } });
  });

  it('told to stop, leaves out the keys that are left', async () => {
    const news: LeadsNews[] = [];
    const job = { question, above: {} };
    await solveJobs([job, job, job], { onNews: (one) => news.push(one), shouldStop: () => news.length === 1, pause: () => Promise.resolve() });
    expect(news.length).toBe(1);
  });
});
