import type { KeyColour, KeyNumber } from '#instrument';
import type { DerivedFigures } from './analyse-figures.ts';
import { type Expected, type KeyValue, expectedByLine, expectedByMedian } from './baseline.ts';

/** What each key is expected to show by its neighbours of the same colour; a map for each figure. */
export interface ExpectedFigures {
  readonly friction: ReadonlyMap<KeyNumber, Expected>;
  readonly balance: ReadonlyMap<KeyNumber, Expected>;
  readonly front: ReadonlyMap<KeyNumber, Expected>;
  readonly hammer: ReadonlyMap<KeyNumber, Expected>;
  readonly wippen: ReadonlyMap<KeyNumber, Expected>;
  readonly ratio: ReadonlyMap<KeyNumber, Expected>;
}

type Pick = (derived: DerivedFigures) => number | undefined;

/** Friction to compare and to judge: corrected for the weight steps where they are known. */
export function comparedFrictionOf({ correctedFrictionG, frictionG }: DerivedFigures): number | undefined {
  return correctedFrictionG ?? frictionG;
}

/**
 * This keyboard's own expectation for every figure of every key: robust lines through the neighbours of the same colour,
 * a running median for the ratio. Contradictory weights count for nobody.
 */
export function expectFigures(keys: readonly DerivedFigures[]): ExpectedFigures {
  const sound = keys.filter(({ contradictory }) => !contradictory);
  return {
    friction: byColour(sound, comparedFrictionOf, expectedByLine),
    balance: byColour(sound, ({ balanceWeightG }) => balanceWeightG, expectedByLine),
    front: byColour(sound, ({ figures }) => figures.frontWeightG?.value, expectedByLine),
    hammer: byColour(sound, ({ figures }) => figures.hammerWeightG?.value, expectedByLine),
    wippen: byColour(sound, ({ figures }) => figures.wippenWeightG?.value, expectedByLine),
    ratio: byColour(sound, ({ weightRatio }) => weightRatio, expectedByMedian),
  };
}

function byColour(keys: readonly DerivedFigures[], pick: Pick, expect: (list: readonly KeyValue[]) => ReadonlyMap<KeyNumber, Expected>): ReadonlyMap<KeyNumber, Expected> {
  const ofColour = (colour: KeyColour): readonly KeyValue[] =>
    keys.flatMap((derived) => {
      const value = derived.colour === colour ? pick(derived) : undefined;
      return value === undefined ? [] : [{ key: derived.key, value }];
    });
  return new Map([...expect(ofColour('natural')), ...expect(ofColour('sharp'))]);
}
