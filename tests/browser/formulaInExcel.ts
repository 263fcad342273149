import { FakeWorkbook } from '../hosts/excel/support/fake-workbook';
import { sheetOf } from '../hosts/excel/support/laid';
import { inExcel } from './excelPanePage';
import type { OnPane } from './paneChecks';

export const FORMULA = '=SWEEP.STOPDIFF(8,11)';

/** The pane beside a workbook in which a formula of ours is selected. */
export const onFormula: OnPane = (use, size) => {
  const workbook = new FakeWorkbook('Sheet1');
  sheetOf(workbook, 'Sheet1').cells.set('B7', FORMULA);
  workbook.select('Sheet1', 'B7');
  return inExcel({ workbook }, use, size);
};
