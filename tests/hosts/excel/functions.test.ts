import { describe, expect, test, vi } from 'vitest';
import { FULL } from '../../full';
import { CATALOGUE, rowOf } from '../../../src/catalogue';
import type { AnyRow, Arg, ExampleCell } from '../../../src/catalogue/types';
import { exampleFormula } from '../../../src/catalogue/words';
import { call } from '../../../src/cells/call';
import { register } from '../../../src/hosts/excel/register';
import { FakeWorkbook } from './support/fake-workbook';
import {
  type Arrival,
  errorCell,
  excelCaller,
  hostFiles,
  type Invocation,
  loadOffice,
  richCell,
  type SpilledError,
} from './support/office-host';

const row = (id: string): AnyRow => rowOf(id) as AnyRow;
const one = (cell: unknown): unknown[][] => [[cell]];
const column = (...cells: unknown[]): unknown[][] => cells.map((cell) => [cell]);
const block = (cell: unknown): unknown[][] =>
  Array.isArray(cell) ? (cell as unknown[]).map((member) => [member].flat()) : one(cell);

/** The cells of an example as Excel sends them: blocks, null for what is left out. */
function sent({ id, args }: AnyRow, cells: readonly ExampleCell[]): Invocation {
  return [id, ...(args as readonly Arg[]).map((_, i) => (i < cells.length ? block(cells[i]) : null))];
}

/** The same with one argument replaced by a block of cells. */
const withArgument = ([id, ...args]: Invocation, index: number, cells: unknown): Invocation => [
  id,
  ...args.map((arg, i) => (i === index ? cells : arg)),
];

/** Half of the last digit that is printed, and the rounding of the machine. */
const slackOf = (printed: number): number =>
  0.5 * 10 ** -(String(printed).split('.')[1]?.length ?? 0) + 1e-12 * Math.abs(printed);

function expectPrinted(came: unknown, printed: number | string, formula: string): void {
  if (typeof printed === 'string') expect(came, formula).toBe(printed);
  else
    expect(
      Math.abs((came as number) - printed),
      `${formula} gave ${String(came)}, not ${printed}`,
    ).toBeLessThanOrEqual(slackOf(printed));
}

const valueOf = (arrival: Arrival | undefined): unknown => {
  if (arrival === undefined || !('value' in arrival))
    throw new Error(`an error arrived: ${JSON.stringify(arrival)}`);
  return arrival.value;
};
const cellsOf = (arrival: Arrival): unknown[] =>
  'value' in arrival ? (arrival.value as unknown[][]).flat() : [];

const EXAMPLES = CATALOGUE.flatMap((r) => r.examples.map((example) => ({ row: r, example })));
const ARGUMENTS = CATALOGUE.flatMap((r) =>
  (r.args as readonly Arg[]).map((arg, index) => ({ row: r, arg, index })),
);

describe.each(hostFiles(FULL))('through the custom-functions runtime of %s', (file) => {
  /** A fresh Excel for each test: the runtime rests half a second between two replies. */
  const openExcel = () => {
    const workbook = new FakeWorkbook('Sheet1');
    const office = loadOffice(workbook, {
      file,
      whileLoading(functions) {
        expect(functions.Error).toBeUndefined(); // it comes with the host's file, after our script
        register(functions, CATALOGUE);
      },
    });
    return excelCaller(office, workbook);
  };

  test('every example of the catalogue gives its value', async () => {
    const arrivals = await openExcel()(EXAMPLES.map((e) => sent(e.row, e.example.cells)));
    for (const [i, { row: r, example }] of EXAMPLES.entries()) {
      const formula = exampleFormula(r, example);
      const wanted = [example.gives].flat(2);
      const came = (valueOf(arrivals[i]) as unknown[][]).flat();
      expect(came.length, formula).toBe(wanted.length);
      for (const [k, printed] of wanted.entries()) expectPrinted(came[k], printed, formula);
    }
  });

  test('a single answer arrives as a range of one cell', async () => {
    expect(await openExcel()([['STOPDIFF', one(8), one(11), null]])).toEqual([{ value: [[1]] }]);
  });

  test('a column in gives a column out, and a column against a row the full grid', async () => {
    const [down, grid, shares] = await openExcel()([
      ['STOPDIFF', column(8, 11), one(16), null],
      ['STOPDIFF', column(8, 11), [[11, 16, 22]], null],
      ['LIGHTSHARE', column(16, 11, 8)],
    ]);
    expect(down).toEqual({ value: [[2], [1]] });
    expect(grid).toEqual({ value: [[1, 2, 3], [0, 1, 2]] }); // prettier-ignore
    expect((valueOf(shares) as number[][]).flat()).toEqual(
      [4 / 7, 2 / 7, 1 / 7].map((share) => expect.closeTo(share, 12)),
    );
  });

  test('ranges and cells of a sum count together, up to ten of them', async () => {
    const [apart, together] = await openExcel()([
      ['LIGHTSUM', one(8), column(11, 16), one('f/8'), null, null, null, null, null, null, null],
      ['LIGHTSUM', [[8, 11], [16, 8]]], // prettier-ignore
    ]);
    expect(apart).toEqual(together);
    expect(valueOf(apart)).toEqual([[expect.closeTo(Math.sqrt(64 + 2 ** 7 + 256 + 64), 10)]]);
  });

  test('a refusal arrives with its code and its sentence', async () => {
    const refused: [string, unknown[], string][] = [
      ['STOPDIFF', ['kumquat', 11, null], '#VALUE!'],
      ['STOPDIFF', [-8, 11, null], '#NUM!'],
      ['LIGHTMINUS', [8, 11], '#N/A'],
    ];
    const arrivals = await openExcel()(
      refused.map(([id, cells]) => [id, ...cells.map((cell) => (cell === null ? null : one(cell)))]),
    );
    for (const [i, [id, cells, code]] of refused.entries()) {
      const answer = call(row(id), cells) as { message: string };
      expect(answer.message).toMatch(/\w+.*\.$/);
      expect(arrivals[i]).toEqual({ error: code, message: answer.message });
    }
  });

  test('a refusal in a spilled answer stays in its cell, with its sentence where Excel shows one', async () => {
    const [arrival] = await openExcel()([['STOPDIFF', column(8, 'kumquat', -8), one(11), null]]);
    const [good, unread, negative] = cellsOf(arrival as Arrival) as [number, SpilledError, SpilledError];
    expect(good).toBe(1);
    expect(unread).toMatchObject({
      type: 'Error',
      basicValue: '#VALUE!',
      errorType: 'Value',
      message: expect.stringContaining('kumquat'),
    });
    expect(negative).toMatchObject({ type: 'Error', basicValue: '#NUM!', errorType: 'Num' });
    expect(negative.message).toBeUndefined(); // Excel takes none with #NUM!
  });

  test('an error in a cell comes out as that error, or as #VALUE! where Excel takes no such answer', async () => {
    const codes = [
      '#N/A',
      '#NUM!',
      '#DIV/0!',
      '#NULL!',
      '#VALUE!',
      '#REF!',
      '#NAME?',
      '#SPILL!',
      '#CALC!',
      '#BUSY!',
      '#GETTING_DATA',
    ];
    const arrivals = await openExcel()(
      codes.map((code) => ['STOPDIFF', one(errorCell(code)), one(11), null]),
    );
    expect(arrivals.map((a) => ('error' in a ? [a.error, a.message] : a))).toEqual([
      ['#N/A', ''], ['#NUM!', ''], ['#DIV/0!', ''], ['#NULL!', ''], ['#VALUE!', ''],
      ['#VALUE!', ''], ['#VALUE!', ''], ['#VALUE!', ''], ['#VALUE!', ''], ['#VALUE!', ''], ['#VALUE!', ''],
    ]); // prettier-ignore
  });

  test('an error in a range comes out in its own cell only', async () => {
    const [arrival] = await openExcel()([
      ['STOPDIFF', column(8, errorCell('#N/A'), 11, errorCell('#REF!')), one(16), null],
    ]);
    expect(cellsOf(arrival as Arrival)).toMatchObject([
      2,
      { basicValue: '#N/A' },
      1,
      { basicValue: '#VALUE!' },
    ]);
  });

  test('an empty cell gives the same answer whether it comes as 0, as null or as an empty text', async () => {
    const blanks = ARGUMENTS.map((a) => {
      const plain = sent(a.row, a.row.examples[0]?.cells ?? []);
      return [0, null, ''].map((blank) => withArgument(plain, a.index, one(blank)));
    });
    const arrivals = await openExcel()(blanks.flat());
    for (const [i, { row: r, arg }] of ARGUMENTS.entries()) {
      const [zero, nothing, empty] = arrivals.slice(3 * i, 3 * i + 3);
      expect(zero, `${r.id}, ${arg.name}: 0`).toEqual(nothing);
      // as stops from the key, an empty text is no light, and an empty cell none
      if (arg.emptyText === 'gap')
        expect(empty, `${r.id}, ${arg.name}: ""`).toMatchObject({ error: '#VALUE!' });
      else expect(empty, `${r.id}, ${arg.name}: ""`).toEqual(nothing);
    }
  });

  test('an empty cell in an optional argument is the same as none', async () => {
    const optional = ARGUMENTS.filter(({ arg }) => arg.optional);
    const plain = optional.map((a) => sent(a.row, a.row.examples[0]?.cells ?? []));
    const ask = openExcel();
    const blank = await ask(optional.map((a, i) => withArgument(plain[i] as Invocation, a.index, one(null))));
    const none = await ask(optional.map((a, i) => withArgument(plain[i] as Invocation, a.index, null)));
    expect(blank).toEqual(none);
    expect(optional.length).toBeGreaterThan(10);
  });

  test('a blank argument without which there is no answer is named', async () => {
    const [first, second] = await openExcel()([
      ['STOPDIFF', one(null), one(11), null],
      ['LIGHTSUM', [one(''), one(0)]],
    ]);
    expect(first).toEqual({ error: '#VALUE!', message: expect.stringMatching(/^from /) });
    expect(second).toEqual({ error: '#VALUE!', message: expect.stringMatching(/^readings /) });
  });

  test('a blank row of a column gives an empty text, which Excel shows as an empty cell', async () => {
    const answers = await openExcel()(
      [0, null, ''].map((blank) => ['STOPDIFF', column(8, blank, 11), one(16), null] as const),
    );
    for (const answer of answers) expect(answer).toEqual({ value: [[2], [''], [1]] });
  });

  test('of a cell that holds more than a value the plain value counts', async () => {
    const number = richCell({
      type: 'FormattedNumber',
      basicType: 'Double',
      basicValue: 8,
      numberFormat: '"f/"0',
    });
    const error = richCell({
      type: 'Error',
      basicType: 'Error',
      basicValue: '#N/A',
      errorType: 'NotAvailable',
    });
    const [plain, fault] = await openExcel()(
      [
        [
          'STOPDIFF',
          one(number),
          one(richCell({ type: 'Double', basicType: 'Double', basicValue: 16 })),
          null,
        ],
        ['STOPDIFF', one(number), one(error), null],
      ],
      { rich: true },
    );
    expect(plain).toEqual({ value: [[2]] });
    expect(fault).toEqual({ error: '#N/A', message: '' });
  });

  test('nothing that a cell cannot hold reaches the sheet, however odd the numbers', async () => {
    const odd = column(-1, 1e-308, 1e-9, 0.5, 1e9, 1e308, -1e308, 'x'.repeat(300), true, 46029);
    const strange = ARGUMENTS.map((a) =>
      withArgument(sent(a.row, a.row.examples[0]?.cells ?? []), a.index, odd),
    );
    const each = ARGUMENTS.flatMap((a) =>
      odd.map(([cell]) => withArgument(sent(a.row, a.row.examples[0]?.cells ?? []), a.index, one(cell))),
    );
    const arrivals = await openExcel()([...strange, ...each]);
    for (const [i, arrival] of arrivals.entries()) {
      const invocation = JSON.stringify([...strange, ...each][i]);
      if ('error' in arrival) {
        expect(['#VALUE!', '#NUM!', '#N/A'], invocation).toContain(arrival.error);
        expect(arrival.message, invocation).not.toBe('');
        continue;
      }
      expect(cellsOf(arrival).length, invocation).toBeGreaterThan(0);
      for (const cell of cellsOf(arrival)) {
        if (typeof cell === 'object') expect(cell, invocation).toMatchObject({ type: 'Error' });
        else expect(['number', 'string', 'boolean'], invocation).toContain(typeof cell);
      }
    }
  });

  test('20,000 cells all come back', async () => {
    const cells = Array.from({ length: 20_000 }, (_, i) => i + 1);
    const arrivals = await openExcel()(cells.map((watts) => ['STOPDIFF', one(1), one(watts), one('energy')]));
    const wrong = arrivals.filter(
      (arrival, i) => Math.abs((cellsOf(arrival)[0] as number) - Math.log2(i + 1)) > 1e-11,
    );
    expect(arrivals.length).toBe(20_000);
    expect(wrong).toEqual([]);
  });

  test('more values than a function takes are refused, not passed over', async () => {
    const [arrival] = await openExcel()([['STOPDIFF', one(8), one(11), null, one(3)]]);
    expect(arrival).toEqual({
      error: '#VALUE!',
      message: expect.stringMatching(/^STOPDIFF takes 2 or 3 values, not 4\.$/),
    });
  });

  test('a name in small letters is the same function', async () => {
    expect(await openExcel()([['stopdiff', one(8), one(11), null]])).toEqual([{ value: [[1]] }]);
  });
});

test('the script registers the whole catalogue as soon as it is loaded', async () => {
  const ids: string[] = [];
  vi.stubGlobal('CustomFunctions', { associate: (id: string) => ids.push(id) });
  await import('../../../src/hosts/excel/functions');
  vi.unstubAllGlobals();
  expect(ids).toEqual(CATALOGUE.map(({ id }) => id));
});
