import { FakeWorkbook } from '../hosts/excel/support/fake-workbook';
import { inExcel } from './excelPanePage';
import { checkRecords } from './recordChecks';

checkRecords(async (use) => {
  const workbook = new FakeWorkbook('Sheet1');
  workbook.onFormula = () => 12.5;
  const sheets = () => Promise.resolve(workbook.sheets.map(({ name }) => name));
  const untyped = () => Promise.reject(new Error('Nothing is typed here.'));
  await inExcel({ workbook }, (page) => use({ page, sheets, type: untyped, cell: untyped }));
});
