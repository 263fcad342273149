import { balanceHeads } from '../../exposure/balance/heads/balanceHeads';
import type { Task, Told } from './solve';

/** How often the page hears how far it is, in milliseconds. */
const EVERY = 100;

/** Balances off the page's thread, and says how far it has got. */
addEventListener('message', ({ data: { points, heads } }: MessageEvent<Task>) => {
  const steps = balanceHeads(points, heads);
  let last = performance.now();
  let step = steps.next();
  while (!step.done) {
    if (performance.now() - last > EVERY) {
      last = performance.now();
      postMessage({ part: step.value } satisfies Told);
    }
    step = steps.next();
  }
  postMessage({ answer: step.value } satisfies Told);
});
