import { type Block, type CellWrite } from '../../../src/pane/balance/block';
import { errorFromText } from '../../../src/formula/errors';

/** A block from lines of cells with | between them; a cell that begins with = counts as a formula. */
export const blockOf = (text: string, sheet = 'Balance'): Block => ({
  sheet,
  row: 4,
  column: 0,
  cells: text
    .trim()
    .split('\n')
    .map((line) => line.split('|').map((cell) => ({ value: valueOf(cell.trim()), isFormula: cell.trim().startsWith('=') }))), // prettier-ignore
});
const valueOf = (text: string): unknown => {
  const plain = text.startsWith('=') ? text.slice(1) : text;
  // 37.500 is meant as a text
  return plain !== '' && !plain.endsWith('.500') && !Number.isNaN(Number(plain))
    ? Number(plain)
    : errorFromText(plain);
};

/** The same with some cells written. */
export const withWrites = (block: Block, writes: readonly CellWrite[]): Block => ({
  ...block,
  cells: block.cells.map((line, r) =>
    line.map((cell, c) => {
      const write = writes.find(({ row, column }) => row === r && column === c);
      return write ? { value: write.value, isFormula: false } : cell;
    }),
  ),
});

/** Two heads, each alone at three points; the second is at its most. */
export const TABLE = `
Point       |Wanted|Kind    |Within|Across|Up |Ambient|Alder 600|Cedar 2400|Measured
Metered at  |      |        |      |      |   |       |1/4      |600 Ws    |
Scale       |      |        |      |      |   |       |fraction |energy    |
Most        |      |        |      |      |   |       |600      |600       |
Least       |      |        |      |      |   |       |9.375    |37.5      |
Step        |      |        |      |      |   |       |0.1      |0.1       |
Locked      |      |        |      |      |   |       |         |          |
May go off  |      |        |      |      |   |       |no       |          |
Most pops   |      |        |      |      |   |       |1        |1         |
Set to      |      |        |      |      |   |       |         |          |
Pops        |      |        |      |      |   |       |         |          |
Vessel      |16    |equal   |0.1   |0     |0  |none   |11       |2         |
Bowl        |16    |        |0.1   |30    |-5 |none   |2        |11        |
Rim         |f/22  |at most |      |-25   |20 |none   |8        |8 3       |
`;
