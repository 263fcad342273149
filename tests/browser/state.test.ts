import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from 'vitest';
import { type Site, site, visitor, Workbench } from './workbench';

let place: Site;
let sheet: Workbench;

beforeAll(async () => {
  place = await site();
});
afterAll(() => place?.close());
beforeEach(async () => {
  sheet = await Workbench.open(place);
});
afterEach(async () => {
  expect(sheet.complaints).toEqual({ errors: [], outside: [] });
  await sheet.page.close();
});

/** The records of this browser's storage, and how one is put there. */
const records = () =>
  sheet.page.evaluate(
    () =>
      new Promise<Record<string, unknown>>((resolve) => {
        const opening = indexedDB.open('sweeptable');
        opening.addEventListener('success', () => {
          const store = opening.result.transaction('workbooks').objectStore('workbooks');
          const all: Record<string, unknown> = {};
          store.openCursor().addEventListener('success', (event) => {
            const cursor = (event.target as IDBRequest<IDBCursorWithValue | null>).result;
            if (!cursor) return resolve(all);
            all[String(cursor.key)] = cursor.value;
            cursor.continue();
          });
        });
      }),
  );
const put = (key: string, value: unknown) =>
  sheet.page.evaluate(
    ([name, record]) =>
      new Promise<void>((resolve) => {
        const opening = indexedDB.open('sweeptable');
        opening.addEventListener('success', () => {
          const transaction = opening.result.transaction('workbooks', 'readwrite');
          transaction.objectStore('workbooks').put(record, name);
          transaction.addEventListener('complete', () => resolve());
        });
      }),
    [key, value] as const,
  );
const stored = () => expect.poll(async () => Object.keys(await records())).toContain('now');

it('finds the work of the last visit, at the sheet that was in view', async () => {
  await sheet.insert('Lights on set');
  await sheet.enter('B5', '32');
  await sheet.enterDown('I5', ['kept', '=SEQUENCE(3)']);
  await sheet.shows('I8', 3);
  const before = await sheet.values('B9', 'P13', 'R17', 'I8');
  await stored();
  await sheet.reload();
  expect(await sheet.sheets()).toEqual(['Pops build', 'Lights on set']);
  expect(await sheet.page.evaluate(() => window.sweeptable.inView())).toBe('Lights on set');
  expect(await sheet.values('B9', 'P13', 'R17', 'I8')).toEqual(before);
  await sheet.shows('I5', 'kept');
  expect(await sheet.tables()).toEqual({ Build: 'A35:E47', Lights: 'A12:R17' });
  await sheet.enter('B8', 'blue');
  await sheet.refuses('B9', '#VALUE!', /blue/);
});

it('stores at once when the page goes out of sight', async () => {
  await sheet.enter('B6', '22');
  await sheet.shows('B6', 22);
  await sheet.page.evaluate(() => dispatchEvent(new Event('pagehide')));
  await sheet.reload();
  await sheet.shows('B6', 22);
});

it.each([
  [
    'damaged',
    { format: 1, saved: 0, snapshot: { id: 'x', sheetOrder: ['a'], sheets: {} } },
    /could not be read/,
  ],
  ['no record at all', 'torn', /could not be read/],
  ['newer', { format: 99, saved: 0, book: {} }, /newer version/],
])('puts aside what is %s, unchanged, and says so', async (_, record, said) => {
  await sheet.enter('B6', '22');
  await stored();
  await sheet.page.evaluate(() => dispatchEvent(new Event('pagehide')));
  await put('now', record);
  await sheet.reload();
  await sheet.shows('B16', 36);
  expect(await sheet.notice.innerText()).toMatch(said);
  const aside = Object.entries(await records()).filter(([key]) => key.startsWith('aside'));
  expect(aside.map(([, value]) => value)).toEqual([record]);
});

it('works on where storage is forbidden, and says so once', async () => {
  await sheet.page.addInitScript(() => {
    const forbidden = (): never => {
      throw new DOMException('Forbidden here.', 'SecurityError');
    };
    Object.defineProperty(window, 'indexedDB', { get: forbidden });
    Object.defineProperty(window, 'localStorage', { get: forbidden });
    Object.defineProperty(window, 'BroadcastChannel', { get: forbidden });
    LockManager.prototype.request = () =>
      Promise.reject(new DOMException('Forbidden here.', 'SecurityError'));
  });
  await sheet.reload();
  expect(await sheet.standing.innerText()).toMatch(/allows no storage here/);
  await sheet.page.getByRole('button', { name: 'Close this message' }).click();
  await sheet.enter('B6', '32');
  await sheet.shows('B16', 18);
  await sheet.insert('Lights on set');
  await sheet.page.waitForTimeout(700);
  expect(await sheet.standing.innerText()).toBe('');
});

/** Fills the browser's storage, and gives how to make room again. */
async function fillStorage(): Promise<() => Promise<void>> {
  const inspector = await sheet.page.context().newCDPSession(sheet.page);
  const { origin } = new URL(place.url);
  await inspector.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });
  return () => inspector.send('Storage.overrideQuotaForOrigin', { origin }).then(() => inspector.detach());
}

it('says so while storage is full, and stores when there is room again', async () => {
  // Before anything is stored: a browser looks only now and then how much room there is.
  const makeRoom = await fillStorage();
  await sheet.enter('B6', '32');
  await expect.poll(() => sheet.standing.innerText()).toMatch(/storage is full.*Save the workbook as \.xlsx/);
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
  await sheet.enter('B6', '22');
  await stored();
  const inspector = await sheet.page.context().newCDPSession(sheet.page);
  await inspector.send('Storage.clearDataForOrigin', {
    origin: new URL(place.url).origin,
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
  await sheet.page.close();
  sheet = await Workbench.open(place, { of: await visitor(place) });
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

it('starts over when asked twice, and takes it back once', async () => {
  await sheet.enter('B6', '22');
  await sheet.insert('Lights on set');
  await sheet.command('Start over');
  await sheet.dialog.getByRole('button', { name: 'Cancel' }).click();
  expect(await sheet.sheets()).toHaveLength(2);

  await sheet.command('Start over');
  await sheet.dialog.getByRole('button', { name: 'Start over' }).click();
  await expect.poll(() => sheet.sheets()).toEqual(['Pops build']);
  await sheet.shows('B16', 36);
  await sheet.insert('Pops build');
  await sheet.shows('B16', 36);

  await sheet.reload();
  await sheet.page.getByRole('button', { name: 'Take back' }).click();
  await expect.poll(() => sheet.sheets()).toEqual(['Pops build', 'Lights on set']);
  await sheet.sheet('Pops build');
  await sheet.shows('B6', 22);
  await sheet.reload();
  expect(await sheet.page.getByRole('button', { name: 'Take back' }).count()).toBe(0);
});
