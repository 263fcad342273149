import type { Page } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import { checkPutAside, DAMAGED, NEWER, startOverAndTakeBack, TORN } from './stateChecks';
import { isStored, records } from './stored';
import { Workbench } from './workbench';

describe('the last visit', () => {
  let kept: Workbench;
  eachItsWorkbook((fresh) => {
    kept = fresh;
  });
  checkPutAside([NEWER, DAMAGED, TORN], () => kept);

  it('stores at once when the page goes out of sight', async () => {
    await kept.enter('B6', '22');
    await kept.shows('B6', 22);
    await kept.page.evaluate(() => dispatchEvent(new Event('pagehide')));
    await kept.reload();
    await kept.shows('B6', 22);
  });

  it('starts over when asked twice, and takes it back once', async () => {
    await startOverAndTakeBack(kept);
    await expect.poll(async () => Object.keys(await records(kept.page))).not.toContain('before');
    await kept.reload();
    expect(await kept.page.getByRole('button', { name: 'Take back' }).count()).toBe(0);
  });
});

describe('storage that fails', () => {
  let sheet: Workbench;
  afterEach(async () => {
    expect(sheet.complaints).toEqual({ errors: [], outside: [] });
    await sheet.close();
  });

  it('works on where storage is forbidden, and says so once', async () => {
    const forbid = (page: Page) =>
      page.addInitScript(() => {
        const forbidden = (): never => {
          throw new DOMException('Forbidden here.', 'SecurityError');
        };
        Object.defineProperty(window, 'indexedDB', { get: forbidden });
        Object.defineProperty(window, 'localStorage', { get: forbidden });
        Object.defineProperty(window, 'BroadcastChannel', { get: forbidden });
        LockManager.prototype.request = () =>
          Promise.reject(new DOMException('Forbidden here.', 'SecurityError'));
      });
    sheet = await Workbench.open({ before: forbid });
    expect(await sheet.standing.innerText()).toMatch(/allows no storage here/);
    await sheet.page.getByRole('button', { name: 'Close this message' }).click();
    await sheet.enter('B6', '32');
    await sheet.shows('B20', 3);
    await sheet.insert('Lights on set');
    await sheet.page.waitForTimeout(700);
    expect(await sheet.standing.innerText()).toBe('');
  });

  /** Fills the browser's storage, and gives how to make room again. */
  async function fillStorage(): Promise<() => Promise<void>> {
    const inspector = await sheet.page.context().newCDPSession(sheet.page);
    const { origin } = new URL(sheet.page.url());
    await inspector.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });
    return () => inspector.send('Storage.overrideQuotaForOrigin', { origin }).then(() => inspector.detach());
  }

  it('says so while storage is full, and stores when there is room again', async () => {
    sheet = await Workbench.open();
    // Before anything is stored: a browser looks only now and then how much room there is.
    const makeRoom = await fillStorage();
    await sheet.enter('B6', '32');
    await expect
      .poll(() => sheet.standing.innerText())
      .toMatch(/storage is full.*Save the workbook as \.xlsx/);
    // No passing notice takes its place.
    await Promise.all([sheet.page.waitForEvent('download'), sheet.command('Save as .xlsx')]);
    await expect.poll(() => sheet.notice.innerText()).toMatch(/is saved/);
    expect(await sheet.standing.innerText()).toMatch(/storage is full/);

    await sheet.enter('B5', '22');
    await makeRoom();
    await expect.poll(() => sheet.standing.innerText()).toBe('');
    await sheet.reload();
    expect(await sheet.values('B5', 'B6')).toEqual([22, 32]);
  });

  it('says so again when storing fails another time', async () => {
    sheet = await Workbench.open();
    const breakOff = () =>
      sheet.page.evaluate(() => {
        const { put: real } = IDBObjectStore.prototype;
        IDBObjectStore.prototype.put = function (...record) {
          IDBObjectStore.prototype.put = real;
          const request = real.apply(this, record);
          this.transaction.abort();
          return request;
        };
      });
    for (const text of ['22', '32']) {
      await breakOff();
      await sheet.enter('B6', text);
      await expect.poll(() => sheet.standing.innerText()).toMatch(/no storage here/);
      await expect.poll(() => sheet.standing.innerText()).toBe('');
    }
    await sheet.reload();
    await sheet.shows('B6', 32);
  });

  it('stores on after the storage was cleared meanwhile', async () => {
    sheet = await Workbench.open();
    await sheet.enter('B6', '22');
    await isStored(sheet.page, 'B6', 22);
    const inspector = await sheet.page.context().newCDPSession(sheet.page);
    await inspector.send('Storage.clearDataForOrigin', {
      origin: new URL(sheet.page.url()).origin,
      storageTypes: 'indexeddb',
    });
    await sheet.page.waitForTimeout(700);
    await sheet.enter('B6', '32');
    await sheet.page.evaluate(() => dispatchEvent(new Event('pagehide')));
    await sheet.reload();
    await sheet.shows('B6', 32);
    expect(await sheet.standing.innerText()).toBe('');
  });

  it('asks before a page is closed over work that could not be stored, and only then', async () => {
    sheet = await Workbench.open();
    const asked: string[] = [];
    sheet.page.on('dialog', (dialog) => {
      asked.push(dialog.type());
      void dialog.dismiss();
    });
    await fillStorage();
    await sheet.enter('B6', '32');
    await expect.poll(() => sheet.standing.innerText()).toMatch(/storage is full/);
    await sheet.page.close({ runBeforeUnload: true });
    await expect.poll(() => asked).toEqual(['beforeunload']);
    await sheet.shows('B6', 32);

    // What is in a file is not lost.
    await Promise.all([sheet.page.waitForEvent('download'), sheet.command('Save as .xlsx')]);
    await expect.poll(() => sheet.notice.innerText()).toMatch(/is saved/);
    await Promise.all([sheet.page.waitForEvent('close'), sheet.page.close({ runBeforeUnload: true })]);
    expect(asked).toHaveLength(1);
  });
});
