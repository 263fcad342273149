import { resolve } from 'node:path';
import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import type { BookCell, BookSheet } from '../../src/book/book';
import type { KnownTable } from '../../src/book/kinds/kind';
import { drawPage } from '../../src/hosts/excel/page';
import { makePlan, planAlone } from '../../src/sheets/makePlan';
import { THEME } from '../../src/sheets/theme';
import { partnerFaults } from '../../src/sheets/lookUpFaults';
import type { Field, Template, TemplateColumn } from '../../src/sheets/template';
import { readXlsx } from '../../src/xlsx/read';
import { writeXlsx } from '../../src/xlsx/write';
import { FakeWorkbook } from '../hosts/excel/support/fake-workbook';
import { loadOffice } from '../hosts/excel/support/office-host';
import { contrast, luminance } from './contrast';
import { openedBook } from './openedBook';
import { asItStands } from './support';

const { allTemplates } = createRequire(import.meta.url)('../../src/build/templates.cjs') as {
  allTemplates: (others: readonly string[]) => readonly Template[];
};
const all = allTemplates([resolve(import.meta.dirname, 'kinds')]);
const read = (id: string): Template => all.find((template) => template.id === id) as Template;

const kinds = read('kinds');
const { sheet } = planAlone(kinds, true);

describe('a map of colours', () => {
  const map = sheet.conditions.filter((condition) => condition.kind === 'scale');

  test('is one scale over all of its columns, from the least of them to the most', () =>
    expect(map.map(({ areas }) => areas)).toEqual([[{ row: 5, column: 1, rows: 3, columns: 3 }]]));
  test('reads in grey too: each step is paler than the one before, and its numbers stay readable', () => {
    expect(map).toHaveLength(1);
    for (const { low, high } of map) {
      expect(luminance(high) - luminance(low)).toBeGreaterThan(0.3);
      const part = (hex: string, i: number): number => Number.parseInt(hex.slice(i, i + 2), 16);
      // Programs mix the two ends in the numbers of their red, green and blue.
      const steps = Array.from({ length: 21 }, (_, step) => {
        const mixed = [1, 3, 5].map((i) =>
          Math.round(part(low, i) + (step / 20) * (part(high, i) - part(low, i))),
        );
        return `#${mixed.map((c) => c.toString(16).padStart(2, '0')).join('')}`;
      });
      for (const [i, fill] of steps.entries()) {
        // WCAG 2.1, 1.4.6
        expect(contrast(THEME.result.ink, fill), fill).toBeGreaterThanOrEqual(7);
        if (i > 0) expect(luminance(fill)).toBeGreaterThan(luminance(steps[i - 1] as string));
      }
    }
  });
});

describe('a picture slot', () => {
  test('is one cell of several, with its words and an edge all round', async () => {
    const slot = { row: 4, column: 5, rows: 3, columns: 2 };
    expect(sheet.merges).toContainEqual(slot);
    const within = sheet.cells.filter(({ part }) => part === 'slot');
    expect(within.map(({ row, column, value }) => [row, column, value])).toEqual([
      [4, 5, 'A plan of the set'], [4, 6, null],
      [5, 5, null], [5, 6, null],
      [6, 5, null], [6, 6, null],
    ]); // prettier-ignore
    for (const { style } of within) expect(style?.edges?.right?.line).toBe('dotted');
    const { book } = await readXlsx(await writeXlsx({ sheets: [sheet], names: [] }));
    expect(book.sheets[0]?.merges).toContainEqual(slot);
  });
});

describe('pages', () => {
  const page = { breaks: [10], area: { row: 0, column: 0, rows: 15, columns: 4 } };
  test('begin where a block is told to, and print to the cell that is told', () =>
    expect(sheet.page).toMatchObject(page));
  test('are the same after they were written to a file and read', async () => {
    const { book } = await readXlsx(await writeXlsx({ sheets: [sheet], names: [] }));
    expect(book.sheets[0]?.page).toMatchObject(page);
  });
  test('are set by Excel itself', async () => {
    const workbook = new FakeWorkbook(sheet.name);
    const { Excel } = loadOffice(workbook, { excelApi: '1.9' });
    await Excel.run(async (context) => {
      drawPage(context.workbook.worksheets.getItem(sheet.name), sheet);
      await context.sync();
    });
    expect(workbook.log.filter((line) => /PageBreak|PrintArea/.test(line))).toEqual([
      `[${sheet.name}].PageLayout.SetPrintArea([${sheet.name}]!A1:D15)`,
      `[${sheet.name}].HorizontalPageBreaks.Add([${sheet.name}]!A11:A11)`,
    ]);
  });
});

test('big type is big where it is asked for, also in a file that was read', async () => {
  const sizes = ({ cells }: BookSheet) =>
    cells.filter(({ style }) => style?.size === 16).map(({ row, column }) => [row, column]);
  const says = [12, 13, 14].map((row) => [row, 2]);
  expect(sizes(sheet)).toEqual(says);
  const { book } = await readXlsx(await writeXlsx({ sheets: [sheet], names: [] }));
  expect(book.sheets.map(sizes)).toEqual([says]);
});

describe('a column that is looked up', () => {
  const STOCK: KnownTable = { name: 'Stock', columns: ['Head', 'Most'] };
  const beside = (...tables: KnownTable[]): BookSheet =>
    makePlan(kinds, { filled: true, sheets: [], tables, names: [] }).sheet;
  const cell = ({ cells }: BookSheet, row: number, column: number): BookCell | undefined =>
    cells.find((each) => each.row === row - 1 && each.column === column);
  const rig = ({ tables }: BookSheet) => tables.find(({ name }) => name.startsWith('Rig'));
  const found = `INDEX(Stock[Most],MATCH(${asItStands('Rig[[#This Row],[Head]]')},Stock[Head],0))`;
  const formula = `=IFERROR(IF(${found}="","",${found}),"")`;

  test('is an input with the demo where the workbook has no such table', () => {
    expect(cell(sheet, 13, 1)).toMatchObject({ part: 'input', value: 1000 });
    expect(rig(sheet)?.columns[1]).toEqual({ name: 'Most' });
    expect(sheet.rules).toHaveLength(1);
  });
  test('is a formula in each row where it has, and accepts nothing then', () => {
    const looked = beside(STOCK);
    for (const row of [13, 14, 15])
      expect(cell(looked, row, 1)).toMatchObject({ part: 'result', value: null, formula });
    expect(rig(looked)?.columns[1]).toEqual({ name: 'Most', formula });
    expect(looked.rules).toEqual([]);
    expect(cell(looked, 13, 0)).toMatchObject({ part: 'input', value: 'Birch 1200' });
  });
  test('may hold a formula of its own where the workbook has no such table', () => {
    const blocks = kinds.blocks.map((block) =>
      block.kind === 'table' && block.id === 'Rig'
        ? {
            ...block,
            columns: block.columns.map((c) => (c.id === 'Most' ? { ...c, formula: '=LEN([@Head])' } : c)),
            rows: block.rows.map(([head]) => [head ?? null]),
          }
        : block,
    );
    const laid = (tables: readonly KnownTable[]): BookSheet =>
      makePlan({ ...kinds, blocks }, { filled: true, sheets: [], tables, names: [] }).sheet;
    expect(cell(laid([]), 13, 1)?.formula).toBe('=LEN(Rig[[#This Row],[Head]])');
    expect(cell(laid([STOCK]), 13, 1)?.formula).toBe(formula);
    expect(cell(laid([STOCK]), 13, 0)).toMatchObject({ part: 'input', value: 'Birch 1200' });
  });
  test('of texts that are no numbers is no text to its cell, or the formula itself would be shown', () => {
    const blocks = kinds.blocks.map((block) =>
      block.kind === 'table' && block.id === 'Rig'
        ? {
            ...block,
            columns: block.columns.map((c) => (c.id === 'Most' ? { ...c, quantity: 'words' } : c)),
          }
        : block,
    );
    const laid = (tables: readonly KnownTable[]): BookSheet =>
      makePlan({ ...kinds, blocks }, { filled: true, sheets: [], tables, names: [] }).sheet;
    expect(cell(laid([]), 13, 1)?.style?.format).toBe('@');
    expect(cell(laid([STOCK]), 13, 1)?.style?.format).toBeUndefined();
  });
  test('goes by the first of several, whatever their order', () => {
    const numbered = (n: number): KnownTable => ({ ...STOCK, name: `stock_${n}` });
    expect(cell(beside(numbered(10), numbered(3)), 13, 1)?.formula).toContain('stock_3[Most]');
    expect(cell(beside(numbered(3), STOCK), 13, 1)?.formula).toBe(formula);
  });
  test('leaves tables of somebody’s own alone', () => {
    const others = [
      { name: 'Stock', columns: ['Head', 'Price'] },
      { name: 'Stock_x', columns: STOCK.columns },
      { name: 'Livestock', columns: STOCK.columns },
    ];
    expect(cell(beside(...others), 13, 1)).toMatchObject({ part: 'input', value: 1000 });
  });

  test('gives what the other table holds: empty for an empty cell and for a name that is not there', async () => {
    const sheets = [planAlone(read('partner'), true).sheet, beside(STOCK)];
    const book = await openedBook(sheets);
    await book.calculate();
    // Birch 1200 has 1200 Ws in Stock; of Hazel 400 nothing is written there, and Rowan 300 is not in it.
    expect(book.read('Kinds', 'B13:C15')).toEqual([
      [1200, ''],
      ['', 'not known'],
      ['', 'not known'],
    ]);
    book.dispose();
  });

  const faults = (change: Partial<TemplateColumn>, others = [read('partner')]): string[] => {
    const blocks = kinds.blocks.map((block) =>
      block.kind === 'table' && block.id === 'Rig'
        ? { ...block, columns: block.columns.map((c) => (c.id === 'Most' ? { ...c, ...change } : c)) }
        : block,
    );
    const changed = { ...kinds, blocks };
    return partnerFaults(changed, [changed, ...others]).map(({ at, reason }) => `${at}: ${reason}`);
  };
  const at = 'blocks/1/columns/1/from';
  const from = { table: 'Stock', key: 'Head', column: 'Most' };
  test.each<[string, string[], string[]]>([
    ['nothing wrong', faults({}), []],
    ['no such sheet', faults({}, []), [`${at}: no sheet has a table Stock`]],
    ['two such sheets', faults({}, [read('partner'), { ...read('partner') }]), [`${at}: more than one sheet has a table Stock`]],
    ['no such column', faults({ from: { ...from, column: 'Least' } }), [`${at}: table Stock has no column Least`]],
    ['no such key', faults({ from: { ...from, key: 'Part' } }), [`${at}: table Stock has no column Part`, `${at}: table Rig has no column Part`]],
    ['another unit', faults({ quantity: 'distance' }), [`${at}: is in m, but Most of Stock is in Ws`]],
    ['another unit where one has none', faults({ quantity: 'words' }), []],
    ['a formula for want of the other sheet', faults({ formula: '=1' }), []],
    ['fixed values as well', faults({ fixed: 'values' }), [`${at}: is looked up: it cannot be fixed`]],
  ])('%s', (_name, told, wanted) => expect(told).toEqual(wanted)); // prettier-ignore
});

describe('a cell of a form that is looked up', () => {
  const FIELDS: readonly Field[] = [
    { id: 'head', label: 'Head', quantity: 'text', value: 'Birch 1200' },
    {
      id: 'most',
      label: 'Most',
      quantity: 'energy',
      value: 1000,
      from: { table: 'Stock', key: 'Head', column: 'Most', by: 'head' },
      accepts: { above: 0, message: 'An energy in watt-seconds, above 0.' },
    },
  ];
  const withForm = (change: Partial<Field> = {}): Template => ({
    ...kinds,
    blocks: [{ kind: 'form', title: 'A head', at: 'A20', fields: FIELDS.map((field) => (field.id === 'most' ? { ...field, ...change } : field)) }],
  }); // prettier-ignore
  const laid = (...tables: KnownTable[]): BookSheet =>
    makePlan(withForm(), { filled: true, sheets: [], tables, names: [] }).sheet;
  const most = ({ cells }: BookSheet): BookCell | undefined =>
    cells.find(({ row, column }) => row === 21 && column === 1);

  test('is an input with the demo, or a formula that accepts nothing', () => {
    expect(most(laid())).toMatchObject({ part: 'input', value: 1000 });
    expect(laid().rules).toHaveLength(1);
    const found = `INDEX(Stock_2[Most],MATCH(${asItStands('$B$21')},Stock_2[Head],0))`;
    const beside = laid({ name: 'Stock_2', columns: ['Head', 'Most'] });
    expect(most(beside)).toMatchObject({ part: 'result', value: null, formula: `=IFERROR(IF(${found}="","",${found}),"")` }); // prettier-ignore
    expect(beside.rules).toEqual([]);
  });

  const faults = (from: Partial<Field['from']>): string[] => {
    const changed = withForm({ from: { table: 'Stock', key: 'Head', column: 'Most', by: 'head', ...from } });
    return partnerFaults(changed, [changed, read('partner')]).map(({ at, reason }) => `${at}: ${reason}`);
  };
  const at = 'blocks/0/fields/1/from';
  test.each<[string, string[], string[]]>([
    ['nothing wrong', faults({}), []],
    ['a cell that is not there', faults({ by: 'lamp' }), [`${at}: there is no cell lamp`]],
    ['no such column', faults({ column: 'Least' }), [`${at}: table Stock has no column Least`]],
    ['no such key', faults({ key: 'Part' }), [`${at}: table Stock has no column Part`]],
  ])('%s', (_name, told, wanted) => expect(told).toEqual(wanted));

  test('needs the cell that has its key, where a column must have none', () => {
    const from = { table: 'Stock', key: 'Head', column: 'Most' };
    const field = withForm({ from });
    expect(partnerFaults(field, [field, read('partner')])).toEqual([{ at, reason: 'needs the cell that has its key' }]);
    const column: Template = {
      ...kinds,
      blocks: [...withForm().blocks, ...kinds.blocks.map((block) => block.kind === 'table' ? { ...block, columns: block.columns.map((one) => (one.from ? { ...one, from: { ...one.from, by: 'head' } } : one)) } : block)],
    };
    expect(partnerFaults(column, [column, read('partner')]).map(({ reason }) => reason)).toEqual(['has its key in its row: it needs no cell']);
  }); // prettier-ignore
});
