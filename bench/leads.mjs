/**
 * Leads for 88 keys on a 1 mm grid, 3 drills, up to 5 leads, old holes in the lower half: time of the whole keyboard and share
 * proven, with old holes first and by inertia alone; on a sample of keys against a general solver of mixed-integer programs
 * (binaries for places and drills, interval cliques for the spacing) at gap 0 given 60 s a key: times, and the same optimum.
 */
import { keyLeads, keyboardLeads } from '#action';
import { inventedLeads } from './invented-touch.mjs';
import { report, spreadOf, timesOf } from './measure.mjs';
import { solved, sumOf } from './solver.mjs';

const must = (result) => {
  if (!result.ok) throw new Error(JSON.stringify(result.issues[0]));
  return result.value;
};

const massOf = (p, d) => (p.leadDensityGPerMm3 - p.woodDensityGPerMm3) * (Math.PI * d * d / 4) * p.keyWidthMm;
const costOf = (p, { x, d, old }) => massOf(p, d) * (x * x + d * d / 8) / p.keyFrontMm ** 2 + (old ? 0 : p.newHoleCostG);
const clear = (p, a, b) => Math.abs(a.x - b.x) >= (a.d + b.d) / 2 + p.gapMm - 1e-7;

/** Least cost of one key as a program for the general solver. */
function milp(p, seconds) {
  const old = p.existingHoles.map(({ positionMm: x, diameterMm: d }) => ({ x, d, old: true }));
  const fresh = p.gridMm.flatMap((x) => p.diametersMm.map((d) => ({ x, d, old: false }))).filter((lead) => old.every((hole) => clear(p, lead, hole)) && p.keepOutsMm.every(([from, to]) => lead.x + lead.d / 2 <= from || lead.x - lead.d / 2 >= to));
  const all = [...old, ...fresh];
  const back = ({ x, d }) => x - (d + p.gapMm) / 2;
  const owners = all.map((lead) => all.flatMap((other, i) => (back(other) <= back(lead) + 1e-7 && 2 * other.x - back(other) > back(lead) + 1e-7 ? [i] : [])));
  const cliques = [...new Map(owners.map((members) => [members.join(), members])).values()].filter(({ length }) => length > 1);
  const terms = (weight) => sumOf(all.map((lead, i) => [weight(lead), `z${i}`]));
  const front = terms(({ x, d }) => massOf(p, d) * x / p.keyFrontMm);
  const lacking = p.targetFrontWeightG - p.bareFrontWeightG;
  const { ms, status, valueOf } = solved([
    'Minimize', ` obj: ${terms((lead) => costOf(p, lead))}`, 'Subject To', ` low: ${front} >= ${lacking - p.toleranceG}`, ` high: ${front} <= ${lacking + p.toleranceG}`, ` count: ${terms(() => 1)} <= ${p.maxLeads}`,
    ...cliques.map((members, i) => ` c${i}: ${sumOf(members.map((z) => [1, `z${z}`]))} <= 1`), 'Binary', ` ${all.map((_, i) => `z${i}`).join(' ')}`, 'End',
  ], seconds);
  if (status !== 'Optimal') return { ms, status };
  const set = all.filter((_, i) => valueOf(`z${i}`) > 0.5);
  const legal = set.every((a, i) => set.slice(i + 1).every((b) => clear(p, a, b)));
  return { ms, status: legal ? status : 'breaks a constraint', cost: set.reduce((sum, lead) => sum + costOf(p, lead), 0) };
}

async function keyboard(newHoleCostG) {
  const questions = inventedLeads({ newHoleCostG });
  const perKey = questions.map((question) => {
    const begin = performance.now();
    must(keyLeads(question));
    return performance.now() - begin;
  });
  const whole = spreadOf(await timesOf(() => must(keyboardLeads(questions)), { runs: 5, warm: 1 }));
  const { feasible, proven, leads, newHoles, plugs } = must(keyboardLeads(questions));
  return { wholeMs: whole.median, longestKeyMs: Math.max(...perKey), proven, feasible, leads, newHoles, plugs };
}

/** Every eighth key of the keyboard, both in turns. */
function sample(newHoleCostG, keys, seconds) {
  const questions = inventedLeads({ newHoleCostG }).filter(({ key }) => keys.includes(key));
  const rows = questions.map((question) => {
    const begin = performance.now();
    const ours = must(keyLeads(question));
    const oursMs = performance.now() - begin;
    const theirs = milp(question, seconds);
    return { oursMs, ...theirs, same: theirs.status === 'Optimal' && Math.abs(ours.costG - theirs.cost) < 1e-6, solved: theirs.status === 'Optimal' };
  });
  const total = (of) => rows.reduce((sum, row) => sum + of(row), 0);
  return {
    keys: rows.length, generalSolved: total(({ solved: done }) => Number(done)), sameOptimum: total(({ same }) => Number(same)),
    oursMs: total(({ oursMs }) => oursMs), generalMs: total(({ ms }) => ms), generalOverOurs: total(({ ms }) => ms) / total(({ oursMs }) => oursMs),
  };
}

const keys = [4, 15, 26, 37, 48, 59];
report('leads', {
  unit: 'ms; 88 keys, 1 mm grid, 3 drills, 5 leads',
  oldHolesFirst: await keyboard(50), inertiaAlone: await keyboard(0),
  sampleOldHolesFirst: sample(50, keys, 60), sampleInertiaAlone: sample(0, keys.slice(0, 3), 60),
});
