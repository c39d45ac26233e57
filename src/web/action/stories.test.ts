import { analyseTouch } from '#action';
import { operationByName } from '#catalogue';
import { type TouchIntent, instrumentSchema } from '#instrument';
import { runOperation } from '#operation';
import { demoShop, standingOf, touchInputOf } from '#workshop';
import { describe, expect, it } from 'vitest';
import { type FigureStory, originsOf } from '../figure/figure-store.ts';
import { diagnosisStory, evennessStory, leverRatioStory, sectionRatioStory, touchWeightStory, weightRatioStory } from './stories.ts';

const [piano] = demoShop();
if (piano === undefined) throw new Error('the demo is empty');
const instrument = instrumentSchema.parse({ ...piano.draft, id: 'demo', workshopId: 'demo', cycle: 1, demo: true });
const { sessions, readings } = standingOf(piano.steps);
const intents: readonly (TouchIntent | null)[] = [
  piano.intent, null,
  { even: 'balanceWeight', targetG: 37, toleranceG: 1.5, upWeightMinG: 20 },
  { even: 'curve', anchors: [{ key: 1, downWeightG: 52 }, { key: 88, downWeightG: 46 }], toleranceG: 2, upWeightMinG: 20 },
];
const analysed = (state: 'found' | 'finished', intent: TouchIntent | null) => analyseTouch(touchInputOf({ instrument, sessions, readings, cycle: 1, state, intent }));

/** The answer of the operation a story names, given exactly what the story shows. */
function answerOf({ operation: name, input }: FigureStory): Readonly<Record<string, unknown>> {
  const operation = operationByName(name);
  if (operation === undefined) throw new Error(`no operation ${name}`);
  const result = runOperation<unknown, unknown>(operation, input);
  if (!result.ok) throw new Error(`${name} refuses ${JSON.stringify(result.issues)}`);
  return result.value as Readonly<Record<string, unknown>>;
}

/** Inputs of a story, one path each; of a list each entry. */
function leavesOf(value: unknown, path: string): readonly (readonly [path: string, value: unknown])[] {
  if (Array.isArray(value)) return value.flatMap((inner, index) => leavesOf(inner, `${path}[${String(index)}]`));
  if (typeof value !== 'object' || value === null) return [[path, value]];
  return Object.entries(value).flatMap(([name, inner]) => leavesOf(inner, path === '' ? name : `${path}.${name}`));
}

/** Inputs the panel could not tell the origin of, or whose readings do not give what went in. */
function untold(story: FigureStory): readonly string[] {
  const origins = originsOf(story);
  return leavesOf(story.input, '').filter(([path, value]) => {
    const { how, readings = [] } = origins[path] ?? {};
    if (how !== undefined) return how === 'leverArms' && readings.length === 0;
    const values = readings.flatMap((reading) => reading.value ?? []);
    if (value === null) return readings.length === 0;
    return values.length === 0 || Math.abs(values.reduce((sum, one) => sum + one, 0) / values.length - Number(value)) > 1e-9;
  }).map(([path]) => `${story.operation} ${path}`);
}

describe.each(['found', 'finished'] as const)('a figure of the demo as %s, opened', (state) => {
  const standing = readings.filter((reading) => reading.state === state);

  it('shows for every key the balance, friction, ratio and shares that stand on the page', () => {
    const { keys } = analysed(state, piano.intent);
    let split = 0;
    for (const touch of keys) {
      const behind = { touch, readings: standing };
      if (touch.balanceWeightG === undefined) continue;
      const weighed = answerOf(touchWeightStory('x', 'balanceWeightG', behind));
      expect([weighed['balanceWeightG'], weighed['frictionG'], weighed['correctedFrictionG']]).toEqual([touch.balanceWeightG, touch.frictionG, touch.correctedFrictionG]);
      if (touch.weightRatio !== undefined) expect(answerOf(weightRatioStory('x', behind))['weightRatio']).toBe(touch.weightRatio);
      if (touch.shares === undefined) continue;
      split += 1;
      expect(answerOf(diagnosisStory('x', 'ratioG', behind))['shares']).toEqual(touch.shares);
    }
    expect(split).toBeGreaterThan(80);
  });

  it.each(intents)('shows of every input where it came from, down to what was typed: %j', (intent) => {
    const analysis = analysed(state, intent);
    const ofKeys = analysis.keys.flatMap((touch) => {
      const behind = { touch, readings: standing };
      return [
        ...(touch.balanceWeightG === undefined ? [] : [touchWeightStory('x', 'frictionG', behind)]),
        ...(touch.weightRatio === undefined ? [] : [weightRatioStory('x', behind)]),
        ...(touch.shares === undefined ? [] : [diagnosisStory('x', 'ratioG', behind)]),
      ];
    });
    const ofAll = ['median', 'largestStep', 'inside', 'insideGuarded', 'capability', 'outliers'].flatMap((output) => evennessStory('x', output, analysis, intent, standing) ?? []);
    const ratios = (['natural', 'sharp'] as const).flatMap((colour) => [sectionRatioStory('x', analysis, colour, standing), leverRatioStory('x', colour, standing)]);
    const stories = [...ofKeys, ...ofAll, ...ratios];
    expect(stories.length).toBeGreaterThan(250);
    expect(stories.flatMap(untold)).toEqual([]);
  });

  it('shows the ratios of both colours', () => {
    const analysis = analysed(state, piano.intent);
    for (const colour of ['natural', 'sharp'] as const) {
      expect(answerOf(sectionRatioStory('x', analysis, colour, standing))['weightRatio']).toBe(analysis.weightRatio[colour].value);
      const byDistance = analysis.leverRatio[colour];
      if (byDistance !== undefined) expect(answerOf(leverRatioStory('x', colour, standing))['actionRatio']).toBe(byDistance);
    }
  });

  it.each(intents)('shows how even the keys are, whatever is asked: %j', (intent) => {
    const analysis = analysed(state, intent);
    const { summary } = analysis;
    const told = (output: string): Readonly<Record<string, unknown>> => {
      const story = evennessStory('x', output, analysis, intent, standing);
      if (story === undefined) throw new Error('the step is known here');
      return answerOf(story);
    };
    expect(told('median')['median']).toBe(summary.medianG);
    expect(told('largestStep')['largestStep']).toBe(summary.largestStepG);
    expect(told('outliers')['outliers']).toEqual(summary.outliers.map((key) => key - 1));
    if (intent === null) return;
    expect(told('inside')['inside']).toBe(summary.inside);
    expect(told('insideGuarded')['insideGuarded']).toBe(summary.insideGuarded);
    expect(told('capability')['capability']).toBeCloseTo(summary.capability ?? Number.NaN, 9);
  });
});
