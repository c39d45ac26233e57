import { carriedUncertaintiesOf, sumOf } from '#numerics';
import { type Degrees, type Millimetres, type Newtons, type NewtonsPerMillimetre, degrees, millimetres, newtons, newtonsPerMillimetre } from '#units';
import { type BearingNote, bearingOf } from './bearing.ts';
import { type BearingDoubt, bearingUncertaintyOf } from './bearing-uncertainty.ts';
import { plannedHeightsOf } from './plan.ts';
import { bridgeHeightFor } from './recap.ts';
import { settledOf } from './settle.ts';
import type { Riding } from './stations.ts';

/** A note to be recapped: how it stands now, and the strings and the angle it is to have. */
export interface RecapNote extends BearingNote {
  /** Tension and count of the strings that press now; those to come stand in the note itself. */
  readonly now: Pick<BearingNote, 'tensionN' | 'strings'> & Pick<BearingDoubt, 'tensionUncertaintyN'>;
  /** Of the strings to come; standard (k = 1). */
  readonly tensionUncertaintyN?: Newtons | undefined;
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
  /** Of `loadedMm` over the datum: without the height of the bridge as it stands. */
  readonly loadedUncertaintyMm?: Millimetres;
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
  readonly cutToUncertaintyMm?: Millimetres;
  /** Total angle left under the strings to come if nothing is cut. */
  readonly uncutDeg: Degrees;
}

export interface RecapPlan {
  readonly rows: readonly RecapRow[];
  readonly forceNowN: Newtons;
  readonly forceThenN: Newtons;
  /** Standard uncertainties (k = 1); absent unless heights are stated of every note. */
  readonly forceNowUncertaintyN?: Newtons;
  readonly forceThenUncertaintyN?: Newtons;
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
  const forces = {
    forceNowN, forceThenN,
    ...named('forceNowUncertaintyN', wholeUncertaintyOf(notes.map((note) => [{ ...note, ...note.now }, { ...note.doubt, tensionUncertaintyN: note.now.tensionUncertaintyN }]))),
    ...named('forceThenUncertaintyN', wholeUncertaintyOf(notes.map((note, index) => [{ ...note, bridgeHeightMm: rows[index]?.loadedMm ?? note.bridgeHeightMm }, { ...note.doubt, tensionUncertaintyN: note.tensionUncertaintyN }]))),
  };
  if (spring === undefined || notes.length === 0) return { rows, ...forces };
  const riding = notes.map((): Riding => [{ station: 0, share: 1 }]);
  const plan = plannedHeightsOf(notes, riding, [[spring.stiffnessNPerMm]]);
  const [nowMm, thenMm] = [millimetres(forceNowN / spring.stiffnessNPerMm), millimetres(forceThenN / spring.stiffnessNPerMm)];
  const slackNow = notes.map(({ bridgeHeightMm, unloadedNowMm }) => unloadedNowMm ?? millimetres(bridgeHeightMm + nowMm));
  const uncut = settledOf(notes.map((note, index) => ({ ...note, bridgeHeightMm: slackNow[index] ?? note.bridgeHeightMm })), riding, [[spring.stiffnessNPerMm]]);
  return {
    ...forces, settling: { nowMm, thenMm },
    rows: rows.map((row, index) => ({
      ...row,
      slack: {
        nowMm: slackNow[index] ?? millimetres(0), isMeasured: notes[index]?.unloadedNowMm !== undefined,
        cutToMm: plan.unloadedHeightsMm[index] ?? millimetres(0), changeMm: millimetres((plan.unloadedHeightsMm[index] ?? 0) - (slackNow[index] ?? 0)),
        uncutDeg: uncut.totalsDeg[index] ?? degrees(0),
        ...slackUncertaintyOf(row, { changeMm: notes[index]?.unloadedNowMm === undefined ? thenMm - nowMm : thenMm, cutToMm: thenMm }, spring),
      },
    })),
  };
}

function loadedRowOf(note: RecapNote): RecapRow {
  const loadedMm = bridgeHeightFor(note, note.targetTotalDeg);
  const doubt = note.doubt?.heightUncertaintyMm === undefined ? undefined : heightUncertaintiesOf(note, note.doubt);
  return {
    nowDeg: bearingOf(note).totalDeg, loadedNowMm: note.bridgeHeightMm, loadedMm, loadedChangeMm: millimetres(loadedMm - note.bridgeHeightMm),
    ...doubt,
  };
}

/** Of h′ − h_b: for small angles u² = u(h)²·(1 + (L² + L_r²)/(L + L_r)²), and more by the lengths; of h′ alone the same without the 1. */
function heightUncertaintiesOf(note: RecapNote, { heightUncertaintyMm = millimetres(0), speakingLengthUncertaintyMm = millimetres(0), backLengthUncertaintyMm = millimetres(0) }: BearingDoubt): Required<Pick<RecapRow, 'loadedChangeUncertaintyMm' | 'loadedUncertaintyMm'>> {
  const [change = 0, alone = 0] = carriedUncertaintiesOf(
    ([front = 0, bridge = 0, rear = 0, length = 0, back = 0]) => {
      const loaded = bridgeHeightFor({
        frontHeightMm: millimetres(front), rearHeightMm: millimetres(rear), speakingLengthMm: millimetres(length), backLengthMm: millimetres(back),
      }, note.targetTotalDeg);
      return [loaded - bridge, loaded];
    },
    [note.frontHeightMm, note.bridgeHeightMm, note.rearHeightMm, note.speakingLengthMm, note.backLengthMm],
    [heightUncertaintyMm, heightUncertaintyMm, heightUncertaintyMm, speakingLengthUncertaintyMm, backLengthUncertaintyMm],
  );
  return { loadedChangeUncertaintyMm: millimetres(change), loadedUncertaintyMm: millimetres(alone) };
}

/** The change and the height with the strings slack have the same heights in them, and the settling in play of each besides. */
function slackUncertaintyOf({ loadedChangeUncertaintyMm, loadedUncertaintyMm }: RecapRow, settling: { readonly changeMm: number; readonly cutToMm: number }, { stiffnessNPerMm, stiffnessUncertaintyNPerMm = newtonsPerMillimetre(0) }: Spring): Pick<SlackRow, 'changeUncertaintyMm' | 'cutToUncertaintyMm'> {
  if (loadedChangeUncertaintyMm === undefined || loadedUncertaintyMm === undefined) return {};
  const share = stiffnessUncertaintyNPerMm / stiffnessNPerMm;
  return {
    changeUncertaintyMm: millimetres(Math.hypot(loadedChangeUncertaintyMm, settling.changeMm * share)),
    cutToUncertaintyMm: millimetres(Math.hypot(loadedUncertaintyMm, settling.cutToMm * share)),
  };
}

/** Of the sum of forces, the notes taken as independent; unknown while heights are not stated of one of them. */
function wholeUncertaintyOf(notes: readonly (readonly [note: BearingNote, doubt: BearingDoubt])[]): Newtons | undefined {
  const each = notes.map(([note, doubt]) => (doubt.heightUncertaintyMm === undefined ? undefined : bearingUncertaintyOf(note, doubt)?.forceUncertaintyN));
  const known = each.flatMap((one) => one ?? []);
  return known.length < each.length || each.length === 0 ? undefined : newtons(Math.sqrt(sumOf(known.map((one) => one ** 2))));
}

/** A field by its name, or none where there is nothing to tell. */
function named<N extends string, T>(name: N, value: T | undefined): Partial<Record<N, T>> {
  return (value === undefined ? {} : { [name]: value }) as Partial<Record<N, T>>;
}
