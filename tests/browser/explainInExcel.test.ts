import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { eventMessage } from '../hosts/excel/support/excel-events';
import { FakeWorkbook } from '../hosts/excel/support/fake-workbook';
import { sheetOf } from '../hosts/excel/support/laid';
import { inExcel } from './excelPanePage';
import { onCellInExcel } from './cellInExcel';
import { checkExplain } from './explainChecks';
import { tab } from './paneChecks';

const SHEET = 'Sheet1';
/** Requests in which the workbook is looked through for lost names. */
const LOOKS = 3;

describe('in the built pane of Excel', () => {
  checkExplain(onCellInExcel);

  describe('the view', () => {
    const changing = () => {
      const workbook = new FakeWorkbook(SHEET);
      const { cells } = sheetOf(workbook, SHEET);
      cells.set('A1', 11).set('B1', '=SWEEP.STOPDIFF(8,A1)').set('B2', '=SWEEP.FNUMBER(A1)');
      workbook.select(SHEET, 'B1');
      workbook.onFormula = () => 1;
      return { workbook, cells };
    };
    const shown = (page: Page, text: string) =>
      page.getByRole('tabpanel', { name: 'Explain' }).getByText(text).first().waitFor();
    const tellSelection = (page: Page) => page.evaluate(() => window.tellSelection());
    const tell = (page: Page, event: 'change' | 'calculation') =>
      page.evaluate((message) => window.tellEvent(message), eventMessage(event));

    it('follows what is selected, typed and calculated', () => {
      const { workbook, cells } = changing();
      return inExcel({ workbook }, async (page) => {
        await tab(page, 'Explain').click();
        await shown(page, 'the mark f/11, 11.31');
        workbook.select(SHEET, 'B2');
        await tellSelection(page);
        await shown(page, 'B2 shows');
        workbook.select(SHEET, 'B1');
        await tellSelection(page);
        await shown(page, 'B1 shows 1');
        cells.set('A1', 16);
        await tell(page, 'change');
        await shown(page, 'the mark f/16');
        cells.set('A1', 22);
        await tell(page, 'calculation');
        await shown(page, 'the mark f/22');
      });
    });

    it('asks Excel nothing while it is out of sight, and looks again when it is back', () => {
      const { workbook, cells } = changing();
      return inExcel({ workbook }, async (page) => {
        await tab(page, 'Explain').click();
        await shown(page, 'the mark f/11, 11.31');
        await tab(page, 'Sheets').click();
        // Whatever was under way is over once Excel has calculated anew.
        await page.getByRole('button', { name: 'Recalculate' }).click();
        await page.getByText('Excel calculates the workbook anew').waitFor();
        await page.locator('summary', { hasText: 'Repair' }).click();
        const before = workbook.batches.length;
        cells.set('A1', 16);
        await tellSelection(page);
        await tell(page, 'change');
        // The answer to a wish that comes later says that the others have come to nothing.
        await page.getByRole('button', { name: 'Look for lost names' }).click();
        await page.getByText('No formula has lost a name').waitFor();
        expect(workbook.batches.length).toBe(before + LOOKS);
        await tab(page, 'Explain').click();
        await shown(page, 'the mark f/16');
      });
    });

    it('keeps what it says while a cell is edited, and says so where none is selected', () => {
      const { workbook } = changing();
      return inExcel({ workbook }, async (page) => {
        await tab(page, 'Explain').click();
        await shown(page, 'B1 shows 1');
        workbook.failures = [
          { batch: workbook.batches.length + 1, action: 0, code: 'InvalidOperationInCellEditMode' },
        ];
        await tellSelection(page);
        await expect.poll(() => workbook.batches.length).toBe(workbook.failures[0]?.batch);
        await shown(page, 'B1 shows 1');
        workbook.selection = undefined;
        await tellSelection(page);
        await shown(page, 'Select one cell');
      });
    });
  });
});
