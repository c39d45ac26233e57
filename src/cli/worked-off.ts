import { setTimeout as wait } from 'node:timers/promises';
import { startJobs } from '#jobs';
import type { BenchStore } from '#store';
import type { Job } from '#workshop';
import { note } from './output.ts';

const LOOK_MS = 200;

/** Works off jobs in threads of this process, others on the same database helping where there are any; tells each time one more is done. */
export async function workedOff(store: BenchStore, id: string, jobs: readonly Job[], onDone: (done: number, all: number) => void): Promise<void> {
  const own = new Set(jobs.map((job) => job.id));
  const runner = startJobs({ store, name: `record ${String(process.pid)}`, onFailure: (error) => { note(error instanceof Error ? error.message : String(error)); } });
  try {
    for (let [done, told] = [0, 0]; done < own.size;) {
      await wait(LOOK_MS);
      done = (await store.listJobs(id)).filter((job) => own.has(job.id) && job.status !== 'waiting' && job.status !== 'running').length;
      if (done > told) onDone(done, own.size);
      told = done;
    }
  } finally {
    await runner.stop();
  }
}
