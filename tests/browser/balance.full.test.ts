import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { FakeWorkbook } from '../hosts/excel/support/fake-workbook';
import { sheetOf } from '../hosts/excel/support/laid';
import { inExcel } from './excelPanePage';
import { eachItsWorkbook } from './onePage';
import { axeFaults, type Look, LOOKS, openAll, status, stickingOut, tab } from './paneChecks';
import type { Workbench } from './workbench';

const press = (page: Page, name: string): Promise<void> =>
  page.getByRole('button', { name, exact: true }).click();
const said = (page: Page) => expect.poll(() => status(page).innerText());

/** The demo job laid in Excel, and read. */
async function answered(page: Page): Promise<void> {
  await tab(page, 'Balance').click();
  await press(page, 'Lay a table');
  await said(page).toContain('“Balance” is inserted with the demo job.');
  await press(page, 'Read the selected table');
  await said(page).toContain('A5:K21 on “Balance” is read: 3 heads, 4 points.');
}

describe('in the built pane of Excel', () => {
  it('a table is laid, read, written and taken back, with the search in a worker', () => {
    const workbook = new FakeWorkbook('Sheet1');
    return inExcel({ workbook }, async (page) => {
      const workers: string[] = [];
      page.on('worker', (worker) => workers.push(worker.url()));
      await answered(page);
      expect(workers.map((url) => new URL(url).pathname)).toEqual(['/balance-worker.js']);
      const { cells } = sheetOf(workbook, 'Balance');
      const before = Object.fromEntries(cells);
      await press(page, 'Write the new powers to the sheet');
      await said(page).toContain('H16 to J17 on “Balance” is written.');
      const set = await page
        .getByRole('table', { name: 'Heads', exact: true })
        .locator('tbody tr td:nth-of-type(2)')
        .allInnerTexts();
      expect(['H16', 'I16', 'J16'].map((at) => cells.get(at))).toEqual(set);
      await press(page, 'Take back');
      await said(page).toContain('6 cells on “Balance” are as before.');
      const left = [...cells].filter(([, held]) => held !== '');
      expect(Object.fromEntries(left)).toEqual(before);
      await press(page, 'Write the new powers to the sheet');
      await said(page).toContain('is written.');
      cells.set('I16', '9');
      await press(page, 'Take back');
      await said(page).toContain('have changed since they were written');
    });
  });

  it('twelve heads and twenty-five points are answered, and a search that is stopped changes nothing', () => {
    const workbook = new FakeWorkbook('Sheet1');
    const { cells } = sheetOf(workbook, 'Sheet1');
    const put = (row: number, values: readonly unknown[]): void =>
      values.forEach((value, column) => cells.set(`${String.fromCharCode(65 + column)}${row}`, value));
    const heads = Array.from({ length: 12 }, (_, h) => h);
    put(1, ['Point', 'Wanted', ...heads.map((h) => `Head ${h + 1}`)]);
    const facts = { 'Metered at': 100, Most: 800, Least: 12.5, Step: 0.1, 'Most pops': 8 };
    Object.entries(facts).forEach(([label, value], i) => put(2 + i, [label, '', ...heads.map(() => value)]));
    for (let p = 0; p < 25; p++)
      put(7 + p, [`Point ${p + 1}`, p % 2 ? 16 : 22, ...heads.map((h) => [2, 2.8, 4, 5.6, 8][(h * 7 + p * (h + 3)) % 5])]); // prettier-ignore
    workbook.select('Sheet1', 'B3');
    return inExcel({ workbook }, async (page) => {
      await tab(page, 'Balance').click();
      // a worker that never answers: the search goes on until it is stopped
      await page.evaluate(() => {
        window.Worker = class extends EventTarget {
          postMessage(): void {}
          terminate(): void {}
        } as unknown as typeof Worker;
      });
      await press(page, 'Read the selected table');
      await page.getByRole('progressbar').waitFor();
      await press(page, 'Stop');
      await said(page).toContain('Stopped. Nothing was changed.');
      expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Read the selected table');
      // none at all: it is worked out on the page, in slices
      await page.evaluate(() => {
        window.Worker = class {
          constructor() {
            throw new DOMException('forbidden');
          }
        } as unknown as typeof Worker;
      });
      await press(page, 'Read the selected table');
      await expect
        .poll(() => status(page).innerText(), { timeout: 60_000 })
        .toContain('12 heads, 25 points.');
      expect(await page.locator('.answer').innerText()).toMatch(
        /No better setting|not ruled out|within its tolerance/,
      );
    });
  });

  it.each(Object.keys(LOOKS) as Look[])('passes the accessibility rules in %s colours', (look) =>
    inExcel({ workbook: new FakeWorkbook('Sheet1') }, async (page) => {
      await page.emulateMedia(LOOKS[look]);
      await answered(page);
      await openAll(page);
      expect(await axeFaults(page)).toEqual([]);
    }),
  );

  it('needs no sideways scrolling at 320 px', () =>
    inExcel(
      { workbook: new FakeWorkbook('Sheet1') },
      async (page) => {
        await answered(page);
        await openAll(page);
        expect(await page.evaluate(stickingOut)).toEqual([]);
      },
      { width: 320, height: 640 },
    ));
});

describe('in the workbench', () => {
  let sheet: Workbench;
  eachItsWorkbook((fresh) => {
    sheet = fresh;
  });

  it('what is wrong with a table is said, and one that is another by now is not written into', async () => {
    const { page } = sheet;
    await answered(page);
    await sheet.enter('H19', '11.3');
    await press(page, 'Read the selected table');
    await said(page).toContain('11.3 can be read two ways: write 11 3 for f/11 and 3 tenths');
    await sheet.enter('H19', '11 3');
    await press(page, 'Read the selected table');
    await said(page).toContain('is read: 3 heads');
    await sheet.enter('B18', 'f/32');
    await press(page, 'Write the new powers to the sheet');
    await said(page).toContain('has changed since it was read. Nothing was changed.');
    expect(await sheet.texts('H16')).toEqual(['']);
  });
});
