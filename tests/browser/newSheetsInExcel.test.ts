import { describe, expect, it } from 'vitest';
import { FakeWorkbook } from '../hosts/excel/support/fake-workbook';
import { sheetOf } from '../hosts/excel/support/laid';
import { inExcel } from './excelPanePage';
import { checkCopyAsValues, checkOfferToTakeBack, checkTakingBack, type SheetsHost } from './newSheetsChecks';
import { status } from './paneChecks';

/** The built pane for one test, which must end without a complaint. */
async function on(use: (host: SheetsHost, workbook: FakeWorkbook) => Promise<void>): Promise<void> {
  const workbook = new FakeWorkbook('Sheet1');
  workbook.onFormula = () => 12.5;
  const cells = () => workbook.active?.cells ?? new Map<string, unknown>();
  const host: Omit<SheetsHost, 'page'> = {
    sheets: () => Promise.resolve(workbook.sheets.map(({ name }) => name)),
    type: async (a1, text) => void cells().set(a1, Number(text)),
    cell(a1) {
      const held = cells().get(a1);
      const formula = typeof held === 'string' && held.startsWith('=') ? held : '';
      return Promise.resolve({ formula, value: formula === '' ? held : 12.5 });
    },
  };
  await inExcel({ workbook }, (page) => use({ page, ...host }, workbook));
}

describe('in the built pane of Excel', () => {
  checkTakingBack(on);
  checkCopyAsValues(on);
  checkOfferToTakeBack(on);

  it('the undo list is spoken of before it is emptied', () =>
    on(async ({ page }) => {
      const line = page.locator('p', {
        has: page.getByRole('button', { name: 'Copy this sheet as values' }),
      });
      expect(await line.innerText()).toContain('Excel empties its undo list for it.');
    }));

  it('a copy that Excel breaks off is gone, and the pane says why', () =>
    on(async ({ page }, workbook) => {
      sheetOf(workbook, 'Sheet1').cells.set('A1', 1);
      workbook.failures = [{ batch: 4, action: 2, code: 'AccessDenied' }];
      await page.getByRole('button', { name: 'Copy this sheet as values' }).click();
      await expect
        .poll(() => status(page).innerText())
        .toMatch(/^Not done\..* protected.* The workbook is as it was\./);
      expect(workbook.sheets.map(({ name }) => name)).toEqual(['Sheet1']);
    }));
});
