import type { IWorkbookData } from '@univerjs/core';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { status, tab } from './paneChecks';
import { type Site, site, Workbench } from './workbench';

declare global {
  interface Window {
    /** Whether the grid shall fail at a step, and how. */
    failAt?: (step: string) => 'throws' | 'refuses' | undefined;
  }
}

/** The steps in which a sheet is laid, by the grid's names for them. */
const STEPS = [
  'sheet.mutation.insert-sheet',
  'sheet.mutation.add-table',
  'data-validation.mutation.addRule',
  'sheet.mutation.add-conditional-rule',
  'sheet.mutation.update-note',
  'sheet.mutation.set-range-values',
] as const;
const TEMPLATE = 'Lights on set';

let place: Site;

beforeAll(async () => {
  place = await site();
});
afterAll(() => place?.close());

/** The page as it is built, but for the one place through which every step goes. */
async function breakable(page: Page): Promise<void> {
  await page.route('**/workbench.js', async (route) => {
    const response = await route.fetch();
    const text = await response.text();
    const head = /(syncExecuteCommand\(([\w$]+),[\w$]+,[\w$]+\)\{)(if\(this\._disposed\))/g;
    expect(text.match(head)).toHaveLength(1);
    const body = text.replace(
      head,
      `$1{const how=window.failAt?.($2);if(how==='throws')throw new Error('a fault in '+$2);if(how)return false}$3`,
    );
    await route.fulfill({ response, body });
  });
}

/** From now on the first step of that name fails. */
const failOnce = (page: Page, step: string, how: 'throws' | 'refuses') =>
  page.evaluate(
    ([wanted, way]) => {
      window.failAt = (at) => {
        if (at !== wanted) return undefined;
        delete window.failAt;
        return way;
      };
    },
    [step, how] as const,
  );

const isNothing = (beside: object): boolean =>
  Object.values(beside).every((part) => Array.isArray(part) && part.length === 0);

/** What is kept beside each sheet. Of sheets that are gone the grid goes on to keep that there is nothing. */
function filled(data: string): unknown {
  const all = (data === '' ? {} : JSON.parse(data)) as Readonly<Record<string, object>>;
  return Object.fromEntries(Object.entries(all).filter(([, beside]) => !isNothing(beside)));
}

/** The whole workbook, sheets and all that is beside them, as the page stores it when it goes out of sight. */
async function stored(page: Page): Promise<unknown> {
  const snapshot = await page.evaluate(
    () =>
      new Promise<IWorkbookData>((resolve, reject) => {
        dispatchEvent(new Event('pagehide'));
        const opened = indexedDB.open('sweeptable', 1);
        opened.addEventListener('error', () => reject(opened.error as Error));
        opened.addEventListener('success', () => {
          const read = opened.result.transaction('workbooks').objectStore('workbooks').get('now');
          read.addEventListener('success', () => {
            opened.result.close();
            resolve((read.result as { snapshot: IWorkbookData }).snapshot);
          });
        });
      }),
  );
  const beside = snapshot.resources?.map(({ name, data }) => [name, filled(data)]);
  return { order: snapshot.sheetOrder, sheets: snapshot.sheets, beside };
}

it('a sheet that cannot be laid leaves the workbook as it was, whatever step fails, and it says why', async () => {
  const sheet = await Workbench.open(place, { before: breakable });
  const { page } = sheet;
  await sheet.enter('H5', '11');
  await sheet.enter('H6', '=SWEEP.STOPDIFF(8,H5)');
  await sheet.shows('H6', 1);
  const before = await stored(page);
  const tables = await sheet.tables();
  await tab(page, 'Sheets').click();
  const insert = sheet.pane.getByRole('button', {
    name: `Insert with the demo job ${TEMPLATE}`,
    exact: true,
  });
  for (const [i, step] of STEPS.entries()) {
    const how = i % 2 === 0 ? 'throws' : 'refuses';
    await failOnce(page, step, how);
    await insert.click();
    await expect
      .poll(() => status(page).innerText(), { message: step })
      .toBe(
        `Not done. “${TEMPLATE}” could not be inserted, and nothing of it was left behind. Reload the page and try again. The grid only says: ${how === 'throws' ? `a fault in ${step}` : `The grid refused ${step}.`}`,
      );
    expect(await page.evaluate(() => window.failAt === undefined), step).toBe(true);
    expect(await sheet.sheets(), step).toEqual(['Pops build']);
    expect(await sheet.tables(), step).toEqual(tables);
    await page.getByRole('button', { name: 'Close this message' }).click();
  }
  expect(await stored(page)).toEqual(before);

  // Undo knows nothing of the attempts: it takes back what was typed before them.
  await sheet.undo('A3');
  await sheet.shows('H6', null);
  await insert.click();
  await expect.poll(() => status(page).innerText()).toMatch('is inserted');
  expect(await sheet.sheets()).toEqual(['Pops build', TEMPLATE]);
  await page.close();
});
