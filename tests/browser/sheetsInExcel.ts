import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { Template } from '../../src/sheets/template';
import { addressOf } from '../hosts/excel/support/a1';
import { FakeWorkbook } from '../hosts/excel/support/fake-workbook';
import { held, planOf, sheetOf } from '../hosts/excel/support/laid';
import { inExcel } from './excelPanePage';
import { status } from './paneChecks';

/** What the card of a sheet offers: one into which nothing is typed comes in one way only. */
export const offered = (template: Template): readonly string[] =>
  planOf(template, true).start ? ['Insert with the demo job', 'Insert empty'] : ['Insert'];

/** Inserts a sheet by a button of its card, and waits for the pane to say that it is in. */
async function bring(page: Page, label: string, { name }: Template, as = name): Promise<void> {
  await page.getByRole('button', { name: `${label} ${name}`, exact: true }).click();
  await expect.poll(() => status(page).innerText()).toMatch(`“${as}” is inserted`);
}

/** What holds for sheets that come in by these buttons of their cards, and for these where their names are taken. */
export function checkSheetsInExcel(
  buttons: readonly (readonly [Template, string])[],
  whereTaken: readonly Template[],
): void {
  describe('in Excel, a sheet', () => {
    // All in one page: each opens another workbook beside it.
    let workbook: FakeWorkbook;
    const on = (use: (page: Page) => Promise<void>) => inExcel({ workbook: () => workbook }, use);

    it('comes in by its card, cell by cell as planned', () =>
      on(async (page) => {
        for (const [template, label] of buttons) {
          workbook = new FakeWorkbook('Sheet1');
          await bring(page, label, template);
          const planned = planOf(template, label !== 'Insert empty').sheet;
          const wanted = planned.cells
            .filter((cell) => held(cell) !== undefined)
            .map((cell) => [addressOf(cell.row, cell.column), held(cell)] as const);
          const sheet = sheetOf(workbook, template.name);
          expect(Object.fromEntries(sheet.cells), template.name).toEqual(Object.fromEntries(wanted));
          expect(sheetOf(workbook, 'Sheet1').cells.size, template.name).toBe(0);
        }
      }));

    it('gets a number where its name is taken', () =>
      on(async (page) => {
        for (const template of whereTaken) {
          workbook = new FakeWorkbook('Sheet1', template.name);
          await bring(page, offered(template).at(-1) ?? '', template, `${template.name} (2)`);
          expect(sheetOf(workbook, template.name).cells.size, template.name).toBe(0);
        }
      }));
  });
}
