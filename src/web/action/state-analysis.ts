import type { TouchAnalysis } from '#action';
import type { State } from '#instrument';

/** The touch of one state. */
export interface StateAnalysis {
  readonly state: State;
  readonly analysis: TouchAnalysis;
}
