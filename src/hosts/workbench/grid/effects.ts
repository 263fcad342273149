import { type ICommandInfo, type IRange, Rectangle } from '@univerjs/core';
import {
  EffectRefRangId,
  handleCommonDefaultRangeChangeWithEffectRefCommands,
  handleDefaultRangeChangeWithEffectRefCommands,
} from '@univerjs/sheets';
import { FormulaRefRangeService } from '@univerjs/sheets-formula';
import {
  type After,
  inserted,
  isPartOf,
  type Lines,
  moved,
  removed,
  reordered,
} from '../../../formula/followEdit';
import { reorderOf, type RowsSorted, rowsSortedBy } from '../../../engine/sort/rowsSorted';
import { areaOfGridRange, gridRange } from '../../../engine/gridRange';
import type { Grid } from './grid';
import { replaceMethod } from '../../../engine/mends/replaceMethod';

/** What an edit does to the places of a sheet. */
export interface Effect {
  readonly sheetId: string;
  readonly sheetName: string;
  /** Where the cells of an area are: no single area, where only some of them have moved. */
  readonly areas: (range: IRange) => readonly IRange[];
  /** Where the grid takes the cells of an input rule for, by itself. */
  readonly byGrid: (range: IRange) => readonly IRange[];
  /** Where what a formula names is. */
  readonly after: After;
  /** Whole rows or columns that go away. */
  readonly removed: readonly Lines[];
}

interface Params {
  readonly subUnitId?: string;
  readonly range: IRange;
  readonly ranges?: readonly IRange[];
  readonly fromRange: IRange;
  readonly toRange: IRange;
  readonly fromSubUnitId?: string;
  readonly toSubUnitId?: string;
}

const rowsOf = ({ startRow, endRow }: IRange): Lines => ({
  axis: 'rows',
  at: startRow,
  count: endRow - startRow + 1,
});
const columnsOf = ({ startColumn, endColumn }: IRange): Lines => ({
  axis: 'columns',
  at: startColumn,
  count: endColumn - startColumn + 1,
});

type OfLines = Pick<Effect, 'after' | 'removed'>;

/** Lines that lie apart go one after the other, the last ones first. */
const allRemoved = (lines: readonly Lines[]): OfLines => {
  const each = [...lines].sort((a, b) => b.at - a.at).map(removed);
  return {
    after: (area) => each.reduce<ReturnType<After>>((left, after) => left && after(left), area),
    removed: lines,
  };
};
const noneRemoved = (after: After): OfLines => ({ after, removed: [] });

/** What whole lines do that come in, go away or move. */
function ofLines(id: string, { range, ranges = [range], fromRange, toRange }: Params): OfLines | undefined {
  switch (id) {
    case EffectRefRangId.InsertRowCommandId:
      return noneRemoved(inserted(rowsOf(range)));
    case EffectRefRangId.InsertColCommandId:
      return noneRemoved(inserted(columnsOf(range)));
    case EffectRefRangId.RemoveRowCommandId:
      return allRemoved(ranges.map(rowsOf));
    case EffectRefRangId.RemoveColCommandId:
      return allRemoved(ranges.map(columnsOf));
    case EffectRefRangId.MoveRowsCommandId:
      return noneRemoved(moved(rowsOf(fromRange), toRange.startRow));
    case EffectRefRangId.MoveColsCommandId:
      return noneRemoved(moved(columnsOf(fromRange), toRange.startColumn));
    default:
      return undefined;
  }
}

const OF_CELLS: readonly string[] = [
  EffectRefRangId.MoveRangeCommandId,
  EffectRefRangId.DeleteRangeMoveLeftCommandId,
  EffectRefRangId.DeleteRangeMoveUpCommandId,
  EffectRefRangId.InsertRangeMoveDownCommandId,
  EffectRefRangId.InsertRangeMoveRightCommandId,
];

/** Where the cells of an area are once rows are sorted: each row by itself, and what lies beside them where it was. */
export const areasAfterSort =
  (sorted: RowsSorted) =>
  (range: IRange): readonly IRange[] => {
    const { range: rows, from } = sorted;
    const common = Rectangle.getIntersects(range, rows);
    if (!common || !isPartOf(areaOfGridRange(range), areaOfGridRange(rows))) return [range];
    const placed: IRange[] = [];
    for (let row = common.startRow; row <= common.endRow; row++) {
      const now = rows.startRow + from.indexOf(row - rows.startRow);
      placed.push({ ...common, startRow: now, endRow: now });
    }
    return Rectangle.mergeRanges([...Rectangle.subtract(range, common), ...placed]);
  };

function ofSortedRows(grid: Grid, sorted: RowsSorted): Effect | undefined {
  const sheet = grid.api.getActiveWorkbook()?.getSheetBySheetId(sorted.subUnitId);
  if (!sheet) return undefined;
  return {
    sheetId: sorted.subUnitId,
    sheetName: sheet.getSheetName(),
    areas: areasAfterSort(sorted),
    byGrid: (range) => [range],
    after: reordered(reorderOf(sorted)),
    removed: [],
  };
}

/** What a command will do to the places of a sheet; nothing where it leaves all in place, or takes cells to another sheet. */
export function effectOf(grid: Grid, command: ICommandInfo): Effect | undefined {
  const sorted = rowsSortedBy(command);
  if (sorted) return ofSortedRows(grid, sorted);
  const params = command.params as Params | undefined;
  const workbook = grid.api.getActiveWorkbook();
  if (!workbook || !params) return undefined;
  const sheet =
    workbook.getSheetBySheetId(params.subUnitId ?? params.fromSubUnitId ?? '') ?? workbook.getActiveSheet();
  const at = {
    sheetId: sheet.getSheetId(),
    sheetName: sheet.getSheetName(),
    byGrid: (range: IRange) => handleCommonDefaultRangeChangeWithEffectRefCommands(range, command as never),
  };
  const lines = ofLines(command.id, params);
  if (lines) {
    const areas = (range: IRange): IRange[] => {
      const now = lines.after(areaOfGridRange(range));
      return now ? [gridRange(now)] : [];
    };
    return { ...at, ...lines, areas };
  }
  const isAcross = params.toSubUnitId !== undefined && params.toSubUnitId !== params.fromSubUnitId;
  if (!OF_CELLS.includes(command.id) || isAcross) return undefined;
  return {
    ...at,
    areas: (range) => Rectangle.mergeRanges(at.byGrid(range)),
    removed: [],
    after: (area) => {
      const now = handleDefaultRangeChangeWithEffectRefCommands(gridRange(area), command as never);
      return now ? areaOfGridRange(now) : undefined;
    },
  };
}

/**
 * The grid has formulas of conditions and input rules follow its edits, but what they hold with dollar signs it leaves where it
 * was, and it makes two rules of one. It is told of none of them any more: see followRules.ts. Call it before there is a grid.
 */
export function stopFollowing(): void {
  const nothing = () => ({ dispose: () => undefined });
  for (const name of ['registerRangeFormula', 'registerFormula'])
    replaceMethod(FormulaRefRangeService.prototype, name, () => nothing);
}
