/**
 * Least work for 88 worn keys, ten operations, two set-ups: time to the proven optimum; minutes and keys inside against the two
 * plans made without thought; and against a general solver of mixed-integer programs on the same keys, once hammer and ratio are
 * kept from changing together, which is not linear: times, and the same minutes.
 */
import { leastWork } from '#action';
import { inventedWork } from './invented-touch.mjs';
import { report, spreadOf, timesOf } from './measure.mjs';
import { solved, sumOf } from './solver.mjs';

const must = (result) => {
  if (!result.ok) throw new Error(JSON.stringify(result.issues[0]));
  return result.value;
};

const WEIGHS = { friction: 'changeG', ratio: 'fromRatio', hammer: 'fromG', front: 'fromG' };

/** Fewest minutes as a program: a binary for each operation at each key and each set-up, an amount for each operation. */
function milp({ keys, operations, setups, target }, seconds) {
  const offers = keys.flatMap((key, k) => operations.flatMap((operation, o) => {
    const amount = key.amounts.find((own) => own.operation === operation.name) ?? operation.amount;
    return amount?.[WEIGHS[operation.changes]] === undefined ? [] : [{ k, operation, done: `y${k}_${o}`, by: `x${k}_${o}`, from: amount.changeG ?? amount.fromG ?? amount.fromRatio, to: amount.changeG ?? amount.toG ?? amount.toRatio }];
  }));
  const limits = keys.flatMap((key, k) => {
    const { hammerWeightG: sw, wippenWeightG: ww, frontWeightG: fw, keyRatio } = key.parts;
    const [balance, friction] = [(key.downWeightG + key.upWeightG) / 2, (key.downWeightG - key.upWeightG) / 2];
    const weigh = { ratio: sw, hammer: (balance + fw - keyRatio * ww) / sw, front: -1 };
    const row = (onFriction) => sumOf(offers.filter((offer) => offer.k === k).map(({ operation, by }) => [operation.changes === 'friction' ? onFriction : weigh[operation.changes], by]));
    const only = sumOf(offers.filter((offer) => offer.k === k && offer.operation.changes === 'friction').map(({ by }) => [1, by]));
    return [
      ` h${k}: ${row(1)} <= ${target.targetG + target.toleranceG - key.downWeightG}`, ` l${k}: ${row(1)} >= ${target.targetG - target.toleranceG - key.downWeightG}`,
      ` u${k}: ${row(-1)} >= ${target.minUpWeightG - key.upWeightG}`, ` n${k}: ${only} >= ${0 - friction}`,
    ];
  });
  const groups = keys.flatMap((_, k) => [...new Set(operations.flatMap(({ group }) => group ?? []))].map((group, g) => ` g${k}_${g}: ${sumOf(offers.filter((offer) => offer.k === k && offer.operation.group === group).map(({ done }) => [1, done]))} <= 1`));
  const minutes = [...offers.map(({ operation, done }) => [operation.minutes, done]), ...setups.map((setup, s) => [setup.minutes, `s${s}`])];
  const { ms, status, valueOf } = solved([
    'Minimize', ` obj: ${sumOf(minutes)}`, 'Subject To', ...limits, ...groups,
    ...offers.flatMap(({ done, by, from, to }, i) => [` f${i}: ${sumOf([[1, by], [-from, done]])} >= 0`, ` t${i}: ${sumOf([[1, by], [-to, done]])} <= 0`]),
    ...offers.flatMap(({ operation, done }, i) => operation.setups.map((name, n) => ` e${i}_${n}: ${done} - s${setups.findIndex((setup) => setup.name === name)} <= 0`)),
    'Bounds', ...offers.map(({ by }) => ` -100 <= ${by} <= 100`), 'Binary', ` ${minutes.map(([, name]) => name).join(' ')}`, 'End',
  ], seconds);
  return { ms, status, minutes: status === 'Optimal' ? minutes.reduce((sum, [weight, name]) => sum + weight * Math.round(valueOf(name)), 0) : undefined };
}

const problem = inventedWork();
const times = spreadOf(await timesOf(() => must(leastWork(problem)), { runs: 10, warm: 2 }));
const plan = must(leastWork(problem));
const naive = ({ minutes, inside, outside }) => ({ minutes, inside, outside: outside.length, outsideByFriction: outside.filter(({ because }) => because === 'friction').length });

const apart = { ...problem, operations: problem.operations.map((operation) => (operation.changes === 'hammer' || operation.changes === 'ratio' ? { ...operation, group: 'weight' } : operation)) };
const reachable = must(leastWork(apart));
const linear = { ...apart, keys: apart.keys.filter(({ key }) => !reachable.outOfReach.includes(key)) };
const begin = performance.now();
const ours = must(leastWork(linear));
const oursMs = performance.now() - begin;
const theirs = milp(linear, 120);

report('least-work', {
  unit: 'ms and minutes; 88 keys, 10 operations, 2 set-ups',
  provenMs: times, proven: plan.proven, minutes: plan.minutes, lowerBoundMinutes: plan.lowerBoundMinutes, already: plan.already, planned: plan.planned, outOfReach: plan.outOfReach.length,
  setups: plan.setups.map(({ name }) => name).join(' and '), replaceAll: naive(plan.replaceAll), leadOnly: naive(plan.leadOnly),
  minutesSavedAgainstReplaceAll: plan.replaceAll.minutes - plan.minutes, minutesMoreThanLeadOnly: plan.minutes - plan.leadOnly.minutes,
  hammerAndRatioApart: { keys: linear.keys.length, ourMinutes: ours.minutes, generalMinutes: theirs.minutes ?? theirs.status, oursMs, generalMs: theirs.ms, generalOverOurs: theirs.ms / oursMs },
});
