import { expect, it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import { COLUMNS } from './lightsOnSet';
import { sortDialog } from './sortDialog';
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

  await sheet.page.getByRole('button', { name: 'Add a row to Lights' }).hover();
  await sheet.page.getByRole('button', { name: 'Sort Lights…' }).click();
  await sortDialog(sheet, 'Distance', 'Smallest first, A to Z');
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
