import type { Page } from 'playwright-core';
import type { Workbench } from './workbench';

/** The worker that calculates, in the hands of the tests. */
interface Held {
  worker: Worker | undefined;
  /** Messages to it that wait, while it is as if it were busy. */
  waiting: Array<() => void> | undefined;
}
declare global {
  interface Window {
    held: Held;
  }
}

/** Done to a page before it loads. */
export async function holdWorker(page: Page): Promise<void> {
  await page.clock.install();
  await page.addInitScript(() => {
    const held: Held = { worker: undefined, waiting: undefined };
    window.held = held;
    window.Worker = class extends Worker {
      constructor(...made: ConstructorParameters<typeof Worker>) {
        super(...made);
        held.worker = this;
      }
      override postMessage(message: unknown): void {
        // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker, no window
        const send = () => super.postMessage(message);
        if (held.waiting) held.waiting.push(send);
        else send();
      }
    };
  });
}

/** Longer than the page waits for an answer, and again. */
export async function passTime({ page }: Workbench): Promise<void> {
  for (let i = 0; i < 2; i++) await page.clock.fastForward(16_000);
}

/** What the page offers where the calculation has stopped. */
export const anew = ({ page }: Workbench) => page.getByRole('button', { name: 'Store and load anew' });

/** Presses it, and waits for the page that follows. */
export async function loadAnew(sheet: Workbench): Promise<void> {
  await Promise.all([sheet.page.waitForEvent('load'), anew(sheet).click()]);
  await sheet.loaded();
}
