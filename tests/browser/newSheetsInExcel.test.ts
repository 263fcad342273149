import { describe, expect, it } from 'vitest';
import { sheetOf } from '../hosts/excel/support/laid';
import { checkCopyAsValues, checkNewJob, checkTakingBack } from './newSheetsChecks';
import { onExcel } from './newSheetsHost';
import { status } from './paneChecks';

describe('in the built pane of Excel', () => {
  checkTakingBack(onExcel);
  checkCopyAsValues(onExcel);
  checkNewJob(onExcel);

  it('the undo list is spoken of before it is emptied', () =>
    onExcel(async ({ page }) => {
      const line = page.locator('p', {
        has: page.getByRole('button', { name: 'Copy this sheet as values' }),
      });
      expect(await line.innerText()).toContain('Excel empties its undo list for it.');
    }));

  it('a copy that Excel breaks off is gone, and the pane says why', () =>
    onExcel(async ({ page }, workbook) => {
      sheetOf(workbook, 'Sheet1').cells.set('A1', 1);
      workbook.failures = [{ batch: 4, action: 2, code: 'AccessDenied' }];
      await page.getByRole('button', { name: 'Copy this sheet as values' }).click();
      await expect
        .poll(() => status(page).innerText())
        .toMatch(/^Not done\..* protected.* The workbook is as it was\./);
      expect(workbook.sheets.map(({ name }) => name)).toEqual(['Sheet1']);
    }));
});
