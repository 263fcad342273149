import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { AxeResults, RunOptions } from 'axe-core';
import { afterAll, beforeAll, beforeEach, afterEach, expect, it } from 'vitest';
import { openAll } from './paneChecks';
import { type Site, site, Workbench } from './workbench';

let place: Site;
let axe: string;
let sheet: Workbench;

beforeAll(async () => {
  axe = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
  place = await site();
});
afterAll(() => place?.close());
beforeEach(async () => {
  sheet = await Workbench.open(place);
  await sheet.page.evaluate(axe);
});
afterEach(() => sheet.page.close());

type Axe = { run(within: unknown, options: RunOptions): Promise<AxeResults> };

/** The faults found within parts of the page: rule and element. */
const faults = (include: string[], exclude: string[] = []) =>
  sheet.page.evaluate(
    async ([inside, outside]) => {
      const { violations } = await (window as unknown as { axe: Axe }).axe.run(
        { include: inside, exclude: outside },
        { resultTypes: ['violations'] },
      );
      return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target.join(' ')}`));
    },
    [include, exclude] as const,
  );

/** Faults in the grid's own parts, which are not ours to mend: the rules it breaks. */
const OF_THE_GRID = [
  'aria-allowed-attr',
  'aria-command-name',
  'aria-roles',
  'button-name',
  'label',
  'landmark-unique',
  'tabindex',
];

it.each(['light', 'dark'] as const)('what is ours has no fault in the %s', async (colorScheme) => {
  await sheet.page.emulateMedia({ colorScheme });
  await sheet.command('Start over');
  expect(await faults(['dialog'])).toEqual([]);
  await sheet.dialog.getByRole('button', { name: 'Start over' }).click();
  await expect.poll(() => sheet.notice.innerText()).toBe('This is a new workbook.');
  // Answers of ours, with their steps to explain.
  await sheet.click('B16');
  for (const tab of ['Sheets', 'Functions', 'Charts', 'Explain']) {
    await sheet.pane.getByRole('tab', { name: tab }).click();
    await openAll(sheet.page);
    expect(await faults(['.bar', '#notice', '#pane'])).toEqual([]);
  }
});

it('the page as a whole has only the faults of the grid', async () => {
  const rules = new Set((await faults(['html'])).map((fault) => fault.split(':')[0]));
  expect([...rules].sort()).toEqual(OF_THE_GRID);
});

it('dialogs take the keyboard, and give it back', async () => {
  await sheet.page.getByRole('button', { name: 'Start over' }).focus();
  await sheet.page.keyboard.press('Enter');
  await expect.poll(() => sheet.dialog.locator(':focus').count()).toBe(1);
  await sheet.page.keyboard.press('Escape');
  await expect.poll(() => sheet.dialog.count()).toBe(0);
  expect(await sheet.page.locator(':focus').innerText()).toBe('Start over');
  expect(await sheet.sheets()).toEqual(['Pops build']);
});
