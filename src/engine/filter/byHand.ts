import {
  type CustomData,
  type IMutationInfo,
  type Injector,
  type IRange,
  type IRowData,
  IUniverInstanceService,
  type Nullable,
  type Univer,
  UniverInstanceType,
  type Workbook,
  type Worksheet,
} from '@univerjs/core';
import {
  SetRowDataMutation,
  SetRowHiddenCommand,
  SetSpecificRowsVisibleCommand,
  SheetInterceptorService,
} from '@univerjs/sheets';

const KEY = 'sweeptable';
const MARK = 'hidden by hand';

/** What a hidden row carries that no filter hides, through edits, undo and storage: one of a table without it is filtered out. */
export const BY_HAND: CustomData = { [KEY]: MARK };

/** Whether a person has hidden a row, and no filter. */
export const isByHand = (row: Nullable<Partial<IRowData>>): boolean => row?.custom?.[KEY] === MARK;

/** Rows of a sheet. */
interface RowsOfSheet {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly rows: readonly number[];
}

export const sheetIn = (
  injector: Injector,
  { unitId, subUnitId }: Omit<RowsOfSheet, 'rows'>,
): Nullable<Worksheet> =>
  injector
    .get(IUniverInstanceService)
    .getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET)
    ?.getSheetBySheetId(subUnitId);

interface Marking {
  readonly redos: IMutationInfo[];
  readonly undos: IMutationInfo[];
}

/** The steps that say of rows whether a person has hidden them, and those that take that back: none where that is said already. */
export function marked(injector: Injector, about: RowsOfSheet, isHand: boolean): Marking {
  const { unitId, subUnitId, rows } = about;
  const known = sheetIn(injector, about)?.getRowManager().getRowData() ?? {};
  const other = rows.filter((row) => isByHand(known[row]) !== isHand);
  if (other.length === 0) return { redos: [], undos: [] };
  const step = (as: boolean): IMutationInfo[] => {
    const rowData = Object.fromEntries(
      other.map((row) => [row, { custom: { ...known[row]?.custom, [KEY]: as ? MARK : undefined } }]),
    );
    return [{ id: SetRowDataMutation.id, params: { unitId, subUnitId, rowData } }];
  };
  return { redos: step(isHand), undos: step(!isHand) };
}

interface Hidden {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly ranges: readonly IRange[];
}

const rowsIn = (ranges: readonly IRange[]): readonly number[] =>
  ranges.flatMap(({ startRow, endRow }) =>
    Array.from({ length: endRow - startRow + 1 }, (_, i) => startRow + i),
  );

/** Has rows that are hidden by the grid's own commands say so, in the same step, until they are shown. */
export function knowHands(univer: Univer): void {
  const injector = univer.__getInjector();
  injector.get(SheetInterceptorService).interceptCommand({
    getMutations({ id, params }) {
      const isHidden = id === SetRowHiddenCommand.id;
      if (!isHidden && id !== SetSpecificRowsVisibleCommand.id) return { redos: [], undos: [] };
      const { unitId, subUnitId, ranges } = params as Hidden;
      return marked(injector, { unitId, subUnitId, rows: rowsIn(ranges) }, isHidden);
    },
  });
}
