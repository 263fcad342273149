import { expect, it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

const ROWS = 160;
const COLUMNS = 26;

/** What of the sheet in view is cut off, by what the page itself draws its letters with, whichever typeface it has for them. */
const cut = (): Promise<string[]> =>
  sheet.page.evaluate(
    ([most, columns]) => {
      const rows = Math.min(most, window.sweeptable.extent().rows);
      const context = document.createElement('canvas').getContext('2d');
      if (!context) return ['nothing can be measured'];
      const letters = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'].slice(0, columns);
      const found: string[] = [];
      for (let row = 1; row <= rows; row++)
        for (const letter of letters) {
          const a1 = `${letter}${row}`;
          const { text, value } = window.sweeptable.cell(a1);
          if (text === '') continue;
          const { width, height, font, wraps } = window.sweeptable.room(a1);
          context.font = font;
          const widthOf = (words: string): number => context.measureText(words).width;
          const { fontBoundingBoxAscent: up, fontBoundingBoxDescent: down } = context.measureText(text);
          const widest = wraps ? Math.max(...text.split(/\s/).map(widthOf)) : widthOf(text);
          // words go on over empty cells
          const goesOn =
            !wraps &&
            typeof value === 'string' &&
            window.sweeptable.cell(a1.replace(letter, String.fromCharCode(letter.charCodeAt(0) + 1))).text ===
              '';
          // a plain number is rounded to what has room
          const isRounded = typeof value === 'number' && /^-?[0-9.]+$/.test(text);
          if (widest > width && !goesOn && !isRounded)
            found.push(`${a1} “${text}” is ${widest} wide, not ${width}`);
          let [lines, line] = [1, ''];
          for (const word of wraps ? text.split(' ') : []) {
            const longer = line === '' ? word : `${line} ${word}`;
            if (line !== '' && widthOf(longer) > width - 4) [lines, line] = [lines + 1, word];
            else line = longer;
          }
          if (lines * (up + down) > height + 1)
            found.push(`${a1} “${text}” is ${lines * (up + down)} high, not ${height}`);
        }
      return found;
    },
    [ROWS, COLUMNS] as const,
  );

it('nothing is cut off on the first sheet', async () => {
  expect(await cut()).toEqual([]);
});

it.each(['Lights on set', 'Freeze check', 'Flash trace', 'Depth options', 'Proof'])(
  'nothing is cut off on %s',
  async (name) => {
    const button = name === 'Proof' ? 'Insert' : 'Insert with the demo job';
    await sheet.pane.getByRole('button', { name: new RegExp(`^${button}\\W+${name}$`) }).click();
    await expect.poll(() => sheet.sheets()).toContain(name);
    await sheet.page.evaluate(() => window.sweeptable.calculated());
    expect(await cut()).toEqual([]);
  },
);
