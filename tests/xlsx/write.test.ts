import { describe, expect, test } from 'vitest';
import { isCellError } from '../../src/formula/errors';
import type { ChartKind } from '../../src/book/chart';
import type { Book, BookCell, BookSheet } from '../../src/book/book';
import { type ValueAt, withValues } from '../../src/book/cells';
import { readXlsx } from '../../src/xlsx/read';
import { writeXlsx } from '../../src/xlsx/write';
import { openPackage } from '../../src/xlsx/zip';
import { planAlone } from '../../src/sheets/makePlan';
import { TEMPLATES } from '../../src/sheets/templates';
import { FULL } from '../full';
import { sheetOf } from './parts';

/** Any values do: a number, a text, a truth, an error and an empty text in turn. */
const ANY: readonly BookCell['value'][] = [1.5, 'a < b & "c"', true, { error: '#N/A' }, ''];
const anyValue: ValueAt = (row, column) => ANY[(row + column) % ANY.length] as BookCell['value'];
const bookOf = (filled: boolean): Book => ({
  sheets: TEMPLATES.map((t) => withValues(planAlone(t, filled).sheet, anyValue)),
  names: [],
});
/** All sheets with their demo jobs, written once for whatever only reads them. */
let once: Promise<Uint8Array> | undefined;
const written = (): Promise<Uint8Array> => (once ??= writeXlsx(bookOf(true)));
const partOf = async (bytes: Uint8Array, name: string): Promise<string> =>
  new TextDecoder().decode(await openPackage(bytes).read(name));

const key = ({ row, column }: BookCell): string => `${row},${column}`;
const filledCells = (sheet: BookSheet): Map<string, BookCell> =>
  new Map(sheet.cells.map((cell) => [key(cell), cell]));
/** A cell under a merge gets the look of the first; it holds nothing. */
const covered = (sheet: BookSheet, { row, column }: BookCell): boolean =>
  sheet.merges.some(
    (m) =>
      row >= m.row && row < m.row + m.rows && column >= m.column && column < m.column + m.columns &&
      (row !== m.row || column !== m.column),
  ); // prettier-ignore

describe('a sheet written and read again', () => {
  test.each(FULL ? [true, false] : [true])('keeps everything (filled: %s)', async (filled) => {
    const before = bookOf(filled);
    const { book: after, notUnderstood } = await readXlsx(await (filled ? written() : writeXlsx(before)));
    expect(notUnderstood).toEqual([]);
    expect(after.sheets.map(({ name }) => name)).toEqual(before.sheets.map(({ name }) => name));
    for (const [i, sheet] of before.sheets.entries()) {
      const back = after.sheets[i] as BookSheet;
      const cells = filledCells(back);
      expect(sheet.cells.length).toBeGreaterThan(50);
      // of cells below others that are merged a file keeps the outer edges alone
      const seen = (all: readonly BookCell[]) => all.filter((cell) => !covered(sheet, cell));
      for (const { part: _part, ...cell } of seen(sheet.cells)) expect(cells.get(key(cell))).toEqual(cell);
      expect(seen(back.cells)).toHaveLength(seen(sheet.cells).length);
      const { cells: _, merges, ...rest } = sheet;
      const { cells: __, merges: mergesBack, ...restBack } = back;
      expect(restBack).toEqual({ ...rest, conditions: expect.any(Array) });
      // their order says nothing
      expect(mergesBack).toHaveLength(merges.length);
      expect(mergesBack).toEqual(expect.arrayContaining([...merges]));
      expect(back.conditions).toHaveLength(sheet.conditions.length);
      for (const [c, condition] of sheet.conditions.entries())
        expect(back.conditions[c]).toMatchObject(condition);
    }
  });

  test('gives the same bytes twice', async () => {
    const book = (): Book => ({
      ...bookOf(true),
      sheets: bookOf(true).sheets.slice(0, FULL ? undefined : 2),
    });
    const [one, two] = [await writeXlsx(book()), await writeXlsx(book())];
    expect(Buffer.compare(one, two)).toBe(0);
  });

  test('stores our functions in the spelling of add-ins, never with a dot', async () => {
    const book = bookOf(true);
    const ours = book.sheets.flatMap(({ cells }) =>
      cells.filter(({ formula }) => formula?.includes('SWEEP.')),
    );
    const bytes = await written();
    const sheets = await Promise.all(
      book.sheets.map((_, i) => partOf(bytes, `xl/worksheets/sheet${i + 1}.xml`)),
    );
    const formulas = sheets.join('').match(/<f[^>]*>[^<]*<\/f>/g) ?? [];
    const stored = formulas.filter((f) => f.includes('_xldudf_SWEEP_'));
    expect(ours.length).toBeGreaterThan(10);
    expect(stored).toHaveLength(ours.length);
    expect(formulas.join('')).not.toContain('SWEEP.');
    const names = openPackage(bytes).names.filter((name) => name.startsWith('xl/tables/'));
    const tables = (await Promise.all(names.map((name) => partOf(bytes, name)))).join('');
    expect(tables).toMatch(/<calculatedColumnFormula>[^<]*_xldudf_SWEEP_/);
    expect(tables).not.toContain('SWEEP.');
  });

  test('names no person', async () => {
    const core = await partOf(await written(), 'docProps/core.xml');
    expect(core).toContain('<dc:creator>Sweeptable</dc:creator>');
    expect(core).toContain('<cp:lastModifiedBy>Sweeptable</cp:lastModifiedBy>');
  });
});

const again = async (sheet: BookSheet, names: Book['names'] = []) =>
  (await readXlsx(await writeXlsx({ sheets: [sheet], names }))).book;

describe('what a workbook may hold besides', () => {
  test('texts that begin like formulas stay texts, also when they are edited in Excel', async () => {
    const texts = ['=1+1', '+1', '-1', '@a', '=cmd|x!A1', '1/125', ' 3:1', 'a\nb', '_x000D_'];
    const { sheets } = await again(sheetOf(texts.map((value, row) => ({ row, column: 0, value }))));
    expect(sheets[0]?.cells.map(({ value }) => value)).toEqual(texts);
    for (const cell of sheets[0]?.cells ?? []) {
      expect(cell.formula).toBeUndefined();
      if (/^[=+\-@]/.test(String(cell.value))) expect(cell.style?.format).toBe('@');
    }
  });

  test('rows that start a page do so again', async () => {
    const page = { landscape: false, header: 'One & only', titleRows: 0, breaks: [20, 50] };
    const { sheets } = await again(sheetOf([{ row: 60, column: 0, value: 1 }], { page }));
    expect(sheets[0]?.page.breaks).toEqual([20, 50]);
  });

  test('a full page ends in the file where it does on paper, and its break goes again', async () => {
    const rows = (count: number) =>
      Array.from({ length: count }, (_, row) => ({ row, column: 0, value: row + 1 }));
    const page = {
      landscape: true,
      header: 'Long',
      titleRows: 0,
      breaks: [10],
      area: { row: 0, column: 0, rows: 80, columns: 4 },
    };
    const sheet = sheetOf(rows(80), { page, gridlines: false, widths: { 0: 20, 1: 20, 2: 20, 3: 20 } });
    const bytes = await writeXlsx({ sheets: [sheet], names: [] });
    // 490 points lengthwise are 32 rows of 15: from row 10 on the next begin at 42 and 74
    const breaks = [...(await partOf(bytes, 'xl/worksheets/sheet1.xml')).matchAll(/<brk id="(\d+)"/g)];
    expect(breaks.map(([, row]) => Number(row))).toEqual([10, 42, 74]);
    const { book } = await readXlsx(bytes);
    expect(book.sheets[0]?.page.breaks).toEqual([10]);
    // of a sheet that was made for no paper nothing is known
    const { gridlines: _, ...withLines } = sheet;
    const plain = await writeXlsx({ sheets: [withLines], names: [] });
    expect((await partOf(plain, 'xl/worksheets/sheet1.xml')).match(/<brk/g)).toHaveLength(1);
  });

  test('leaves as much room for cells on Letter as on A4', async () => {
    const inches = async (paper: 'A4' | 'Letter', width: number, height: number) => {
      const bytes = await writeXlsx(
        { sheets: [sheetOf([{ row: 0, column: 0, value: 1 }])], names: [] },
        paper,
      );
      const xml = await partOf(bytes, 'xl/worksheets/sheet1.xml');
      const side = (name: string) =>
        Number(new RegExp(`<pageMargins[^>]* ${name}="([\\d.]+)"`).exec(xml)?.[1]);
      return [width - side('left') - side('right'), height - side('top') - side('bottom')];
    };
    // upright: 210 by 297 mm, and 8.5 by 11 inches
    const [a4, letter] = [await inches('A4', 210 / 25.4, 297 / 25.4), await inches('Letter', 8.5, 11)];
    expect(a4[0]).toBeCloseTo(letter[0] ?? 0, 2);
    expect(a4[1]).toBeCloseTo(letter[1] ?? 0, 2);
  });

  test('a line over numbers stands at their distances, one over words in their order', async () => {
    const column = (c: number, rows: number) => ({ cells: { row: 0, column: c, rows, columns: 1 } });
    const chart = (kind: ChartKind, x: number): BookSheet['charts'][number] => ({
      kind,
      title: 'Light',
      xTitle: 'across',
      yTitle: 'up',
      x: column(x, 3),
      series: [{ name: 'Value', values: column(2, 3) }],
      place: { row: 5, column: 0, rows: 10, columns: 4 },
    });
    const cells = [1, 2, 8].flatMap((n, row): BookCell[] => [
      { row, column: 0, value: n },
      { row, column: 1, value: `f/${n}` },
      { row, column: 2, value: n * n },
    ]);
    const sheet = sheetOf(cells, { charts: [chart('scatter', 0), chart('line', 1)] });
    const bytes = await writeXlsx({ sheets: [sheet], names: [] });
    const [byNumber, byWord] = await Promise.all([1, 2].map((k) => partOf(bytes, `xl/charts/chart${k}.xml`)));
    expect(byNumber).toMatch(/<c:scatterChart>.*<c:xVal>.*<c:yVal>/s);
    expect(byWord).toMatch(/<c:lineChart>.*<c:cat>.*<c:val>/s);
    expect(byNumber).not.toContain('a:prstDash');
    expect((await readXlsx(bytes)).book.sheets[0]?.charts).toEqual(sheet.charts);
  });

  test('lines of a chart, told apart by their dashes; each over its own numbers, and over a table by its columns', async () => {
    const cells = (c: number, r = 1) => ({ cells: { row: r, column: c, rows: 2, columns: 1 } });
    const one = (c: number) => ({ cells: { row: 9, column: c, rows: 1, columns: 1 } });
    const of = (name: string) => ({ table: 'Heads', column: name });
    const sheet = sheetOf(
      ['Head', 'Ws', 'Lumen'].map((value, column) => ({ row: 0, column, value })),
      {
        tables: [
          {
            name: 'Heads',
            area: { row: 0, column: 0, rows: 4, columns: 3 },
            columns: [{ name: 'Head' }, { name: 'Ws' }, { name: 'Lumen' }],
          },
        ],
        charts: [
          {
            kind: 'scatter',
            title: 'Light',
            xTitle: 'across',
            yTitle: 'up',
            x: of('Head'),
            series: [
              { name: 'Of the table', values: of('Ws') },
              { name: 'Part of it', values: cells(2) },
              { name: 'Elsewhere', values: cells(4), x: cells(3) },
              { name: 'There too', values: cells(5), x: cells(3) },
              { name: 'Most', values: of('Lumen'), role: 'limit' },
              { name: 'Now', values: one(5), x: one(4), role: 'point' },
            ],
            place: { row: 5, column: 0, rows: 10, columns: 4 },
          },
        ],
      },
    );
    const bytes = await writeXlsx({ sheets: [sheet], names: [] });
    expect((await readXlsx(bytes)).book.sheets[0]?.charts).toEqual(sheet.charts);
    const part = await partOf(bytes, 'xl/charts/chart1.xml');
    expect(new Set(part.match(/prstDash val="\w+"/g)).size).toBe(4);
    expect(part).toMatch(
      /<c:ser>(?:(?!<\/c:ser>).)*<a:ln[^>]*><a:noFill\/>(?:(?!<\/c:ser>).)*val="diamond"/s,
    );
  });

  test('a constant line over columns is a line on their axes', async () => {
    const column = (c: number) => ({ cells: { row: 0, column: c, rows: 2, columns: 1 } });
    const chart: BookSheet['charts'][number] = {
      kind: 'column',
      title: 'Light',
      xTitle: 'head',
      yTitle: 'Ws',
      x: column(0),
      series: [
        { name: 'Set', values: column(1) },
        { name: 'Full', values: column(2) },
        { name: 'Most', values: column(3), role: 'limit' },
      ],
      place: { row: 5, column: 0, rows: 10, columns: 4 },
    };
    const bytes = await writeXlsx({ sheets: [sheetOf([], { charts: [chart] })], names: [] });
    const part = await partOf(bytes, 'xl/charts/chart1.xml');
    const group = (name: string): string =>
      part.match(new RegExp(`<c:${name}Chart>.*</c:${name}Chart>`, 's'))?.[0] ?? '';
    const all = (of: string, pattern: RegExp) => [...of.matchAll(pattern)].map(([, found]) => found);
    expect(all(group('bar'), /<c:val>.*?!(.*?)<\/c:f>/gs)).toEqual(['$B$1:$B$2', '$C$1:$C$2']);
    expect(group('line')).toMatch(/<c:cat>.*\$A\$1.*<c:val>.*\$D\$1:\$D\$2/s);
    expect(group('line')).toContain('prstDash val="sysDash"');
    const axes = /<c:axId val="(\d+)"\/>/g;
    expect(all(group('line'), axes)).toEqual(all(group('bar'), axes));
    // Each series has a number of its own: programs repair files in which two are alike.
    expect(all(part, /<c:order val="(\d)"\/>/g)).toEqual(['0', '1', '2']);
    expect((await readXlsx(bytes)).book.sheets[0]?.charts).toEqual([chart]);
  });

  test('every error, of a cell and of a formula', async () => {
    const errors = [
      '#VALUE!',
      '#NUM!',
      '#N/A',
      '#DIV/0!',
      '#REF!',
      '#NAME?',
      '#NULL!',
      '#SPILL!',
      '#CALC!',
    ] as const;
    const cells = errors.flatMap((error, row): BookCell[] => [
      { row, column: 0, value: { error } },
      { row, column: 1, value: { error }, formula: '=A1' },
    ]);
    const { sheets } = await again(sheetOf(cells));
    expect(sheets[0]?.cells).toEqual(cells);
    expect(sheets[0]?.cells.filter(({ value }) => isCellError(value))).toHaveLength(2 * errors.length);
  });

  test('newer functions, own names and spills, as Excel wants them', async () => {
    const formulas = [
      '=XLOOKUP(2,A1:A3,B1:B3)',
      '=LET(x,2,list,{1,2},SUM(x*list,x)&"x XLOOKUP(")',
      '=MAP(A1:A3,LAMBDA(one,one*2))',
      '=SUM(A1#)+SORT(A1:A3)',
      "=SWEEP.STOPDIFF('It''s SWEEP.X('!A1,8)",
    ];
    const cells = formulas.map((formula, row): BookCell => ({ row, column: 5, value: 1, formula }));
    const sheet = sheetOf(cells);
    expect((await again(sheet)).sheets[0]?.cells).toEqual(cells);
    const part = await partOf(await writeXlsx({ sheets: [sheet], names: [] }), 'xl/worksheets/sheet1.xml');
    expect([...part.matchAll(/<f[^>]*>([^<]*)<\/f>/g)].map((m) => m[1]?.replaceAll('&quot;', '"').replaceAll('&apos;', "'").replaceAll('&amp;', '&'))).toEqual([
      '_xlfn.XLOOKUP(2,A1:A3,B1:B3)',
      '_xlfn.LET(_xlpm.x,2,_xlpm.list,{1,2},SUM(_xlpm.x*_xlpm.list,_xlpm.x)&"x XLOOKUP(")',
      '_xlfn.MAP(A1:A3,_xlfn.LAMBDA(_xlpm.one,_xlpm.one*2))',
      'SUM(_xlfn.ANCHORARRAY(A1))+_xlfn._xlws.SORT(A1:A3)',
      "_xldudf_SWEEP_STOPDIFF('It''s SWEEP.X('!A1,8)",
    ]); // prettier-ignore
  });

  test('a spill, whose other cells are left to it', async () => {
    const spill = { row: 0, column: 0, rows: 3, columns: 1 };
    const cells: BookCell[] = [
      { row: 0, column: 0, value: 1, formula: '=SEQUENCE(3)', spill },
      { row: 1, column: 0, value: 2 },
      { row: 2, column: 0, value: 3 },
      { row: 3, column: 0, value: 4 },
    ];
    expect((await again(sheetOf(cells))).sheets[0]?.cells).toEqual([
      cells[0],
      { row: 1, column: 0, value: null },
      { row: 2, column: 0, value: null },
      cells[3],
    ]);
  });

  test('scales of colours and formulas that mark, the first before the others', async () => {
    const areas = [{ row: 0, column: 0, rows: 2, columns: 1 }, { row: 4, column: 2, rows: 1, columns: 3 }];
    const sheet = sheetOf([], {
      conditions: [
        { kind: 'scale', areas, low: '#fbf8f1', high: '#88cfc7' },
        { kind: 'formula', areas, formula: '=A1>3', look: { bold: true, ink: '#7d2410' } },
      ],
    });
    expect((await again(sheet)).sheets[0]?.conditions).toEqual(sheet.conditions);
    const part = await partOf(await writeXlsx({ sheets: [sheet], names: [] }), 'xl/worksheets/sheet1.xml');
    expect(part).toMatch(/<cfvo type="min"\/><cfvo type="max"\/><color rgb="FFFBF8F1"\/><color rgb="FF88CFC7"\/>/);
  }); // prettier-ignore

  test('names, hidden sheets, frozen columns, no lines of the program, rules of every kind and notes on empty cells', async () => {
    const at = { row: 0, column: 0, rows: 2, columns: 1 };
    const sheet = sheetOf([{ row: 5, column: 2, value: null, note: 'Here.\nAnd here.' }], {
      freeze: { rows: 1, columns: 2 },
      gridlines: false,
      rules: [
        { areas: [at], kind: 'list', bounds: ['"a,b"'], blank: true, strict: true, refusal: 'a or b', prompt: 'Choose.' },
        { areas: [{ ...at, column: 1 }], kind: 'decimal', compare: 'greaterThan', bounds: ['0.5'], blank: false, strict: false },
        { areas: [{ ...at, column: 2 }], kind: 'custom', bounds: ['SWEEP.FNUMBER(C1)>0'], blank: true, strict: true },
        { areas: [{ ...at, column: 3, rows: 1 }], kind: 'whole', compare: 'between', bounds: ['1', 'A1'], blank: true, strict: true },
      ],
    }); // prettier-ignore
    const { sheets, names } = await again(sheet, [{ name: 'Rate', formula: "='One & only'!$A$1" }, { name: 'Tax', formula: '=0.2' }]);
    expect(sheets[0]).toEqual(sheet);
    expect(names).toEqual([{ name: 'Rate', formula: "='One & only'!$A$1" }, { name: 'Tax', formula: '=0.2' }]);
  }); // prettier-ignore
});

test('a picture stands over its cells, with its pixels as they came', async () => {
  // any bytes do: nobody looks at them
  const png = new Uint8Array([0x89, 0x50, 0x4e, 0x47, 1, 2, 3]);
  const plain = sheetOf([]);
  const place = { row: 4, column: 2, rows: 20, columns: 5 };
  const bytes = await writeXlsx({
    sheets: [
      { ...plain, pictures: [{ place, png, said: 'Two lights & a "rim".', width: 1000, height: 600 }] },
    ],
    names: [],
  });
  const parts = openPackage(bytes);
  const media = parts.names.filter((name) => name.startsWith('xl/media/'));
  expect(media).toHaveLength(1);
  expect(await parts.read(media[0] ?? '')).toEqual(png);
  const drawing = await partOf(bytes, 'xl/drawings/drawing1.xml');
  expect(drawing).toMatch(/<xdr:from><xdr:col>2<\/xdr:col>.*?<xdr:row>4<\/xdr:row>/s);
  // what it shows, for screen readers (ECMA-376, part 1, 20.1.2.2.8: descr)
  expect(drawing).toContain(' descr="Two lights &amp; a &quot;rim&quot;."');
  // 9,525 of a drawing's units are a pixel (ECMA-376, part 1, 20.1.2.1: 914,400 to an inch of 96 pixels)
  expect(drawing).toContain('cx="9525000" cy="5715000"');
  const { notUnderstood } = await readXlsx(bytes);
  expect(notUnderstood).toEqual([
    'Pictures are left out: put that of a set on its sheet anew, by the view Set.',
  ]);
});

test('pages that are headed by the name of their tab are so after it has another', async () => {
  // &A is the name of the tab (ECMA-376, part 1, 18.3.1.46), && the sign itself
  const head = async (name: string, header: string) => {
    const plain = sheetOf([]);
    const bytes = await writeXlsx({
      sheets: [{ ...plain, name, page: { ...plain.page, header } }],
      names: [],
    });
    return /<oddHeader>([^<]*)</.exec(await partOf(bytes, 'xl/worksheets/sheet1.xml'))?.[1];
  };
  expect(await head('One & only', 'One & only')).toBe('&amp;L&amp;A&amp;RPage &amp;P of &amp;N');
  expect(await head('Lamps', 'One & only')).toBe('&amp;LOne &amp;&amp; only&amp;RPage &amp;P of &amp;N');
  expect(await head('Lamps', '')).toBe('&amp;RPage &amp;P of &amp;N');
  // a file may not have this name: what heads the pages follows the one that it has
  expect(await head('A/B', 'A/B')).toBe('&amp;L&amp;A&amp;RPage &amp;P of &amp;N');
});

test('a chart outside of what a sheet prints has a page of its own, also over cells that hold something', async () => {
  const area = { row: 0, column: 0, rows: 4, columns: 3 };
  const beyond = { row: 1, column: 2, rows: 6, columns: 3 };
  const within = { row: 1, column: 1, rows: 2, columns: 2 };
  const column = { cells: { row: 0, column: 0, rows: 3, columns: 1 } };
  const charts = [beyond, within].map((place) => ({
    kind: 'line' as const,
    title: 'Light',
    xTitle: 'across',
    yTitle: 'up',
    x: column,
    series: [{ name: 'Value', values: column }],
    place,
  }));
  const held = [0, 1, 2].flatMap((row) => [0, 4].map((at) => ({ row, column: at, value: row })));
  const plain = sheetOf(held, { charts });
  const bytes = await writeXlsx({ sheets: [{ ...plain, page: { ...plain.page, area } }], names: [] });
  const workbook = await partOf(bytes, 'xl/workbook.xml');
  expect(workbook).toMatch(/_xlnm\.Print_Area"[^>]*>[^<]*!\$A\$1:\$C\$4,[^<]*!\$C\$2:\$E\$7</);
  const { book: back, notUnderstood } = await readXlsx(bytes);
  expect(back.sheets[0]?.page.area).toEqual(area);
  expect(back.sheets[0]?.charts.map(({ place }) => place)).toEqual([beyond, within]);
  expect(notUnderstood).toEqual([]);
});

test('a picture outside of what a sheet prints is printed as well, and the rest as before where it is read again', async () => {
  const png = new Uint8Array([0x89, 0x50, 0x4e, 0x47]);
  const area = { row: 0, column: 0, rows: 4, columns: 3 };
  const beyond = { row: 5, column: 4, rows: 6, columns: 3 };
  const within = { row: 1, column: 1, rows: 2, columns: 2 };
  const plain = sheetOf([{ row: 0, column: 0, value: 1 }]);
  const pictures = [beyond, within].map((place) => ({ place, png, said: '', width: 200, height: 100 }));
  const book = { sheets: [{ ...plain, page: { ...plain.page, area }, pictures }], names: [] };
  const bytes = await writeXlsx(book);
  const workbook = await partOf(bytes, 'xl/workbook.xml');
  expect(workbook).toMatch(/_xlnm\.Print_Area"[^>]*>[^<]*!\$A\$1:\$C\$4,[^<]*!\$E\$6:\$G\$11</);
  const { book: back, notUnderstood } = await readXlsx(bytes);
  expect(back.sheets[0]?.page.area).toEqual(area);
  expect(notUnderstood).toEqual([
    'Pictures are left out: put that of a set on its sheet anew, by the view Set.',
  ]);
});
