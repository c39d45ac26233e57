import type { HeightsRead, RecapNote } from '#belly';
import type { KeyNumber } from '#instrument';
import { type Degrees, type Millimetres, millimetres } from '#units';
import { type BearingMaterial, type GatheredBearing, bearingInputOf } from './bearing-input.ts';
import { heightsOf } from './bearing-stations.ts';
import { sizesByKey } from './scale-sizes.ts';

/** A note that can be recapped, by key. */
export interface KeyedRecap {
  readonly key: KeyNumber;
  readonly isEstimated: boolean;
  readonly note: RecapNote;
}

export interface GatheredRecap {
  readonly notes: readonly KeyedRecap[];
  /** Notes with heights that cannot be planned, because no tension is known of them. */
  readonly withoutPull: readonly KeyNumber[];
}

interface RecapMaterial {
  readonly material: Omit<BearingMaterial, 'state' | 'strings'>;
  /** Bearing as found, as {@link bearingInputOf} gathered it. */
  readonly found: GatheredBearing;
  readonly targetOf: (key: KeyNumber) => Degrees | undefined;
}

/**
 * Notes whose heights are known as found, with the strings and rests as planned: what recapping starts from. The bridge
 * stands where it was found; notes without a target or without tension are left out.
 * @source OWN
 */
export function recapInputOf({ material, found, targetOf }: RecapMaterial): GatheredRecap {
  const { instrument, readings, cycle, plannedStrings = [] } = material;
  const planned = new Map(bearingInputOf({ ...material, state: 'planned', strings: plannedStrings }).input.notes.map((note) => [note.key, note]));
  const slack = heightsOf(sizesByKey(readings, cycle, 'found', 'belly'), instrument.sections);
  const heights = found.input.notes.flatMap(({ key, read, also, pull }) => {
    const ofNote = [...(read === undefined ? [] : [read]), ...also].find((one): one is HeightsRead => one.source === 'heights');
    return ofNote === undefined ? [] : [{ key, own: ofNote, pull }];
  });
  const notes = heights.flatMap(({ key, own, pull }): readonly KeyedRecap[] => {
    const [then, target] = [planned.get(key), targetOf(key)];
    if (pull === undefined || then?.pull === undefined || target === undefined) return [];
    const rests = then.read?.source === 'heights' ? then.read : own;
    const unloadedNowMm = measuredSlack(slack.get(key)?.bridgeHeightUnloadedMm);
    const { tensionN, strings, tensionUncertaintyN } = then.pull;
    return [{
      key, isEstimated: own.isEstimated,
      note: {
        tensionN, strings, tensionUncertaintyN, now: pull, targetTotalDeg: target, speakingLengthMm: rests.speakingLengthMm, backLengthMm: rests.backLengthMm,
        frontHeightMm: rests.frontHeightMm, rearHeightMm: rests.rearHeightMm, bridgeHeightMm: own.bridgeHeightMm, unloadedNowMm, doubt: own.doubt,
      },
    }];
  });
  const taken = new Set(notes.map(({ key }) => key));
  return { notes, withoutPull: heights.filter(({ key }) => !taken.has(key) && targetOf(key) !== undefined).map(({ key }) => key) };
}

const measuredSlack = (size: { readonly value: number } | undefined): Millimetres | undefined => (size === undefined ? undefined : millimetres(size.value));
