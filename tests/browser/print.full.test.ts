import { expect, it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
// tall enough to have the chart in sight
eachItsWorkbook(
  (fresh) => {
    sheet = fresh;
  },
  { height: 2600 },
);

const paper = () => sheet.page.locator('.paper');
const lay = () => sheet.page.evaluate(() => dispatchEvent(new Event('beforeprint')));
const takeAway = () => sheet.page.evaluate(() => dispatchEvent(new Event('afterprint')));

it('prints words of an own sheet as far as the screen shows them', async () => {
  await sheet.page.getByRole('button', { name: 'Add a sheet' }).click();
  await expect.poll(() => sheet.page.evaluate(() => window.sweeptable.inView())).toBe('Own sheet 1');
  const alone =
    'words that run on over the empty cells beside them, further than the last column that holds something';
  const long = 'words that are longer than their own cell is wide';
  await sheet.enter('A1', alone);
  await sheet.enter('A2', long);
  await sheet.enter('B2', 'beside');
  await lay();
  const ends = (words: string) =>
    paper()
      .locator('.cell', { hasText: words })
      .evaluate((cell) => {
        const page = cell.closest('.charts');
        const letters = cell.firstElementChild;
        if (!page || !letters) throw new Error('The cell is on no page.');
        return {
          letters: letters.getBoundingClientRect().right,
          page: page.getBoundingClientRect().right,
          cell: cell.getBoundingClientRect().right,
          cut: getComputedStyle(cell).clipPath,
        };
      });
  const run = await ends(alone);
  expect(run.letters).toBeLessThan(run.page);
  const stopped = await ends(long);
  expect(stopped.letters).toBeGreaterThan(stopped.cell);
  // at the edge of its own cell, as the next one is filled
  expect(stopped.cut.split(' ')[1]).toMatch(/^-?0px$/);
  await takeAway();
});

it('prints the sign of numbers that just fit their cells', async () => {
  // its columns are narrow for many of its numbers
  const calculated = sheet.page.evaluate(() => window.sweeptable.calculated());
  await sheet.pane.getByRole('button', { name: /^Insert\W+Proof$/ }).click();
  await calculated;
  await lay();
  const free = await paper()
    .locator('.cell')
    .evaluateAll((cells) =>
      cells.flatMap((cell) => {
        const letters = cell.firstElementChild;
        if (!letters || !/^-\d+\.\d+$/.test(letters.textContent)) return [];
        return [letters.getBoundingClientRect().left - cell.getBoundingClientRect().left];
      }),
    );
  expect(free.length).toBeGreaterThan(0);
  expect(Math.min(...free)).toBeGreaterThanOrEqual(0);
  await takeAway();
});

it('prints a chart that was moved over the edge of what prints whole, on a page of its own', async () => {
  const { page } = sheet;
  await lay();
  const before = await paper().locator('section').count();
  await takeAway();
  const figure = page.locator('#grid figure').first();
  const from = await figure.boundingBox();
  if (!from) throw new Error('There is no chart in sight.');
  await page.mouse.move(from.x + 60, from.y + 12);
  await page.mouse.down();
  await page.mouse.move(from.x + 700, from.y - 100, { steps: 6 });
  await page.mouse.up();
  await expect.poll(async () => (await figure.boundingBox())?.x).toBeGreaterThan(from.x + 300);
  await lay();
  const pages = paper().locator('section');
  expect(await pages.count()).toBe(before + 1);
  const [chart, room] = [
    await pages.last().locator('figure').boundingBox(),
    await pages.last().locator('.charts').boundingBox(),
  ];
  if (!chart || !room) throw new Error('The chart is on no page.');
  expect(chart.width).toBeGreaterThan(300);
  expect(chart.x + chart.width - room.x - room.width).toBeLessThan(1);
  await takeAway();
});

it('prints the colour of a warning under all of its words', async () => {
  await sheet.insert('Depth options');
  const told = /^! the least blur/;
  await expect
    .poll(async () => {
      await lay();
      const count = await paper().locator('.cell', { hasText: told }).count();
      if (count === 0) await takeAway();
      return count;
    })
    .toBe(1);
  const { letters, colour, under } = await paper()
    .locator('.cell', { hasText: told })
    .evaluate((cell) => {
      const background = getComputedStyle(cell).backgroundColor;
      // what is laid later would lie over the words
      const before: Element[] = [];
      for (let one = cell.previousElementSibling; one; one = one.previousElementSibling) before.push(one);
      const { top } = cell.getBoundingClientRect();
      const inRow = before.filter(
        (one) =>
          one.getBoundingClientRect().top === top && getComputedStyle(one).backgroundColor === background,
      );
      return {
        letters: cell.firstElementChild?.getBoundingClientRect().right ?? Infinity,
        colour: background,
        under: Math.max(...inRow.map((one) => one.getBoundingClientRect().right)),
      };
    });
  expect(colour).not.toBe('rgba(0, 0, 0, 0)');
  expect(under).toBeGreaterThan(letters);
  await takeAway();
});

it('heads the pages by the name that the tab has now', async () => {
  const { page } = sheet;
  await page.locator('[data-u-comp="slide-tab-item"]').first().dblclick();
  await page.keyboard.press('Control+A');
  await page.keyboard.type('Vase & plinth');
  await page.keyboard.press('Enter');
  await expect.poll(() => page.evaluate(() => window.sweeptable.inView())).toBe('Vase & plinth');
  await lay();
  const heads = await paper().locator('section > p > span:first-child').allTextContents();
  expect(new Set(heads)).toEqual(new Set(['Vase & plinth']));
  await takeAway();
});
