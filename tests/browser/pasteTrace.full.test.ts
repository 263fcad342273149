import { beforeEach, describe, expect, it } from 'vitest';
import { allInOneWorkbook } from './onePage';
import { lines, rowsOf } from './tableRows';
import type { Workbench } from './workbench';

let sheet: Workbench;
const take = (fresh: Workbench): void => {
  sheet = fresh;
};

/** The cell to the right of a label in column A. */
async function besideLabel(label: string): Promise<string> {
  const cells = Array.from({ length: 120 }, (_, i) => `A${i + 1}`);
  const row = (await sheet.texts(...cells)).indexOf(label) + 1;
  expect(row).toBeGreaterThan(0);
  return `B${row}`;
}

/**
 * A triangle that rises from 1 ms to 2 ms and falls until 3 ms, sampled every 10 µs. By similar triangles it stands
 * above a part p of its height for (1 - p) · 2 ms, told in µs.
 */
const STEP = 1e-5;
const triangle = (samples: number): string =>
  lines(
    Array.from({ length: samples }, (_, i) => {
      const ms = i / 100;
      return [(i * STEP).toFixed(5), Math.max(0, 1 - Math.abs(ms - 2)).toFixed(2)];
    }),
  );

describe('a recorded trace pasted over the demo one', () => {
  allInOneWorkbook(take, { height: 3900 });

  let samples: string;
  let trace: { head: number; last: number };
  beforeEach(async () => {
    if ((await sheet.sheets()).includes('Flash trace')) return;
    await sheet.insert('Flash trace');
    trace = await rowsOf(sheet, 'Trace');
    samples = await besideLabel('Samples');
    await sheet.shows(samples, trace.last - trace.head);
  });

  it('is counted to its last row, and one undo takes all of it back', async () => {
    const { head, last } = trace;
    const levels = (await rowsOf(sheet, 'Levels')).head;
    const column = ['A', 'B', 'C', 'D', 'E', 'F'];
    const edge = [last, last + 1].flatMap((row) => column.map((c) => `${c}${row}`));
    const before = await sheet.texts(...edge);
    const [half] = await sheet.values(`B${levels + 5}`);

    await sheet.paste(`A${head + 1}`, triangle(500));
    await sheet.shows(samples, 500);
    expect(await rowsOf(sheet, 'Trace')).toEqual({ head, last: head + 500 });
    await expect.poll(async () => (await sheet.values(`B${levels + 5}`))[0]).not.toBe(half);
    for (const [row, level] of [
      [1, 0.1],
      [5, 0.5],
      [9, 0.9],
    ] as const) {
      const expected = (1 - level) * 2000;
      const [value] = await sheet.values(`B${levels + row}`);
      expect(Math.abs(Number(value) / expected - 1)).toBeLessThan(0.01);
    }

    const end = head + 500;
    expect((await sheet.cell(`A${end}`)).text).toBe('0.004990 s');
    expect((await sheet.cell(`A${head + 1}`)).text).toBe('0.000000 s');
    await sheet.showsNear(`C${end}`, 4.99);
    expect((await sheet.cell(`F${end}`)).formula).toBe((await sheet.cell(`F${head + 1}`)).formula);

    await sheet.page.keyboard.press('Control+z');
    await sheet.shows(samples, last - head);
    expect(await rowsOf(sheet, 'Trace')).toEqual({ head, last });
    await expect.poll(() => sheet.texts(...edge)).toEqual(before);
    await sheet.shows(`B${levels + 5}`, half);

    await sheet.page.keyboard.press('Control+y');
    await sheet.shows(samples, 500);
    expect((await rowsOf(sheet, 'Trace')).last).toBe(end);
    await sheet.page.keyboard.press('Control+z');
    await sheet.shows(samples, last - head);
  });

  it('with fewer rows than the table leaves it as large as it is', async () => {
    const { head, last } = trace;
    await sheet.paste(`A${head + 1}`, triangle(60));
    await sheet.shows(`A${head + 60}`, 59 * STEP);
    expect(await rowsOf(sheet, 'Trace')).toEqual({ head, last });
    await sheet.shows(samples, last - head);
  });

  it('that does not lie within its columns does not make it grow', async () => {
    const { head, last } = await rowsOf(sheet, 'Levels');
    await sheet.paste(
      `F${last}`,
      lines([
        [1, 2],
        [3, 4],
      ]),
    );
    await sheet.shows(`G${last + 1}`, 4);
    expect(await rowsOf(sheet, 'Levels')).toEqual({ head, last });
  });
});
