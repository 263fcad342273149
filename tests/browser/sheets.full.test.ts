import { describe, expect, it } from 'vitest';
import { COLUMNS, lightsOnSet } from './lightsOnSet';
import { eachItsWorkbook } from './onePage';
import { checkRowThatComesIn } from './rowChecks';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

describe('rows in a table', () => {
  const { row } = lightsOnSet(() => sheet);

  checkRowThatComesIn(
    [
      ['at the top', 13, 'rows above', 13],
      ['at the end', 17, 'rows after', 18],
    ],
    () => sheet,
  );

  it('leave no answer behind that comes after they were taken back', async () => {
    for (const pause of [0, 15, 30, 45, 60]) {
      await sheet.enter('A18', 'Alder 600');
      await sheet.enter('H18', '16');
      await sheet.showsNear('J18', 16);
      await sheet.undo('A3');
      await sheet.page.waitForTimeout(pause);
      await sheet.page.keyboard.press('Control+z');
      await expect.poll(() => sheet.tables()).toHaveProperty('Lights', 'A12:R17');
      await sheet.showsNear('B24', 2 ** 8.3);
      expect(await row(18)).toEqual(COLUMNS.map(() => ''));
    }
  });
});

describe('the pane', () => {
  it('folds away, and stays so on the next visit', async () => {
    const button = sheet.page.getByRole('button', { name: 'Sheets and functions' });
    expect(await button.getAttribute('aria-expanded')).toBe('true');
    await button.click();
    expect(await button.getAttribute('aria-expanded')).toBe('false');
    expect(await sheet.pane.isVisible()).toBe(false);
    await sheet.reload();
    expect(await sheet.pane.isVisible()).toBe(false);
    await button.click();
    expect(await sheet.pane.isVisible()).toBe(true);
  });
});
