import { expect, it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

/**
 * What of the sheet in view is cut off in its first columns, by what the page itself draws its letters with, whichever typeface
 * it has for them.
 */
const cut = (most = 52): Promise<string[]> =>
  sheet.page.evaluate((looked) => {
    /** Left and right of a text in its cell. */
    const edge = 2;
    const { rows, columns: all } = window.sweeptable.extent();
    const columns = Math.min(all, looked);
    const context = document.createElement('canvas').getContext('2d');
    if (!context) return ['nothing can be measured'];
    const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';
    const name = (column: number): string =>
      column < 26 ? letters.charAt(column) : `A${letters.charAt(column - 26)}`;
    const texts = (row: number): string[] =>
      Array.from({ length: columns }, (_, column) => window.sweeptable.cell(name(column) + row).text);
    const found: string[] = [];
    for (let row = 1; row <= rows; row++) {
      const line = texts(row);
      for (const [column, text] of line.entries()) {
        if (text === '') continue;
        const a1 = name(column) + row;
        const { width, height, font, wraps, isAtRight } = window.sweeptable.room(a1);
        const { value } = window.sweeptable.cell(a1);
        context.font = font;
        const widthOf = (words: string): number => context.measureText(words).width;
        const widest = 2 * edge + (wraps ? Math.max(...text.split(/\s/).map(widthOf)) : widthOf(text));
        let room = width;
        // words run on over empty cells, as far as these go
        const way = isAtRight ? -1 : 1;
        if (!wraps && typeof value === 'string')
          for (let i = column + way; line[i] === '' && room < widest; i += way)
            room += window.sweeptable.room(name(i) + row).width;
        // a plain number is rounded to what has room
        const isRounded = typeof value === 'number' && /^-?[0-9.]+$/.test(text);
        if (widest > room && !isRounded) found.push(`${a1} “${text}” is ${widest} wide, not ${room}`);
        const { fontBoundingBoxAscent: up, fontBoundingBoxDescent: down } = context.measureText(text);
        let [lines, words] = [1, ''];
        for (const word of wraps ? text.split(' ') : []) {
          const longer = words === '' ? word : `${words} ${word}`;
          if (words !== '' && widthOf(longer) > width - 2 * edge) [lines, words] = [lines + 1, word];
          else words = longer;
        }
        if (lines * (up + down) > height + 1)
          found.push(`${a1} “${text}” is ${lines * (up + down)} high, not ${height}`);
      }
    }
    return found;
  }, most);

it('nothing is cut off on the first sheet', async () => {
  expect(await cut()).toEqual([]);
});

it.each([
  // right of what they print, these join all that a row says in one cell, for look-ups to find
  ['Heads', 15],
  ['Pops plan', 12],
  ['Lights on set', undefined],
  ['Freeze check', undefined],
  ['Flash trace', undefined],
  ['Depth options', undefined],
  ['Proof', undefined],
] as const)('nothing is cut off on %s', async (name, columns) => {
  const button = name === 'Proof' ? 'Insert' : 'Insert with the demo job';
  const calculated = sheet.page.evaluate(() => window.sweeptable.calculated());
  await sheet.pane.getByRole('button', { name: new RegExp(`^${button}\\W+${name}$`) }).click();
  await calculated;
  expect(await sheet.sheets()).toContain(name);
  expect(await cut(columns)).toEqual([]);
});
