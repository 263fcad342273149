import type { BookCell, BookSheet, BookTable } from '../book';

/** What stands above the columns of a table: in its cells, which a person sees and types into, or else in its own list. */
export function headingsOf({ cells }: BookSheet, { area, columns }: BookTable): readonly string[] {
  const above = new Map<number, BookCell>();
  for (const cell of cells) if (cell.row === area.row) above.set(cell.column, cell);
  return Array.from({ length: area.columns }, (_, i) => {
    const shown = textOf(above.get(area.column + i)?.value ?? null);
    return shown.trim() === '' ? (columns[i]?.name ?? '') : shown;
  });
}

export function textOf(value: BookCell['value']): string {
  if (value === null) return '';
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  return typeof value === 'object' ? value.error : String(value);
}
