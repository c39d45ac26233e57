/**
 * One key of the invented grand followed through its stroke at 81 positions: loops closed contact by contact, each in closed form,
 * against a general Newton iteration over all three contact conditions at once (Jacobian by differences, solved by ml-matrix),
 * started from the position before. Both find the turns of wippen and hammer for the same turn of the key, while the jack drives;
 * the largest disagreement of the two, in millimetres at the strike point, is told.
 */
import { keyStrokeOf } from '#action';
import { actionTermsSchema, instrumentDraftSchema } from '#instrument';
import { demoShop, standingOf, strokeInputOf } from '#workshop';
import { Matrix, solve } from 'ml-matrix';
import { duel, report } from './measure.mjs';

const POSITIONS = 81;
const must = (result) => {
  if (!result.ok) throw new Error(JSON.stringify(result.issues[0]));
  return result.value;
};

const [grand] = demoShop();
const instrument = instrumentDraftSchema.parse(grand.draft);
const { readings } = standingOf(grand.steps);
const terms = actionTermsSchema.parse(grand.steps.find(({ kind }) => kind === 'action').terms);
const measuresOf = (key) => strokeInputOf({ instrument, readings, cycle: 1, terms, key }).measures;

const turned = ({ xMm, yMm }, by) => ({ x: xMm * Math.cos(by) - yMm * Math.sin(by), y: xMm * Math.sin(by) + yMm * Math.cos(by) });

/** Misses of both contacts for turns of wippen and hammer, the key turned as given: capstan to heel, roller to jack top. */
function misses({ balance, wippen, hammer, capstan, heelNormal, heelLevelMm, roller, topNormal, topLevelMm }, key, [byWippen, byHammer]) {
  const [head, normal] = [turned(capstan, key), turned(heelNormal, byWippen)];
  const [ring, top] = [turned(roller, byHammer), turned(topNormal, byWippen)];
  return [
    normal.x * (balance.xMm + head.x - wippen.xMm) + normal.y * (balance.yMm + head.y - wippen.yMm) - heelLevelMm,
    top.x * (hammer.xMm + ring.x - wippen.xMm) + top.y * (hammer.yMm + ring.y - wippen.yMm) - topLevelMm,
  ];
}

/** Newton on both turns at once until the parts meet to 1e-12 mm or it no longer helps. */
function newton(assembly, key, start) {
  let at = start;
  for (let turn = 0; turn < 20; turn += 1) {
    const here = misses(assembly, key, at);
    if (Math.max(...here.map(Math.abs)) < 1e-12) break;
    const step = 1e-7;
    const columns = at.map((_, index) => misses(assembly, key, at.map((value, place) => (place === index ? value + step : value))).map((value, row) => (value - here[row]) / step));
    const jacobian = new Matrix([[columns[0][0], columns[1][0]], [columns[0][1], columns[1][1]]]);
    const by = solve(jacobian, Matrix.columnVector(here.map((value) => 0 - value))).to1DArray();
    at = at.map((value, index) => value + by[index]);
  }
  return at;
}

const measures = measuresOf(44);
const stroke = must(keyStrokeOf(measures, POSITIONS));
const driven = stroke.positions.filter(({ phase }) => phase === 'driven');
const follow = () => {
  let at = [driven[0].pose.wippen, driven[0].pose.hammer];
  return driven.map(({ pose }) => (at = newton(stroke.assembly, pose.key, at)));
};

/** Largest distance at the strike point between what both find, over every key of the keyboard. */
function disagreement() {
  const keys = Array.from({ length: 88 }, (_, index) => index + 1);
  return Math.max(...keys.map((key) => {
    const own = must(keyStrokeOf(measuresOf(key), POSITIONS));
    const list = own.positions.filter(({ phase }) => phase === 'driven');
    let at = [list[0].pose.wippen, list[0].pose.hammer];
    return Math.max(...list.map(({ pose }) => {
      at = newton(own.assembly, pose.key, at);
      return Math.abs(at[1] - pose.hammer) * measuresOf(key).levers.hammerMm;
    }));
  }));
}

const { ours, baseline, ratio } = await duel(() => must(keyStrokeOf(measures, POSITIONS)), follow, { runs: 200, warm: 40 });
report('kinematics', {
  unit: `ms for one key; ours: ${String(POSITIONS)} positions with let-off, ratios and arms; Newton: the turns alone at the ${String(driven.length)} positions the jack drives`,
  ours, newton: baseline, oursOverNewton: ratio, oursPerPositionMs: ours.median / POSITIONS, newtonPerPositionMs: baseline.median / driven.length,
  keysCompared: 88, largestDisagreementMm: disagreement(),
});
