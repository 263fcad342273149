import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';
import type { Workbench } from './workbench';

/** The charts of the sheet in view, in their order. */
export const charts = ({ page }: Workbench): Locator => page.locator('.charts figure');

export const chartCalled = (sheet: Workbench, title: string): Locator =>
  sheet.page.getByRole('figure', { name: `Chart: ${title}.` });

/** The numbers of a chart as those hear them who do not see it: a line an array. */
export const numbersOf = (chart: Locator): Promise<string[][]> =>
  chart
    .locator('tbody tr')
    .evaluateAll((lines) =>
      lines.map((line) => [...line.querySelectorAll('th,td')].map((cell) => cell.textContent ?? '')),
    );

/** Which of these cells have a chart over their middle. */
export const covered = (page: Page, cells: readonly string[]): Promise<string[]> =>
  page.evaluate(
    (all) =>
      all.filter((a1) => {
        const { x, y } = window.sweeptable.place(a1);
        return document.elementFromPoint(x, y)?.closest('.charts figure');
      }),
    cells,
  );

const beside = (letter: string, steps: number): string =>
  String.fromCodePoint((letter.codePointAt(0) ?? 0) + steps);

/** A chart covers all cells from one corner to the other, and none beside them. Their columns have one letter. */
export async function covers({ page }: Workbench, from: string, to: string): Promise<void> {
  const [, left = '', top = ''] = /^([B-Y])(\d+)$/.exec(from) ?? [];
  const [, right = '', bottom = ''] = /^([B-Y])(\d+)$/.exec(to) ?? [];
  const [above, below] = [Number(top) - 1, Number(bottom) + 1];
  const inside = [from, right + top, left + bottom, to];
  const outside = [
    `${beside(left, -1)}${top}`,
    `${left}${above}`,
    `${beside(right, 1)}${bottom}`,
    `${right}${below}`,
  ];
  await expect
    .poll(() => covered(page, [...inside, ...outside]), { message: `${from}:${to}` })
    .toEqual(inside);
}

/** Drags from a place within a chart, as far right and down as one cell is from another. */
export async function drag(
  sheet: Workbench,
  at: { x: number; y: number },
  from: string,
  to: string,
): Promise<void> {
  const [start, end] = await sheet.page.evaluate(
    (cells) => cells.map((a1) => window.sweeptable.place(a1)),
    [from, to],
  );
  if (!start || !end) throw new Error('There are no such cells.');
  const { mouse } = sheet.page;
  await mouse.move(at.x, at.y);
  await mouse.down();
  await mouse.move(at.x + (end.x - start.x) / 2, at.y + (end.y - start.y) / 2);
  await mouse.move(at.x + end.x - start.x, at.y + end.y - start.y);
  await mouse.up();
}

/** Where something is on the page. */
export async function boxOf(element: Locator) {
  const found = await element.boundingBox();
  if (!found) throw new Error('It is not in sight.');
  return found;
}

/** Where a chart is taken hold of to be moved, and where to be sized. */
export async function middleOf(chart: Locator) {
  const { x, y, width, height } = await boxOf(chart);
  return { x: x + width / 2, y: y + height / 2 };
}
export async function cornerOf(chart: Locator) {
  const { x, y, width, height } = await boxOf(chart);
  return { x: x + width - 4, y: y + height - 4 };
}

/** A chart's drawing, to see whether it is another. */
export const drawing = (chart: Locator): Promise<string> =>
  chart.locator('canvas').evaluate((canvas) => (canvas as HTMLCanvasElement).toDataURL());
