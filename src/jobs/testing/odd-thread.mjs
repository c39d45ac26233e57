import { parentPort } from 'node:worker_threads';

// A thread that does what the first byte of a sound says, in the messages of the program's own: so crashes can be had when wanted.
const CRASH = 1;
const HANG = 2;
const REFUSE = 3;

parentPort.on('message', ({ task, bytes }) => {
  const [, , , , , , , , , , , , act] = bytes;
  parentPort.postMessage({ kind: 'progress', progress: 0.5 });
  if (act === CRASH) process.exit(7);
  if (act === HANG) return;
  if (act === REFUSE) parentPort.postMessage({ kind: 'refused', issues: [{ code: 'format', path: 'file', given: 'fmt', allowed: 'a sound' }] });
  else parentPort.postMessage({ kind: 'answer', answer: { heard: bytes.byteLength, key: task.input.key } });
});
