import { afterAll, beforeAll, expect, test } from 'vitest';
import { isCellError } from '../../src/formula/errors';
import { layout } from '../../src/sheets/layout';
import { planAlone } from '../../src/sheets/makePlan';
import { findJoins, keptWithout } from '../../src/sheets/links/findJoins';
import { type Here, formHere } from '../../src/sheets/links/formHere';
import { changedColumn, type ColumnChange } from '../../src/sheets/links/linkColumns';
import type { Held } from '../../src/sheets/links/tableHere';
import { waitingFor } from '../../src/sheets/links/waiting';
import { TEMPLATES } from '../../src/sheets/templates';
import { asItStands, templateOf } from './support';
import { together } from './together';

/** Cells outside tables that are looked up by the name of the slowest head, on sheets that came before Heads, or after it. */
const [build, depth, heads] = (['pops-build', 'depth-options', 'heads'] as const).map(templateOf) as [
  ReturnType<typeof templateOf>,
  ReturnType<typeof templateOf>,
  ReturnType<typeof templateOf>,
];
const insert = (...templates: readonly (typeof build)[]) =>
  together(templates.map((template) => ({ template })));
type Book = Awaited<ReturnType<typeof insert>>;
let [before, after]: Book[] = [];
beforeAll(async () => {
  [before, after] = [await insert(build, heads), await insert(heads, build)];
});
afterAll(() => {
  before?.dispose();
  after?.dispose();
});
const books = (): { readonly apart: Book; readonly inOrder: Book } => {
  if (!before || !after) throw new Error('The books are not open.');
  return { apart: before, inOrder: after };
};
const joins = (here: Here) => findJoins(TEMPLATES, here);
const changes = (here: Here, nth = 0): ColumnChange[] =>
  joins(here).flatMap(({ ways }) => [...(ways[nth]?.columns ?? [])]);
const LABELS = [
  'Recycle time, slowest head',
  'Flashes in a row allowed',
  'Pause to cool after them',
  'Head, as Heads has it',
];
const KEPT = ['recycle', 'allowed', 'cool', 'known'] as const; // prettier-ignore

async function write(book: Book, columns: readonly ColumnChange[], take: 'to' | 'before' = 'to') {
  for (const column of columns)
    for (const [r, held] of column[take].entries()) book.write(column.sheet, column.area.row + r, column.area.column, held); // prettier-ignore
  await book.calculate();
}

test('a sheet with such cells is told of when Heads comes', () => {
  const { apart: book } = books();
  const tables = book.tables().map(({ name, headings }) => ({ name, columns: headings }));
  const others = tables.filter(({ name }) => name !== 'Models');
  expect(waitingFor(heads, TEMPLATES, others)).toEqual(['Pops build']);
  expect(waitingFor(heads, TEMPLATES, tables)).toEqual([]);
});

test('of Depth options as well', () => {
  const { tables } = books().apart.here();
  const { sheet } = planAlone(depth, true);
  const rows: Held[][] = Array.from({ length: layout(depth).end }, () => []);
  for (const { row, column, value, formula } of sheet.cells) {
    const line = rows[row] ?? [];
    for (let c = line.length; c < column; c++) line.push({ value: null });
    line[column] = { ...(formula === undefined ? {} : { formula }), value: formula === undefined && !isCellError(value) ? value : '' };
  }
  const form = formHere({ sheet: sheet.name, template: depth }, { at: { row: 0, column: 0 }, rows });
  const [join] = joins({ tables, forms: [form] });
  expect([join?.sheet, join?.title]).toEqual(['Depth options', 'The job']);
  expect(join?.ways[0]?.columns.map(({ column }) => column)).toEqual([
    'Recycle, slowest head', 'Flashes in a row allowed', 'Head, as Heads has it',
  ]);
}); // prettier-ignore

test('they are linked, with what they hold and would show, and taken back', async () => {
  const { apart: book, inOrder } = books();
  await book.type('Models', 'Recycle', 3, 2.5);
  const found = joins(book.here());
  expect(found.map(({ sheet, title }) => [sheet, title])).toEqual([['Pops build', 'On the set']]);
  const columns = found[0]?.ways[0]?.columns ?? [];
  expect(found[0]?.ways.map(({ to }) => to)).toEqual([{ sheet: 'Heads', table: 'Models' }]);
  expect(columns.map(({ column }) => column)).toEqual(LABELS);
  expect(columns[0]?.cells).toEqual([expect.objectContaining({ key: 'Cedar 2400', after: '2.5', isOther: true })]);
  expect(columns[0]?.to[0]?.formula).toMatch(/^=IFERROR\(IF\(INDEX\(Models\[Recycle\],MATCH\(IF\(ISTEXT\(\$B\$\d+\),/);
  await book.type('Models', 'Recycle', 3, 1.2);
  const all = changes(book.here());
  await write(book, all);
  expect(joins(book.here())).toEqual([]);
  const [linked, inserted] = [book.form(0, build), inOrder.form(1, build)];
  for (const id of KEPT) expect(linked.cell(id), id).toEqual(inserted.cell(id));
  // the list is followed
  await book.type('Models', 'Recycle', 3, 7.5);
  expect(linked.cell('recycle')).toBe(7.5);
  await book.type('Models', 'Recycle', 3, 1.2);
  await write(book, all, 'before');
  expect(changes(book.here())).toEqual(all);
}); // prettier-ignore

test('they are written only where they hold what was found', async () => {
  const { apart: book } = books();
  const all = changes(book.here());
  expect(changedColumn(all, book.here())).toBeUndefined();
  const was = book.form(0, build).cell('cool');
  await book.form(0, build).type('cool', 90);
  expect(changedColumn(all, book.here())).toBe('Pause to cool after them on “Pops build”');
  await book.form(0, build).type('cool', was as number);
});

test('they keep what Heads said where that goes', async () => {
  const { inOrder: book } = books();
  const form = book.form(1, build);
  const said = KEPT.map((id) => form.cell(id));
  const kept = keptWithout('Heads', TEMPLATES, book.here());
  expect(new Set(kept.map(({ sheet }) => sheet))).toEqual(new Set(['Pops build']));
  await write(book, kept);
  expect(KEPT.map((id) => form.cell(id))).toEqual(said);
  const [own] = book.here().forms.filter(({ sheet }) => sheet === 'Pops build');
  expect([...(own?.cells.values() ?? [])].filter(({ held }) => held.formula?.includes('Models['))).toEqual(
    [],
  );
  await write(book, kept, 'before');
});

test('where Heads is gone already they are found, and become inputs with the values of the demo’s head', () => {
  const { inOrder: book } = books();
  const here = book.here();
  const tables = here.tables.filter(({ name }) => name !== 'Models');
  const lost = (held: Held): Held =>
    held.formula?.includes('Models[') ? { formula: held.formula.replaceAll(/Models\[[^\]]*\]/g, '#REF!'), value: '' } : held; // prettier-ignore
  const forms = here.forms.map((form) => ({
    ...form,
    cells: new Map([...form.cells].map(([id, cell]) => [id, { ...cell, held: lost(cell.held) }])),
  }));
  const [join] = joins({ tables, forms });
  expect(join?.lost).toEqual(LABELS);
  expect(join?.ways.map(({ to }) => to)).toEqual(['typed']);
  // what the template has for its own head
  expect(join?.ways[0]?.columns.slice(0, 3).map(({ to }) => to)).toEqual([[{ value: 1.2 }], [{ value: 40 }], [{ value: 60 }]]); // prettier-ignore
});

test('a cell is found beside its label where rows and columns came in, and left alone where that is gone', () => {
  const { apart: book } = books();
  const [form] = book.here().forms;
  if (!form) throw new Error('The sheet is not there.');
  const cellsOf = (change: (label: string) => string): Held[][] => {
    const rows: Held[][] = Array.from({ length: 60 }, () =>
      Array.from({ length: 6 }, () => ({ value: null })),
    );
    for (const block of build.blocks)
      if (block.kind === 'form')
        for (const { id, label } of block.fields) {
          const cell = form.cells.get(id);
          const line = cell && rows[cell.at.row + 2];
          // two rows and one column further on
          if (line)
            [line[cell.at.column], line[cell.at.column + 1]] = [{ value: change(label ?? '') }, cell.held];
        }
    return rows;
  };
  const at = { row: 0, column: 0 };
  const moved = formHere(form, { at, rows: cellsOf((label) => label) });
  const { tables } = book.here();
  const recycle = form.cells.get('recycle')?.at ?? { row: 0, column: 0 };
  const [join] = joins({ tables, forms: [moved] });
  expect(join?.ways[0]?.columns[0]?.area).toMatchObject({ row: recycle.row + 2, column: recycle.column + 1 });
  const head = form.cells.get('head')?.at.row ?? 0;
  expect(join?.ways[0]?.columns[0]?.to[0]?.formula).toContain(`MATCH(${asItStands(`$C$${head + 3}`)},`);
  const renamed = formHere(form, { at, rows: cellsOf((label) => label.replace('Slowest head', 'Strobe')) });
  expect(joins({ tables, forms: [renamed] })).toEqual([]);
});
