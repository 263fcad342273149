import { Worker } from 'node:worker_threads';
import { HANGS } from './report';

/** Runs beside the thread that is watched, as that one does not answer any more once it hangs. */
const WATCHER = `
  const { parentPort, workerData } = require('node:worker_threads');
  const { writeSync } = require('node:fs');
  let [last, since] = ['', Date.now()];
  parentPort.on('message', (what) => ([last, since] = [what, Date.now()]));
  setInterval(() => {
    if (last === '' || Date.now() - since < workerData * 1000) return;
    writeSync(1, 'hangs for more than ' + workerData + ' s: ' + last + '\\n');
    process.kill(process.pid, 'SIGKILL');
  }, 500);
`;

/** Ends the process, and names what it was at, where nothing new has begun for a long time. */
export function watch(seconds = HANGS * 2): {
  readonly begins: (what: string) => void;
  readonly end: () => void;
} {
  const worker = new Worker(WATCHER, { eval: true, workerData: seconds });
  worker.unref();
  return {
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a thread, no window
    begins: (what) => worker.postMessage(what),
    end: () => void worker.terminate(),
  };
}
