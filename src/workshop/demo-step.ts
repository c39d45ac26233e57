import type { ActionTermsDraft, InstrumentDraft, ObservationDraft, ScaleTermsDraft, SessionDraft, TouchIntent, TuningPassDraft, TuningTermsDraft } from '#instrument';
import type { EstimateDraft } from './estimate.ts';
import type { PaperDraft } from './papers/records.ts';
import type { QuoteAnswer, QuoteDraft } from './quote.ts';
import type { RoomDraft } from './room/record.ts';
import type { ReadingBatch, WorkItemDraft } from './records.ts';

/** One write of the demo, in the order they are to be made. `ref` and `sessionRef` tie readings to the session made before them. */
export type DemoStep =
  | { readonly kind: 'session'; readonly ref: string; readonly draft: SessionDraft }
  | { readonly kind: 'readings'; readonly sessionRef: string | null; readonly batch: ReadingBatch }
  | { readonly kind: 'intent'; readonly cycle: number; readonly intent: TouchIntent }
  | { readonly kind: 'scale'; readonly cycle: number; readonly terms: ScaleTermsDraft }
  | { readonly kind: 'action'; readonly cycle: number; readonly terms: ActionTermsDraft }
  | { readonly kind: 'tuning'; readonly cycle: number; readonly terms: TuningTermsDraft }
  | { readonly kind: 'pass'; readonly draft: TuningPassDraft }
  | { readonly kind: 'room'; readonly draft: RoomDraft }
  | { readonly kind: 'observation'; readonly draft: ObservationDraft }
  | { readonly kind: 'estimate'; readonly cycle: number; readonly draft: EstimateDraft }
  /** A quote, with the day it was sent and what was answered. */
  | { readonly kind: 'quote'; readonly draft: QuoteDraft; readonly sentOn: string; readonly answer: QuoteAnswer }
  | { readonly kind: 'paper'; readonly draft: PaperDraft }
  /** Jobs to add; `done` marks all of them done at once. */
  | { readonly kind: 'work'; readonly items: readonly WorkItemDraft[]; readonly done: boolean };

/** An invented instrument with everything that is to be written for it. */
export interface DemoPiano {
  readonly draft: InstrumentDraft;
  readonly intent: TouchIntent;
  readonly steps: readonly DemoStep[];
}
