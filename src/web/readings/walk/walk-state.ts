import type { KeyNumber, Outcome, QuantityName } from '#instrument';
import type { Issue } from '#result';

/** One figure asked for at a key. */
export interface WalkSlot {
  readonly quantity: QuantityName;
  readonly repeat: number;
}

/** Which keys are walked and what is read at each. */
export interface WalkPlan {
  readonly keys: readonly KeyNumber[];
  readonly slots: readonly WalkSlot[];
  readonly locale: string;
}

/** What stands at a place already. */
export interface StandingFigure {
  readonly value: number | null;
  readonly outcome: Outcome | null;
  readonly typed: string | null;
  readonly remark?: string;
}

/** The sheet as the walk sees it. */
export interface WalkContext {
  readonly plan: WalkPlan;
  readonly standing: (key: KeyNumber, slot: WalkSlot) => StandingFigure | undefined;
}

/** One figure to keep: typed text or an outcome, never both. */
export interface WalkWrite {
  readonly key: KeyNumber;
  readonly slot: WalkSlot;
  readonly typed?: string;
  readonly outcome?: Outcome;
  readonly remark?: string;
}

/** Why a step was refused: the text stays where it was typed. */
export type WalkProblem =
  | { readonly code: 'notUnderstood'; readonly slot: WalkSlot; readonly issue: Issue }
  | { readonly code: 'tooMany'; readonly given: number; readonly allowed: number }
  | { readonly code: 'clearFirst'; readonly draft: string }
  | { readonly code: 'remarkNeedsReading' };

/** What is unlikely, and kept only when confirmed. */
export type WalkWarning =
  | { readonly code: 'unlikely'; readonly slot: WalkSlot; readonly issue: Issue }
  | { readonly code: 'upAboveDown'; readonly downG: number; readonly upG: number };

/** What was understood last, to be shown large. */
export interface WalkEcho {
  readonly key: KeyNumber;
  readonly figures: readonly { readonly slot: WalkSlot; readonly typed: string | null; readonly value: number | null; readonly outcome: Outcome | null }[];
}

export interface WalkState {
  /** Place in the plan's keys; equal to their number when the walk is done. */
  readonly at: number;
  /** Which figure of the key is asked for. */
  readonly slot: number;
  /** Typed and not yet kept. */
  readonly draft: string;
  /** The draft that was warned of: given again unchanged, it is kept. */
  readonly warnedDraft: string | null;
  readonly warnings: readonly WalkWarning[];
  readonly problem: WalkProblem | null;
  readonly echo: WalkEcho | null;
  /** A remark waiting for the next reading of this key. */
  readonly remark: string;
}

export type WalkEvent =
  | { readonly type: 'typed'; readonly draft: string }
  | { readonly type: 'enter' }
  | { readonly type: 'clear' }
  | { readonly type: 'outcome'; readonly outcome: Outcome }
  | { readonly type: 'remark'; readonly remark: string }
  | { readonly type: 'ask'; readonly slot: number }
  | { readonly type: 'skip' }
  | { readonly type: 'back' }
  | { readonly type: 'goTo'; readonly key: KeyNumber };

export interface WalkStep {
  readonly state: WalkState;
  readonly writes: readonly WalkWrite[];
}
