import type { Page } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import { anew, holdWorker, loadAnew, passTime } from './heldWorker';
import { Workbench } from './workbench';

let sheet: Workbench;
afterEach(async () => {
  expect(sheet.complaints).toEqual({ errors: [], outside: [] });
  await sheet.close();
});

describe('a worker that is gone', () => {
  it('is noticed, and what was typed since is calculated after the page is loaded anew', async () => {
    sheet = await Workbench.open({ before: holdWorker });
    await sheet.enter('B6', '22');
    await sheet.shows('B20', 2);
    await sheet.page.evaluate(() => window.held.worker?.terminate());
    await sheet.enter('B6', '32');
    await sheet.enterDown('I5', ['typed', '=B6*2']);
    await passTime(sheet);
    await expect.poll(() => sheet.standing.innerText()).toMatch(/calculation has stopped.*are not lost/);
    expect(await sheet.values('B6', 'B20', 'I5')).toEqual([32, 2, 'typed']);

    await loadAnew(sheet);
    expect(await sheet.standing.innerText()).toBe('');
    await sheet.shows('B20', 3);
    await sheet.shows('I6', 64);
    expect(await sheet.values('B6', 'I5')).toEqual([32, 'typed']);
  });

  it('is told of again after the next change, where the notice was closed', async () => {
    sheet = await Workbench.open({ before: holdWorker });
    await sheet.page.evaluate(() => window.held.worker?.terminate());
    for (const text of ['22', '32']) {
      await sheet.enter('B6', text);
      await passTime(sheet);
      await expect.poll(() => anew(sheet).count()).toBe(1);
      await sheet.standing.getByRole('button', { name: 'Close this message' }).click();
    }
    expect(await anew(sheet).count()).toBe(0);
  });

  it('keeps the page as it is where the entries cannot be stored', async () => {
    sheet = await Workbench.open({ before: holdWorker });
    await sheet.page.evaluate(() => {
      window.held.worker?.terminate();
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('No room.', 'QuotaExceededError');
      };
    });
    await sheet.enter('B6', '32');
    await passTime(sheet);
    await anew(sheet).click();
    await expect.poll(() => sheet.standing.innerText()).toMatch(/not loaded anew. Save them as \.xlsx first/);
    await sheet.shows('B6', 32);
  });
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
  sheet = await Workbench.open({ before: cut });
  expect(await sheet.standing.innerText()).toMatch(/could not be loaded, so formulas get no answers/);
  await sheet.enter('B6', '32');
  await sheet.enterDown('I5', ['typed', '=B6*2']);
  await sheet.page.evaluate(() => sessionStorage.setItem('network is back', 'yes'));
  await loadAnew(sheet);
  await sheet.shows('B20', 3);
  await sheet.shows('I6', 64);
  expect(await sheet.values('B6', 'I5')).toEqual([32, 'typed']);
});
