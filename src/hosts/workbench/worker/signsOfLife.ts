/** How the page asks the worker whether it is still there, beside the grid's own traffic. */
interface Question {
  readonly sweepAreYouThere: true;
}
interface Answer {
  readonly sweepHere: true;
}

export function askWhetherThere(worker: Worker): void {
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker, no window
  worker.postMessage({ sweepAreYouThere: true } satisfies Question);
}

/** In the worker. */
export function answerWhetherThere(): void {
  addEventListener('message', ({ data }: MessageEvent<unknown>) => {
    if (isQuestion(data)) postMessage({ sweepHere: true } satisfies Answer);
  });
}

const isQuestion = (data: unknown): data is Question =>
  typeof data === 'object' && data !== null && 'sweepAreYouThere' in data;
