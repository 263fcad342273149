import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { trials } from '../../full';
import { drawConditions } from '../../../src/hosts/excel/conditions';
import { drawCharts } from '../../../src/hosts/excel/chart';
import { drawInputs } from '../../../src/hosts/excel/inputs';
import { patches } from '../../../src/hosts/excel/ranges';
import { numberFormats, values } from '../../../src/hosts/excel/cells';
import { drawPage } from '../../../src/hosts/excel/page';
import type { BookChart } from '../../../src/book/chart';
import type { BookCell, BookSheet } from '../../../src/book/book';
import { columnPoints, rowHeights } from '../../../src/book/widthsAndHeights';
import { styleOf } from '../../../src/sheets/looks';
import { bookRule } from '../../../src/sheets/inputRules';
import type { Accepts } from '../../../src/sheets/template';
import { TEMPLATES } from '../../../src/sheets/templates';
import { FakeWorkbook } from './support/fake-workbook';
import { type Item, look } from './support/item';
import { planOf } from './support/laid';
import { loadOffice } from './support/office-host';

const EMPTY: BookSheet = {
  name: 'None',
  hidden: false,
  widths: { 0: 10, 1: 10, 2: 10 },
  heights: {},
  cells: [],
  merges: [],
  freeze: { rows: 0, columns: 0 },
  tables: [],
  rules: [],
  conditions: [],
  charts: [],
  page: { landscape: false, header: '', titleRows: 0, breaks: [] },
};
/** Letters that Excel takes in the title and in the sentence of a message at a cell; from memory. */
const LONGEST_TITLE = 32;
const LONGEST_MESSAGE = 255;

const cell = (row: number, column: number, more: Partial<BookCell> = {}): BookCell => ({
  row,
  column,
  value: null,
  part: 'input',
  style: styleOf('input', { align: 'right' }),
  ...more,
});
const TEXTS = styleOf('input', { align: 'right', format: '@' });

/** A sheet on which one part of a plan is drawn. */
async function drawn(draw: (sheet: Excel.Worksheet) => void) {
  const workbook = new FakeWorkbook('Sheet1');
  const { Excel } = loadOffice(workbook, { excelApi: '1.9' });
  await Excel.run(async (context) => {
    draw(context.workbook.worksheets.getItem('Sheet1'));
    await context.sync();
  });
  const [sheet] = workbook.sheets;
  if (!sheet) throw new Error('no sheet');
  return sheet;
}

describe('cells that are alike are joined', () => {
  const grid = fc.uniqueArray(
    fc.record({ row: fc.nat(7), column: fc.nat(7), kind: fc.constantFrom('a', 'b') }),
    { selector: ({ row, column }) => `${row},${column}`, maxLength: 40 },
  );
  test('each cell lies in one patch of its own kind, and no patch holds others', () =>
    fc.assert(
      fc.property(grid, (cells) => {
        const covered = patches(cells, ({ kind }) => kind).flatMap(({ first, area }) =>
          Array.from({ length: area.rows * area.columns }, (_, i) => ({
            row: area.row + Math.floor(i / area.columns),
            column: area.column + (i % area.columns),
            kind: first.kind,
          })),
        );
        const inOrder = (list: typeof cells): string[] =>
          list.map(({ row, column, kind }) => `${row},${column},${kind}`).sort();
        expect(inOrder(covered)).toEqual(inOrder(cells));
      }),
      trials(403),
    ));
  test('a block is one patch', () => {
    const cells = [cell(1, 1), cell(1, 2), cell(2, 1), cell(2, 2)];
    expect(patches(cells, ({ part }) => part ?? '').map(({ area }) => area)).toEqual([
      { row: 1, column: 1, rows: 2, columns: 2 },
    ]);
  });
});

describe('what may be typed, for Excel', () => {
  const rules: [string, Partial<Accepts>, object][] = [
    ['from, to', { least: 0, most: 9 }, { formula1: 0, formula2: 9, operator: 'Between' }],
    ['from', { least: 0 }, { formula1: 0, operator: 'GreaterThanOrEqualTo' }],
    ['to', { most: 9 }, { formula1: 9, operator: 'LessThanOrEqualTo' }],
    ['above', { above: 0 }, { formula1: 1e-9, operator: 'GreaterThanOrEqualTo' }],
    ['above, to', { above: 0, most: 9 }, { formula1: 1e-9, formula2: 9, operator: 'Between' }],
  ];
  test.each(
    rules.flatMap(([name, bounds, wanted]) =>
      [false, true].map((whole) => ({ name, bounds, wanted, whole })),
    ),
  )('$name, whole: $whole', async ({ bounds, wanted, whole }) => {
    const area = { row: 0, column: 0, rows: 1, columns: 1 };
    const rule = bookRule(area, { message: 'A number.', ...(whole ? { whole } : {}), ...bounds });
    const sheet = await drawn((s) => drawInputs(s, { ...EMPTY, rules: [rule] }));
    expect(sheet.validation.get('A1')?.Rule).toEqual({ [whole ? 'wholeNumber' : 'decimal']: wanted });
  });
  test('notes and sentences of the templates are not longer than Excel takes', () => {
    for (const template of TEMPLATES) {
      const plan = planOf(template, true).sheet;
      for (const { note } of plan.cells) expect(note?.length ?? 0).toBeLessThanOrEqual(LONGEST_MESSAGE);
      for (const { refusal } of plan.rules) expect(refusal?.length ?? 0).toBeLessThanOrEqual(LONGEST_MESSAGE);
    }
  });
  test('a note has the name of its row, or the heading it stands on', async () => {
    const cells = [
      cell(0, 0, { part: 'label', value: 'Draw '.repeat(9) }),
      cell(0, 1, { note: 'From the lens.' }),
      cell(1, 2, { part: 'heading', value: 'Power', note: 'As set.' }),
    ];
    const sheet = await drawn((s) => drawInputs(s, { ...EMPTY, cells }));
    expect(sheet.validation.get('B1')?.Prompt).toMatchObject({
      title: 'Draw '.repeat(9).slice(0, LONGEST_TITLE),
    });
    expect(sheet.validation.get('C2')?.Prompt).toMatchObject({ title: 'Power', message: 'As set.' });
  });
});

test('a scale of colours runs from the least value to the most, for Excel', async () => {
  const areas = [{ row: 1, column: 1, rows: 3, columns: 2 }];
  const conditions = [{ kind: 'scale', areas, low: '#fbf8f1', high: '#88cfc7' }] as const;
  const sheet = await drawn((s) => drawConditions(s, { ...EMPTY, conditions }));
  expect(sheet.conditions.map(({ block }) => block)).toEqual(areas);
  expect(look(sheet.conditions[0] as Item, 'ColorScale.Criteria')).toEqual({
    minimum: { type: 'LowestValue', color: '#fbf8f1' },
    maximum: { type: 'HighestValue', color: '#88cfc7' },
  });
});

describe('charts, for Excel', () => {
  const column = (c: number) => ({ cells: { row: 1, column: c, rows: 2, columns: 1 } });
  const chart = (kind: BookChart['kind'], series: readonly string[]): BookChart => ({
    kind,
    title: 'Light',
    xTitle: 'x',
    yTitle: 'y',
    x: column(0),
    series: series.map((name, i) => ({ name, values: column(i + 1) })),
    place: { row: 5, column: 0, rows: 10, columns: 4 },
  });
  test.each([
    ['columns', 'column', 'ColumnClustered'],
    ['a line over numbers keeps their distances', 'scatter', 'XYScatterLines'],
    ['a line over words', 'line', 'Line'],
  ] as const)('%s', async (_name, kind, wanted) => {
    const plan = { ...EMPTY, charts: [chart(kind, ['One'])] };
    const sheet = await drawn((s) => drawCharts(s, plan));
    expect(sheet.charts[0]?.properties.Type).toBe(wanted);
    expect(look(sheet.charts[0] as Item, 'Legend.Visible')).toBe(false);
  });
  test('several lines have a legend, and dashes of their own', async () => {
    const sheet = await drawn((s) =>
      drawCharts(s, { ...EMPTY, charts: [chart('line', ['One', 'Two', 'Three'])] }),
    );
    const [made] = sheet.charts;
    if (!made) throw new Error('no chart');
    const members = made.children.get('Series')?.members ?? [];
    expect(look(made, 'Legend.Visible')).toBe(true);
    expect(members.map(({ properties }) => properties.Name)).toEqual(['One', 'Two', 'Three']);
    expect(members.map(({ calls }) => calls.SetValues)).toEqual([
      ['[Sheet1]!B2:B3'],
      ['[Sheet1]!C2:C3'],
      ['[Sheet1]!D2:D3'],
    ]);
    expect(new Set(members.map((one) => look(one, 'Format.Line.LineStyle'))).size).toBe(3);
  });
  test('a series with points of its own along the axis keeps them', async () => {
    const own = { name: 'Two', values: column(3), x: column(2) };
    const two = chart('scatter', ['One']);
    const sheet = await drawn((s) => drawCharts(s, { ...EMPTY, charts: [{ ...two, series: [...two.series, own] }] })); // prettier-ignore
    const members = sheet.charts[0]?.children.get('Series')?.members ?? [];
    expect(members.map(({ calls }) => calls.SetXAxisValues)).toEqual([
      ['[Sheet1]!A2:A3'],
      ['[Sheet1]!C2:C3'],
    ]);
  });
  test('a constant line is thin and has no marks; a marked point is a diamond that no line joins', async () => {
    const line = chart('scatter', ['One', 'Two']);
    const limit = { name: 'Most', values: column(3), role: 'limit' } as const;
    const point = { name: 'Now', values: column(5), x: column(4), role: 'point' } as const;
    const sheet = await drawn((s) => drawCharts(s, { ...EMPTY, charts: [{ ...line, series: [...line.series, limit, point] }] })); // prettier-ignore
    const members = sheet.charts[0]?.children.get('Series')?.members ?? [];
    const lines = members.map((one) =>
      ['LineStyle', 'Weight'].map((what) => look(one, `Format.Line.${what}`)),
    );
    expect(lines).toEqual([
      ['Continuous', undefined],
      ['Dash', undefined],
      ['Dash', 1],
      ['None', undefined],
    ]);
    expect(members.map(({ properties }) => properties.MarkerStyle)).toEqual([undefined, undefined, 'None', 'Diamond']); // prettier-ignore
  });
  test('a constant line over columns is a dashed line on their axes', async () => {
    const columns = chart('column', ['One']);
    const limit = { name: 'Most', values: column(2), role: 'limit' } as const;
    const sheet = await drawn((s) => drawCharts(s, { ...EMPTY, charts: [{ ...columns, series: [...columns.series, limit] }] })); // prettier-ignore
    expect(sheet.charts[0]?.properties.Type).toBe('ColumnClustered');
    const members = sheet.charts[0]?.children.get('Series')?.members ?? [];
    const looks = members.map((one) => [one.properties.ChartType, look(one, 'Format.Line.LineStyle'), one.properties.MarkerStyle]); // prettier-ignore
    expect(looks).toEqual([
      [undefined, undefined, undefined],
      ['Line', 'Dash', 'None'],
    ]);
  });
  test('a chart over a table that is not there is not dropped in silence', async () => {
    const lost = { ...chart('line', ['One']), x: { table: 'Heads', column: 'Head' } };
    await expect(drawn((s) => drawCharts(s, { ...EMPTY, charts: [lost] }))).rejects.toThrow(/“Light”/);
  });
});

describe('sizes', () => {
  test('a column of 8.43 characters has the 48 points of a new sheet’s column, 64 pixels', () =>
    expect(columnPoints(8.43)).toBeCloseTo(48, 0));
  test('a line across a merged row gets room for all of its words', () => {
    const words = 'Meter each head alone. '.repeat(8).trim();
    const lead = cell(0, 0, { value: words, style: styleOf('lead', { wrap: true }) });
    const across = { row: 0, column: 0, rows: 1, columns: 3 };
    const narrow = rowHeights([lead], EMPTY.widths, [])[0] ?? 0;
    const wide = rowHeights([lead], EMPTY.widths, [across])[0] ?? 0;
    expect(wide).toBeGreaterThan(40);
    expect(narrow).toBeGreaterThan(2 * wide);
  });
  test('an ordinary row keeps the height that Excel gives it', () =>
    expect(rowHeights([cell(3, 0, { value: 11 })], EMPTY.widths, [])).toEqual({ 3: 15 }));
});

describe('words and pages', () => {
  test('words that begin like a formula are marked, except in cells of texts', () => {
    const cells = [
      cell(0, 0, { value: '-rim' }),
      cell(0, 1, { value: '-1/3', style: TEXTS }),
      cell(0, 2, { value: -1 }),
    ];
    expect(values({ ...EMPTY, cells })).toEqual([["'-rim", '-1/3', -1]]);
  });
  test('words that look like a number or a date are marked, others are not', () => {
    const texts = ['7.3', '0', '41 %', '1e3', '1/60', '3:1', '487 Ws', '60 x 90 cm box', 'f/16'];
    const cells = texts.map((value, column) => cell(0, column, { value }));
    expect(values({ ...EMPTY, cells })).toEqual([
      ["'7.3", "'0", "'41 %", "'1e3", "'1/60", "'3:1", '487 Ws', '60 x 90 cm box', 'f/16'],
    ]);
  });
  test('a cell without a format of its own is left alone', () =>
    expect(numberFormats({ ...EMPTY, cells: [cell(0, 0), cell(0, 1, { style: TEXTS })] })).toEqual([
      [null, '@'],
    ]));
  test('pages that have the name of their tab above them follow it', async () => {
    const page = { ...EMPTY.page, header: EMPTY.name };
    const sheet = await drawn((s) => drawPage(s, { ...EMPTY, page }));
    expect(look(sheet.item, 'PageLayout.HeadersFooters.DefaultForAllPages.LeftHeader')).toBe('&A');
  });
  test('an & in a header is printed, not obeyed; without rows to repeat none are set', async () => {
    const page = { ...EMPTY.page, header: 'Slate & Glaze' };
    const sheet = await drawn((s) => drawPage(s, { ...EMPTY, page }));
    expect(look(sheet.item, 'PageLayout.HeadersFooters.DefaultForAllPages.LeftHeader')).toBe(
      'Slate && Glaze',
    );
    expect(sheet.item.children.get('PageLayout')?.calls.SetPrintTitleRows).toBeUndefined();
    expect(sheet.item.children.get('FreezePanes')).toBeUndefined();
  });
});
