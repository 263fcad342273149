import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../src/catalogue';
import type { Template } from '../../src/sheets/template';
import { TEMPLATES } from '../../src/sheets/templates';
import { FakeWorkbook } from '../hosts/support/fake-workbook';
import { held, planOf, sheetOf } from '../hosts/support/laid';
import { addressOf } from '../hosts/support/a1';
import { type Around, ExcelPanePages } from './excelPanePage';
import { axeFaults, checkPane, type Size, status, summaryOf, tab } from './paneChecks';

const FORMULA = '=SWEEP.STOPDIFF(8,11)';
const LOST = '=[2]!_xldudf_SWEEP_STOPDIFF(8,11)';
const DARK_OFFICE = { bodyBackgroundColor: '#262626' };
const LIGHT_OFFICE = { bodyBackgroundColor: '#FAF9F8' };

let pages: ExcelPanePages;

beforeAll(async () => {
  pages = await ExcelPanePages.start();
});
afterAll(() => pages?.close());

/** A pane for one test, which must end with these complaints and no other. */
async function on(
  around: Around,
  use: (page: Page) => Promise<void>,
  size?: Size,
  expected: readonly unknown[] = [],
): Promise<void> {
  const [page, complaints] = await pages.open(around, size);
  await use(page);
  expect(complaints).toEqual(expected);
  await page.context().close();
}
const said = (page: Page) => expect.poll(() => status(page).innerText());
const insert = (page: Page, label: string, name: string) =>
  page.getByRole('button', { name: `${label} ${name}`, exact: true });
/** What the card of a sheet offers: one into which nothing is typed comes in one way only. */
const offered = (template: Template): readonly string[] =>
  planOf(template, true).cells.some(({ part }) => part === 'input' || part === 'choice')
    ? ['Insert with the demo job', 'Insert empty']
    : ['Insert'];
const example = (page: Page) =>
  page.getByRole('button', { name: `Put into the selected cell ${FORMULA}`, exact: true });

checkPane(['Sheets', 'Functions', 'Explain'], (use, size) => {
  const workbook = new FakeWorkbook('Sheet1');
  sheetOf(workbook, 'Sheet1').cells.set('B7', FORMULA);
  workbook.select('Sheet1', 'B7');
  return on({ workbook }, use, size);
});

describe('in Excel, a sheet', () => {
  let workbook: FakeWorkbook;
  let page: Page;
  let complaints: string[];

  // One page for all sheets: each test opens another workbook beside it.
  beforeAll(async () => {
    [page, complaints] = await pages.open({ workbook: () => workbook });
  });
  afterAll(() => page?.context().close());
  afterEach(() => expect(complaints).toEqual([]));

  /** Inserts a sheet by a button of its card, and waits for the pane to say that it is in. */
  async function bring(label: string, { name }: Template, as = name): Promise<void> {
    await insert(page, label, name).click();
    await said(page).toMatch(`The sheet “${as}” is in.`);
  }

  describe.each(TEMPLATES)('“$name”', (template) => {
    it.each(offered(template))('comes in by “%s”, cell by cell as planned', async (label) => {
      workbook = new FakeWorkbook('Sheet1');
      await bring(label, template);
      const plan = planOf(template, label !== 'Insert empty');
      const wanted = plan.cells
        .filter((cell) => held(cell) !== undefined)
        .map((cell) => [addressOf(cell.row, cell.column), held(cell)] as const);
      expect(Object.fromEntries(sheetOf(workbook, template.name).cells)).toEqual(Object.fromEntries(wanted));
      expect(sheetOf(workbook, 'Sheet1').cells.size).toBe(0);
    });

    it('gets a number where its name is taken', async () => {
      workbook = new FakeWorkbook('Sheet1', template.name);
      await bring(offered(template).at(-1) ?? '', template, `${template.name} (2)`);
      expect(sheetOf(workbook, template.name).cells.size).toBe(0);
    });
  });
});

describe('in Excel', () => {
  it('every function of the catalogue answers for itself as soon as the page is there', () =>
    on({ workbook: new FakeWorkbook('Sheet1') }, async (page) => {
      const known = await page.evaluate(() =>
        Object.keys(
          (CustomFunctions as unknown as { _association: { mappings: object } })._association.mappings,
        ),
      );
      expect(known).toEqual(CATALOGUE.map(({ id }) => id));
    }));

  it('an example goes into the selected cell, and a full cell keeps what it holds', () => {
    const workbook = new FakeWorkbook('Sheet1');
    workbook.select('Sheet1', 'B7');
    return on({ workbook }, async (page) => {
      await tab(page, 'Functions').click();
      await summaryOf(page, 'STOPDIFF').click();
      await example(page).click();
      await said(page).toBe('The formula is in B7.');
      expect(sheetOf(workbook, 'Sheet1').cells.get('B7')).toBe(FORMULA);
      await example(page).click();
      await said(page).toBe(
        'Not done. Cell B7 holds something, and it was left there. Select an empty cell.',
      );
    });
  });

  it('everything is calculated anew on demand', () => {
    const workbook = new FakeWorkbook('Sheet1');
    return on({ workbook }, async (page) => {
      await page.getByRole('button', { name: 'Recalculate' }).click();
      await said(page).toMatch(/^Excel calculates the workbook anew/);
      expect(workbook.log).toEqual(['Application.Calculate("FullRebuild")']);
    });
  });

  it('lost names are shown, mended and taken back', () => {
    const workbook = new FakeWorkbook('Sheet1');
    const { cells } = sheetOf(workbook, 'Sheet1');
    cells.set('C3', LOST);
    return on({ workbook }, async (page) => {
      const press = (name: string) => page.getByRole('button', { name, exact: true }).click();
      const listed = page.getByRole('list', { name: 'Formulas before and after' });
      await page.locator('summary', { hasText: 'Repair' }).click();
      await press('Look for lost names');
      await said(page).toBe('1 cell with lost names found. Nothing is changed yet.');
      expect((await listed.innerText()).split(/\n+/)).toEqual([
        'C3 on “Sheet1”',
        `Before: ${LOST}`,
        `After: ${FORMULA}`,
      ]);
      expect(cells.get('C3')).toBe(LOST);
      expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
      expect(await axeFaults(page)).toEqual([]);
      await press('Mend 1');
      await said(page).toBe('1 cell mended.');
      expect(cells.get('C3')).toBe(FORMULA);
      await press('Take back');
      await said(page).toBe('1 cell as before the repair.');
      expect(cells.get('C3')).toBe(LOST);
      expect(await listed.count()).toBe(0);
      await press('Look for lost names');
      await press('Mend 1');
      await press('Look for lost names');
      await said(page).toBe('No formula has lost a name. Nothing was changed.');
      expect(await listed.count()).toBe(0);
    });
  });

  it('the help page opens beside the workbook', () =>
    on({ workbook: new FakeWorkbook('Sheet1') }, async (page) => {
      await tab(page, 'Functions').click();
      const opened = page.context().waitForEvent('page');
      await page.getByRole('link', { name: 'Help' }).click();
      const help = await opened;
      expect(await help.title()).toBe('Sweeptable help');
      expect(await page.title()).toBe('Sweeptable');
    }));

  it('a protected workbook says so, and stays as it was', () => {
    const workbook = new FakeWorkbook('Sheet1');
    workbook.failures = [{ batch: 2, action: 0, code: 'AccessDenied' }];
    return on({ workbook }, async (page) => {
      await page.getByRole('button', { name: 'Insert empty' }).first().click();
      await said(page).toMatch(/^Not done\..* protected.* The workbook is as it was\./);
      expect(workbook.sheets.map(({ name }) => name)).toEqual(['Sheet1']);
    });
  });

  it.each([
    ['dark in a light system', DARK_OFFICE, 'light', 'dark'],
    ['light in a dark system', LIGHT_OFFICE, 'dark', 'light'],
    ['the system’s light where Office does not say', undefined, 'light', 'light'],
    ['the system’s dark where Office says nothing of use', {}, 'dark', 'dark'],
  ] as const)('the pane is %s', (_, theme, system, wanted) =>
    on({ workbook: new FakeWorkbook('Sheet1'), ...(theme && { theme }) }, async (page) => {
      await page.emulateMedia({ colorScheme: system });
      const paper = () => page.locator('.pane').evaluate((pane) => getComputedStyle(pane).backgroundColor);
      expect(await paper()).toBe(wanted === 'dark' ? 'rgb(27, 36, 44)' : 'rgb(251, 248, 241)');
    }),
  );
});

const catalogueIsThere = async (page: Page): Promise<void> => {
  expect(await page.locator('.sheet').count()).toBe(TEMPLATES.length);
  expect(await page.getByRole('button', { name: /Insert|Recalculate/ }).count()).toBe(0);
  await tab(page, 'Functions').click();
  expect(await page.locator('.functions h3').count()).toBe(CATALOGUE.length);
};

describe('where it cannot work, the catalogue is shown', () => {
  it('outside Excel, and the pane says what is missing', () =>
    on('no host', async (page) => {
      await page.getByText('Open this page from Excel to insert sheets.').waitFor();
      await catalogueIsThere(page);
    }));

  it('without office.js, and the pane says what to do', () =>
    on(
      'no office.js',
      async (page) => {
        await page.getByText('Excel’s part of this page did not load.').waitFor();
        await catalogueIsThere(page);
      },
      undefined,
      [expect.stringMatching(/Failed to load resource/)],
    ));
});

describe.each(['help.html', 'support.html', 'privacy.html'])('the page %s', (name) => {
  it.each(['light', 'dark'] as const)(
    'is read on a phone in %s colours without scrolling sideways',
    (colorScheme) =>
      on(
        'no host',
        async (page) => {
          await page.emulateMedia({ colorScheme });
          await page.goto(new URL(name, page.url()).href);
          expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(320);
          expect(await axeFaults(page)).toEqual([]);
        },
        { width: 320, height: 640 },
      ),
  );
});
