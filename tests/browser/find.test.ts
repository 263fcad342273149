import { expect, it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

const selected = () => sheet.page.evaluate(() => window.sweeptable.selected());

it('Ctrl+F finds in the sheet and replaces what was typed, never an answer, and undo takes it back', async () => {
  const line = sheet.page.getByRole('search', { name: 'Find and replace' });
  const [find, by] = [line.getByLabel('Find', { exact: true }), line.getByLabel('Replace by')];
  const said = () => line.getByRole('status').innerText();
  await sheet.enterDown('H4', ['birch lamp', 'BIRCH', '=UPPER("birch " & H4)', '1 birch']);
  await sheet.shows('H6', 'BIRCH BIRCH LAMP');
  await sheet.click('A3');

  await sheet.page.keyboard.press('Control+f');
  await sheet.page.keyboard.type('birch');
  for (const [place, a1] of [
    ['1 of 4', 'H4'],
    ['2 of 4', 'H5'],
    ['3 of 4', 'H6'],
  ] as const) {
    await sheet.page.keyboard.press('Enter');
    await expect.poll(selected).toBe(a1);
    await expect.poll(said).toBe(`${place}: ${a1}.`);
  }
  expect(await find.evaluate((field) => document.activeElement === field)).toBe(true);

  await by.fill('$& cedar');
  await line.getByRole('button', { name: 'Replace', exact: true }).click();
  await expect.poll(said).toContain('H6 was left as it is: it is what a formula answers.');
  await line.getByRole('button', { name: 'Replace all' }).click();
  await expect
    .poll(said)
    .toBe(
      'Replaced in 3 cells. Left as it is in 1 cell: what a formula answers. Ctrl+Z in the sheet takes that back.',
    );
  expect(await sheet.values('H4', 'H5', 'H7')).toEqual(['$& cedar lamp', '$& cedar', '1 $& cedar']);
  await by.press('Escape');
  await expect(line.isVisible()).resolves.toBe(false);
  await sheet.page.keyboard.press('Control+z');
  await expect.poll(() => sheet.values('H4', 'H5', 'H7')).toEqual(['birch lamp', 'BIRCH', '1 birch']);
});
