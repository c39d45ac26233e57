import { type PlanShifts, NO_SHIFTS, analyseTouch, planTouch } from '#action';
import { operationByName } from '#catalogue';
import { actionTermsSchema, instrumentSchema } from '#instrument';
import { runOperation } from '#operation';
import { grams, gramsPerCubicMillimetre, millimetres, percent, squareMillimetres } from '#units';
import { demoShop, standingOf, touchInputOf, touchPlanInputOf } from '#workshop';
import { describe, expect, it } from 'vitest';
import type { FigureStory } from '../../figure/figure-store.ts';
import { type PlanBehind, hammerStory, massStory, standingStory, weightRatioStory } from './plan-stories.ts';

const [piano] = demoShop();
if (piano === undefined) throw new Error('the demo is empty');
const instrument = instrumentSchema.parse({ ...piano.draft, id: 'demo', workshopId: 'demo', cycle: 1, demo: true });
const { sessions, readings } = standingOf(piano.steps);
const { intent } = piano;
const terms = piano.steps.flatMap((step) => (step.kind === 'action' ? [actionTermsSchema.parse(step.terms)] : []))[0] ?? null;
const touch = analyseTouch(touchInputOf({ instrument, sessions, readings, cycle: 1, state: 'found', intent }));
const { keys } = touchPlanInputOf({ instrument, readings, cycle: 1, intent, terms, touch });
const top = {
  oldThicknessMm: millimetres(1), oldDensityGPerMm3: gramsPerCubicMillimetre(0.00185), newThicknessMm: millimetres(2.3), newDensityGPerMm3: gramsPerCubicMillimetre(0.00119),
  areaMm2: squareMillimetres(2400), centroidMm: millimetres(27), planedMm: millimetres(0), woodDensityGPerMm3: gramsPerCubicMillimetre(0.0005),
};
const tried: readonly (readonly [string, PlanShifts])[] = [
  ['nothing moved', NO_SHIFTS],
  ['roller and capstan moved, hammers lighter', { ...NO_SHIFTS, rollerOutMm: millimetres(0.7), capstanAwayMm: millimetres(-1.5), hammerG: grams(-0.4), hammerPct: percent(3) }],
  ['new key tops', { ...NO_SHIFTS, top }],
];

function answerOf(story: FigureStory | undefined): number {
  const operation = story === undefined ? undefined : operationByName(story.operation);
  if (story === undefined || operation === undefined) throw new Error(`no story or no operation ${story?.operation ?? ''}`);
  const result = runOperation<unknown, unknown>(operation, story.input);
  if (!result.ok) throw new Error(`${story.operation} refuses ${JSON.stringify(result.issues)}`);
  return Number((result.value as Readonly<Record<string, unknown>>)[story.output ?? '']);
}

describe.each(tried)('figures of the plan, %s', (_, shifts) => {
  const behind: PlanBehind = { touch, readings, shifts, terms };
  const planned = planTouch(keys, shifts).filter(({ plan: { key } }) => key % 7 === 3);

  it('are what the operations they open to answer', () => {
    expect(planned.length).toBeGreaterThan(10);
    for (const one of planned) {
      const { weightRatio, hammerWeightG, standing, mass } = one.figures;
      expect(answerOf(weightRatioStory('', one, behind))).toBeCloseTo(weightRatio, 9);
      expect(answerOf(hammerStory('', one, behind))).toBeCloseTo(hammerWeightG, 9);
      for (const output of ['balanceWeightG', 'downWeightG', 'upWeightG'] as const) expect(answerOf(standingStory('', output, one, behind))).toBeCloseTo(standing?.[output] ?? NaN, 9);
      for (const output of ['effectiveMassG', 'hammerG'] as const) expect(answerOf(massStory('', output, one, behind))).toBeCloseTo(mass?.[output] ?? NaN, 8);
    }
  });

  it('open to the readings behind them', () => {
    for (const one of planned) {
      const quantities = (story: FigureStory | undefined): readonly string[] => Object.values(story?.origins ?? {}).flatMap((origin) => origin.readings?.map(({ quantity }) => quantity) ?? []);
      expect(quantities(standingStory('', 'balanceWeightG', one, behind))).toEqual(expect.arrayContaining(['keyFrontMm', 'hammerMm', 'frontWeightG']));
      expect(quantities(massStory('', 'hammerG', one, behind))).toEqual(expect.arrayContaining(['keyMassG', 'keyWidthMm', 'keyFrontMm']));
      expect(quantities(weightRatioStory('', one, behind))).toContain('keyFrontMm');
    }
  });
});
