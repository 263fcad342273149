import { type Balanced, balanceHeads } from '../../exposure/balance/heads/balanceHeads';
import type { MeteredPoint } from '../../exposure/balance/heads/bands';
import type { Head } from '../../exposure/balance/heads/settings';
import type { Result } from '../../exposure/core/result';

/** What is to be balanced. */
export interface Task {
  readonly points: readonly MeteredPoint[];
  readonly heads: readonly Head[];
}

/** What the worker tells: how far it is, from 0 to 1, or its answer. */
export type Told = { readonly part: number } | { readonly answer: Result<Balanced> };

export interface Running {
  /** Undefined where it was stopped. */
  readonly answer: Promise<Result<Balanced> | undefined>;
  stop(): void;
}

/** On the page's own thread: no longer than this at once, so that it draws and hears in between. */
const SLICE = 12;

/** Works on the page's thread, a slice at a time. */
function inSlices(task: Task, told: (part: number) => void): Running {
  const state = { isStopped: false };
  const steps = balanceHeads(task.points, task.heads);
  const answer = new Promise<Result<Balanced> | undefined>((resolve) => {
    const slice = (): void => {
      const until = performance.now() + SLICE;
      while (!state.isStopped) {
        const step = steps.next();
        if (step.done) return resolve(step.value);
        told(step.value);
        if (performance.now() > until) return void setTimeout(slice);
      }
      resolve(undefined);
    };
    slice();
  });
  return {
    answer,
    stop() {
      state.isStopped = true;
    },
  };
}

/** Works in a worker of its own, which stopping ends; in slices where the page gets none. */
export function solve(task: Task, told: (part: number) => void): Running {
  let worker: Worker;
  try {
    worker = new Worker(/* webpackChunkName: "balance-worker" */ new URL('./worker.ts', import.meta.url));
  } catch {
    return inSlices(task, told);
  }
  let instead: Running | undefined;
  let end: (answer: undefined) => void = () => {};
  const answer = new Promise<Result<Balanced> | undefined>((resolve) => {
    end = resolve;
    worker.addEventListener('message', ({ data }: MessageEvent<Told>) => {
      if ('part' in data) return told(data.part);
      worker.terminate();
      resolve(data.answer);
    });
    // its script did not come, or the page may run none: what was to be worked out is worked out here
    worker.addEventListener('error', () => {
      worker.terminate();
      instead = inSlices(task, told);
      void instead.answer.then(resolve);
    });
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker, no window
    worker.postMessage(task);
  });
  return {
    answer,
    stop() {
      worker.terminate();
      instead?.stop();
      end(undefined);
    },
  };
}
