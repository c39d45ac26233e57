import { runOperation } from '#operation';
import { grams } from '#units';
import { describe, expect, it } from 'vitest';
import { leastWorkOperation } from '../operations/least-work.ts';
import { leastWork } from './least-work.ts';
import type { LeastWorkProblem } from './problem.ts';
import { SHOP, amount, keyOf, questionOf } from './testing/question.ts';

const [first, second] = [keyOf({ key: 1, down: 52, up: 24 }), keyOf({ key: 2, down: 50, up: 26 })];
const refused = (problem: LeastWorkProblem) => {
  const result = leastWork(problem);
  return result.ok ? [] : result.issues.map(({ code, path }) => `${code} ${path}`);
};

describe('least work refuses', () => {
  it.each<readonly [string, LeastWorkProblem, readonly string[]]>([
    ['a key, an operation or a set-up named twice', questionOf([first, { ...second, key: 1 }], { operations: [...SHOP, ...SHOP.slice(0, 1)], setups: [{ name: 'keysOff', minutes: 1 }, { name: 'stackOff', minutes: 1 }, { name: 'keysOff', minutes: 2 }] }), ['duplicate operations[10].name', 'duplicate setups[2].name', 'duplicate keys[1].key']],
    ['a set-up there is not', questionOf([first], { setups: [{ name: 'stackOff', minutes: 1 }] }), ['choice operations[1].setups[0]', 'choice operations[6].setups[0]', 'choice operations[9].setups[0]']],
    ['set-ups that are needed and not stated', { ...questionOf([first]), setups: undefined }, ['required setups']],
    ['an amount of another kind than its operation', questionOf([{ ...first, amounts: [{ operation: 'trimHammer', ...amount.friction(-2) }] }]), ['conflict keys[0].amounts[0]']],
    ['an operation there is not', questionOf([{ ...first, amounts: [{ operation: 'paint', ...amount.friction(-2) }], without: ['polish'] }]), ['choice keys[0].amounts[0].operation', 'choice keys[0].without[0]']],
    ['two amounts of one operation', questionOf([{ ...first, amounts: [{ operation: 'easeBushing', ...amount.friction(-2) }, { operation: 'easeBushing', ...amount.friction(-3) }] }]), ['duplicate keys[0].amounts[1].operation']],
    ['ends the wrong way round, and steps too fine', questionOf([{ ...first, amounts: [{ operation: 'changeLead', ...amount.weight(4, -4) }] }, { ...second, amounts: [{ operation: 'changeLead', ...amount.weight(-4, 4, 0.01) }] }]), ['order keys[0].amounts[0].toG', 'range keys[1].amounts[0].stepG']],
    ['an up weight above the down weight', questionOf([{ ...first, upWeightG: grams(60) }]), ['order keys[0].upWeightG']],
    ['a key without a target', questionOf([first, { ...second, targetG: grams(48) }], { target: { quantity: 'downWeight', toleranceG: grams(2) } }), ['required keys[0].targetG']],
    ['a guard that leaves no room', questionOf([first], { target: { quantity: 'downWeight', targetG: grams(49), toleranceG: grams(1), guardG: grams(1) } }), ['order target.guardG']],
    ['friction limits the wrong way round', questionOf([{ ...first, frictionFromG: grams(14), frictionToG: grams(12) }]), ['order keys[0].frictionToG']],
    ['a hammer that may change on a key whose parts are not known', questionOf([{ key: 1, downWeightG: grams(52), upWeightG: grams(24) }]), ['required keys[0].parts']],
    ['parts that contradict the weights', questionOf([keyOf({ down: 52, up: 24, front: -60 })]), ['conflict keys[0].parts']],
    ['work that would leave no hammer', questionOf([keyOf({ down: 52, up: 24, hammer: 2 })]), ['range keys[0].parts.hammerWeightG']],
    ['more operations at a key than can be tried', questionOf([first], { operations: Array.from({ length: 13 }, (_, place) => ({ name: `ease ${String(place)}`, changes: 'friction', minutes: 1, amount: amount.friction(-0.1) })) }), ['length keys[0]']],
    ['more set-ups than can be tried', questionOf([first], { setups: ['keysOff', 'stackOff', 'a', 'b', 'c', 'd', 'e', 'f', 'g'].map((name) => ({ name, minutes: 1 })) }), ['length setups']],
  ])('%s', (_, problem, expected) => {
    expect(refused(problem)).toEqual(expected);
  });

  it('an amount that names nothing, by its field', () => {
    const result = runOperation(leastWorkOperation, { ...(leastWorkOperation.example as object), operations: [{ name: 'ease', changes: 'friction', minutes: 2, amount: { fromG: 1 } }] });
    expect(result).toMatchObject({ ok: false, issues: [{ path: 'operations[0].amount.toG', code: 'required' }] });
  });
});
