import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { type Site, site, Workbench } from './workbench';

let place: Site;
let sheet: Workbench;

beforeAll(async () => {
  place = await site();
});
afterAll(() => place?.close());
afterEach(async () => {
  expect(sheet.complaints).toEqual({ errors: [], outside: [] });
  await sheet.page.close();
});

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

async function holdWorker(page: Page): Promise<void> {
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

const passTime = async () => {
  for (let i = 0; i < 2; i++) await sheet.page.clock.fastForward(16_000);
};
const anew = () => sheet.page.getByRole('button', { name: 'Store and load anew' });
/** Presses it, and waits for the page that follows. */
async function loadAnew(): Promise<void> {
  await Promise.all([sheet.page.waitForEvent('load'), anew().click()]);
  await sheet.loaded();
}

describe('a worker that is gone', () => {
  it('is noticed, and what was typed since is calculated after the page is loaded anew', async () => {
    sheet = await Workbench.open(place, { before: holdWorker });
    await sheet.enter('B6', '22');
    await sheet.shows('B16', 9);
    await sheet.page.evaluate(() => window.held.worker?.terminate());
    await sheet.enter('B6', '32');
    await sheet.enterDown('I5', ['typed', '=B6*2']);
    await passTime();
    await expect.poll(() => sheet.standing.innerText()).toMatch(/calculation has stopped.*are not lost/);
    expect(await sheet.values('B6', 'B16', 'I5')).toEqual([32, 9, 'typed']);

    await loadAnew();
    expect(await sheet.standing.innerText()).toBe('');
    await sheet.shows('B16', 18);
    await sheet.shows('I6', 64);
    expect(await sheet.values('B6', 'I5')).toEqual([32, 'typed']);
  });

  it('is told of again after the next change, where the notice was closed', async () => {
    sheet = await Workbench.open(place, { before: holdWorker });
    await sheet.page.evaluate(() => window.held.worker?.terminate());
    for (const text of ['22', '32']) {
      await sheet.enter('B6', text);
      await passTime();
      await expect.poll(() => anew().count()).toBe(1);
      await sheet.standing.getByRole('button', { name: 'Close this message' }).click();
    }
    expect(await anew().count()).toBe(0);
  });

  it('keeps the page as it is where the entries cannot be stored', async () => {
    sheet = await Workbench.open(place, { before: holdWorker });
    await sheet.page.evaluate(() => {
      window.held.worker?.terminate();
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('No room.', 'QuotaExceededError');
      };
    });
    await sheet.enter('B6', '32');
    await passTime();
    await anew().click();
    await expect.poll(() => sheet.standing.innerText()).toMatch(/not loaded anew. Save them as \.xlsx first/);
    await sheet.shows('B6', 32);
  });
});

it('a worker that was only busy for long takes the notice back with its answers', async () => {
  sheet = await Workbench.open(place, { before: holdWorker });
  await sheet.page.evaluate(() => {
    window.held.waiting = [];
  });
  await sheet.enter('B6', '32');
  await sheet.page.clock.fastForward(16_000);
  expect(await sheet.standing.innerText()).toBe('');
  await passTime();
  await expect.poll(() => sheet.standing.innerText()).toMatch(/calculation has stopped/);
  await sheet.page.evaluate(() => {
    const waiting = window.held.waiting ?? [];
    window.held.waiting = undefined;
    for (const send of waiting) send();
  });
  await sheet.shows('B16', 18);
  await expect.poll(() => sheet.standing.innerText()).toBe('');
});

it('a worker whose script cannot be loaded is told of, and nothing typed is lost', async () => {
  const cut = (page: Page) =>
    page.addInitScript(() => {
      window.Worker = class extends Worker {
        constructor(script: string | URL, options?: WorkerOptions) {
          super(sessionStorage.getItem('network is back') ? script : 'gone.js', options);
        }
      };
    });
  sheet = await Workbench.open(place, { before: cut });
  expect(await sheet.standing.innerText()).toMatch(/could not be loaded, so formulas get no answers/);
  await sheet.enter('B6', '32');
  await sheet.enterDown('I5', ['typed', '=B6*2']);
  await sheet.page.evaluate(() => sessionStorage.setItem('network is back', 'yes'));
  await loadAnew();
  await sheet.shows('B16', 18);
  await sheet.shows('I6', 64);
  expect(await sheet.values('B6', 'I5')).toEqual([32, 'typed']);
});
