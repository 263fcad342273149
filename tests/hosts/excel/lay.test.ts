import { beforeAll, describe, expect, test } from 'vitest';
import { FULL } from '../../full';
import { drawnCharts } from '../../../src/book/chart';
import { BIG_SHEET_SIZE, BIG_SIZE } from '../../../src/book/kinds/bigType';
import { WRAPPED_SIZE } from '../../../src/book/kinds/wordsInLines';
import { columnPoints } from '../../../src/book/widthsAndHeights';
import { FONT } from '../../../src/book/palette';
import type { Area } from '../../../src/formula/area';
import { fixedText } from '../../../src/formula/areaText';
import { blockPlace, layout, tableTop, valueColumns } from '../../../src/sheets/layout';
import { THEME, WARNED } from '../../../src/sheets/theme';
import { addresses, addressOf, blockAt, rangeText } from './support/a1';
import type { FakeWorkbook } from './support/fake-workbook';
import { look } from './support/item';
import { held, LIGHTS, openExcel, planOf, sheetOf, sheetsThroughFiles } from './support/laid';
import type { Sheet } from './support/sheet';

/** Parts of a table whose words may go on in more lines. */
const IN_TABLES: ReadonlySet<string> = new Set(['held', 'result']);
const WAITS_FOR_CELL = 64;

// without a demo job a sheet differs in what it holds alone: each in full
const cases = sheetsThroughFiles(FULL).flatMap((one) =>
  [true, false]
    .filter((filled) => filled || FULL || one.template === LIGHTS)
    .map((filled) => ({ ...one, filled })),
);

describe.each(cases)('$template.name through $file, filled: $filled', ({ file, template, filled }) => {
  const { sheet: plan } = planOf(template, filled);
  let workbook: FakeWorkbook;
  let sheet: Sheet;
  let told: unknown;

  beforeAll(async () => {
    const opened = openExcel({ file });
    workbook = opened.workbook;
    told = await opened.host.insertSheet(template.id, filled);
    sheet = sheetOf(workbook, plan.name);
  });
  const at = (cell: { row: number; column: number }): string => addressOf(cell.row, cell.column);
  const line = (text: string): number => workbook.log.findIndex((entry) => entry.includes(text));

  test('is done, and says where to start', () => {
    const start = plan.cells.find(({ part }) => part === 'input' || part === 'choice');
    expect(told).toMatchObject({
      done: `“${plan.name}” is inserted${filled && start ? ' with the demo job' : ''}.${start ? ` Start in ${at(start)}.` : ''}`,
      takeBack: expect.any(Function) as unknown,
    });
    expect(workbook.active).toBe(sheet);
    if (start)
      expect(workbook.selection).toMatchObject({ sheet, block: { row: start.row, column: start.column } });
  });
  test('takes at most seven requests, each of which waits for a cell that is being typed in', () => {
    expect(workbook.batches.length).toBeLessThanOrEqual(7);
    for (const flags of workbook.flags) expect(flags & WAITS_FOR_CELL).toBe(WAITS_FOR_CELL);
  });
  test('every cell holds what the plan says, and no other holds anything', () => {
    const wanted = plan.cells
      .filter((cell) => held(cell) !== undefined)
      .map((cell) => [at(cell), held(cell)] as const);
    expect(Object.fromEntries(sheet.cells)).toEqual(Object.fromEntries(wanted));
  });
  test('every cell has its number format', () => {
    const wanted = plan.cells
      .filter(({ style }) => style?.format !== undefined)
      .map((cell) => [at(cell), cell.style?.format] as const);
    expect(Object.fromEntries(sheet.formats)).toEqual(Object.fromEntries(wanted));
  });
  test('text format comes before the words, tables before the formulas that name them', () => {
    expect(line('.NumberFormat =')).toBeLessThan(line('.Values ='));
    expect(line('.Values =')).toBeLessThan(line('.Formulas ='));
    if (plan.tables.length > 0) {
      expect(line('.Values =')).toBeLessThan(line('.Tables.Add('));
      expect(line('.Tables.Add(')).toBeLessThan(line('.Formulas ='));
    }
  });
  test('the sheet gets its name when it is added and is never renamed or protected', () => {
    expect(workbook.log).toContain(`Worksheets.Add(${JSON.stringify(plan.name)})`);
    expect(
      workbook.log.filter((entry) => /^\[[^\]]*\]\.(Name|Position|Visibility|Protection)\b/.test(entry)),
    ).toEqual([]);
  });
  test('tables lie where the plan says, under their names, without Excel’s own colours', () => {
    expect(Object.fromEntries(sheet.tables.map(({ name, block }) => [name, block]))).toEqual(
      Object.fromEntries(plan.tables.map(({ name, area }) => [name, area])),
    );
    for (const table of sheet.tables) {
      const planned = plan.tables.find(({ name }) => name === table.name);
      expect(sheet.headings(table)).toEqual(planned?.columns.map(({ name }) => name));
      expect(table.item.properties).toMatchObject({
        Style: 'TableStyleLight1',
        ShowBandedRows: false,
        ShowFilterButton: false,
      });
    }
  });
  test('every part has its look', () => {
    const map = layout(template);
    const fields = template.blocks.flatMap((block) => (block.kind === 'form' ? block.fields : []));
    const tables = template.blocks.flatMap((block) => (block.kind === 'table' ? [block] : []));
    const big = new Set([
      ...fields.flatMap((field) => {
        const { row, column } = map.cells.get(field.id)?.place ?? { row: 0, column: 0 };
        const columns = field.big ? valueColumns(field) : 0;
        return Array.from({ length: columns }, (_, c) => at({ row, column: column + c }));
      }),
      ...tables.flatMap((table) =>
        table.columns.flatMap((column, c) =>
          column.big
            ? table.rows.map((_, r) => addressOf(tableTop(table) + 1 + r, blockPlace(table).column + c))
            : [],
        ),
      ),
    ]);
    const least = (column: number): number =>
      template.big && column < (plan.page.area?.columns ?? 0) ? BIG_SHEET_SIZE : 0;
    for (const cell of plan.cells) {
      if (!cell.part) throw new Error('a cell that is nothing');
      const { ink, fill, bold, italic, size, edge } = THEME[cell.part];
      const { align, wrap } = cell.style ?? {};
      const looks = sheet.looks.get(at(cell));
      expect(looks).toMatchObject({
        'Format.Font.Name': FONT,
        'Format.Font.Size': big.has(at(cell))
          ? BIG_SIZE
          : wrap && IN_TABLES.has(cell.part)
            ? WRAPPED_SIZE
            : Math.max(size, least(cell.column)),
        'Format.Font.Color': ink,
        'Format.HorizontalAlignment': align?.replace(/^./, (letter) => letter.toUpperCase()),
      });
      expect(looks?.['Format.Fill.Color']).toBe(fill);
      expect(looks?.['Format.Font.Bold']).toBe(bold);
      expect(looks?.['Format.Font.Italic']).toBe(italic);
      const steps = ['input', 'choice', 'held', 'result', 'heading', 'remark', 'warning'].includes(cell.part);
      expect(looks?.['Format.IndentLevel']).toBe(steps && align === 'left' ? 1 : undefined);
      expect(looks?.['Format.WrapText']).toBe(wrap);
      expect(looks?.['Format.Borders(EdgeTop).Style']).toBe(edge === 'dotted' ? 'Dot' : undefined);
      expect(looks?.['Format.Borders(EdgeBottom).Style']).toBe(
        edge && (edge === 'dotted' ? 'Dot' : 'Continuous'),
      );
    }
  });
  test('columns have their widths, and lines across the sheet are merged', () => {
    for (const [column, characters] of Object.entries(plan.widths))
      expect(sheet.looks.get(addressOf(0, Number(column)))?.['Format.ColumnWidth']).toBe(
        columnPoints(characters),
      );
    expect(sheet.merges).toEqual(plan.merges);
  });
  test('what may be typed is checked by Excel, with our sentence', () => {
    const ruled = plan.rules.flatMap((rule) =>
      rule.areas.flatMap(addresses).map((cell) => ({ rule, found: sheet.validation.get(cell) })),
    );
    expect(ruled.map(({ found }) => found?.ErrorAlert)).toMatchObject(
      ruled.map(({ rule }) => ({ showAlert: true, style: 'Stop', message: rule.refusal })),
    );
    for (const { rule, found } of ruled)
      if (rule.kind === 'list')
        expect(found?.Rule).toEqual({
          list: { inCellDropDown: true, source: rule.bounds[0]?.replaceAll('"', '') },
        });
      else
        expect(Object.keys(found?.Rule ?? {})).toEqual([rule.kind === 'whole' ? 'wholeNumber' : 'decimal']);
  });
  test('every note is the message of its cell', () => {
    const wanted = plan.cells.filter(({ note }) => note !== undefined).map((cell) => [at(cell), cell.note]);
    const found = [...sheet.validation].flatMap(([cell, { Prompt }]) =>
      Prompt ? [[cell, Prompt.message]] : [],
    );
    expect(Object.fromEntries(found)).toEqual(Object.fromEntries(wanted));
    for (const { Prompt } of sheet.validation.values()) if (Prompt) expect(Prompt.title).not.toBe('');
  });
  test('every value of a form has its name on the sheet, and nothing else has', () => {
    const fields = template.blocks.flatMap((block) => (block.kind === 'form' ? block.fields : []));
    const names = fields.flatMap(({ id, tenths }) => (tenths ? [id, tenths.id] : [id]));
    expect([...sheet.names.keys()].sort()).toEqual(names.sort());
    for (const [name, place] of sheet.names) {
      const label = fields.find(({ id }) => id === name)?.label;
      const { row, column } = blockAt(place);
      if (label !== undefined) expect(sheet.cells.get(addressOf(row, column - 1)), name).toBe(label);
    }
  });
  test('warnings mark their cells while they hold, and maps have the colours of their ends', () => {
    expect(
      sheet.conditions.map((condition) => ({
        area: condition.block,
        formula: look(condition, 'Custom.Rule.Formula'),
        ink: look(condition, 'Custom.Format.Font.Color'),
        fill: look(condition, 'Custom.Format.Fill.Color'),
        ends: look(condition, 'ColorScale.Criteria'),
      })),
    ).toEqual(
      plan.conditions.map(({ areas: [area], ...condition }) =>
        condition.kind === 'formula'
          ? { area, formula: condition.formula, ink: WARNED.ink, fill: WARNED.fill, ends: undefined }
          : {
              area,
              ends: expect.objectContaining({
                minimum: expect.objectContaining({ color: condition.low }),
                maximum: expect.objectContaining({ color: condition.high }),
              }),
            },
      ),
    );
  });
  test('charts are Excel’s own, with their columns, titles and places', () => {
    const range = (area: (typeof plan)['merges'][number]): string => `[${plan.name}]!${rangeText(area)}`;
    expect(
      sheet.charts.map((chart) => ({
        title: look(chart, 'Title.Text'),
        xTitle: look(chart, 'Axes.CategoryAxis.Title.Text'),
        yTitle: look(chart, 'Axes.ValueAxis.Title.Text'),
        place: chart.calls.SetPosition?.join(':'),
        series: chart.children.get('Series')?.members.map(({ properties, calls, children }) => ({
          name: properties.Name,
          values: calls.SetValues?.[0],
          x: calls.SetXAxisValues?.[0],
          // a constant line has none, a point its own, and more than forty on another would run into one
          marks: properties.MarkerStyle === undefined,
          names: [...(children.get('Points')?.children.values() ?? [])].map((point) =>
            look(point, 'DataLabel.Formula'),
          ),
        })),
      })),
    ).toEqual(
      drawnCharts(plan).map((chart) => ({
        title: chart.title,
        xTitle: chart.xTitle,
        yTitle: chart.yTitle,
        place: rangeText(chart.place),
        series: chart.series.map(({ name, values, role, x = chart.x }) => ({
          name,
          values: range(values),
          x: range(x),
          names: Array.from(
            { length: chart.names?.rows ?? 0 },
            (_, i) =>
              `=${fixedText(plan.name, { ...(chart.names as Area), row: (chart.names?.row ?? 0) + i, rows: 1 })}`,
          ),
          marks: (role === undefined || role === 'named') && (chart.kind === 'column' || values.rows <= 40),
        })),
      })),
    );
  });
  test('heading rows stay in view', () => {
    expect(sheet.item.children.get('FreezePanes')?.calls.FreezeRows).toEqual(
      plan.freeze.rows > 0 ? [plan.freeze.rows] : undefined,
    );
  });
  test('it prints on pages one wide, with its name above', () => {
    const { page } = plan;
    const printed = sheet.item.children.get('PageLayout');
    expect(printed?.properties).toEqual({
      Orientation: page.landscape ? 'Landscape' : 'Portrait',
      Zoom: { scale: expect.any(Number) as number },
    });
    expect(printed?.calls.SetPrintArea).toEqual([`[${plan.name}]!${page.area && rangeText(page.area)}`]);
    // Of a long table its headings, elsewhere the rows that stay in view.
    const first =
      plan.name === 'Proof' ? (plan.tables.find(({ name }) => name === 'Checks')?.area.row ?? 0) : 0;
    expect(printed?.calls.SetPrintTitleRows).toEqual(
      page.titleRows > 0 ? [`$${first + 1}:$${first + page.titleRows}`] : undefined,
    );
    expect(look(sheet.item, 'PageLayout.HeadersFooters.DefaultForAllPages.LeftHeader')).toBe(
      page.header === plan.name ? '&A' : undefined,
    );
    expect(sheet.item.properties.Gridlines).toBe(false);
    expect(workbook.log.filter((entry) => entry.includes('PageBreaks'))).toEqual(
      page.breaks.map(
        (row) => `[${plan.name}].HorizontalPageBreaks.Add([${plan.name}]!A${row + 1}:A${row + 1})`,
      ),
    );
  });
});

describe('beside what is there already', () => {
  /** A workbook that has the sheet, its table and a name that another table of ours would like. */
  async function twice() {
    const opened = openExcel();
    await opened.host.insertSheet(LIGHTS.id, true);
    opened.workbook.log.length = 0;
    return opened;
  }
  const contents = (sheet: Sheet): unknown => [
    [...sheet.cells],
    [...sheet.formats],
    [...sheet.validation],
    sheet.tables.map(({ name, block }) => [name, block]),
    sheet.charts.length,
    sheet.conditions.length,
  ];

  test('sheet and table get a number, and formulas speak of the numbered table', async () => {
    const { workbook, host } = await twice();
    const first = sheetOf(workbook, 'Lights on set');
    const before = JSON.stringify(contents(first));
    expect(await host.insertSheet(LIGHTS.id, true)).toMatchObject({
      done: '“Lights on set (2)” is inserted with the demo job. Start in B5.',
    });
    const second = sheetOf(workbook, 'Lights on set (2)');
    expect(second.tables.map(({ name }) => name)).toEqual(['Turn_2', 'Lights_2']);
    const formulas = [...second.cells.values()].filter((cell) => String(cell).startsWith('=')).join('\n');
    expect(formulas).toContain('Lights_2[[#This Row],[Reading]]');
    expect(formulas).not.toMatch(/\b(Lights|Turn)\[/);
    expect(JSON.stringify(contents(first))).toBe(before);
  });
  test('nothing at all is written to a sheet that was there', async () => {
    const { workbook, host } = await twice();
    await host.insertSheet(LIGHTS.id, false);
    expect(workbook.log.filter((entry) => /^\[(Lights on set|Sheet1)\]/.test(entry))).toEqual([]);
    expect(workbook.log.some((entry) => entry.startsWith('[Lights on set (2)]'))).toBe(true);
  });
  test('a table leaves the names of cells alone too', async () => {
    const { workbook, host } = openExcel();
    workbook.names.push('LIGHTS');
    await host.insertSheet(LIGHTS.id, true);
    expect(sheetOf(workbook, 'Lights on set').tables.map(({ name }) => name)).toEqual(['Turn', 'Lights_2']);
  });
});

test('an Excel that cannot wait for a cell is not asked to', async () => {
  const { workbook, host } = openExcel({ canWait: false });
  await host.insertSheet(LIGHTS.id, true);
  for (const flags of workbook.flags) expect(flags & WAITS_FOR_CELL).toBe(0);
});

test('where Excel does not know the functions yet, it says so and what to do', async () => {
  const { workbook, host } = openExcel();
  workbook.onFormula = (formula) => (formula.includes('SWEEP.') ? '#NAME?' : 0);
  expect(await host.insertSheet(LIGHTS.id, true)).toMatchObject({
    done: '“Lights on set” is inserted with the demo job. Excel does not know the functions yet, so their cells show #NAME?. Wait a moment, then press Recalculate.',
  });
});
