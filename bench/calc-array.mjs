/** Whole `calc` of an array of 10 000 cases in one process, against a bare loop over the same function. */
import { balanceWeightOf, frictionOf } from '#action';
import { operationByName } from '#catalogue';
import { runOperation } from '#operation';
import { duel, report } from './measure.mjs';

const cases = Array.from({ length: 10_000 }, (_, index) => ({ downWeightG: 45 + (index % 11), upWeightG: 18 + (index % 9) }));
const text = JSON.stringify(cases);
const operation = operationByName('touch-weight');
let kept;

const whole = () => {
  kept = JSON.stringify(JSON.parse(text).map((input) => runOperation(operation, input).value));
};
const bare = () => {
  kept = cases.map((input) => ({ balanceWeightG: balanceWeightOf(input), frictionG: frictionOf(input) }));
};

const checked = await duel(whole, bare, { runs: 20 });
const json = await duel(whole, () => { kept = JSON.stringify(JSON.parse(text)); }, { runs: 20 });
report('calc-array', { unit: 'ms for 10 000 cases', ...checked, againstReadingAndWritingTheJson: json.ratio, bytes: kept.length });
