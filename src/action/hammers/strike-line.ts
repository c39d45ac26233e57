import { type Compass, type KeyNumber, keysOf, midiOf } from '#instrument';
import { type Millimetres, type Ratio, ratio } from '#units';

/** Where a hammer strikes its string: d/L, from the front end of the speaking length. @source OWN definition */
export function strikeRatioOf({ strikeDistanceMm, speakingLengthMm }: { readonly strikeDistanceMm: Millimetres; readonly speakingLengthMm: Millimetres }): Ratio {
  return ratio(strikeDistanceMm / speakingLengthMm);
}

/** Strike ratio d/L of one measured grand, by MIDI number: A0 243/2016, A3 91/777, C4 74.4/620, A6 8.1/115. @source STULOV-1995 table 1 */
const PUBLISHED = [[21, 243 / 2016], [57, 91 / 777], [60, 74.4 / 620], [93, 8.1 / 115]] as const;

/** Up to A4 older textbooks have 1/9 to 1/7; at C8 1/17 to 1/12 was found by ear. Between the two nothing is told. @source CONKLIN-1990 */
const LAST_OF_OLD_RULE_MIDI = 69;
const C8_MIDI = 108;
const OLD_RULE = [1 / 9, 1 / 7] as const;
const AT_C8 = [1 / 17, 1 / 12] as const;

/** What was published of strike ratios, by key (index = key − 1), for comparison and never as an aim. */
export interface PublishedStrike {
  readonly from: readonly (number | undefined)[];
  readonly to: readonly (number | undefined)[];
  /** One measured grand, straight between its four notes. */
  readonly measured: readonly (number | undefined)[];
}

/** Published strike ratios over a compass. @source STULOV-1995 measured, CONKLIN-1990 range */
export function publishedStrikeOf(compass: Compass): PublishedStrike {
  const midis = keysOf(compass).map((key: KeyNumber) => midiOf(compass, key));
  const range = midis.map((midi) => (midi <= LAST_OF_OLD_RULE_MIDI ? OLD_RULE : midi === C8_MIDI ? AT_C8 : undefined));
  return { from: range.map((pair) => pair?.[0]), to: range.map((pair) => pair?.[1]), measured: midis.map(measuredAt) };
}

function measuredAt(midi: number): number | undefined {
  const upper = PUBLISHED.findIndex(([at]) => at >= midi);
  const [low, high] = [PUBLISHED[Math.max(upper - 1, 0)], PUBLISHED[upper]];
  if (low === undefined || high === undefined || midi < PUBLISHED[0][0]) return undefined;
  return high[0] === low[0] ? high[1] : low[1] + ((midi - low[0]) / (high[0] - low[0])) * (high[1] - low[1]);
}
