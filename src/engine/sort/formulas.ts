import type { Injector, Workbook } from '@univerjs/core';
import { FormulaDataModel } from '@univerjs/engine-formula';
import { TableManager } from '@univerjs/sheets-table';
import { address } from '../../formula/address';
import type { Area } from '../../formula/area';
import { parseArea } from '../../formula/areaText';
import { isPartOf, reordered } from '../../formula/followEdit';
import { lex } from '../../formula/lex';
import { isMeantOf } from '../../formula/sheetPlace';
import { areaOfGridRange } from '../gridRange';
import { reorderOf, type RowsSorted } from './rowsSorted';

/** A formula of the workbook, and where it stands. */
export interface Standing {
  readonly sheetId: string;
  readonly sheetName: string;
  readonly row: number;
  readonly column: number;
  readonly formula: string;
}

export function formulasOf(injector: Injector, workbook: Workbook): Standing[] {
  const model = injector.get(FormulaDataModel);
  return workbook.getSheets().flatMap((sheet) => {
    const sheetId = sheet.getSheetId();
    const found: Standing[] = [];
    sheet.getCellMatrix().forValue((row, column, cell) => {
      if (!cell?.f && !cell?.si) return;
      const formula = model.getFormulaStringByCell(row, column, sheetId, workbook.getUnitId());
      if (formula) found.push({ sheetId, sheetName: sheet.getName(), row, column, formula });
    });
    return found;
  });
}

const isSame = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();

/** The areas of a sheet that a formula names, as it is written there. */
export const areasIn = (
  formula: string,
  isMeant: (before?: string) => boolean,
): readonly (readonly [text: string, area: Area])[] =>
  lex(formula).flatMap((token) => {
    if ((token.kind !== 'cells' && token.kind !== 'lines') || !isMeant(token.before)) return [];
    const text = token.to === undefined ? token.from : `${token.from}:${token.to}`;
    const area = parseArea(text);
    return area ? [[text.replaceAll('$', ''), area] as const] : [];
  });

/** How a refusal ends. */
export const CANNOT_FOLLOW = 'Sorted, it would answer something else. Nothing was changed.';

/** Why rows cannot change places with formulas as they are: an answer would be another one without a word. */
export function formulaAgainst(
  injector: Injector,
  sorted: RowsSorted,
  formulas: readonly Standing[],
  sheetName: string,
): string | undefined {
  const block = areaOfGridRange(sorted.range);
  const after = reordered(reorderOf(sorted));
  const tables = injector
    .get(TableManager)
    .getTablesBySubunitId(sorted.unitId, sorted.subUnitId)
    .filter((table) =>
      isPartOf({ ...areaOfGridRange(table.getRange()), rows: 1, row: block.row }, { ...block, rows: 2 }),
    )
    .map((table) => table.getDisplayName());
  for (const { sheetId, sheetName: on, row, column, formula } of formulas) {
    const isHere = sheetId === sorted.subUnitId;
    const isInRows = isHere && row >= block.row && row < block.row + block.rows;
    const isOwn = isInRows && column >= block.column && column < block.column + block.columns;
    const cell = address({ row, column }) + (isHere ? '' : ` of “${on}”`);
    for (const [text, area] of areasIn(formula, isMeantOf(sheetName, isHere))) {
      const isOwnRow = area.row === row && area.rows === 1;
      if (isOwn && !isOwnRow && isPartOf(area, block))
        return `The formula in ${cell} reads another of these rows: ${text}. ${CANNOT_FOLLOW}`;
      if (!after(area)) return `The formula in ${cell} reads a part of these rows: ${text}. ${CANNOT_FOLLOW}`;
    }
    if (isInRows && !isOwn && tables.some((name) => readsThisRow(formula, name)))
      return `The formula in ${cell} stands beside the table and reads this row of it. ${CANNOT_FOLLOW}`;
  }
  return undefined;
}

const readsThisRow = (formula: string, table: string): boolean =>
  lex(formula).some(
    (token) =>
      token.kind === 'columns' &&
      token.table !== undefined &&
      isSame(token.table, table) &&
      /#This Row|@/i.test(token.inside),
  );
