import { describe, expect, test } from 'vitest';
import type { BookSheet } from '../../src/book/book';
import { withValues } from '../../src/book/cells';
import { PAGE, scaleToPage } from '../../src/book/printedPages';
import { USUAL_HEIGHT } from '../../src/book/widthsAndHeights';
import { asLaid, clientBook, isClientPage } from '../../src/sheets/clientPage';
import { layout } from '../../src/sheets/layout';
import type { TemplateTable, TemplateValue } from '../../src/sheets/template';
import { writeXlsx } from '../../src/xlsx/write';
import { openPackage } from '../../src/xlsx/zip';
import { calculated, templateOf, type Typed, typedOver, wordsBeside } from './support';
import { together } from './together';

const estimate = templateOf('estimate');
const page = templateOf('client-page');

/** Figures and words of the trade that occur nowhere else: costs, rates, suppliers, mark-up, hours. */
const SECRETS = {
  lines: [
    ['Zephyrine Quill', 'day', 913.37, null, 'yes', 'no', 17.7],
    ['Ostrava Lamp Hire', 'hire', 61.83, 3, 'no', 'yes', 17.7],
    ['Mirelle Retouch', 'post', 57.91, null, 'no', 'yes', 17.7],
    ['Wexcombe Carriers', 'expense', 148.29, null, 'no', 'no', 6.3],
  ],
  form: { plus: 37.7, discount: 4.3, contingency: 2.9, usable: 433.19, longest: 617.83, build: 97.31, variantOf: null, moreOf: null },
} as const; // prettier-ignore
const TYPED = [
  ...SECRETS.lines.flatMap(([name, , price, , , , tax]) => [name, price, tax]),
  37.7, 4.3, 2.9, 433.19, 617.83, 97.31,
  'mark-up', 'margin', 'Overtime', 'overtime', 'HIRECOST', 'SWEEP', 'Prices', 'ForClient', 'Asked', 'Crew and prices',
].map(String); // prettier-ignore

/** All parts of a file, as text; a part that is itself packed would not be read. */
async function partsOf(bytes: Uint8Array): Promise<Map<string, string>> {
  const parts = openPackage(bytes);
  const read = parts.names.map(
    async (name) => [name, new TextDecoder().decode(await parts.read(name))] as const,
  );
  return new Map(await Promise.all(read));
}
const found = (parts: ReadonlyMap<string, string>, secret: string): string[] =>
  [...parts].filter(([, text]) => text.includes(secret)).map(([name]) => name);

/** An estimate and a client page of it in one workbook, with their values. */
async function sheets(shots?: readonly (readonly TemplateValue[])[], client = page): Promise<BookSheet[]> {
  const template = typedOver(estimate, SECRETS.form, {
    Prices: SECRETS.lines,
    ...(shots ? { Shots: shots } : {}),
  });
  const book = await together([{ template }, { template: client }]);
  expect(book.errors()).toEqual([]);
  const made = book.plans.map((plan, i) => {
    const values = book.values(i);
    return withValues(plan, (row, column) => values[row]?.[column] ?? null);
  });
  book.dispose();
  return made;
}
const prepared = (sheet: BookSheet | undefined) => {
  const made = clientBook(sheet as BookSheet);
  if ('refused' in made) throw new Error(made.refused);
  return made.book;
};
const shownIn = ({ cells }: BookSheet): string[] => cells.map(({ value }) => String(value ?? ''));

describe('what goes to the client', () => {
  test('holds no cost, no rate, no mark-up and no supplier in any raw part of the file', async () => {
    const both = await sheets();
    const whole = await partsOf(await writeXlsx({ sheets: both, names: [] }));
    const sent = await partsOf(await writeXlsx(prepared(both[1])));
    // What is worked out: everything in the columns of the prices, and in the tax of each rate, with cents or more.
    const worked = ['Prices', 'Rates', 'Lines'].flatMap((name) => {
      const area = both[0]?.tables.find((table) => table.name === name)?.area;
      return (both[0]?.cells ?? []).flatMap(({ row, column, value }) => {
        const isInside = area && row > area.row && row < area.row + area.rows && column >= area.column && column < area.column + area.columns; // prettier-ignore
        return isInside && typeof value === 'number' && /\d{2,}\.\d\d/.test(String(value)) ? [String(value)] : [];
      }); // prettier-ignore
    });
    expect(worked.length).toBeGreaterThan(20);
    for (const secret of [...TYPED, ...worked]) {
      // The costing workbook has it, so that the search would find it.
      if (!['HIRECOST', 'SWEEP', 'margin'].includes(secret))
        expect(found(whole, secret), secret).not.toEqual([]);
      expect(found(sent, secret), secret).toEqual([]);
    }
    const text = [...sent.values()].join('');
    expect(text).not.toMatch(/<f[ >]|<comment|<dataValidation|<tablePart|<definedName (?!name="_xlnm.Print)/);
    expect([...sent.keys()].filter((name) => /sheet\d+\.xml$/.test(name))).toHaveLength(1);
    expect(text).not.toContain('state="hidden"');
  });

  test('has all that a client looks for', async () => {
    const [costing, client] = await sheets();
    const shown = shownIn(prepared(client).sheets[0] as BookSheet).join('\n');
    for (const words of [
      'Vessels',
      'Pour of oat milk',
      'Included',
      'Not included',
      'Licence for use',
      'Media',
      'Territory',
      'Term',
      'Valid until',
      'Before tax',
      'Tax',
      'To pay',
      'Deposit with the order',
      '14 and 15 July 2026',
      'Studio North Light',
    ])
      // prettier-ignore
      expect(shown).toContain(words);
    const total = costing?.cells.find(({ part }) => part === 'answer')?.value;
    expect(shown).toContain(`EUR ${Number(total).toLocaleString('en', { minimumFractionDigits: 2 })}`);
    for (const words of [page.answers, page.start, 'Nr', 'your logo']) expect(shown).not.toContain(words);
  });

  test('prices in it add up to what it asks before tax', async () => {
    const [, client] = await sheets();
    const { cells } = prepared(client).sheets[0] as BookSheet;
    const cents = (text: string): number => Number(text.replace(/[^\d]/g, ''));
    const top = cells.find(({ value }) => value === 'Price');
    const prices = cells.filter(({ row, column }) => row > (top?.row ?? 0) && column === top?.column);
    const net = cells.find(({ value }) => value === 'Before tax');
    const asked = cells.find(({ row, column }) => row === net?.row && column === 1);
    expect(prices.map(({ value }) => cents(String(value))).reduce((sum, one) => sum + one)).toBe(
      cents(String(asked?.value)),
    );
  });

  test('has a place for a logo, empty, as high as the lines that are left beside it', async () => {
    const { plan, values } = await calculated(typedOver(page, { shotDates: null }));
    const [slot] = plan.merges.filter(({ row, rows }) => row > 1 && rows > 1);
    // beside the six lines from the studio's name down to the last day
    expect(slot).toEqual({ row: 4, column: 3, rows: 6, columns: 1 });
    const words = plan.cells.find(({ row, column }) => row === 4 && column === 3)?.value;
    expect(String(words)).toMatch(/^Your logo/);
    const made = prepared(withValues(plan, values)).sheets[0] as BookSheet;
    const from = made.cells.find(({ value }) => value === 'Studio North Light')?.row;
    // one line less: nobody has said when it is shot
    expect(made.merges).toEqual([{ row: from, column: 3, rows: 5, columns: 1 }]);
    expect(shownIn(made).join()).not.toContain('Your logo');
  });

  test('leaves out what nobody agreed on, and rows that hold nothing', async () => {
    const sheet = await calculated(typedOver(page, { medium: null, territory: null, term: null, includedB: '  ' })); // prettier-ignore
    const made = prepared(withValues(sheet.plan, sheet.values)).sheets[0] as BookSheet;
    const shown = shownIn(made);
    expect(shown).not.toContain('Licence for use');
    expect(shown).not.toContain('Media');
    const rows = new Map<number, string>();
    for (const { row, value } of made.cells) rows.set(row, `${rows.get(row) ?? ''}${value ?? ''}`);
    expect([...rows.values()].filter((text) => text.trim() === '')).toEqual([]);
  });

  test('cuts no text at the next cell, at the logo or at the edge of the paper', async () => {
    const long =
      'Printed catalogue, own website, social media of the client and of its shops, fairs and packaging';
    const shots = layout(page).tables.get('ClientShots') as TemplateTable;
    const rows = shots.rows.map((row, i) => (i === 0 ? [long, 12, 'EUR 4,696.67', long, 1] : row));
    const typed = { jobName: long, medium: long, includedA: 'One\nTwo\nThree' };
    const sheet = await calculated(typedOver(page, typed, { ClientShots: rows }));
    const made = prepared(withValues(sheet.plan, sheet.values)).sheets[0] as BookSheet;
    const lineOf = (label: string) =>
      made.cells.find(({ value, column }) => value === label && column === 0)?.row as number;
    const room = (row: number) => made.merges.filter((merge) => merge.row === row && merge.rows === 1);
    // up to the logo, beyond it, and in its own column of the table: 96 letters of 10 points, half of that wide each, are
    // 480 points; columns of 22, 17 and 33 characters are 119, 93 and 177 points
    const [job, media, included, shot] = ['Job', 'Media', 'Included', long].map(lineOf) as [
      number,
      number,
      number,
      number,
    ];
    expect(room(job)).toEqual([{ row: job, column: 1, rows: 1, columns: 2 }]);
    expect(room(media)).toEqual([{ row: media, column: 1, rows: 1, columns: 3 }]);
    expect(room(shot)).toEqual([]);
    // so many lines of 12 points at least
    for (const [row, least] of [
      [job, 3],
      [media, 2],
      [included, 3],
      [shot, 5],
    ] as const)
      expect(made.heights[row], String(row)).toBeGreaterThanOrEqual(12 * least);
    const broken = made.cells.filter(({ style }) => style?.wrap).map(({ row, column }) => `${row},${column}`);
    expect(broken).toEqual(
      expect.arrayContaining([`${job},1`, `${media},1`, `${included},1`, `${shot},0`, `${shot},3`]),
    );
    // what fits stays as it is
    expect(made.heights[lineOf('Territory')]).toBe(USUAL_HEIGHT);
  });

  test('is one page up to twelve shots, and two with more', async () => {
    const shots = (n: number) =>
      Array.from({ length: n }, (_, i) => [`Shot ${i + 1}`, 1, 1, 10, null, 1, 1, null]);
    const height = async (n: number): Promise<number> => {
      // a person adds the rows beyond those of the page, with their numbers
      const own = layout(page).tables.get('ClientShots') as TemplateTable;
      const numbered = Array.from({ length: Math.max(n, own.rows.length) }, (_, i) => [
        null,
        null,
        null,
        null,
        i + 1,
      ]);
      const [, client] = await sheets(shots(n), typedOver(page, {}, { ClientShots: numbered }));
      const { page: printed, widths, heights } = prepared(client).sheets[0] as BookSheet;
      const rows = Array.from({ length: printed.area?.rows ?? 0 }, (_, row) => heights[row] ?? USUAL_HEIGHT);
      return (rows.reduce((sum, one) => sum + one, 0) * scaleToPage(printed, widths)) / PAGE.upright.height;
    };
    expect(await height(12)).toBeLessThanOrEqual(1);
    const more = await height(24);
    expect(more).toBeGreaterThan(1);
    expect(more).toBeLessThanOrEqual(2);
  });

  test('is refused while the estimate is not ready, and where more is shot than the page has rows for', async () => {
    const row = (i: number, tax: number | null) => [`line ${i}`, 'job', 10, null, null, null, tax];
    const of = async (prices: readonly (readonly TemplateValue[])[], n = 1) => {
      const shots = Array.from({ length: n }, (_, i) => [`Shot ${i + 1}`, 1, 1, 10, null, 1, 1, null]);
      const template = typedOver(estimate, SECRETS.form, { Prices: prices, Shots: shots });
      const book = await together([{ template }, { template: page }]);
      const values = book.values(1);
      book.dispose();
      return clientBook(withValues(book.plans[1] as BookSheet, (r, c) => values[r]?.[c] ?? null));
    };
    expect(await of([row(1, 19), row(2, null)])).toEqual({
      refused: 'D15 says: the Estimate: line 2, type: its tax in percent, 0 for none.',
    });
    expect(await of([row(1, 19)], 13)).toEqual({
      refused: 'D15 says: more shots: add rows with their Nr.',
    });
  });

  test('is refused where a row or a column of it is hidden, and not where that holds nothing', async () => {
    const { plan, values } = await calculated(page);
    const sheet = withValues(plan, values);
    const top = plan.tables.find(({ name }) => name === 'ClientShots')?.area.row as number;
    // the second shot of three, and rows without a shot
    for (const rows of [{ hiddenRows: [top + 2] }, { filteredRows: [top + 2] }])
      expect(clientBook({ ...sheet, ...rows })).toEqual({
        refused: `A${top + 3} is hidden, and holds something: show it or clear it.`,
      });
    expect(clientBook({ ...sheet, hiddenRows: [0, 1, top + 5] })).toHaveProperty('book');
    expect(clientBook(sheet, [2])).toEqual({
      refused: `C${top + 1} is hidden, and holds something: show it or clear it.`,
    });
    expect(clientBook(sheet, [7])).toHaveProperty('book');
  });

  test('is nothing where nothing is typed, or a cell shows an error', async () => {
    const empty = await calculated(page, false);
    expect(clientBook(withValues(empty.plan, empty.values))).toEqual({
      refused: 'No shot stands on it yet.',
    });
    const { plan, values } = await calculated(page);
    const broken = withValues(plan, (row, column) =>
      row === 12 && column === 1 ? { error: '#N/A' } : values(row, column),
    );
    expect(clientBook(broken)).toEqual({ refused: 'B13 shows #N/A.' });
  });
});

test('where looks are not told, a row has those of its label, of the headings, or of the row above it', async () => {
  const { plan, values } = await calculated(page);
  const table = plan.tables.find(({ name }) => name === 'ClientShots')?.area;
  const headings = table?.row ?? 0;
  const rows = Array.from({ length: headings + (table?.rows ?? 0) }, (_, row) =>
    [0, 1, 2, 3].map((column) => values(row, column) ?? ''),
  );
  // somebody has added a row below the client's, and a shot below the others
  rows.splice(6, 0, ['Contact', 'A. Miller', '', '']);
  rows.push(['Bowl', 2, 'EUR 5.00', '']);
  const as = asLaid(plan, rows, headings + 1);
  const lookOf = (text: string) => as.cells.find(({ value, column }) => value === text && column < 2)?.style;
  expect(lookOf('Contact')).toEqual(lookOf('For'));
  expect(lookOf('A. Miller')).toEqual(lookOf('Slate & Glaze'));
  expect(lookOf('Licence for use')).toMatchObject({ bold: true });
  expect(lookOf('Bowl')).toEqual(lookOf('Vessels'));
  expect(lookOf('Shot')).toMatchObject({ bold: true, wrap: true });
  const shown = shownIn(prepared(as).sheets[0] as BookSheet);
  expect(shown).toEqual(expect.arrayContaining(['Contact', 'Bowl', 'EUR 5.00', 'EUR 8,756.74']));
  // the place for a logo reaches past the row that was added
  expect(prepared(as).sheets[0]?.merges).toEqual([{ row: 1, column: 3, rows: 7, columns: 1 }]);
});

describe('the sheet itself', () => {
  const told = async (typed: Typed, rows?: readonly (readonly TemplateValue[])[]) => {
    const template = typedOver(page, typed, rows ? { ClientShots: rows } : {});
    const sheet = await calculated(template);
    return { ...sheet, beside: wordsBeside(template, sheet, 'clientPays') };
  };
  test('is known by its table', async () => {
    const { plan } = await calculated(page);
    expect(isClientPage(plan)).toBe(true);
    expect(isClientPage((await calculated(estimate)).plan)).toBe(false);
  });
  test('alone, it has its dates as a person reads and types them', async () => {
    const sheet = await calculated(page);
    // the demo's own, as the Estimate has them: 46188 days after 1899-12-30, and thirty more
    expect(sheet.column('Asked', 'Says').slice(4, 6)).toEqual(['2026-06-15', '2026-07-15']);
    expect([sheet.cell('estimateDate'), sheet.cell('validTo')]).toEqual(['2026-06-15', '2026-07-15']);
    const { rows } = layout(page).tables.get('Asked') as TemplateTable;
    const typed = rows.map(([what = null, says = null]) => [what, what === 'Dated' ? 46188 : says]);
    // a spreadsheet may make a day's number of what is typed: the page shows it as a day
    const numbered = await calculated(typedOver(page, {}, { Asked: typed }));
    const at = layout(page).cells.get('estimateDate')?.place;
    const shown = numbered.plan.cells.find(({ row, column }) => row === at?.row && column === at.column);
    expect([numbered.cell('estimateDate'), shown?.style?.format]).toEqual([46188, 'yyyy-mm-dd;@']);
  });
  test('a space beside a shot that is empty otherwise is no shot', async () => {
    const table = layout(page).tables.get('ClientShots') as TemplateTable;
    const rows = table.rows.map((row, i) => (i === 5 ? [' ', ' ', null, null, 6] : row));
    expect((await told({}, rows)).cell('rowsUsed')).toBe(3);
  });
  test('says that a sum or a date is missing, and shows none of the others then', async () => {
    const { rows } = layout(page).tables.get('Asked') as TemplateTable;
    for (const missing of ['Tax', 'Valid until']) {
      const typed = rows.map(([what = null, says = null]) => [what, what === missing ? ' ' : says]);
      const template = typedOver(page, {}, { Asked: typed });
      const sheet = await calculated(template);
      expect(wordsBeside(template, sheet, 'clientPays'), missing).toBe('! see the numbers right of the page');
      expect(sheet.cell('clientPays')).toBe('');
    }
  });
  test('says what a shot lacks, and shows no sum then', async () => {
    const table = layout(page).tables.get('ClientShots') as TemplateTable;
    const rows = table.rows.map((row, i) => (i === 1 ? ['Pour', null, 'EUR 1.00', null, 2] : row));
    const sheet = await told({}, rows);
    expect(sheet.beside).toBe('! shot 2: pictures');
    expect([sheet.cell('clientPays'), sheet.cell('clientNet'), sheet.cell('clientTax')]).toEqual([
      '',
      '',
      '',
    ]);
  });
});
