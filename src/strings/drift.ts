import { castIron, steelWire } from '#materials';
import {
  type Cents, type Degrees, type Gigapascals, type Hertz, type Kelvins, type KilogramsPerCubicMetre, type Millimetres, type Newtons, type PerKelvin,
  cents, millimetres, newtons,
} from '#units';
import { flexibleTensionOf } from './plain-string.ts';
import { sectionAreaMm2, wireDensityOf } from './section.ts';

/** A plain string at its pitch. */
interface TunedWire {
  readonly speakingLengthMm: Millimetres;
  readonly diameterMm: Millimetres;
  readonly frequencyHz: Hertz;
  readonly youngsModulusGPa?: Gigapascals;
  readonly densityKgM3?: KilogramsPerCubicMetre;
}

export interface Warming extends TunedWire {
  readonly stringWarmingK: Kelvins;
  readonly frameWarmingK: Kelvins;
  readonly stringExpansionPerK?: PerKelvin;
  readonly frameExpansionPerK?: PerKelvin;
}

export interface Drift {
  readonly tensionN: Newtons;
  readonly tensionChangeN: Newtons;
  readonly offsetCents: Cents;
}

/**
 * How far a string drifts when it and its frame warm.
 * ΔT = E·A·(α_f·Δθ_f − α_s·Δθ_s); cents = 600·log₂[(T₂/T)·(L/L₂)], L₂ = L·(1 + α_f·Δθ_f). The whole string is as warm
 * as its speaking part, so its whole length does not matter. Ignores wood, humidity and friction at the bearings.
 *
 * @returns `undefined` when the string would go slack.
 * @source OWN from Hooke’s law
 */
export function driftOf(warming: Warming): Drift | undefined {
  const { stringWarmingK, frameWarmingK, stringExpansionPerK = steelWire.expansionPerK.value, frameExpansionPerK = castIron.expansionPerK.value } = warming;
  const { tensionN, elasticN } = tautOf(warming);
  const stretch = frameExpansionPerK * frameWarmingK;
  const tensionChangeN = newtons(elasticN * (stretch - stringExpansionPerK * stringWarmingK));
  const after = tensionN + tensionChangeN;
  if (after <= 0) return undefined;
  return { tensionN, tensionChangeN, offsetCents: cents(600 * Math.log2(after / tensionN / (1 + stretch))) };
}

export interface PinTurn extends TunedWire {
  readonly totalLengthMm: Millimetres;
  readonly pinDiameterMm: Millimetres;
  /** Tightening is positive. */
  readonly turnDeg: Degrees;
}

export interface Turned {
  readonly lengthChangeMm: Millimetres;
  readonly tensionAfterN: Newtons;
  readonly offsetCents: Cents;
}

/**
 * What a turn of the tuning pin does: Δl = π·(pin + d)·φ/360, T₂ = T + E·A·Δl/L_total, cents = 600·log₂(T₂/T).
 * As if nothing rubbed: friction at bridge and bearings holds part of it back at first. Ignores that the wire thins.
 *
 * @returns `undefined` when the string would go slack.
 * @source OWN from Hooke’s law
 */
export function turnedOf(turn: PinTurn): Turned | undefined {
  const { tensionN, elasticN } = tautOf(turn);
  const lengthChangeMm = millimetres((Math.PI * (turn.pinDiameterMm + turn.diameterMm) * turn.turnDeg) / 360);
  const tensionAfterN = newtons(tensionN + (elasticN * lengthChangeMm) / turn.totalLengthMm);
  return tensionAfterN <= 0 ? undefined : { lengthChangeMm, tensionAfterN, offsetCents: cents(600 * Math.log2(tensionAfterN / tensionN)) };
}

/** Tension of a wire at its pitch, and the E·A that a strain is multiplied with. */
function tautOf({ diameterMm, speakingLengthMm, frequencyHz, youngsModulusGPa = steelWire.youngsModulusGPa.value, densityKgM3 = steelWire.densityKgM3.value }: TunedWire): { readonly tensionN: Newtons; readonly elasticN: number } {
  const linearDensityGPerM = wireDensityOf({ diameterMm, densityKgM3 });
  return { tensionN: flexibleTensionOf({ linearDensityGPerM, speakingLengthMm, frequencyHz }), elasticN: youngsModulusGPa * 1e3 * sectionAreaMm2(diameterMm) };
}
