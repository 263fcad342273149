import { describe, expect, test } from 'vitest';
import { widthOfColumns } from '../../src/book/widthsAndHeights';
import { PAGE } from '../../src/book/printedPages';
import { layout } from '../../src/sheets/layout';
import { planAlone } from '../../src/sheets/makePlan';
import type { TemplateTable, TemplateValue } from '../../src/sheets/template';
import { calculated, templateOf, typedOver } from './support';
import { together } from './together';

const card = templateOf('set-card');
const plan = templateOf('pops-plan');
const lights = layout(plan).tables.get('Plan') as TemplateTable;
const TYPED = lights.columns.filter(({ formula }) => formula === undefined).map(({ id }) => id);

type Light = Readonly<Record<string, TemplateValue>>;
const head = (name: string, part: string, power: string, reading: number, more: Light = {}): Light => ({
  Head: name, Part: part, Power: power, Reading: reading, Tenths: 0, 'At the subject': 'yes',
  Most: 800, Least: 25, Step: '0.1', Scale: 'energy', Recycle: 1, ...more,
}); // prettier-ignore

/** The card beside a plan of such lights, for f/45 without any loss. */
async function beside(rows: readonly Light[]) {
  const form = { focal: null, draw: null, filter: null, gap: null };
  const template = typedOver(plan, form, { Plan: rows.map((row) => TYPED.map((id) => row[id] ?? null)) });
  const book = await together([{ template }, { template: card }]);
  const { cells } = layout(card);
  return {
    ...book,
    cell: (id: string) => {
      const place = cells.get(id)?.place;
      if (!place) throw new Error(`There is no cell ${id}.`);
      return book.values(1)[place.row]?.[place.column] ?? null;
    },
  };
}

describe('beside Pops plan', () => {
  // 14 pops of 2^7 and one of 2^8 are 2^11 (see Pops plan)
  const rows = [head('A', 'key', '800', 11), head('B', 'accent', '25', 16, { 'Own target': 16 })];
  test('says of each light what the plan says', async () => {
    const book = await beside(rows);
    for (const [column, theirs] of [['Light', 'Light'], ['Set to', 'Set to'], ['Turn', 'Turn by'], ['Pops', 'Pops'], ['Reads', 'Pop reads']] as const)
      expect(book.column('Card', column), column).toEqual(book.column('Dial', theirs)); // prettier-ignore
    expect(book.column('Card', 'Light').slice(0, 3)).toEqual(['key: A', 'accent: B', '']);
    expect(book.column('Card', 'Set to').slice(0, 3)).toEqual(['800 Ws', '25 Ws', '']);
    expect(book.errors()).toEqual([]);
    book.dispose();
  });
  test('has a box a pop, in fives, and a mark where lights go off', async () => {
    const book = await beside(rows);
    expect(['boxesA', 'boxesB', 'boxesC', 'boxesD'].map((id) => String(book.cell(id)).trim())).toEqual([
      '#oooo ooooo oooo', '', '', '',
    ]); // prettier-ignore
    book.dispose();
  });
  test('says what the meter must read after one pop, and after all', async () => {
    const book = await beside(rows);
    // 2^7 + 2^8 = 2^8.585; 2^11
    expect([book.cell('one'), book.cell('adding')]).toEqual(['f/16 +0.6', 'f/45']);
    expect([book.cell('pops'), book.cell('lensSetting'), book.cell('open'), book.cell('state')]).toEqual(['14', 'f/45', 'for 13 s or longer', 'yes']); // prettier-ignore
    book.dispose();
  });
  test('says that the plan is not ready, and shows no number of it', async () => {
    const book = await beside([head('A', 'key', '800', 11), head('B', 'fill', '25', 16, { Step: null })]);
    expect(book.cell('state')).toBe('no: see the plan');
    expect([book.cell('pops'), book.cell('one'), book.cell('adding'), book.column('Card', 'Set to').join('')]).toEqual(['', '', '', '']); // prettier-ignore
    expect(String(book.cell('boxesA')).trim()).toBe('');
    book.dispose();
  });
});

describe('by itself', () => {
  const typed = (pops: TemplateValue, ends: readonly TemplateValue[] = []) => {
    const said = layout(card).tables.get('Shot') as TemplateTable;
    const rows = said.rows.map(([what, says]) => [what ?? null, what === 'Pops' ? pops : (says ?? null)]);
    const switches = [0, 1, 2, 3, 4, 5].map((i) => [i + 1, ends[i] ?? null]);
    return calculated(typedOver(card, {}, { Shot: rows, Switches: switches }));
  };
  const boxes = ({ cell }: Awaited<ReturnType<typeof typed>>) =>
    ['boxesA', 'boxesB', 'boxesC', 'boxesD'].map((id) => String(cell(id)).trim());
  test('has as many boxes as pops', async () => {
    const full = 'ooooo ooooo ooooo ooooo ooooo';
    expect(boxes(await typed('99'))).toEqual([full, full, full, full.slice(0, -1)]);
    expect(boxes(await typed('26'))).toEqual([full, 'o', '', '']);
  });
  test('marks each end but the last', async () => {
    expect(boxes(await typed('12', [3, 10, 12]))[0]).toBe('oo#oo oooo# oo');
  });
  test('says what it cannot hold', async () => {
    expect((await typed('120')).cell('state')).toBe('over 99 pops');
    expect((await typed('some')).cell('state')).toBe('no: pops?');
    expect((await typed('2')).cell('state')).toBe('no: pops differ');
    // 1/3 typed into a plain cell: a day of March in 2026
    const said = layout(card).tables.get('Shot') as TemplateTable;
    const dated = said.rows.map(([what, says]) => [
      what ?? null,
      what === 'Lost in filters' ? 46_084 : (says ?? null),
    ]);
    expect((await calculated(typedOver(card, {}, { Shot: dated }))).cell('state')).toBe('no: a date?');
  });
  test('empty, it says nothing', async () => {
    const sheet = await calculated(card, false);
    expect(
      ['lensSetting', 'pops', 'open', 'one', 'adding', 'state'].map((id) => sheet.cell(id)).join(''),
    ).toBe('');
    expect(boxes(sheet)).toEqual(['', '', '', '']);
    expect(sheet.errors).toEqual([]);
  });
});

describe('as it lies', () => {
  const { sheet } = planAlone(card, true);
  const { area } = sheet.page;
  test('one page, upright, nothing on it under 14 points', () => {
    const printed = sheet.cells.filter(
      ({ row, column }) => row < (area?.rows ?? 0) && column < (area?.columns ?? 0),
    );
    expect(printed.length).toBeGreaterThan(100);
    for (const { style, value } of printed) expect(style?.size, String(value)).toBeGreaterThanOrEqual(14);
    // at its own size: a page that is made smaller has smaller letters
    expect(widthOfColumns({ column: 0, columns: area?.columns ?? 0 }, sheet.widths)).toBeLessThanOrEqual(PAGE.upright.width); // prettier-ignore
    const heights = Array.from({ length: area?.rows ?? 0 }, (_, row) => sheet.heights[row] ?? 15);
    expect(heights.reduce((sum, height) => sum + height, 0)).toBeLessThanOrEqual(PAGE.upright.height);
    expect(sheet.page.breaks).toEqual([]);
  });
});
