import { expect, test } from 'vitest';
import type { BookCell, BookSheet } from '../../src/book/book';
import { withValues } from '../../src/book/cells';
import { columnPixels } from '../../src/book/widthsAndHeights';
import { columnsOfCard } from '../../src/pane/valuesCopy';
import { phoneCard } from '../../src/sheets/phoneCard';
import { calculated, templateOf, typedOver } from './support';

/** Columns A to H of the card are printed. */
const PRINTED = 8;

async function demo(): Promise<BookSheet> {
  const { plan, values } = await calculated(templateOf('set-card'));
  return withValues(plan, values);
}

/** What each line says, from left to right. */
function lines({ cells }: BookSheet): string[][] {
  const said: string[][] = [];
  for (const { row, value } of cells) if (value !== null) (said[row] ??= []).push(String(value));
  return said.filter((line) => line.length > 0);
}

const card = phoneCard(await demo(), PRINTED, 'Set card values');

test('the card goes onto a phone: 14 pixels and more, and no scrolling sideways', () => {
  // a phone 390 pixels wide; the numbers of the rows take 46 of them in the workbench
  const widths = Object.values(card.widths).map(columnPixels);
  expect(widths.reduce((sum, width) => sum + width, 0)).toBeLessThanOrEqual(390 - 46);
  expect(Math.max(...card.cells.map(({ column }) => column))).toBe(widths.length - 1);
  // a point is 96/72 of a pixel
  for (const { style, value } of card.cells)
    expect(((style?.size ?? 0) * 96) / 72, String(value)).toBeGreaterThanOrEqual(14);
});

test('no word is wider than its cell, and each row is as high as its lines', () => {
  const span = ({ row, column }: BookCell): number =>
    card.merges.find((area) => area.row === row && area.column === column)?.columns ?? 1;
  for (const cell of card.cells) {
    const { value, column, style, row } = cell;
    if (typeof value !== 'string') continue;
    const width = Array.from({ length: span(cell) }, (_, i) => columnPixels(card.widths[column + i] ?? 0)).reduce((sum, one) => sum + one, 0); // prettier-ignore
    // a bold letter of Arial is 0.6 of its size wide on the mean (its metrics, from memory)
    const letters = width / ((((style?.size ?? 0) * 96) / 72) * 0.6);
    for (const word of value.split(' ')) expect(word.length, word).toBeLessThanOrEqual(letters);
    expect(card.heights[row] ?? 15, value).toBeGreaterThanOrEqual(Math.ceil(value.length / letters - 1) * (style?.size ?? 0)); // prettier-ignore
  }
});

test('it is grey on black, also where it says nothing and below its end', () => {
  for (const { style } of card.cells) expect([style?.fill, style?.ink]).toEqual(['#000000', '#c8c8c8']);
  const last = lines(card).length;
  expect(Math.max(...card.cells.map(({ row }) => row))).toBeGreaterThan(last + 50);
  expect([card.gridlines, card.tables, card.cells.filter(({ formula }) => formula)]).toEqual([false, [], []]);
});

test('it says what the card says: camera, pops, rings, and each light with its dial', () => {
  const said = lines(card);
  const from = (label: string) => said[said.findIndex(([first]) => first === label)];
  expect(from('Lens setting')).toEqual(['Lens setting', 'f/45']);
  expect(from('Pops')).toEqual(['Pops', '3']);
  expect(from('All pops')).toEqual(['All pops', 'f/45 +0.9']);
  expect(from('Ready?')).toEqual(['Ready?', 'yes']);
  expect(from('25 to a line')).toEqual(['25 to a line', 'ooo']);
  const rim = said.findIndex(([first]) => first === 'rim: Hazel 400');
  expect(said.slice(rim, rim + 3)).toEqual([
    ['rim: Hazel 400'],
    ['47 %', '+0.9', '3', 'f/16 +0.2'],
    ['straw', '1.6 m'],
  ]);
  const heading = said.findIndex(([first]) => first === 'Light');
  expect(said.slice(heading, heading + 3)).toEqual([
    ['Light'],
    ['Set to', 'Turn', 'Pops', 'Reads'],
    ['Gel', 'Height'],
  ]);
  // five lights, the other seven rows are empty
  expect(said.slice(heading + 3)).toHaveLength(5 * 3);
});

test('it says that it is a copy, and is not taken for a card', () => {
  const [title, second, third] = lines(card);
  expect(title).toEqual(['What do I set, and what do I tick?']);
  expect(second?.[0]).toMatch(/^The values as they were/);
  expect(third?.[0]).toMatch(/after # switch off/);
  const starts = card.cells.find(({ row, column }) => row === 1 && column === 0)?.value;
  expect([columnsOfCard(starts), columnsOfCard(third?.[0])]).toEqual([undefined, PRINTED]);
});

test('what stands side by side is not mixed, and 99 rings have their lines', async () => {
  const said = lines(card).map(([first]) => first);
  expect(said.indexOf('Lost in filters')).toBeLessThan(said.indexOf('In all'));
  const rows = [['Pops', '99']];
  const { plan, values } = await calculated(typedOver(templateOf('set-card'), {}, { Shot: rows }));
  const full = lines(phoneCard(withValues(plan, values), PRINTED, 'x'));
  const at = full.findIndex(([first]) => first === '25 to a line');
  expect(full.slice(at + 1, at + 5).map((line) => line.join('').replaceAll(' ', '').length)).toEqual([
    25, 25, 25, 24,
  ]);
});

test('rows that came in above, words of the person and errors are on it', async () => {
  const sheet = await demo();
  const down = (row: number): number => (row >= 9 ? row + 2 : row);
  const moved: BookSheet = {
    ...sheet,
    cells: [
      ...sheet.cells.map((cell) => ({ ...cell, row: down(cell.row) })),
      { row: 10, column: 0, value: 'mind the bowl' },
    ].map((cell) => (cell.value === '+0.9' ? { ...cell, value: { error: '#N/A' as const } } : cell)),
    tables: sheet.tables.map((table) => ({ ...table, area: { ...table.area, row: down(table.area.row) } })),
  };
  const said = lines(phoneCard(moved, PRINTED, 'x'));
  expect(said).toContainEqual(['mind the bowl']);
  expect(said).toContainEqual(['All pops', 'f/45 +0.9']);
  expect(said).toContainEqual(['47 %', '#N/A', '3', 'f/16 +0.2']);
  const withoutTable = lines(phoneCard({ ...sheet, tables: [] }, PRINTED, 'x'));
  expect(withoutTable.flat().join(' ')).toContain('47 % +0.9 3 f/16 +0.2');
});
