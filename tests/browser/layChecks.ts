import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { status, tab } from './paneChecks';
import { storedWorkbook } from './stored';
import type { Workbench } from './workbench';

declare global {
  interface Window {
    /** Whether the grid shall fail at a step, and how. */
    failAt?: (step: string) => 'throws' | 'refuses' | undefined;
  }
}

/** The page as it is built, but for the one place through which every step goes. */
export async function breakable(page: Page): Promise<void> {
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
  await page.evaluate(() => dispatchEvent(new Event('pagehide')));
  const { resources, sheetOrder, sheets } = await storedWorkbook(page);
  const beside = resources?.map(({ name, data }) => [name, filled(data)]);
  return { order: sheetOrder, sheets, beside };
}

/** The steps in which a sheet is laid, by the grid's names for them, and how the grid fails in them. */
type Fault = readonly [step: string, how: 'throws' | 'refuses'];
const TEMPLATE = 'Lights on set';

/** What holds where such a step fails. */
export async function checkLayFailures(sheet: Workbench, faults: readonly Fault[]): Promise<void> {
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
  for (const [step, how] of faults) {
    await failOnce(page, step, how);
    await insert.click();
    await expect
      .poll(() => status(page).innerText(), { message: step })
      .toBe(
        `Not done. The grid refused, and only says “${how === 'throws' ? `a fault in ${step}` : step}”. The workbook is as it was. Reload the page and try again.`,
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
}
