import { expect, it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import { COLUMNS } from './lightsOnSet';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook(
  (fresh) => {
    sheet = fresh;
  },
  { height: 1900 },
);

const ROWS = [33, 34, 35, 36, 37, 38];
const row = (at: number) => sheet.texts(...COLUMNS.map((column) => `${column}${at}`));
const rows = () => Promise.all(ROWS.map(row));
const look = (a1: string) => sheet.page.evaluate((at) => window.sweeptable.look(at), a1);
const above = () =>
  sheet.texts(...[5, 6, 7, 8, 9, 10, 11, 12].flatMap((at) => ['A', 'B', 'C', 'D'].map((c) => `${c}${at}`)));

async function sort(by: string, order: string): Promise<void> {
  const { dialog } = sheet;
  await dialog.getByLabel('By').selectOption(by);
  await dialog.getByLabel('Order').selectOption(order);
  await dialog.getByRole('button', { name: 'Sort' }).click();
}

it('rows of a table are sorted with formulas, looks and chart, and one undo takes it back', async () => {
  await sheet.insert('Lights on set');
  await expect.poll(() => sheet.texts('O33')).toEqual([expect.stringMatching(/^\d.*%$/)]);
  const [before, answers] = [await rows(), await above()];
  const distance = await sheet.values(...ROWS.map((at) => `M${at}`));
  // the heads by how far they stand, the nearest first; the room stands nowhere and comes last
  const order = ROWS.map((_, i) => i).sort(
    (a, b) => Number(distance[a] ?? Infinity) - Number(distance[b] ?? Infinity),
  );
  expect(order).not.toEqual([0, 1, 2, 3, 4, 5]);
  const chart = sheet.page.locator('.charts figure').first().locator('tbody th');
  const drawn = await chart.allTextContents();
  const looks = await Promise.all(ROWS.map((at) => look(`D${at}`)));

  await sheet.page.getByRole('button', { name: 'Sort Lights…' }).click();
  await sort('Distance', 'Smallest first, A to Z');
  await expect.poll(() => sheet.notice.innerText()).toContain('Lights is sorted by Distance.');
  await expect.poll(rows).toEqual(order.map((i) => before[i]));
  expect(await above()).toEqual(answers);
  expect(await Promise.all(ROWS.map((at) => look(`D${at}`)))).toEqual(order.map((i) => looks[i]));
  if (drawn.length === ROWS.length)
    await expect.poll(() => chart.allTextContents()).toEqual(order.map((i) => drawn[i]));
  // Its list still says what may be typed.
  await sheet.enter('M34', '-3');
  await sheet.told('Metres from the front of the light to the subject, above 0 and up to 20.');
  await sheet.page.keyboard.press('Escape');

  await sheet.undo('A3');
  await expect.poll(rows).toEqual(before);
  expect(await above()).toEqual(answers);
});

it('refuses in words where an answer would change, by the key in a chosen cell', async () => {
  await sheet.enterDown('H4', ['3', '1', '2']);
  await sheet.enterDown('I4', ['=H4', '=I4+H5', '=I5+H6']);
  await sheet.shows('I6', 6);
  await sheet.click('H4');
  await sheet.page.keyboard.press('Shift+ArrowRight');
  await sheet.page.keyboard.press('Shift+ArrowDown');
  await sheet.page.keyboard.press('Shift+ArrowDown');
  await sheet.page.keyboard.press('Control+Alt+s');
  await sort('H', 'Smallest first, A to Z');
  await expect.poll(() => sheet.notice.innerText()).toContain('I5 reads another of these rows: I4');
  expect(await sheet.values('H4', 'H5', 'H6', 'I6')).toEqual([3, 1, 2, 6]);
});

it('tells which answers went by the order of the rows', async () => {
  await sheet.enterDown('H4', ['3', '1', '2']);
  await sheet.enterDown('J4', ['=INDEX(H4:H6,1)', '=SUM(H4:H6)']);
  await sheet.shows('J5', 6);
  await sheet.click('H4');
  await sheet.page.keyboard.press('Shift+ArrowDown');
  await sheet.page.keyboard.press('Shift+ArrowDown');
  await sheet.page.keyboard.press('Control+Alt+s');
  await sort('H', 'Smallest first, A to Z');
  await sheet.shows('J4', 1);
  await expect.poll(() => sheet.notice.innerText()).toContain('are others now: J4. Ctrl+Z');
  await sheet.page.keyboard.press('Control+z');
  await sheet.shows('J4', 3);
});
