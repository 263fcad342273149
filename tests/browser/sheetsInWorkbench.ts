import { expect } from 'vitest';
import type { SheetsHost } from './newSheetsChecks';
import { status, tab } from './paneChecks';
import type { Workbench } from './workbench';

export const asSheetsHost = (sheet: Workbench): SheetsHost => ({
  page: sheet.page,
  within: '#pane',
  sheets: () => sheet.sheets(),
  type: (a1, text) => sheet.enter(a1, text),
  async cell(a1) {
    const { formula, value } = await sheet.cell(a1);
    return { formula, value };
  },
});

/** Copies the sheet in view from the pane, which calls the copy `name`. */
export async function copyAsValues(sheet: Workbench, name: string): Promise<void> {
  await tab(sheet.page, 'Sheets').click();
  await sheet.pane.getByRole('button', { name: 'Copy this sheet as values' }).click();
  await expect.poll(() => status(sheet.page).innerText()).toMatch(`“${name}” holds `);
}
