import { FakeWorkbook } from '../hosts/excel/support/fake-workbook';
import { inExcel } from './excelPanePage';
import type { SheetsHost } from './newSheetsChecks';

/** The built pane for one test, which must end without a complaint. */
export async function onExcel(
  use: (host: SheetsHost, workbook: FakeWorkbook) => Promise<void>,
): Promise<void> {
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
