import { carriedUncertaintiesOf, sumOf } from '#numerics';
import { type Degrees, type Millimetres, type Newtons, type NewtonsPerMillimetre, degrees, millimetres, newtons } from '#units';
import { type BearingNote, bearingOf } from './bearing.ts';
import type { BearingDoubt } from './bearing-uncertainty.ts';
import { plannedHeightsOf } from './plan.ts';
import { bridgeHeightFor } from './recap.ts';
import { settledOf } from './settle.ts';
import type { Riding } from './stations.ts';

/** A note to be recapped: how it stands now, and the strings and the angle it is to have. */
export interface RecapNote extends BearingNote {
  /** Tension and count of the strings that press now; those to come stand in the note itself. */
  readonly now: Pick<BearingNote, 'tensionN' | 'strings'>;
  readonly targetTotalDeg: Degrees;
  /** Bridge measured with the strings off. */
  readonly unloadedNowMm?: Millimetres | undefined;
  readonly doubt?: Omit<BearingDoubt, 'tensionUncertaintyN'> | undefined;
}

/** A board that goes down as one, and how sure its stiffness is. */
export interface Spring {
  readonly stiffnessNPerMm: NewtonsPerMillimetre;
  /** Standard uncertainty (k = 1). */
  readonly stiffnessUncertaintyNPerMm?: NewtonsPerMillimetre | undefined;
}

/** What recapping asks of one note; uncertainties are standard ones (k = 1). Build up where positive, plane off where negative. */
export interface RecapRow {
  readonly nowDeg: Degrees;
  readonly loadedNowMm: Millimetres;
  readonly loadedMm: Millimetres;
  readonly loadedChangeMm: Millimetres;
  readonly loadedChangeUncertaintyMm?: Millimetres;
  /** Absent without a stiffness of the board. */
  readonly slack?: SlackRow;
}

/** The same with the strings slack. */
export interface SlackRow {
  readonly nowMm: Millimetres;
  /** False where it follows from the loaded height and the settling. */
  readonly isMeasured: boolean;
  readonly cutToMm: Millimetres;
  readonly changeMm: Millimetres;
  readonly changeUncertaintyMm?: Millimetres;
  /** Total angle left under the strings to come if nothing is cut. */
  readonly uncutDeg: Degrees;
}

export interface RecapPlan {
  readonly rows: readonly RecapRow[];
  readonly forceNowN: Newtons;
  readonly forceThenN: Newtons;
  /** How far the board goes down under the strings that press now, and under those to come. */
  readonly settling?: { readonly nowMm: Millimetres; readonly thenMm: Millimetres };
}

/**
 * Bridge heights that give each note the angle asked, against how the bridge stands: under load the height h′ of
 * bearing-recap; with the strings slack h′ + d′, d′ = ΣF′/k. What is to be built up there is h′ + d′ − h₀, with h₀ the
 * height measured slack, or h_b + d where it was not: d = ΣF/k under the strings that press now.
 *
 * u(Δh) carries the errors of the three heights and the lengths through h′ − h_b; of a slack height measured by itself its
 * own error stands in place of h_b’s. The stiffness adds u(k)/k times the settling in play. Errors of a datum that is off
 * as a whole, and of the board not going down as one, are not in it.
 * @source EUCLID-III-21 @source JCGM-100 clause 5.1.2
 */
export function recapPlanOf(notes: readonly RecapNote[], spring?: Spring): RecapPlan {
  const rows = notes.map(loadedRowOf);
  const forceNowN = newtons(sumOf(notes.map((note) => bearingOf({ ...note, ...note.now }).forceN)));
  const forceThenN = newtons(sumOf(notes.map((note, index) => bearingOf({ ...note, bridgeHeightMm: rows[index]?.loadedMm ?? note.bridgeHeightMm }).forceN)));
  if (spring === undefined || notes.length === 0) return { rows, forceNowN, forceThenN };
  const riding = notes.map((): Riding => [{ station: 0, share: 1 }]);
  const plan = plannedHeightsOf(notes, riding, [[spring.stiffnessNPerMm]]);
  const [nowMm, thenMm] = [millimetres(forceNowN / spring.stiffnessNPerMm), millimetres(forceThenN / spring.stiffnessNPerMm)];
  const slackNow = notes.map(({ bridgeHeightMm, unloadedNowMm }) => unloadedNowMm ?? millimetres(bridgeHeightMm + nowMm));
  const uncut = settledOf(notes.map((note, index) => ({ ...note, bridgeHeightMm: slackNow[index] ?? note.bridgeHeightMm })), riding, [[spring.stiffnessNPerMm]]);
  return {
    forceNowN, forceThenN, settling: { nowMm, thenMm },
    rows: rows.map((row, index) => ({
      ...row,
      slack: {
        nowMm: slackNow[index] ?? millimetres(0), isMeasured: notes[index]?.unloadedNowMm !== undefined,
        cutToMm: plan.unloadedHeightsMm[index] ?? millimetres(0), changeMm: millimetres((plan.unloadedHeightsMm[index] ?? 0) - (slackNow[index] ?? 0)),
        uncutDeg: uncut.totalsDeg[index] ?? degrees(0),
        ...slackUncertaintyOf(row, notes[index]?.unloadedNowMm === undefined ? thenMm - nowMm : thenMm, spring),
      },
    })),
  };
}

function loadedRowOf(note: RecapNote): RecapRow {
  const loadedMm = bridgeHeightFor(note, note.targetTotalDeg);
  const uncertainty = note.doubt?.heightUncertaintyMm === undefined ? undefined : changeUncertaintyOf(note, note.doubt);
  return {
    nowDeg: bearingOf(note).totalDeg, loadedNowMm: note.bridgeHeightMm, loadedMm, loadedChangeMm: millimetres(loadedMm - note.bridgeHeightMm),
    ...(uncertainty === undefined ? {} : { loadedChangeUncertaintyMm: uncertainty }),
  };
}

/** Of h′ − h_b: for small angles u² = u(h)²·(1 + (L² + L_r²)/(L + L_r)²), and more by the lengths. */
function changeUncertaintyOf(note: RecapNote, { heightUncertaintyMm = millimetres(0), speakingLengthUncertaintyMm = millimetres(0), backLengthUncertaintyMm = millimetres(0) }: BearingDoubt): Millimetres {
  const [change = 0] = carriedUncertaintiesOf(
    ([front = 0, bridge = 0, rear = 0, length = 0, back = 0]) => [bridgeHeightFor({
      frontHeightMm: millimetres(front), rearHeightMm: millimetres(rear), speakingLengthMm: millimetres(length), backLengthMm: millimetres(back),
    }, note.targetTotalDeg) - bridge],
    [note.frontHeightMm, note.bridgeHeightMm, note.rearHeightMm, note.speakingLengthMm, note.backLengthMm],
    [heightUncertaintyMm, heightUncertaintyMm, heightUncertaintyMm, speakingLengthUncertaintyMm, backLengthUncertaintyMm],
  );
  return millimetres(change);
}

/** The change with the strings slack has the same heights in it, and the settling in play besides. */
function slackUncertaintyOf({ loadedChangeUncertaintyMm: heights }: RecapRow, settlingMm: number, { stiffnessNPerMm, stiffnessUncertaintyNPerMm }: Spring): Pick<SlackRow, 'changeUncertaintyMm'> {
  if (heights === undefined) return {};
  return { changeUncertaintyMm: millimetres(Math.hypot(heights, (settlingMm * (stiffnessUncertaintyNPerMm ?? 0)) / stiffnessNPerMm)) };
}
