import { parentPort } from 'node:worker_threads';
import type { FromThread, ToThread } from './messages.ts';
import { workOut } from './work-out.ts';

if (parentPort !== null) {
  const port = parentPort;
  const say = (message: FromThread): void => { port.postMessage(message); };
  port.on('message', (given: ToThread) => {
    void workOut(given, (progress) => { say({ kind: 'progress', progress }); }).then((result) => {
      say(result.ok ? { kind: 'answer', answer: result.value } : { kind: 'refused', issues: result.issues });
    });
  });
}
