import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../src/catalogue';
import type { Template } from '../../src/sheets/template';
import { TEMPLATES } from '../../src/sheets/templates';
import { FakeWorkbook } from '../hosts/excel/support/fake-workbook';
import { sheetOf } from '../hosts/excel/support/laid';
import { inExcel } from './excelPanePage';
import { FORMULA } from './formulaInExcel';
import { axeFaults, status, summaryOf, tab } from './paneChecks';
import { checkSheetsInExcel, offered } from './sheetsInExcel';

const LOST = '=[2]!_xldudf_SWEEP_STOPDIFF(8,11)';
const DARK_OFFICE = { bodyBackgroundColor: '#262626' };
const LIGHT_OFFICE = { bodyBackgroundColor: '#FAF9F8' };

const said = (page: Page) => expect.poll(() => status(page).innerText());
const insert = (page: Page, label: string, name: string) =>
  page.getByRole('button', { name: `${label} ${name}`, exact: true });
const example = (page: Page) =>
  page.getByRole('button', { name: `Put into the selected cell ${FORMULA}`, exact: true });

// Some sheets by the first of their buttons; all by all of them, and where their names are taken, in full.
const SOME: readonly string[] = ['Lights on set', 'Depth options', 'Set card'];
checkSheetsInExcel(
  TEMPLATES.filter(({ name }) => SOME.includes(name)).map((template) => [
    template,
    offered(template)[0] ?? '',
  ]),
  TEMPLATES.filter(({ name }) => name === 'Lights on set'),
);

describe('in Excel, the proof', () => {
  const LATE = '**/long-sheets.js';
  const PROOF = TEMPLATES.find(({ id }) => id === 'proof') as Template;

  it('says so where it does not arrive, changes nothing, and comes in when it does', async () => {
    const workbook = new FakeWorkbook('Sheet1');
    await inExcel(
      { workbook },
      async (page) => {
        await page.route(LATE, (route) => route.abort());
        await page.reload();
        await insert(page, 'Insert', PROOF.name).click();
        await said(page).toBe(
          'Not done. The sheet “Proof” did not arrive. Nothing was changed. Check the connection, then try again.',
        );
        expect(workbook.sheets.map(({ name }) => name)).toEqual(['Sheet1']);
        await insert(page, 'Insert with the demo job', 'Pops build').click();
        await said(page).toMatch('“Pops build” is inserted');
        await page.unroute(LATE);
        await insert(page, 'Insert', PROOF.name).click();
        await said(page).toMatch('“Proof” is inserted');
      },
      undefined,
      // ahead of time, and when it was asked for
      [expect.stringMatching(/Failed to load resource/), expect.stringMatching(/Failed to load resource/)],
    );
  });
});

describe('in Excel', () => {
  it('the page as a whole breaks no rule of accessibility', () =>
    inExcel({ workbook: new FakeWorkbook('Sheet1') }, async (page) =>
      expect(await axeFaults(page)).toEqual([]),
    ));

  it('every function of the catalogue answers for itself as soon as the page is there', () =>
    inExcel({ workbook: new FakeWorkbook('Sheet1') }, async (page) => {
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
    return inExcel({ workbook }, async (page) => {
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
    return inExcel({ workbook }, async (page) => {
      await page.getByRole('button', { name: 'Recalculate' }).click();
      await said(page).toMatch(/^Excel calculates the workbook anew/);
      expect(workbook.log).toEqual(['Application.Calculate("Full")']);
    });
  });

  it('lost names are shown, mended and taken back', () => {
    const workbook = new FakeWorkbook('Sheet1');
    const { cells } = sheetOf(workbook, 'Sheet1');
    cells.set('C3', LOST);
    return inExcel({ workbook }, async (page) => {
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
    inExcel({ workbook: new FakeWorkbook('Sheet1') }, async (page) => {
      await tab(page, 'Functions').click();
      const opened = page.context().waitForEvent('page');
      await page.getByRole('link', { name: 'Help' }).click();
      const help = await opened;
      expect(await help.title()).toBe('Sweeptable help');
      await help.close();
      expect(await page.title()).toBe('Sweeptable');
    }));

  it('a protected workbook says so, and stays as it was', () => {
    const workbook = new FakeWorkbook('Sheet1');
    workbook.failures = [{ batch: 2, action: 0, code: 'AccessDenied' }];
    return inExcel({ workbook }, async (page) => {
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
    inExcel({ workbook: new FakeWorkbook('Sheet1'), ...(theme && { theme }) }, async (page) => {
      await page.emulateMedia({ colorScheme: system });
      const paper = () => page.locator('.pane').evaluate((pane) => getComputedStyle(pane).backgroundColor);
      expect(await paper()).toBe(wanted === 'dark' ? 'rgb(27, 36, 44)' : 'rgb(251, 248, 241)');
    }),
  );
});

const catalogueIsThere = async (page: Page): Promise<void> => {
  expect(await page.locator('.sheets > li').count()).toBe(TEMPLATES.length);
  expect(await page.getByRole('button', { name: /Insert|Recalculate/ }).count()).toBe(0);
  await tab(page, 'Functions').click();
  expect(await page.locator('.functions h3').count()).toBe(CATALOGUE.length);
};

describe('where it cannot work, the catalogue is shown', () => {
  it('outside Excel, and the pane says what is missing', () =>
    inExcel('no host', async (page) => {
      await page.getByText('Open this page from Excel to insert sheets.').waitFor();
      await catalogueIsThere(page);
    }));

  it('without office.js, and the pane says what to do', () =>
    inExcel(
      'no office.js',
      async (page) => {
        await page.getByText('Excel’s part of this page did not load.').waitFor();
        await catalogueIsThere(page);
      },
      undefined,
      [expect.stringMatching(/Failed to load resource/)],
    ));
});
