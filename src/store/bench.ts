import { listAnalyses } from './analyses.ts';
import type { BenchStore, ByteRange } from './bench-store.ts';
import { getPiano, listPianos } from './cards/files.ts';
import { setAction, setIntent, setScale, setTuning } from './cards/intents.ts';
import { addObservation, changeObservation, withdrawObservation } from './cards/observations.ts';
import { addPass, changePass, listShopPasses, withdrawPass } from './cards/passes.ts';
import { addPiano, changePiano, openCycle } from './cards/pianos.ts';
import { addRecording, changeRecording, listRecordings, withdrawRecording } from './cards/recordings.ts';
import { addSession, changeSession } from './cards/sessions.ts';
import { addWork, changeWork } from './cards/work.ts';
import type { Bench } from './database.ts';
import { removeDemo } from './demo.ts';
import { type SayAway, guarded } from './failures.ts';
import { audit } from './log/audit.ts';
import { listEvents } from './log/list.ts';
import { undo } from './log/undo.ts';
import { keepPhoto, readPhoto } from './photos.ts';
import { askAnalysis, cancelJob, claimJob, failJob, finishJob, listJobs, releaseJobs, reportJob } from './queue.ts';
import { keepRecording, readRecording } from './recordings.ts';
import { addPerson, listPeople, namePerson } from './people.ts';
import { assignReadings } from './readings/assign.ts';
import { listReadings, readingHistory } from './readings/list.ts';
import { writeReadings } from './readings/write.ts';

interface Parts {
  readonly kind: BenchStore['kind'];
  readonly sayAway: SayAway;
  readonly bench: Bench;
  readonly close: () => Promise<void>;
}

/** Puts the store together: each method is a function of its own, on whichever database was opened. */
export function benchStore({ kind, sayAway, bench, close }: Parts): BenchStore {
  const on = <Given extends readonly unknown[], T>(work: (bench: Bench, ...given: Given) => Promise<T>) => (...given: Given): Promise<T> =>
    guarded(sayAway, () => work(bench, ...given));
  let closing: Promise<void> | undefined;
  return {
    kind,
    listPianos: on(listPianos),
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
    askAnalysis: on(askAnalysis),
    listJobs: on(listJobs),
    cancelJob: on(cancelJob),
    claimJob: on(claimJob),
    reportJob: on(reportJob),
    finishJob: on(finishJob),
    failJob: on(failJob),
    releaseJobs: on(releaseJobs),
    addWork: on(addWork),
    changeWork: on(changeWork),
    listEvents: on(listEvents),
    undo: on(undo),
    audit: on(({ db }, id: string) => audit(db, id)),
    addPerson: on(addPerson),
    namePerson: on(namePerson),
    listPeople: on(listPeople),
    removeDemo: on(removeDemo),
    close: () => (closing ??= close()),
  };
}
