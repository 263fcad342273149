import { CellValueType, type ICellData, type IObjectMatrixPrimitiveType, LocaleType } from '@univerjs/core';
import { headless } from '../../src/engine/headless';
import { medianOf, ms, say } from './measure';

/** Plain formulas in the engine without a page, from the snapshot of a workbook to the values of all its formulas. */
const ROWS = 10_000;
const LOOKED_UP = 2000;
const LOGARITHMS = 100_000;

type Row = readonly (number | string)[];
const stored = (cell: number | string): ICellData =>
  typeof cell === 'number' ? { v: cell, t: CellValueType.NUMBER } : { f: cell };

interface Sheet {
  readonly rows: number;
  readonly cells: (row: number) => Row;
  /** What the last formula of the last row gives: worked out here. */
  readonly last: number;
}
const SHEETS: Readonly<Record<string, Sheet>> = {
  [`${ROWS} rows of A*2, IF, ROUND and SUM`]: {
    rows: ROWS,
    cells: (row) => [
      row,
      `=A${row}*2`,
      `=IF(A${row}>5000,"much","little")`,
      `=ROUND(B${row}/3,2)`,
      `=SUM(A${row}:B${row})`,
    ],
    last: 3 * ROWS,
  },
  [`${LOOKED_UP} XLOOKUP over as many rows`]: {
    rows: LOOKED_UP,
    cells: (row) => [
      row,
      row * 10,
      `=XLOOKUP(${LOOKED_UP + 1 - row},$A$1:$A$${LOOKED_UP},$B$1:$B$${LOOKED_UP})`,
    ],
    last: 10,
  },
  [`${LOOKED_UP} COUNTIF over as many rows`]: {
    rows: LOOKED_UP,
    cells: (row) => [row % 100, `=COUNTIF($A$1:$A$${LOOKED_UP},A${row})`],
    last: LOOKED_UP / 100,
  },
  [`${LOOKED_UP} COUNTIF of all that is more`]: {
    rows: LOOKED_UP,
    cells: (row) => [row, `=COUNTIF($A$1:$A$${LOOKED_UP},">"&A${row})`],
    last: 0,
  },
  [`${LOGARITHMS} cells of 2*LOG(A1/8,2)`]: {
    rows: LOGARITHMS,
    cells: (row) => [row, `=2*LOG(A${row}/8,2)`],
    last: 2 * Math.log2(LOGARITHMS / 8),
  },
};

async function calculated({ rows, cells, last }: Sheet): Promise<number> {
  const cellData: IObjectMatrixPrimitiveType<ICellData> = {};
  let columns = 0;
  for (let row = 1; row <= rows; row++) {
    const given = cells(row).map(stored);
    columns = given.length;
    cellData[row - 1] = Object.fromEntries(given.entries());
  }
  const sheet = { id: 's', name: 'S', rowCount: rows + 10, columnCount: 26, cellData };
  const start = performance.now();
  const book = headless({
    id: 'b',
    name: 'B',
    locale: LocaleType.EN_US,
    styles: {},
    sheetOrder: ['s'],
    sheets: { s: sheet },
  });
  await book.calculate();
  const took = performance.now() - start;
  const [[value] = []] = book.read('S', `${String.fromCharCode(64 + columns)}${rows}`);
  book.dispose();
  if (typeof value !== 'number' || Math.abs(value - last) > 1e-9)
    throw new Error(`${String(value)}, not ${last}`);
  return took;
}

async function main(): Promise<void> {
  for (const [what, sheet] of Object.entries(SHEETS))
    say(what, { ms: ms(await medianOf(() => calculated(sheet))) });
}

void main();
