import type { ActionTerms, ActionTermsDraft, Instrument, InstrumentDraft, KeptRecording, photoTypes, Observation, ObservationDraft, Reading, Recording, RecordingDraft, RecordingFormat, ScaleTerms, ScaleTermsDraft, SessionDraft, State, TouchIntent, TuningPass, TuningPassDraft, TuningTerms, TuningTermsDraft, WeighingSession } from '#instrument';
import type { Issue } from '#result';
import type { CardsAsked, EventsAsked } from './asked.ts';
import type { Analysis, AnalysisTask, Answer, CareCard, CareChange, CareDraft, Estimate, EstimateDraft, EventMark, ExpectedReadings, Job, JobFailure, LogEvent, LoggerFile, PaperChange, PaperDraft, PaperRecord, Person, Quote, QuoteAnswer, QuoteDraft, PersonExport, ReadingBatch, ReadingBatchAnswer, RoomDraft, RoomRecord, SessionReadings, SessionReadingsAnswer, ShopCard, ShopCardChange, ShopCardDraft, WorkChange, WorkItem, WorkItemDraft } from '#workshop';

/** Workshop that holds the shop's own instruments, and the one the demo lives in. */
export const SHOP = 'shop';
export const DEMO = 'demo';

/** A kept photo: its bytes are found by their own hash, so none is kept twice and none can change. */
export interface KeptPhoto {
  readonly hash: string;
  readonly type: PhotoType;
  readonly byteCount: number;
}

/** What a photo may be. */
export type PhotoType = (typeof photoTypes)[number];

/** A photo as it is shown. */
export interface ReadPhoto {
  readonly bytes: Uint8Array;
  readonly type: PhotoType;
}

/** A part of some bytes, first and last included. */
export interface ByteRange {
  readonly start: number;
  readonly end: number;
}

/** A recording as it is heard: its bytes as they come off the disk, and which of them. */
export interface ReadRecording {
  readonly format: RecordingFormat;
  readonly byteCount: number;
  readonly pieces: AsyncIterable<Uint8Array>;
}

/** A job in the hands of a worker until the lease ends. */
export interface ClaimedJob {
  readonly id: string;
  readonly task: AnalysisTask;
  readonly attempts: number;
}

/** Why the store did not do what it was asked; mapped to a problem document and an exit code in one place. */
export class StoreFailure extends Error {
  readonly reason: 'notFound' | 'refused' | 'conflict' | 'notUndoable' | 'inUse' | 'unavailable';
  readonly issues: readonly Issue[];

  constructor(reason: StoreFailure['reason'], message: string, issues: readonly Issue[] = []) {
    super(message);
    this.name = 'StoreFailure';
    this.reason = reason;
    this.issues = issues;
  }
}

/**
 * Everything kept: instruments, sessions, readings, what is asked of each stay, work, and the log they are written by.
 * Every method that writes appends one event and changes what it projects to in one transaction,
 * and resolves only when that is on the disk. Failures are `StoreFailure`.
 */
export interface BenchStore {
  readonly kind: 'embedded' | 'server';
  /** Instruments, the one written at last first: all, or so many, or those whose name holds some words. */
  listPianos(page?: { limit?: number | undefined; words?: string | undefined }): Promise<Answer<'listPianos'>['pianos']>;
  countPianos(words?: string): Promise<{ readonly total: number; readonly demo: boolean }>;
  listPianoNames(): Promise<Answer<'listPianoNames'>['pianos']>;
  addPiano(workshopId: string, draft: InstrumentDraft, by: string): Promise<Instrument>;
  getPiano(id: string): Promise<Answer<'getPiano'>>;
  changePiano(id: string, change: Partial<InstrumentDraft>, by: string): Promise<Instrument>;
  openCycle(id: string, by: string): Promise<Instrument>;
  addSession(id: string, draft: SessionDraft, by: string): Promise<WeighingSession>;
  changeSession(id: string, sessionId: string, change: Partial<SessionDraft>, by: string): Promise<WeighingSession>;
  /** Standing readings, all states, of one cycle (default: the current one). */
  listReadings(id: string, cycle?: number): Promise<readonly Reading[]>;
  readingHistory(id: string, place: { cycle: number; state: State; quantity: string; index: number }): Promise<Answer<'readingHistory'>['readings']>;
  writeReadings(id: string, batch: ReadingBatch, by: string): Promise<ReadingBatchAnswer>;
  /** Puts standing readings that belong to no session into one; what was typed, its value and its time stay. */
  assignReadings(id: string, sessionId: string, given: SessionReadings, by: string): Promise<SessionReadingsAnswer>;
  setIntent(id: string, cycle: number, intent: TouchIntent, by: string): Promise<TouchIntent>;
  setScale(id: string, cycle: number, terms: ScaleTermsDraft, by: string): Promise<ScaleTerms>;
  setAction(id: string, cycle: number, terms: ActionTermsDraft, by: string): Promise<ActionTerms>;
  setTuning(id: string, cycle: number, terms: TuningTermsDraft, by: string): Promise<TuningTerms>;
  /** Rooms are cards of the piano: several stand beside each other. */
  addRoom(id: string, draft: RoomDraft, by: string): Promise<RoomRecord>;
  changeRoom(id: string, roomId: string, change: Partial<RoomDraft>, by: string): Promise<RoomRecord>;
  withdrawRoom(id: string, roomId: string, by: string): Promise<RoomRecord>;
  addPass(id: string, draft: TuningPassDraft, by: string): Promise<TuningPass>;
  changePass(id: string, passId: string, change: Partial<TuningPassDraft>, by: string): Promise<TuningPass>;
  withdrawPass(id: string, passId: string, by: string): Promise<TuningPass>;
  /** Standing passes of every instrument in the workshop of this one. */
  listShopPasses(id: string): Promise<Answer<'listShopPasses'>['passes']>;
  addObservation(id: string, draft: ObservationDraft, by: string): Promise<Observation>;
  changeObservation(id: string, observationId: string, change: Partial<ObservationDraft>, by: string): Promise<Observation>;
  withdrawObservation(id: string, observationId: string, by: string): Promise<Observation>;
  /** Keeps a photo by the hash of its bytes, on the disk when it answers. It belongs to no instrument until an observation names it. */
  keepPhoto(bytes: Uint8Array): Promise<KeptPhoto>;
  readPhoto(hash: string): Promise<ReadPhoto>;
  /** Keeps a sound file whole by the hash of its bytes, as they come. It belongs to no instrument until a recording names it. */
  keepRecording(pieces: AsyncIterable<Uint8Array>): Promise<KeptRecording>;
  readRecording(hash: string, range?: ByteRange): Promise<ReadRecording>;
  listRecordings(id: string): Promise<readonly Recording[]>;
  addRecording(id: string, draft: RecordingDraft, by: string): Promise<Recording>;
  changeRecording(id: string, recordingId: string, change: Partial<Omit<RecordingDraft, 'file'>>, by: string): Promise<Recording>;
  withdrawRecording(id: string, recordingId: string, by: string): Promise<Recording>;
  /** What was worked out of the sounds of this instrument, the latest first. Not in the log: it can be worked out again. */
  listAnalyses(id: string): Promise<readonly Analysis[]>;
  /** Puts recordings in line to be worked out; what was is left unless asked for again. */
  askAnalysis(id: string, recordingIds: readonly string[], again?: boolean): Promise<readonly Job[]>;
  listJobs(id: string): Promise<readonly Job[]>;
  cancelJob(id: string, jobId: string): Promise<Job>;
  /** Calls whenever work may newly stand in line by this process; another process on the same database is not heard. Answers how to end it. */
  onWork(wake: () => void): () => void;
  claimJob(worker: string, leaseMs: number): Promise<ClaimedJob | undefined>;
  reportJob(jobId: string, worker: string, progress: number, leaseMs: number): Promise<boolean>;
  finishJob(jobId: string, worker: string, answer: unknown): Promise<boolean>;
  failJob(jobId: string, worker: string, failure: JobFailure, mayRetry: boolean): Promise<void>;
  releaseJobs(worker: string | null): Promise<void>;
  addWork(id: string, items: readonly WorkItemDraft[], by: string, expected?: ExpectedReadings): Promise<readonly WorkItem[]>;
  changeWork(id: string, workId: string, change: WorkChange, by: string): Promise<WorkItem>;
  /** Changes several jobs alike, as one event. */
  changeJobs(id: string, workIds: readonly string[], change: WorkChange, by: string): Promise<readonly WorkItem[]>;
  /** Pianos with jobs to do, or done of late. */
  getBench(): Promise<Answer<'getBench'>>;
  setEstimate(id: string, cycle: number, draft: EstimateDraft, by: string): Promise<Estimate>;
  /** Standing estimates of every instrument in the workshop of this one. */
  listShopEstimates(id: string): Promise<Answer<'listShopEstimates'>['estimates']>;
  /** Draws up a quote from the estimate of the stay, as a copy. */
  addQuote(id: string, draft: QuoteDraft, by: string): Promise<Quote>;
  changeQuote(id: string, quoteId: string, change: Partial<Omit<QuoteDraft, 'cycle' | 'replaces'>>, by: string): Promise<Quote>;
  withdrawQuote(id: string, quoteId: string, by: string): Promise<Quote>;
  /** Sending and the answer cannot be undone. */
  sendQuote(id: string, quoteId: string, sending: { readonly on: string }, by: string): Promise<Quote>;
  answerQuote(id: string, quoteId: string, answer: QuoteAnswer, by: string): Promise<Quote>;
  /** Keeps what papers hang on: a material of the instrument, or what is proven of its history. */
  addPaper(id: string, draft: PaperDraft, by: string): Promise<PaperRecord>;
  changePaper(id: string, recordId: string, change: PaperChange, by: string): Promise<PaperRecord>;
  withdrawPaper(id: string, recordId: string, by: string): Promise<PaperRecord>;
  /** Keeps air read by hand, the plan of care, or a move. */
  addCare(id: string, draft: CareDraft, by: string): Promise<CareCard>;
  /** Keeps the file of a climate logger whole by the hash of its bytes; one that stands already is refused. */
  addLogger(id: string, bytes: Uint8Array, file: LoggerFile, by: string): Promise<CareCard>;
  readLoggerFile(hash: string): Promise<Uint8Array>;
  changeCare(id: string, cardId: string, change: CareChange, by: string): Promise<CareCard>;
  withdrawCare(id: string, cardId: string, by: string): Promise<CareCard>;
  /** Events, the newest first: of a stretch of the log, of one kind of change, about one card, or those something is true of. */
  listEvents(id: string, asked?: EventsAsked): Promise<readonly LogEvent[]>;
  /** Every event as the days of the log are told from it, oldest first. */
  listEventMarks(id: string): Promise<readonly EventMark[]>;
  undo(id: string, seq: number, by: string): Promise<LogEvent>;
  audit(id: string): Promise<Answer<'audit'>>;
  /** Names a new person, behind a reference that says nothing. A name already known is refused, since nobody could tell the two apart. */
  addPerson(workshopId: string, name: string): Promise<Person>;
  /** Says who is behind a reference of the log; null forgets the name, and every chain stays whole. */
  namePerson(workshopId: string, reference: string, name: string | null): Promise<void>;
  listPeople(workshopId: string): Promise<readonly Person[]>;
  /** Cards of the shop that are not of one piano, of its own book and of the demonstration's: all, or those asked for. */
  listShopCards(asked?: CardsAsked): Promise<{ readonly cards: readonly ShopCard[]; readonly withdrawn: readonly ShopCard[] }>;
  /** Keeps a card of the shop; one that names nobody and no piano goes into the book of this workshop. */
  addShopCard(workshopId: string, draft: ShopCardDraft, by: string): Promise<ShopCard>;
  changeShopCard(cardId: string, change: ShopCardChange, by: string): Promise<ShopCard>;
  withdrawShopCard(cardId: string, by: string): Promise<ShopCard>;
  /** Notes that an order has come and puts its lines into stock, as one event. */
  receivePurchase(cardId: string, receipt: { readonly on: string }, by: string): Promise<ShopCard>;
  /** All that is held of a person, to be handed to them. */
  exportPerson(id: string): Promise<PersonExport>;
  /** Forgets a person of the shop; refused, each thing by name, while something is open with them. */
  erasePerson(id: string, by: string): Promise<ShopCard>;
  /** Removes a workshop and all it holds: only ever the demo. Answers how many instruments went. */
  removeDemo(): Promise<number>;
  close(): Promise<void>;
}
