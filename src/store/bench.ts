import { listAnalyses } from './analyses.ts';
import type { BenchStore, ByteRange } from './bench-store.ts';
import { addCare, addLogger, changeCare, readLoggerFile, withdrawCare } from './cards/care.ts';
import { listShopEstimates, setEstimate } from './cards/estimates.ts';
import { countPianos, getPiano, listPianoNames, listPianos } from './cards/files.ts';
import { setAction, setIntent, setScale, setTuning } from './cards/intents.ts';
import { addObservation, changeObservation, withdrawObservation } from './cards/observations.ts';
import { addPaper, changePaper, withdrawPaper } from './cards/papers.ts';
import { addPass, changePass, listShopPasses, withdrawPass } from './cards/passes.ts';
import { addPiano, changePiano, openCycle } from './cards/pianos.ts';
import { addRoom, changeRoom, withdrawRoom } from './cards/rooms.ts';
import { addQuote, answerQuote, changeQuote, sendQuote, withdrawQuote } from './cards/quotes.ts';
import { addRecording, changeRecording, listRecordings, withdrawRecording } from './cards/recordings.ts';
import { addSession, changeSession } from './cards/sessions.ts';
import { addWork, changeJobs, changeWork, getBench } from './cards/work.ts';
import type { Bench } from './database.ts';
import { removeDemo } from './demo.ts';
import { type SayAway, guarded } from './failures.ts';
import { audit } from './log/audit.ts';
import { listEventMarks, listEvents } from './log/list.ts';
import { undo } from './log/undo.ts';
import { keepPhoto, readPhoto } from './photos.ts';
import { askAnalysis, cancelJob, claimJob, failJob, finishJob, listJobs, releaseJobs, reportJob } from './queue.ts';
import { keepRecording, readRecording } from './recordings.ts';
import { addPerson, listPeople, namePerson } from './people.ts';
import { assignReadings } from './readings/assign.ts';
import { listReadings, readingHistory } from './readings/list.ts';
import { writeReadings } from './readings/write.ts';
import { addShopCard, changeShopCard, withdrawShopCard } from './shop/cards.ts';
import { listShopCards } from './shop/list.ts';
import { receivePurchase } from './shop/receive.ts';
import { erasePerson, exportPerson } from './shop/persons.ts';

interface Parts {
  readonly kind: BenchStore['kind'];
  readonly sayAway: SayAway;
  readonly bench: Bench;
  readonly close: () => Promise<void>;
}

/** A function of the store as its method: on the database that was opened, its failures told as those of the store. */
type On = <Given extends readonly unknown[], T>(work: (bench: Bench, ...given: Given) => Promise<T>) => (...given: Given) => Promise<T>;

/** What concerns the shop as a whole: its people, its stock, its time. */
function shopMethods(on: On) {
  return {
    listShopCards: on(listShopCards),
    addShopCard: on(addShopCard),
    changeShopCard: on(changeShopCard),
    withdrawShopCard: on(withdrawShopCard),
    receivePurchase: on(receivePurchase),
    exportPerson: on(exportPerson),
    erasePerson: on(erasePerson),
  };
}

/** Where a piano stands, what papers hang on, and how it is cared for. */
function homeMethods(on: On) {
  return {
    addRoom: on(addRoom),
    changeRoom: on(changeRoom),
    withdrawRoom: on(withdrawRoom),
    addPaper: on(addPaper),
    changePaper: on(changePaper),
    withdrawPaper: on(withdrawPaper),
    addCare: on(addCare),
    addLogger: on(addLogger),
    readLoggerFile: on(readLoggerFile),
    changeCare: on(changeCare),
    withdrawCare: on(withdrawCare),
  };
}

/** What a job is reckoned to take and cost, and what of it was offered. */
function worthMethods(on: On) {
  return {
    setEstimate: on(setEstimate),
    listShopEstimates: on(listShopEstimates),
    addQuote: on(addQuote),
    changeQuote: on(changeQuote),
    withdrawQuote: on(withdrawQuote),
    sendQuote: on(sendQuote),
    answerQuote: on(answerQuote),
  };
}

/** Puts the store together: each method is a function of its own, on whichever database was opened. */
export function benchStore({ kind, sayAway, bench, close }: Parts): BenchStore {
  const on: On = (work) => (...given) => guarded(sayAway, () => work(bench, ...given));
  const wakes = new Set<() => void>();
  /** What may have put work in line tells those who wait for it. */
  const waking = <Given extends readonly unknown[], T>(work: (...given: Given) => Promise<T>) => async (...given: Given): Promise<T> => {
    const answer = await work(...given);
    for (const wake of wakes) wake();
    return answer;
  };
  let closing: Promise<void> | undefined;
  return {
    kind,
    listPianos: on(listPianos),
    countPianos: on(countPianos),
    listPianoNames: on(listPianoNames),
    addPiano: on(addPiano),
    getPiano: on(getPiano),
    changePiano: on(changePiano),
    openCycle: on(openCycle),
    addSession: on(addSession),
    changeSession: on(changeSession),
    listReadings: on(listReadings),
    readingHistory: on(readingHistory),
    writeReadings: on(writeReadings),
    assignReadings: on(assignReadings),
    setIntent: on(setIntent),
    setScale: on(setScale),
    setAction: on(setAction),
    setTuning: on(setTuning),
    addPass: on(addPass),
    changePass: on(changePass),
    withdrawPass: on(withdrawPass),
    listShopPasses: on(listShopPasses),
    addObservation: on(addObservation),
    changeObservation: on(changeObservation),
    withdrawObservation: on(withdrawObservation),
    keepPhoto: on(({ photos }, bytes: Uint8Array) => Promise.resolve(keepPhoto(photos, bytes))),
    readPhoto: on(({ photos }, hash: string) => Promise.resolve(readPhoto(photos, hash))),
    keepRecording: on(({ recordings }, pieces: AsyncIterable<Uint8Array>) => keepRecording(recordings, pieces)),
    readRecording: on(({ recordings }, hash: string, range?: ByteRange) => readRecording(recordings, hash, range)),
    listRecordings: on(listRecordings),
    addRecording: on(addRecording),
    changeRecording: on(changeRecording),
    withdrawRecording: on(withdrawRecording),
    listAnalyses: on(listAnalyses),
    onWork: (wake) => {
      wakes.add(wake);
      return () => { wakes.delete(wake); };
    },
    askAnalysis: waking(on(askAnalysis)),
    listJobs: on(listJobs),
    cancelJob: on(cancelJob),
    claimJob: on(claimJob),
    reportJob: on(reportJob),
    finishJob: on(finishJob),
    failJob: waking(on(failJob)),
    releaseJobs: waking(on(releaseJobs)),
    addWork: on(addWork),
    changeWork: on(changeWork),
    changeJobs: on(changeJobs),
    getBench: on(getBench),
    ...worthMethods(on),
    ...homeMethods(on),
    listEvents: on(listEvents),
    listEventMarks: on(listEventMarks),
    undo: on(undo),
    audit: on(({ db }, id: string) => audit(db, id)),
    addPerson: on(addPerson),
    namePerson: on(namePerson),
    listPeople: on(listPeople),
    ...shopMethods(on),
    removeDemo: on(removeDemo),
    close: () => (closing ??= close()),
  };
}
