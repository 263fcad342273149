import type { BookCell, BookSheet } from '../../book/book';
import { usedArea } from '../../book/cells';
import { address } from '../../formula/address';
import { isCellError } from '../../formula/errors';
import { OURS } from '../../formula/names';
import { saysTheSame } from '../../formula/same';
import { TEXT } from './cells';
import { holds } from './formulaBlocks';
import { excelRange } from './ranges';

/** A cell that Excel made something else of than was planned, as a person would see both. */
export interface Difference {
  readonly cell: string;
  readonly holds: string;
  readonly wanted: string;
}

export interface ReadBack {
  readonly differences: readonly Difference[];
  /** Whether a cell shows that Excel does not know our functions. */
  readonly unknownFunctions: boolean;
}

/** What a cell should hold that has no formula, as Excel tells it. */
function plain({ value, style }: BookCell): string | number | boolean {
  if (value === null) return '';
  if (isCellError(value)) return value.error;
  return style?.format === TEXT ? String(value) : value;
}

function isAsPlanned(cell: BookCell, held: unknown, { tables }: BookSheet): boolean {
  const { formula } = cell;
  if (formula === undefined) return held === plain(cell);
  const table = tables.find(({ area }) => holds(area, cell));
  return typeof held === 'string' && saysTheSame(formula, held, table?.name);
}

const said = (content: unknown): string => (content === '' ? 'nothing' : String(content));

/** Every cell that is not as planned, those among them of which nothing was planned. */
function differences(planned: BookSheet, formulas: readonly (readonly unknown[])[]): Difference[] {
  const cells = new Map(planned.cells.map((cell) => [address(cell), cell]));
  return formulas.flatMap((line, row) =>
    line.flatMap((held, column) => {
      const at = address({ row, column });
      const cell = cells.get(at) ?? { row, column, value: null };
      if (isAsPlanned(cell, held, planned)) return [];
      return [{ cell: at, holds: said(held), wanted: said(cell.formula ?? plain(cell)) }];
    }),
  );
}

/** Asks whether somebody else has written on a sheet of which not all is there yet. Gives that after the next sync. */
export function askWhetherByTwo(sheet: Excel.Worksheet, planned: BookSheet): () => boolean {
  const used = sheet.getUsedRangeOrNullObject(true).load('formulas,rowIndex,columnIndex');
  const cells = new Map(planned.cells.map((cell) => [address(cell), cell]));
  // Where a formula was planned Excel may have filled another one for the time being.
  const isOurs = (held: unknown, cell: BookCell | undefined): boolean =>
    held === '' ||
    (cell !== undefined &&
      (isAsPlanned(cell, held, planned) || (typeof held === 'string' && held.startsWith('='))));
  return () =>
    !used.isNullObject &&
    used.formulas.some((line: unknown[], r) =>
      line.some((held, c) => {
        const at = address({ row: used.rowIndex + r, column: used.columnIndex + c });
        return !isOurs(held, cells.get(at));
      }),
    );
}

/** Asks for all cells of a sheet that has just been laid. Gives how they compare with the plan, after the next sync. */
export function askCells(sheet: Excel.Worksheet, planned: BookSheet): () => ReadBack {
  const used = excelRange(sheet, usedArea(planned)).load('formulas,text,values');
  return () => ({
    differences: differences(planned, used.formulas),
    // A column may be too narrow for the word, and the value another than the word (OfficeDev/office-js #5865).
    unknownFunctions: planned.cells.some(
      ({ row, column, formula }) =>
        formula?.includes(OURS) &&
        [used.text, used.values].some((lines: unknown[][]) => lines[row]?.[column] === '#NAME?'),
    ),
  });
}
