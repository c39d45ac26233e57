import { sumOf } from '#numerics';
import { type GramMillimetres, type Grams, type Millimetres, type Ratio, grams } from '#units';
import { type Levers, leverRatiosOf } from './levers.ts';

export interface FrictionSources {
  readonly levers: Levers;
  readonly hammerWeightG: Grams;
  readonly wippenWeightG: Grams;
  /** Friction of the key alone at its front: pins and bushings. */
  readonly keyFrictionG: Grams;
  /** Torque of the wippen centre and of the hammer centre. */
  readonly wippenTorqueGMm: GramMillimetres;
  readonly hammerTorqueGMm: GramMillimetres;
  /** Coefficient of friction of capstan and wippen heel, and their mean distance from the line of centres. */
  readonly capstanFriction: Ratio;
  readonly capstanOffsetMm: Millimetres;
  /** The same of jack and roller. */
  readonly rollerFriction: Ratio;
  readonly rollerOffsetMm: Millimetres;
}

export interface FrictionBudget {
  readonly keyG: Grams;
  readonly wippenG: Grams;
  readonly hammerG: Grams;
  readonly capstanG: Grams;
  readonly rollerG: Grams;
  readonly totalG: Grams;
}

/**
 * Where the friction felt at the key front comes from.
 * F = KF + τ_w·K/w_c + τ_h·R/L + μ_c·N_c·(1/a + K/w_c)·e_c + μ_r·N_r·(K/w_c + R/L)·e_r,
 * with N_r = SW·H at the roller and N_c = N_r·W + WW at the capstan.
 *
 * τ torque of a centre, g·mm; μ coefficient of friction; e mean distance of the contact from the line of its two
 * centres, mm, where the faces would roll without sliding; a, w_c, L, K, W, H, R as in `leverRatiosOf`. Grams.
 * Ignores stiction, speed and the loss of load along the train.
 * @source OWN power lost per unit of key travel; sliding speed = sum of the turning speeds times e
 */
export function frictionBudgetOf(sources: FrictionSources): FrictionBudget {
  const { levers, hammerWeightG, wippenWeightG } = sources;
  const { keyRatio, wippenRatio, hammerRatio, actionRatio } = leverRatiosOf(levers);
  const keyTurn = 1 / levers.keyFrontMm;
  const wippenTurn = keyRatio / levers.wippenHeelMm;
  const hammerTurn = actionRatio / levers.hammerMm;
  const rollerLoad = hammerWeightG * hammerRatio;
  const capstanLoad = rollerLoad * wippenRatio + wippenWeightG;
  const parts = {
    keyG: sources.keyFrictionG,
    wippenG: grams(sources.wippenTorqueGMm * wippenTurn),
    hammerG: grams(sources.hammerTorqueGMm * hammerTurn),
    capstanG: grams(sources.capstanFriction * capstanLoad * (keyTurn + wippenTurn) * sources.capstanOffsetMm),
    rollerG: grams(sources.rollerFriction * rollerLoad * (wippenTurn + hammerTurn) * sources.rollerOffsetMm),
  };
  return { ...parts, totalG: grams(sumOf(Object.values(parts))) };
}
