import { Workbook } from '@cj-tech-master/excelts';
import { installChartSupport } from '@cj-tech-master/excelts/chart';
import type { Locator } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { readXlsx } from '../../src/xlsx/read';
import {
  boxOf, chartCalled, charts, cornerOf, covered, covers, drag, drawing, middleOf, numbersOf,
} from './chartsOnSheet'; // prettier-ignore
import { TALL } from './lightsOnSet';
import { eachItsWorkbook } from './onePage';
import { saved } from './openedFile';
import { axeFaults, LOOKS } from './paneChecks';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
}, TALL);
beforeAll(() => installChartSupport());

const TITLE = 'Share of the light at the subject';
const chart = () => chartCalled(sheet, TITLE);

/** Opens a file from elsewhere with a line over names, from B2 to H14. */
async function openLine(rows: readonly (readonly (string | number | null)[])[]): Promise<Locator> {
  const book = new Workbook();
  const made = book.addWorksheet('Brought in');
  made.getColumn(10).width = 12;
  for (const [i, [name, value]] of rows.entries()) {
    made.getCell(i + 1, 10).value = name ?? null;
    made.getCell(i + 1, 11).value = value ?? null;
  }
  const column = (letter: string): string => `'Brought in'!$${letter}$1:$${letter}$${rows.length}`;
  const series = [{ name: 'Reading', categories: column('J'), values: column('K') }];
  made.addLineChart({ title: 'Reading', series }, 'B2:H14');
  const [chooser] = await Promise.all([sheet.page.waitForEvent('filechooser'), sheet.command('Open .xlsx')]);
  const buffer = Buffer.from(await book.xlsx.writeBuffer());
  await chooser.setFiles({ name: 'in.xlsx', mimeType: '', buffer });
  await sheet.dialog.getByRole('button', { name: 'Open', exact: true }).click();
  await expect.poll(() => sheet.notice.innerText()).toMatch(/is open/);
  return chartCalled(sheet, 'Reading');
}

/** Where words stand along the axis below a chart, from left to right, in pixels. */
const wordsBelow = (line: Locator) =>
  line.locator('canvas').evaluate((element) => {
    const canvas = element as HTMLCanvasElement;
    const { width, height } = canvas;
    const [top, rows] = [height - 24 * devicePixelRatio, 18 * devicePixelRatio];
    const copy = new OffscreenCanvas(width, rows).getContext('2d', { willReadFrequently: true });
    copy?.drawImage(canvas, 0, -top);
    const data = copy?.getImageData(0, 0, width, rows).data ?? [];
    const found: [number, number][] = [];
    for (let x = 0; x < width; x++) {
      if (!Array.from({ length: rows }, (_, y) => data[(y * width + x) * 4 + 3]).some(Boolean)) continue;
      const last = found.at(-1);
      // Within a name lies a space, between two names more.
      if (last && x - last[1] < 7 * devicePixelRatio) last[1] = x;
      else found.push([x, x]);
    }
    return found.map(([from, to]) => [from / devicePixelRatio, to / devicePixelRatio] as const);
  });

describe('a chart on its sheet', () => {
  it('moves with rows and columns that come in before it, grows by those within, and undo takes that back', async () => {
    await sheet.insert('Lights on set');
    await sheet.rowMenu(4, 'rows above');
    await covers(sheet, 'I5', 'P15');
    await sheet.rowMenu(8, 'rows above');
    await covers(sheet, 'I5', 'P16');
    await sheet.undo('A3');
    await sheet.undo('A3');
    await covers(sheet, 'I4', 'P14');
    await sheet.sheet('Pops build');
    await expect.poll(() => charts(sheet).getByText(TITLE).count()).toBe(0);
    await sheet.sheet('Lights on set');
    await covers(sheet, 'I4', 'P14');
  });

  it.each([
    ['out', 120],
    ['in', -120],
  ])('is as sharp as the cells when these are zoomed %s', async (_way, turn) => {
    await sheet.insert('Lights on set');
    const before = await drawing(chart());
    const grid = await boxOf(sheet.page.locator('canvas[id^="univer-sheet-main-canvas"]'));
    const whole = await boxOf(chart());
    await sheet.page.mouse.move(400, 500);
    await sheet.page.keyboard.down('Control');
    for (let i = 0; i < 3; i++) await sheet.page.mouse.wheel(0, turn);
    await sheet.page.keyboard.up('Control');
    const zoom = async () =>
      Number.parseInt(
        await sheet.page
          .locator('#grid')
          .getByText(/^\d+%$/)
          .innerText(),
        10,
      ) / 100;
    await expect.poll(zoom).not.toBe(1);
    // All of the sheet, its headings too, grows from the corner of the grid.
    const wanted = async () => {
      const factor = await zoom();
      return [
        (whole.x - grid.x) * factor,
        (whole.y - grid.y) * factor,
        whole.width * factor,
        whole.height * factor,
      ];
    };
    const found = async () => {
      const { x, y, width, height } = await boxOf(chart());
      return [x - grid.x, y - grid.y, width, height];
    };
    const furthest = async () => {
      const [all, now] = await Promise.all([wanted(), found()]);
      return Math.max(...all.map((part, i) => Math.abs(part - (now[i] ?? 0))));
    };
    await expect.poll(furthest).toBeLessThan(2);
    expect(await drawing(chart())).not.toBe(before);
    // A pixel of its own for each of the page.
    const ratio = await chart().locator('canvas').evaluate((canvas) =>
      (canvas as HTMLCanvasElement).width / canvas.getBoundingClientRect().width / devicePixelRatio); // prettier-ignore
    expect(ratio).toBeCloseTo(1, 1);
  });

  it('follows columns that come in and go again', async () => {
    await sheet.insert('Lights on set');
    const { x, y } = await sheet.page.evaluate(() => window.sweeptable.place('B1'));
    // Within the strip of letters above the first row.
    const letters = y - (await sheet.page.evaluate(() => window.sweeptable.place('B2').y - window.sweeptable.place('B1').y)); // prettier-ignore
    await sheet.page.mouse.click(x, letters);
    await sheet.page.mouse.click(x, letters, { button: 'right' });
    const entry = sheet.page.getByText('columns left').first();
    await entry.locator('xpath=ancestor::*[contains(@class, "univer-cursor-pointer")][1]').click({ position: { x: 40, y: 14 } }); // prettier-ignore
    // Its last column is out of sight now.
    const cells = ['I4', 'J4', 'P4', 'I14', 'J14', 'P14', 'J15'];
    await expect.poll(() => covered(sheet.page, cells)).toEqual(['J4', 'P4', 'J14', 'P14']);
    await sheet.undo('A3');
    await covers(sheet, 'I4', 'P14');
  });

  it('goes with rows that are drawn elsewhere', async () => {
    await sheet.insert('Lights on set');
    const [from, to] = await sheet.page.evaluate(() => [window.sweeptable.place('A3').y, window.sweeptable.place('A20').y]); // prettier-ignore
    if (from === undefined || to === undefined) throw new Error('There are no such rows.');
    const { mouse } = sheet.page;
    await mouse.click(20, from);
    await mouse.move(20, from);
    await mouse.down();
    await mouse.move(20, (from + to) / 2);
    await mouse.move(20, to - 3);
    await mouse.up();
    await covers(sheet, 'I3', 'P13');
    await sheet.undo('A3');
    await covers(sheet, 'I4', 'P14');
  });

  it('takes the colours of the page, light, dark and forced', async () => {
    await sheet.insert('Lights on set');
    const seen = [await drawing(chart())];
    for (const look of ['dark', 'forced'] as const) {
      await sheet.page.emulateMedia(LOOKS[look]);
      await expect.poll(() => drawing(chart())).not.toBe(seen.at(-1));
      expect(await axeFaults(sheet.page, '.charts'), look).toEqual([]);
      seen.push(await drawing(chart()));
    }
    await sheet.page.emulateMedia({ colorScheme: null, forcedColors: null });
    await expect.poll(() => drawing(chart())).toBe(seen[0]);
  });

  it('says so where there are no numbers yet', async () => {
    await sheet.insert('Lights on set', { filled: false });
    await chart().getByText('No numbers yet').waitFor();
    expect(await chart().locator('canvas').count()).toBe(0);
  });
});

describe('a line over names', () => {
  it.each([
    ['whole, the last one too', ['Alder 600', 'Birch 1200', 'Hazel 400']],
    [
      'apart, though some are left out',
      ['Alder', 'Birch', 'Hazel', 'Rowan', 'Elder', 'Maple', 'Beech'].map((name) => `${name} with a grid`),
    ],
  ])('writes them %s', async (_what, names) => {
    const line = await openLine(names.map((name, i) => [name, i + 8]));
    await expect.poll(async () => (await wordsBelow(line)).length).toBeGreaterThan(1);
    const words = await wordsBelow(line);
    const width = await line.locator('canvas').evaluate((canvas) => canvas.clientWidth);
    expect(words.at(-1)?.[1]).toBeLessThan(width - 1);
    // Sixteen letters of this size, as wide as letters are.
    for (const [from, to] of words) expect(to - from).toBeLessThan(16 * 8);
  });

  it('says that its cells are gone where they are, and draws them again when they are back', async () => {
    const line = await openLine([
      ['Alder', 8],
      ['Birch', 11],
    ]);
    await expect.poll(() => numbersOf(line)).toEqual([['Alder', '8'], ['Birch', '11']]); // prettier-ignore
    await sheet.rowMenu(1, 'Delete these rows');
    await expect.poll(() => numbersOf(line)).toEqual([['Birch', '11']]);
    await sheet.rowMenu(1, 'Delete these rows');
    await line.getByText('The cells that this chart drew are gone.').waitFor();
    await sheet.undo('A3');
    await sheet.undo('A3');
    await expect.poll(() => numbersOf(line)).toEqual([['Alder', '8'], ['Birch', '11']]); // prettier-ignore
  });
});

/** The places of the charts of the second sheet in a file that is saved now. */
async function placesInFile() {
  const { book } = await readXlsx(await saved(sheet));
  return book.sheets[1]?.charts.map(({ place }) => place);
}

const press = (...keys: string[]) =>
  keys.reduce((before, key) => before.then(() => sheet.page.keyboard.press(key)), Promise.resolve());

it('a chart is moved and sized by the pointer, to whole cells, and leaves the keyboard to the cells', async () => {
  await sheet.insert('Lights on set');
  await sheet.click('B5');
  await drag(sheet, await middleOf(chart()), 'I4', 'H7');
  // It is as high as before, and the headings in row 16 take two lines.
  await covers(sheet, 'H7', 'O16');
  await drag(sheet, await cornerOf(chart()), 'O16', 'N14');
  await covers(sheet, 'H7', 'N14');
  await press('3', '2', 'Enter');
  await sheet.shows('B5', 32);
  await press('Control+z', 'Control+z');
  await covers(sheet, 'H7', 'O16');
  await press('Control+z');
  await covers(sheet, 'I4', 'P14');
  await press('Control+y');
  await covers(sheet, 'H7', 'O16');
  expect(await placesInFile()).toEqual([{ row: 6, column: 7, rows: 10, columns: 8 }]);
  await sheet.page.waitForTimeout(700);
  await sheet.reload();
  await covers(sheet, 'H7', 'O16');
  await expect.poll(() => chart().locator('canvas').count()).toBe(1);
});
