import { type AnyOperation, runOperation } from '#operation';
import { createSay, explainIssue } from '#text';
import { describe, expect, it } from 'vitest';
import { bearingFindingCodes, bearingFindingsOf, bearingGaugeOperation, bearingLoadOperation, bearingOperation, bearingPlanOperation, bearingRecapOperation, bearingSettleOperation, bearingSides, pushInfluenceOperation, pushTestOperation } from './index.ts';
import { degrees } from '#units';

const { knows: isMessageKey } = createSay('en');

const note = { tensionN: 680, strings: 3, speakingLengthMm: 622, backLengthMm: 95, frontHeightMm: 0, bridgeHeightMm: 1.5, rearHeightMm: 0.1 };
const { bridgeHeightMm: _, ...rests } = note;
const answer = (operation: AnyOperation, input: unknown): Readonly<Record<string, unknown>> => {
  const result = runOperation(operation, input);
  if (!result.ok) throw new Error(result.issues.map(({ path, allowed }) => `${path}: ${allowed}`).join('; '));
  return result.value as Readonly<Record<string, unknown>>;
};
const issuesOf = (operation: AnyOperation, input: unknown) => { const result = runOperation(operation, input); return result.ok ? [] : result.issues; };
const refused = (operation: AnyOperation, input: unknown): readonly string[] => issuesOf(operation, input).map(({ code, path }) => `${code} ${path}`);

describe('bad figures are refused by field', () => {
  const cases: readonly (readonly [AnyOperation, object, readonly string[]])[] = [
    [bearingOperation, { ...note, speakingLengthMm: 0 }, ['range speakingLengthMm']],
    [bearingOperation, { ...note, backLengthMm: -95 }, ['range backLengthMm']],
    [bearingOperation, { ...note, tensionN: 0, strings: 0 }, ['range tensionN', 'range strings']],
    [bearingOperation, { ...note, strings: 2.5 }, ['type strings']],
    [bearingOperation, { ...note, heightUncertaintyMm: -0.1 }, ['range heightUncertaintyMm']],
    [bearingOperation, { ...note, backLengthUncertaintyMm: 95, tensionUncertaintyN: 680 }, ['range backLengthUncertaintyMm', 'range tensionUncertaintyN']],
    [bearingRecapOperation, note, ['required targetTotalDeg']],
    [bearingRecapOperation, { ...note, targetTotalDeg: 1, bridgeChangeMm: 1 }, ['unknown bridgeChangeMm']],
    [bearingRecapOperation, { ...note, bridgeChangeMm: '1' }, ['type bridgeChangeMm']],
    [bearingRecapOperation, { ...note, targetTotalDeg: 1, leastBridgeHeightMm: 2, mostBridgeHeightMm: 1 }, ['order leastBridgeHeightMm']],
    [bearingRecapOperation, { ...note, bridgeChangeMm: 1, mostBridgeHeightMm: 2 }, ['range bridgeChangeMm']],
    [bearingGaugeOperation, { frontSpanMm: 0, rearSpanMm: 25, readingMm: 0.2 }, ['range frontSpanMm']],
    [bearingGaugeOperation, { frontSpanMm: 25, rearSpanMm: 25, readingMm: 0.2, frontDeg: 1 }, ['unknown frontDeg']],
    [bearingSettleOperation, { notes: [note], stiffnessNPerMm: 0 }, ['range stiffnessNPerMm']],
    [bearingSettleOperation, { notes: [note], stiffnessNPerMm: '400' }, ['type stiffnessNPerMm']],
    [bearingSettleOperation, { notes: [note], stiffnessNPerMm: [[400, 'x']] }, ['type stiffnessNPerMm[0][1]']],
    [bearingSettleOperation, { notes: [note, { ...note, backLengthMm: 0 }], stiffnessNPerMm: 400 }, ['range notes[1].backLengthMm']],
    [bearingSettleOperation, { notes: [note, note], stiffnessNPerMm: [[400]] }, ['length stiffnessNPerMm']],
    [bearingSettleOperation, { notes: [{ ...note, backLengthUncertaintyMm: 95 }], stiffnessNPerMm: 400 }, ['range notes[0].backLengthUncertaintyMm']],
    [bearingSettleOperation, { notes: [note], stiffnessNPerMm: 400, stiffnessUncertaintyNPerMm: 400 }, ['range stiffnessUncertaintyNPerMm']],
    [bearingSettleOperation, { notes: [note], stiffnessNPerMm: [[400]], stiffnessUncertaintyNPerMm: 40 }, ['conflict stiffnessUncertaintyNPerMm']],
    [bearingPlanOperation, { notes: [{ ...rests, targetTotalDeg: 200 }], stiffnessNPerMm: 400 }, ['range notes[0].targetTotalDeg']],
    [bearingPlanOperation, { notes: [{ ...rests, targetTotalDeg: 1 }], stiffnessNPerMm: [[-400]] }, ['unsolvable stiffnessNPerMm[0]']],
    [bearingLoadOperation, { notes: [note, { ...note, speakingLengthUncertaintyMm: 700 }] }, ['range notes[1].speakingLengthUncertaintyMm']],
    [bearingLoadOperation, { notes: [note], asked: { leastTotalDeg: -1 } }, ['range asked.leastTotalDeg']],
    [pushTestOperation, { readings: [{ forceN: 10 }] }, ['required readings[0].deflectionMm']],
    [pushInfluenceOperation, { stations: 1, readings: [{ pushedStation: 0, readStation: 1, forceN: 1, deflectionMm: 1 }] }, ['range readings[0].pushedStation']],
  ];
  it.each(cases.map(([operation, input, expected]) => [operation.name, JSON.stringify(input), expected, operation, input] as const))('%s %s', (_name, _input, expected, operation, input) => {
    expect(refused(operation, input)).toEqual(expected);
  });

  it('and said in words of either language, the figures in them', () => {
    const [issue] = issuesOf(bearingRecapOperation, { ...rests, bridgeHeightMm: 0.9, targetTotalDeg: 5, mostBridgeHeightMm: 2 });
    expect(issue).toMatchObject({ code: 'unreachable', path: 'targetTotalDeg', given: 5, params: { limitMm: 2 } });
    if (issue === undefined) return;
    const { neededMm = 0, byMm = 0, reachableDeg = 0 } = issue.params as Readonly<Record<string, number>>;
    expect(neededMm - byMm).toBeCloseTo(2, 12);
    expect(answer(bearingOperation, { ...rests, bridgeHeightMm: 2 })['totalDeg']).toBe(reachableDeg);
    expect(answer(bearingOperation, { ...rests, bridgeHeightMm: neededMm })['totalDeg']).toBeCloseTo(5, 9);
    for (const locale of ['en', 'de']) {
      const words = explainIssue(createSay(locale), issue, locale);
      expect(words).toContain(new Intl.NumberFormat(locale, { maximumFractionDigits: 12, useGrouping: false }).format(byMm));
      expect(words).not.toMatch(/[{}]/u);
    }
  });
});

describe('answers', () => {
  it('of a lifting note are allowed, and flagged', () => {
    const { negative, forceN } = answer(bearingOperation, { ...note, bridgeHeightMm: -1 });
    expect(negative).toEqual(['front', 'rear', 'total']);
    expect(forceN).toBeLessThan(0);
    expect(answer(bearingOperation, note)).not.toHaveProperty('forceUncertaintyN');
  });

  it('of a board that is one spring are one figure, of a matrix one for each note', () => {
    const one = answer(bearingSettleOperation, { notes: [note, note], stiffnessNPerMm: 400 });
    expect(one['settlingMm']).toBeTypeOf('number');
    expect(one['settlingMm']).toBeCloseTo((one['totalForceN'] as number) / 400, 12);
    const alone = answer(bearingSettleOperation, { notes: [note, note], stiffnessNPerMm: [[200, 0], [0, 200]] });
    expect(alone['settlingMm']).toHaveLength(2);
    expect((alone['settlingMm'] as number[])[0]).toBeCloseTo(one['settlingMm'] as number, 12);
  });

  it('of the load add up from notes to sections to the whole', () => {
    const { sections, notes, forceN, totalTensionN, loadPct, forceUncertaintyN } = answer(bearingLoadOperation, {
      notes: [1, 2, 3, 4].map((rise) => ({ ...note, bridgeHeightMm: rise, section: rise < 3 ? 'bass' : 'treble', heightUncertaintyMm: 0.1 })),
    }) as { sections: { section: string; notes: number; forceN: number; totalTensionN: number }[]; notes: { forceN: number; forceUncertaintyN: number }[]; forceN: number; totalTensionN: number; loadPct: number; forceUncertaintyN: number };
    expect(sections.map(({ section, notes: count }) => [section, count])).toEqual([['bass', 2], ['treble', 2]]);
    expect(sections.reduce((sum, each) => sum + each.forceN, 0)).toBeCloseTo(forceN, 9);
    expect(notes.reduce((sum, each) => sum + each.forceN, 0)).toBeCloseTo(forceN, 9);
    expect(totalTensionN).toBe(4 * 3 * 680);
    expect(loadPct).toBeCloseTo((100 * forceN) / totalTensionN, 12);
    expect(forceUncertaintyN).toBeCloseTo(Math.hypot(...notes.map((each) => each.forceUncertaintyN)), 9);
    expect(answer(bearingLoadOperation, { notes: [{ ...note, heightUncertaintyMm: 0.1 }, note] })).not.toHaveProperty('forceUncertaintyN');
  });
});

describe('findings', () => {
  const row = (front: number, rear: number, more: object = {}) => ({ frontDeg: degrees(front), rearDeg: degrees(rear), totalDeg: degrees(front + rear), ...more });
  const codes = (found: readonly { readonly code: string; readonly index: number; readonly side: string }[]) => found.map(({ code, index, side }) => `${code} ${String(index)} ${side}`);

  it('name what lifts and judge nothing that was not asked', () => {
    expect(codes(bearingFindingsOf([row(0.1, 0.1), row(0.2, -0.1), row(-0.2, 0.1), row(5, 5)]))).toEqual(['bearingNegative 1 rear', 'bearingNegative 2 front', 'bearingNegative 2 total']);
  });

  it('judge what was asked, within a section', () => {
    const asked = { leastTotalDeg: degrees(0.5), mostTotalDeg: degrees(2), mostStepDeg: degrees(0.4) };
    const notes = [row(0.3, 0.3), row(0.2, 0.2), row(1, 1.5), row(0.5, 0.5, { section: 'treble' }), row(0.25, 0.25, { section: 'treble' })];
    expect(codes(bearingFindingsOf(notes, asked))).toEqual(['bearingLost 1 total', 'bearingHigh 2 total', 'bearingUneven 2 total', 'bearingUneven 4 total']);
  });

  it('take a limit as kept when it is just met', () => {
    expect(bearingFindingsOf([row(0, 0.5), row(0, 0)], { leastTotalDeg: degrees(0), mostTotalDeg: degrees(0.5), mostStepDeg: degrees(0.5) })).toEqual([]);
  });

  it('say when they lie within twice their uncertainty', () => {
    const uncertainty = (u: number) => ({ uncertainty: { frontUncertaintyDeg: degrees(u), rearUncertaintyDeg: degrees(u), totalUncertaintyDeg: degrees(u) } });
    const doubts = (u: number) => bearingFindingsOf([row(0.1, 0.1, uncertainty(u)), row(0.5, 0.5, uncertainty(u))], { leastTotalDeg: degrees(0.3), mostStepDeg: degrees(0.5) }).map(({ code, inDoubt }) => [code, inDoubt]);
    expect(doubts(0.049)).toEqual([['bearingLost', false], ['bearingUneven', false]]);
    expect(doubts(0.06)).toEqual([['bearingLost', true], ['bearingUneven', false]]);
    expect(doubts(0.11)).toEqual([['bearingLost', true], ['bearingUneven', true]]);
    expect(bearingFindingsOf([row(-1, 0)])[0]).not.toHaveProperty('inDoubt');
  });

  it('have words in every language', () => {
    for (const language of ['en', 'de']) {
      const say = createSay(language);
      for (const code of bearingFindingCodes) {
        for (const key of [`belly.finding.${code}`, `belly.finding.${code}.why`, `belly.finding.${code}.evidence`]) {
          if (!isMessageKey(key)) throw new Error(key);
          for (const side of bearingSides) expect(say(key, { side, figure: '0.10°', limit: '0.50°' })).not.toMatch(/[{}]/u);
        }
      }
    }
  });
});
