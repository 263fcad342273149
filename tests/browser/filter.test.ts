import { expect, it } from 'vitest';
import { filterDialog } from './filterDialog';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook(
  (fresh) => {
    sheet = fresh;
  },
  { height: 1900 },
);

const button = (name: string) => sheet.page.getByRole('button', { name, exact: true });
const HIDDEN = 'Lights: 5 rows are hidden: show';

it('a filter hides rows of a table, says how many, and changes no answer but of SUBTOTAL', async () => {
  await sheet.insert('Lights on set');
  await expect.poll(() => sheet.texts('O33')).toEqual([expect.stringMatching(/^\d.*%$/)]);
  // 600, 1200, 400, 400 and 2400 Ws
  await sheet.enterDown('H48', ['=SUM(H33:H38)', '=SUBTOTAL(9,H33:H38)']);
  await sheet.shows('H49', 5000);
  const answers = await sheet.texts('B20', 'B21', 'B22', 'O33', 'O34');
  const chart = sheet.page.locator('.charts figure').first().locator('tbody th');
  const drawn = await chart.allTextContents();

  await button('Add a row to Lights').hover();
  await button('Filter Lights…').click();
  const [role = ''] = await sheet.texts('B33');
  await filterDialog(sheet, (await sheet.texts('B32'))[0] ?? '', role);
  await expect
    .poll(() => sheet.notice.innerText())
    .toContain('5 rows of Lights are hidden. Formulas and charts still count them');
  await button(HIDDEN).waitFor();
  await sheet.shows('H49', 600);
  await sheet.shows('H48', 5000);
  expect(await sheet.texts('B20', 'B21', 'B22', 'O33', 'O34')).toEqual(answers);
  expect(await chart.allTextContents()).toEqual(drawn);
  // What is cleared over hidden rows leaves them as they are.
  await sheet.click('M33');
  await sheet.page.keyboard.press('Shift+ArrowDown');
  await sheet.page.keyboard.press('Delete');
  await expect.poll(() => sheet.values('M33')).toEqual([null]);
  expect(await sheet.values('M34')).not.toEqual([null]);
  await sheet.page.keyboard.press('Control+z');

  await button(HIDDEN).click();
  await sheet.shows('H49', 5000);
  await expect.poll(() => button(HIDDEN).count()).toBe(0);
  await sheet.page.keyboard.press('Control+z');
  await button(HIDDEN).waitFor();
  await sheet.shows('H49', 600);
});
