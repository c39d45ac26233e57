import {
  balanceFromPartsOperation,
  evennessOperation,
  frictionBudgetOperation,
  frontWeightTargetOperation,
  leverRatiosOperation,
  sampleSizeOperation,
  smoothCurveOperation,
  touchDiagnosisOperation,
  touchUncertaintyOperation,
  touchWeightOperation,
  weightRatioOperation,
} from '#action';
import {
  bearingAnglesOperation,
  bearingGaugeOperation,
  bearingLoadOperation,
  bearingOperation,
  bearingPlanOperation,
  bearingRecapOperation,
  bearingSettleOperation,
  pushInfluenceOperation,
  pushTestOperation,
} from '#belly';
import type { AnyOperation } from '#operation';
import {
  pinTurnOperation,
  plainStringOperation,
  rescaleOperation,
  steppedStringOperation,
  stringDriftOperation,
  windingDensityOperation,
  wireStrengthOperation,
  woundStringOperation,
} from '#strings';

/** Every calculation of the bench book, in the order lists show them. Adding one is a line here. */
export const operations: readonly AnyOperation[] = [
  touchWeightOperation,
  touchUncertaintyOperation,
  evennessOperation,
  smoothCurveOperation,
  sampleSizeOperation,
  leverRatiosOperation,
  balanceFromPartsOperation,
  weightRatioOperation,
  frontWeightTargetOperation,
  touchDiagnosisOperation,
  frictionBudgetOperation,
  wireStrengthOperation,
  plainStringOperation,
  windingDensityOperation,
  woundStringOperation,
  steppedStringOperation,
  stringDriftOperation,
  pinTurnOperation,
  rescaleOperation,
  bearingOperation,
  bearingRecapOperation,
  bearingSettleOperation,
  bearingAnglesOperation,
  bearingGaugeOperation,
  bearingPlanOperation,
  bearingLoadOperation,
  pushTestOperation,
  pushInfluenceOperation,
];

const byName: ReadonlyMap<string, AnyOperation> = new Map(operations.map((operation) => [operation.name, operation]));

/** The operation of that name, or `undefined` when there is none. */
export function operationByName(name: string): AnyOperation | undefined {
  return byName.get(name);
}
