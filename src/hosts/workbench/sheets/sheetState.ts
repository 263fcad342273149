import type { ICellData, IStyleData, IWorkbookData, Nullable } from '@univerjs/core';
import { storedDecorations } from '../book/decorationsToBook';
import { keptWith } from '../book/keptWithSheet';
import type { Grid } from '../grid/grid';

function plainLook(style: Nullable<IStyleData>): unknown {
  const { n: _shownAs, ...look } = style ?? {};
  return Object.keys(look).length > 0 ? look : undefined;
}

/**
 * What was typed into a cell and how it looks: not what its formula shows, which follows other cells, nor as what it shows it, which
 * the grid takes from them too.
 */
function typedIn({ styles }: IWorkbookData, cell: Nullable<ICellData>): unknown {
  if (!cell) return undefined;
  const { f, si, p, v, s } = cell;
  const isFormula = Boolean(f) || Boolean(si);
  const style = typeof s === 'string' ? styles[s] : s;
  const kept = { f, si, p, v: isFormula ? undefined : v, s: isFormula ? plainLook(style) : style };
  return Object.values(kept).every((part) => (part ?? '') === '') ? undefined : kept;
}

const sorted = <T>(record: Readonly<Record<string, T>> | undefined): [string, T][] =>
  Object.entries(record ?? {}).sort(([a], [b]) => a.localeCompare(b, 'en', { numeric: true }));

/**
 * Everything on a sheet that may be somebody's work, to see later whether it is still the same: its name, what is typed,
 * looks, merged cells, tables, rules, conditions, notes, charts and pictures with their places. Widths and heights are not: the grid
 * fits some by itself.
 */
export function sheetState({ api }: Grid, id: string): string | undefined {
  const snapshot = api.getActiveWorkbook()?.save();
  const sheet = snapshot?.sheets[id];
  if (!snapshot || !sheet) return undefined;
  const cells = sorted(sheet.cellData as Record<string, Record<string, Nullable<ICellData>>>).map(
    ([row, line]) => [
      row,
      sorted(line).flatMap(([column, cell]) => {
        const typed = typedIn(snapshot, cell);
        return typed === undefined ? [] : [[column, typed]];
      }),
    ],
  );
  const filled = cells.filter(([, line]) => (line as unknown[]).length > 0);
  const kept = keptWith({ custom: sheet.custom });
  const beside = [storedDecorations(snapshot)(id), kept?.charts, kept?.pictures];
  return JSON.stringify([sheet.name, filled, sheet.mergeData, ...beside]);
}
