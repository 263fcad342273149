import { FakeWorkbook } from '../hosts/excel/support/fake-workbook';
import { sheetOf } from '../hosts/excel/support/laid';
import { inExcel } from './excelPanePage';
import { AT, type OnCell } from './explainChecks';

const SHEET = 'Sheet1';

const typed = (content: string): unknown =>
  content !== '' && Number.isFinite(Number(content)) ? Number(content) : content;

/** The built pane beside a workbook in which the cell is selected. */
export const onCellInExcel: OnCell = ({ around, content, shows }, use) => {
  const workbook = new FakeWorkbook(SHEET);
  for (const [at, held] of Object.entries({ ...around, [AT]: content }))
    sheetOf(workbook, SHEET).cells.set(at, typed(held));
  workbook.onFormula = () => typed(shows);
  workbook.select(SHEET, AT);
  return inExcel({ workbook }, (page) => use({ page }));
};
