import { beforeEach, describe, expect, it } from 'vitest';
import { COLUMNS, lightsOnSet, TALL } from './lightsOnSet';
import { allInOneWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
const take = (fresh: Workbench): void => {
  sheet = fresh;
};

/** The first and the last row of a table, heading included. */
async function rowsOf(table: string): Promise<{ head: number; last: number }> {
  const area = (await sheet.tables())[table] ?? '';
  const [head, last] = [...area.matchAll(/\d+/g)].map(Number);
  return { head: Number(head), last: Number(last) };
}
const lastRowOf = async (table: string) => (await rowsOf(table)).last;

/** The cell to the right of a label in column A. */
async function besideLabel(label: string): Promise<string> {
  const cells = Array.from({ length: 120 }, (_, i) => `A${i + 1}`);
  const row = (await sheet.texts(...cells)).indexOf(label) + 1;
  expect(row).toBeGreaterThan(0);
  return `B${row}`;
}

const lines = (rows: readonly (readonly (number | string)[])[]): string =>
  rows.map((cells) => cells.join('\t')).join('\n');

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
    trace = await rowsOf('Trace');
    samples = await besideLabel('Samples');
    await sheet.shows(samples, trace.last - trace.head);
  });

  it('is counted to its last row, and one undo takes all of it back', async () => {
    const { head, last } = trace;
    const levels = (await rowsOf('Levels')).head;
    const column = ['A', 'B', 'C', 'D', 'E', 'F'];
    const edge = [last, last + 1].flatMap((row) => column.map((c) => `${c}${row}`));
    const before = await sheet.texts(...edge);
    const [half] = await sheet.values(`B${levels + 5}`);

    await sheet.paste(`A${head + 1}`, triangle(500));
    await sheet.shows(samples, 500);
    expect(await rowsOf('Trace')).toEqual({ head, last: head + 500 });
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
    expect(await rowsOf('Trace')).toEqual({ head, last });
    await expect.poll(() => sheet.texts(...edge)).toEqual(before);
    await sheet.shows(`B${levels + 5}`, half);

    await sheet.page.keyboard.press('Control+y');
    await sheet.shows(samples, 500);
    expect(await lastRowOf('Trace')).toBe(end);
    await sheet.page.keyboard.press('Control+z');
    await sheet.shows(samples, last - head);
  });

  it('with fewer rows than the table leaves it as large as it is', async () => {
    const { head, last } = trace;
    await sheet.paste(`A${head + 1}`, triangle(60));
    await sheet.shows(`A${head + 60}`, 59 * STEP);
    expect(await rowsOf('Trace')).toEqual({ head, last });
    await sheet.shows(samples, last - head);
  });

  it('that does not lie within its columns does not make it grow', async () => {
    const { head, last } = await rowsOf('Levels');
    await sheet.paste(
      `F${last}`,
      lines([
        [1, 2],
        [3, 4],
      ]),
    );
    await sheet.shows(`G${last + 1}`, 4);
    expect(await rowsOf('Levels')).toEqual({ head, last });
  });
});

describe('rows pasted right below a table', () => {
  allInOneWorkbook(take, TALL);
  const { row } = lightsOnSet(() => sheet);
  /** A light that needs no head, one metre away. */
  const lamp = (name: string, reading: number) => [
    name,
    'ambient',
    '',
    reading,
    '',
    'yes',
    '',
    '',
    '',
    '',
    '',
    '',
    1,
  ];

  it('belong to it, with formulas, formats and input rules, until they are taken back', async () => {
    await sheet.paste('A39', lines([lamp('Lamp', 16), lamp('Window', 22)]));
    await expect.poll(() => lastRowOf('Lights')).toBe(40);
    // f/16 is 2^4, and f/22 stands for 2^4.5; light goes with the square.
    await sheet.showsNear('Q39', 2 ** 4);
    await sheet.showsNear('X40', 2 ** 9);
    expect(await sheet.texts('M39', 'D40')).toEqual(['1.00 m', 'f/22']);
    await expect.poll(async () => (await sheet.cell('O40')).text).toMatch(/%$/);
    await sheet.enter('M40', '-3');
    await sheet.told('Metres from the front of the light to the subject, above 0 and up to 20.');
    await sheet.shows('M40', 1);

    await sheet.undo('A3');
    await expect.poll(() => lastRowOf('Lights')).toBe(38);
    expect(await row(39)).toEqual(COLUMNS.map(() => ''));
    expect(await row(40)).toEqual(COLUMNS.map(() => ''));
    await sheet.enter('M40', '-3');
    await sheet.shows('M40', -3);
    await sheet.undo('A3');
    await sheet.shows('M40', null);
  });
});
