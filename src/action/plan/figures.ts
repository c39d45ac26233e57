import { type GramSquareMillimetres, type Grams, type Millimetres, type Milliseconds, type Newtons, type Ratio, gramSquareMillimetres, grams, millimetres, milliseconds, ratio } from '#units';
import { returnTimeOf, strokeForceOf } from '../dynamic-touch.ts';
import { type EffectiveMass, effectiveMassOf, hammerInertiaOf } from '../effective-mass.ts';
import { type Strike, strikeOf } from '../hammer-bore.ts';
import { type KeyTopEffect, keyTopEffectOf } from '../key-top.ts';
import type { Levers } from '../levers.ts';
import { balanceFromPartsOf, frontWeightFor } from '../parts.ts';
import { aftertouchOf, blowFor, dipFor } from '../regulation.ts';
import type { PlanKey } from './plan-key.ts';
import { type PlanShifts, type ShiftedLevers, shiftedBy, shiftedHammerOf } from './shifts.ts';

/** Weights a key shows. */
export interface ShownWeights {
  readonly balanceWeightG: Grams;
  readonly downWeightG: Grams;
  readonly upWeightG: Grams;
}

/** What the regulation comes to when nothing is readjusted, and what readjusting one thing alone would take. */
export interface RegulationAfter {
  /** Blow as it then stands: a longer bore stands nearer to the string. */
  readonly blowMm: Millimetres;
  /** With the dip as stated. */
  readonly aftertouchMm: Millimetres;
  /** Dip for the aftertouch as stated. */
  readonly dipNeededMm: Millimetres;
  /** Blow for dip and aftertouch as stated. */
  readonly blowNeededMm: Millimetres;
}

/** A soft and a hard stroke, from rest to the bottom, that keys are compared by. @source OWN */
export const STROKES_MS = { soft: milliseconds(160), hard: milliseconds(25) } as const;

/** What the key asks of a finger and how soon it is back, for rigid parts. */
export interface StrokesAfter {
  /** Travel of the measuring point. */
  readonly travelMm: Millimetres;
  readonly softN: Newtons;
  readonly hardN: Newtons;
  /** Back by the up weight alone; absent where the key stays down. */
  readonly returnMs?: Milliseconds;
}

/** Everything that follows for one key from its plan and some shifts. */
export interface PlanFigures extends ShownWeights {
  readonly keyRatio: Ratio;
  readonly wippenRatio: Ratio;
  readonly hammerRatio: Ratio;
  readonly distanceRatio: Ratio;
  readonly weightRatio: Ratio;
  readonly levers: Levers;
  readonly hammerWeightG: Grams;
  readonly frictionG: Grams;
  /** Front weight that gives what is asked. */
  readonly frontWeightG: Grams;
  /** Front weight without touching a lead: as found, with the key top that comes. */
  readonly standingFrontG?: Grams;
  /** What the key would show without touching a lead. */
  readonly standing?: ShownWeights;
  readonly top?: KeyTopEffect;
  readonly mass?: EffectiveMass;
  readonly regulation?: RegulationAfter;
  /** With the weights wanted, and the mass of the leads as they lie. */
  readonly strokes?: StrokesAfter;
  /** `null` where the hammer would not reach the string. */
  readonly strike?: Strike | null;
}

/**
 * What follows for one key from its plan and the shifts tried on it, all at once.
 *
 * BW = target − F for an even down weight, else the target; FW = R·SW + K·WW − S − BW; without touching leads
 * BW = R·SW + K·WW − FW − S. R by weights and R by distance each change by the same share as the product of the lever arms;
 * neither is made of the other. Friction is taken as unchanged by the shifts. Grams, millimetres.
 * @source OWN balance of moments
 */
export function planFiguresOf(key: PlanKey, shifts: PlanShifts): PlanFigures {
  const moved = shiftedBy(key.levers, shifts);
  const { keyRatio, wippenRatio, hammerRatio, levers } = moved;
  const weightRatio = ratio(key.weightRatio * moved.change);
  const distanceRatio = ratio(key.distanceRatio * moved.change);
  const hammerWeightG = shiftedHammerOf(key.hammerWeightG, shifts);
  const parts = { hammerWeightG, wippenWeightG: key.wippenWeightG, keyRatio, helperSpringG: key.springG };
  const wanted = shownAt(wantedBalanceOf(key), key.frictionG);
  const top = topOf(key, shifts);
  const weighed = massOf(key, moved, hammerWeightG, top, shifts);
  const standingFrontG = key.found.frontWeightG === undefined ? undefined : grams(key.found.frontWeightG + (top?.frontWeightChangeG ?? 0));
  return {
    ...wanted, keyRatio, wippenRatio, hammerRatio, distanceRatio, weightRatio, levers, hammerWeightG, frictionG: key.frictionG,
    frontWeightG: frontWeightFor({ ...parts, balanceWeightG: wanted.balanceWeightG, weightRatio }),
    ...(standingFrontG === undefined ? {} : { standingFrontG, standing: shownAt(balanceFromPartsOf({ ...parts, frontWeightG: standingFrontG, actionRatio: weightRatio }), key.frictionG) }),
    ...(top === undefined ? {} : { top }),
    ...weighed,
    ...strokesOf(key, wanted, weighed.mass),
    ...regulationOf(key, distanceRatio, shifts),
    ...strikeAfter(key, shifts),
  };
}

function wantedBalanceOf({ asked, frictionG }: PlanKey): Grams {
  return asked.even === 'balanceWeight' ? asked.targetG : grams(asked.targetG - frictionG);
}

function strokesOf({ frictionG, levers, regulation }: PlanKey, { balanceWeightG }: ShownWeights, mass: EffectiveMass | undefined): Pick<PlanFigures, 'strokes'> {
  if (mass === undefined || regulation === undefined || balanceWeightG <= 0 || frictionG <= 0) return {};
  const travelMm = millimetres((regulation.dipMm * levers.keyFrontMm) / regulation.keyEdgeMm);
  const key = { balanceWeightG, frictionG, effectiveMassG: mass.effectiveMassG, dipMm: travelMm };
  const force = (strokeMs: Milliseconds): Newtons => strokeForceOf({ ...key, strokeMs }).forceN;
  const returnMs = returnTimeOf(key);
  return { strokes: { travelMm, softN: force(STROKES_MS.soft), hardN: force(STROKES_MS.hard), ...(returnMs === undefined ? {} : { returnMs }) } };
}

function shownAt(balanceWeightG: Grams, frictionG: Grams): ShownWeights {
  return { balanceWeightG, downWeightG: grams(balanceWeightG + frictionG), upWeightG: grams(balanceWeightG - frictionG) };
}

function topOf({ levers, regulation }: PlanKey, { top }: PlanShifts): KeyTopEffect | undefined {
  if (top === undefined || regulation === undefined) return undefined;
  return keyTopEffectOf({ ...top, keyEdgeMm: regulation.keyEdgeMm, keyFrontMm: levers.keyFrontMm });
}

function massOf({ inertia, regulation }: PlanKey, { levers }: ShiftedLevers, hammerWeightG: Grams, top: KeyTopEffect | undefined, { top: change }: PlanShifts): Pick<PlanFigures, 'mass'> {
  if (inertia === undefined) return {};
  const { shankG, shankLengthMm } = inertia;
  const hammerHeadG = grams(hammerWeightG - (shankG * shankLengthMm) / (2 * levers.hammerMm));
  const arm = top === undefined || change === undefined || regulation === undefined ? 0 : regulation.keyEdgeMm - change.centroidMm;
  const keyGMm2: GramSquareMillimetres = gramSquareMillimetres(inertia.keyGMm2 + (top?.massChangeG ?? 0) * arm ** 2);
  return { mass: effectiveMassOf(levers, { keyGMm2, wippenGMm2: inertia.wippenGMm2, hammerGMm2: hammerInertiaOf({ hammerHeadG, shankG, shankLengthMm }, levers.hammerMm) }) };
}

function regulationOf({ regulation, levers }: PlanKey, distanceRatio: Ratio, { boreMm }: PlanShifts): Pick<PlanFigures, 'regulation'> {
  if (regulation === undefined) return {};
  const { blowMm, dipMm, aftertouchMm, ...fixed } = regulation;
  const base = { ...fixed, distanceRatio, keyFrontMm: levers.keyFrontMm };
  const blow = millimetres(blowMm - boreMm);
  return {
    regulation: {
      blowMm: blow, aftertouchMm: aftertouchOf(base, { blowMm: blow, dipMm }),
      dipNeededMm: dipFor(base, { blowMm: blow, aftertouchMm }), blowNeededMm: blowFor(base, { dipMm, aftertouchMm }),
    },
  };
}

function strikeAfter({ bored, levers }: PlanKey, { boreMm }: PlanShifts): Pick<PlanFigures, 'strike'> {
  if (bored === undefined) return {};
  return { strike: strikeOf({ ...bored, boreMm: millimetres(bored.boreMm + boreMm), hammerMm: levers.hammerMm }) ?? null };
}
