import { afterAll, describe, expect, test } from 'vitest';
import { address } from '../../src/formula/address';
import type { EngineValue } from '../../src/engine/headless';
import { findJoins, type Join, keptWithout, type Way } from '../../src/sheets/links/findJoins';
import type { ColumnChange } from '../../src/sheets/links/linkColumns';
import type { Held, TableHere } from '../../src/sheets/links/tableHere';
import type { Template } from '../../src/sheets/template';
import { SHORT } from '../../src/sheets/offeredTemplates';
import { TEMPLATES } from '../../src/sheets/templates';
import { FULL } from '../full';
import { asItStands, templateOf } from './support';
import { together } from './together';

type Book = Awaited<ReturnType<typeof together>>;

const [heads, plan, card] = ['heads', 'pops-plan', 'set-card'].map(templateOf) as [
  Template,
  Template,
  Template,
];

const insert = (...templates: readonly Template[]): Promise<Book> =>
  together(templates.map((template) => ({ template })));
const joins = (book: Book): Join[] => findJoins(TEMPLATES, book.here());
const wayOf = (join: Join | undefined, nth = 0): Way => {
  const way = join?.ways[nth];
  if (!way) throw new Error('There is no way to join it.');
  return way;
};

/** Writes what a person has chosen. */
async function write(book: Book, columns: readonly ColumnChange[]): Promise<void> {
  for (const { sheet, area, to } of columns)
    for (const [r, held] of to.entries()) book.write(sheet, area.row + r, area.column, held);
  await book.calculate();
}

const plain = (values: readonly EngineValue[]): EngineValue[] =>
  values.map((value) => (typeof value === 'number' ? String(value) : (value ?? '')));

/** Pops plan before Heads; and all three in their order. Tests that share them leave them as they were. */
let [apart, inOrder]: Book[] = [];
const books = async () => {
  apart ??= await insert(plan, heads);
  inOrder ??= await insert(heads, plan, card);
  return { apart, inOrder };
};
afterAll(() => {
  apart?.dispose();
  inOrder?.dispose();
});
/** The tables of a book, and one of them once more, as if its sheet stood there twice. */
const withSecond = (book: Book, name: string): TableHere[] =>
  book.tables().flatMap((table) => {
    const body = (held: Held): Held =>
      held.formula === undefined ? held : { ...held, formula: held.formula.replaceAll(`${name}[`, `${name}_2[`) };
    const second = { ...table, name: `${name}_2`, sheet: `${table.sheet} (2)`, rows: table.rows.map((row) => row.map(body)) };
    return table.name === name ? [table, second] : [table];
  }); // prettier-ignore

describe('sheets that were inserted apart', () => {
  /** Every two of which the first looks up in the second. */
  const PAIRS = TEMPLATES.flatMap((first) =>
    TEMPLATES.filter((second) =>
      first.blocks.some(
        (block) =>
          block.kind === 'table' &&
          block.columns.some(({ from }) => second.blocks.some((other) => other.kind === 'table' && other.id === from?.table)),
      ),
    ).map((second) => [first.name, second.name, first, second] as const),
  ); // prettier-ignore

  test('come with a page from its start, as whoever deletes a sheet does not wait', () => {
    for (const [, , first, second] of PAIRS) expect(SHORT).toEqual(expect.arrayContaining([first, second]));
  });

  test('are some', () => {
    expect(PAIRS.map(([first, second]) => `${first} → ${second}`)).toEqual(
      expect.arrayContaining(['Pops plan → Heads', 'Set card → Pops plan', 'Lights on set → Heads', 'Freeze check → Heads']),
    ); // prettier-ignore
  });

  test.each(FULL ? PAIRS : PAIRS.slice(-1))(
    '%s before %s: linked, it holds what it would hold had it come after',
    async (_first, _second, first, second) => {
      const [before, after] = [await insert(first, second), await insert(second, first)];
      const found = joins(before);
      expect(found.length).toBeGreaterThan(0);
      await write(
        before,
        found.flatMap((join) => wayOf(join).columns),
      );
      expect(joins(before)).toEqual([]);
      expect(before.errors()).toEqual([]);
      for (const table of after.plans[1]?.tables ?? [])
        for (const { name } of table.columns)
          expect(plain(before.column(table.name, name)), `${table.name} ${name}`).toEqual(
            plain(after.column(table.name, name)),
          );
      const formulas = (book: Book) =>
        book.tables().flatMap(({ rows }) => rows.flat().map(({ formula }) => formula));
      expect(new Set(formulas(before))).toEqual(new Set(formulas(after)));
      before.dispose();
      after.dispose();
    },
  );

  test('say of each cell what it holds and what it would show', async () => {
    const { apart: book } = await books();
    await book.type('Models', 'Most', 1, 500);
    const [join] = joins(book);
    expect([join?.sheet, join?.title, join?.lost, join?.left]).toEqual(['Pops plan', 'The lights', [], []]);
    const { to, columns } = wayOf(join);
    expect(to).toEqual({ sheet: 'Heads', table: 'Models' });
    const most = columns.find(({ column }) => column === 'Most');
    // The table begins in A64 with its headings; Most is its 13th column.
    expect(most?.cells[0]).toEqual({ cell: 'M65', key: 'Alder 600', before: '600', after: '500', isOther: true });
    expect(most?.cells[1]).toEqual({ cell: 'M66', key: 'Birch 1200', before: '1200', after: '1200', isOther: false });
    expect(most?.to[0]?.formula).toContain(`INDEX(Models[Most],MATCH(${asItStands('Plan[[#This Row],[Head]]')},Models[Head],0))`);
    // what was typed and would be another is not a thing to do unasked
    expect(columns.filter(({ cells }) => cells.some(({ isOther }) => isOther)).map(({ column }) => column)).toEqual(['Most']);
    await book.type('Models', 'Most', 1, 600);
  }); // prettier-ignore

  test('a head that the list has not would lose what is typed, and that is told', async () => {
    const { apart: book } = await books();
    await book.type('Plan', 'Head', 2, 'Rowan 300');
    const least = wayOf(joins(book)[0]).columns.find(({ column }) => column === 'Least');
    expect(least?.cells[1]).toMatchObject({ key: 'Rowan 300', after: '', isOther: true });
    await book.type('Plan', 'Head', 2, 'Birch 1200');
  });

  test('a name is looked up as it stands, with its * and ?', async () => {
    const { inOrder: book } = await books();
    const most = () => book.column('Plan', 'Most').slice(0, 2);
    const build = [600, 1200];
    expect(most()).toEqual(build);
    for (const name of ['Birch*', 'Birch ?200', 'Birch 120?', '*', '~*']) {
      // oxlint-disable-next-line no-await-in-loop -- one after the other
      await book.type('Plan', 'Head', 2, name);
      expect(most(), name).toEqual([600, '']);
      expect(book.column('Dial', 'Note').join(''), name).toContain('not in Heads');
    }
    // "Birch*" comes after another name that it would stand for
    await book.type('Models', 'Head', 3, 'Birch*~?');
    await book.type('Plan', 'Head', 2, 'birch*~?');
    expect(most()).toEqual([600, 2400]);
    await book.type('Models', 'Head', 3, 'Cedar 2400');
    await book.type('Plan', 'Head', 2, 'Birch 1200');
    expect(most()).toEqual(build);
  });

  test('a column that was linked in earlier words is linked, kept, and offered the new', async () => {
    const { inOrder: book } = await books();
    const earlier = 'INDEX(Models[Most],MATCH(Plan[[#This Row],[Head]],Models[Head],0))';
    const here = book.here();
    const tables = here.tables.map((table) => {
      const most = table.headings.indexOf('Most');
      const rows = table.rows.map((row) => row.map((held, c) => (c === most ? { ...held, formula: `=IFERROR(IF(${earlier}="","",${earlier}),"")` } : held)));
      return table.name === 'Plan' ? { ...table, rows } : table;
    });
    const [join] = findJoins(TEMPLATES, { ...here, tables });
    expect([join?.left, wayOf(join).columns.map(({ column }) => column)]).toEqual([[], ['Most']]);
    const kept = keptWithout('Heads', TEMPLATES, { ...here, tables });
    expect(kept.find(({ column }) => column === 'Most')?.to[0]).toEqual({ value: 600 });
  }); // prettier-ignore

  test('two partners are two ways, each by the name of its sheet', async () => {
    const { apart: book, inOrder: done } = await books();
    const [join] = findJoins(TEMPLATES, { tables: withSecond(book, 'Models'), forms: [] });
    expect(join?.ways.map(({ to }) => to)).toEqual([
      { sheet: 'Heads', table: 'Models' },
      { sheet: 'Heads (2)', table: 'Models_2' },
    ]);
    expect(wayOf(join, 1).columns[0]?.to[0]?.formula).toContain('INDEX(Models_2[Most]');
    // whoever looks up in one of them is joined
    expect(findJoins(TEMPLATES, { tables: withSecond(done, 'Models'), forms: [] })).toEqual([]);
  });

  test('of two sheets alike each is asked about', async () => {
    const { apart: book } = await books();
    const found = findJoins(TEMPLATES, { tables: withSecond(book, 'Plan'), forms: [] });
    expect(found.map(({ sheet }) => sheet)).toEqual(['Pops plan', 'Pops plan (2)']);
    expect(wayOf(found[1]).columns[0]?.to[0]?.formula).toContain('Plan_2[[#This Row],[Head]]');
  });

  test('a cell typed over a look-up is offered again, and a formula of somebody’s own is left', async () => {
    const { inOrder: book } = await books();
    expect(joins(book)).toEqual([]);
    const was = book.tables();
    await book.type('Plan', 'Most', 3, 380);
    const { columns } = wayOf(joins(book)[0]);
    expect(columns.map(({ column, cells }) => [column, cells])).toEqual([
      ['Most', [{ cell: 'M67', key: 'Hazel 400', before: '380', after: '400', isOther: true }]],
    ]);
    const at = book.tables().find(({ name }) => name === 'Plan')?.at ?? { row: 0, column: 0 };
    book.write('Pops plan', at.row + 2, at.column + 13, { formula: '=6*2', value: 12 });
    await book.calculate();
    const [join] = joins(book);
    expect(join?.left).toEqual([
      `Least is left as it is: ${address({ row: at.row + 2, column: at.column + 13 })} holds a formula of your own.`,
    ]);
    expect(wayOf(join).columns.map(({ column }) => column)).toEqual(['Most']);
    const row = was.find(({ name }) => name === 'Plan')?.rows;
    book.write('Pops plan', at.row + 3, at.column + 12, row?.[2]?.[12] ?? { value: null });
    book.write('Pops plan', at.row + 2, at.column + 13, row?.[1]?.[13] ?? { value: null });
    await book.calculate();
    expect(joins(book)).toEqual([]);
  });

  test('a column that was renamed is no partner, and a table that is only called alike is none either', async () => {
    const { apart: book } = await books();
    const renamed = book.tables().map((table) => ({
      ...table,
      headings: table.headings.map((name) => (table.name === 'Models' && name === 'Most' ? 'Full' : name)),
    }));
    const [join] = findJoins(TEMPLATES, { tables: renamed, forms: [] });
    expect(wayOf(join).columns.map(({ column }) => column)).not.toContain('Most');
    expect(join?.left).toEqual(['Most is left as it is: no list here has a column Most.']);
    const own = book
      .tables()
      .map((table) => (table.name === 'Models' ? { ...table, headings: table.headings.map((_, i) => `Mine ${i}`) } : table));
    expect(findJoins(TEMPLATES, { tables: own, forms: [] })).toEqual([]);
  }); // prettier-ignore
});

describe('where a sheet goes that others look up in', () => {
  test('what is lost already is told, and comes back as inputs or from another list', async () => {
    const { inOrder: book, apart: other } = await books();
    const gone = () => book.tables().filter(({ name }) => name !== 'Models');
    // Excel has #REF! in the formulas then, and they show nothing
    const asInExcel = gone().map((table) => ({
      ...table,
      rows: table.rows.map((row) =>
        row.map((held) =>
          held.formula?.includes('Models[')
            ? { formula: held.formula.replaceAll(/Models\[[^\]]*\]/g, '#REF!'), value: '' }
            : held,
        ),
      ),
    }));
    for (const tables of [asInExcel, gone()]) {
      const [join, ...more] = findJoins(TEMPLATES, { tables, forms: [] });
      expect(more).toEqual([]);
      expect(join?.lost).toEqual(['Most', 'Least', 'Step', 'Scale', 'Top', 'Recycle', 'Recycle least', 'In a row', 'Known']);
      const { to, columns } = wayOf(join);
      expect(to).toBe('typed');
      expect(columns.find(({ column }) => column === 'Most')?.to.slice(0, 3)).toEqual([{ value: 600 }, { value: 1200 }, { value: 400 }]);
      expect(columns.find(({ column }) => column === 'Known')?.to[0]?.formula).toBe('=Plan[[#This Row],[Head]]&""');
    }
    const [another] = findJoins(TEMPLATES, { tables: [...asInExcel, ...other.tables().filter(({ name }) => name === 'Models').map((table) => ({ ...table, name: 'Models2', sheet: 'Heads (2)' }))], forms: [] });
    expect(another?.ways.map(({ to }) => to)).toEqual([{ sheet: 'Heads (2)', table: 'Models2' }, 'typed']);
  }); // prettier-ignore

  // Excel names the other workbook before a table, and in brackets before a sheet
  test.each(['[Studio.xlsx]Heads!', 'Studio.xlsx!', "'C:\\Set\\Studio.xlsx'!"])(
    'what looks into another workbook, %s, is told as lost, and comes home to the list that is here',
    async (elsewhere) => {
      const { inOrder: book } = await books();
      const abroad = book.tables().map((table) => ({
        ...table,
        rows: table.rows.map((row) =>
          row.map((held) =>
            held.formula?.includes('Models[') && table.name === 'Plan'
              ? { ...held, formula: held.formula.replaceAll('Models[', `${elsewhere}Models[`) }
              : held,
          ),
        ),
      }));
      const [join] = findJoins(TEMPLATES, { tables: abroad, forms: [] });
      expect(join?.lost).toContain('Most');
      expect(join?.ways.map(({ to }) => to)).toEqual([{ sheet: 'Heads', table: 'Models' }, 'typed']);
      expect(wayOf(join, 1).columns[0]?.to[0]).toEqual({ value: 600 });
    },
  );

  test('a card keeps what the plan said, and then the plan what Heads said', async () => {
    const { inOrder: book } = await books();
    await book.type('Models', 'Least', 1, 9.5);
    const [dial, onCard] = [book.column('Dial', 'Set to'), book.column('Card', 'Set to')];
    const kept = keptWithout('Pops plan', TEMPLATES, book.here());
    expect(new Set(kept.map(({ table }) => table))).toEqual(new Set(['Card', 'Shot', 'Switches']));
    await write(book, kept);
    expect(book.column('Card', 'Set to')).toEqual(onCard);
    const more = keptWithout('Heads', TEMPLATES, book.here());
    expect(new Set(more.map(({ sheet }) => sheet))).toEqual(new Set(['Pops plan']));
    await write(book, more);
    expect(book.column('Plan', 'Least')[0]).toBe(9.5);
    expect(book.column('Dial', 'Set to')).toEqual(dial);
    expect(book.column('Dial', 'Note').join('')).not.toContain('not in Heads');
    // nothing speaks of it any more
    for (const { rows, sheet } of book.tables())
      if (sheet !== 'Heads')
        for (const { formula } of rows.flat())
          expect(formula ?? '').not.toMatch(/Models\[|INDEX\(Dial\[.*MATCH/);
  });
});
