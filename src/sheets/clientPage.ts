import type { Book, BookCell, BookSheet, BookStyle, Part } from '../book/book';
import { usedArea } from '../book/cells';
import { address } from '../formula/address';
import type { Area } from '../formula/area';
import { isCellError } from '../formula/errors';
import { LEAD_ROWS } from './layout';
import { styleOf } from './looks';
import { wholeTexts } from './wholeTexts';

/** The table of the sheet that a client reads; a second one in the same workbook has a number behind it. */
const CLIENT_TABLE = /^ClientShots(_\d+)?$/i;
/** How what a client gets is called: the file, and its one sheet. */
export const CLIENT_NAME = 'Estimate';

/** Whether a sheet is one that clients read. */
export const isClientPage = ({
  tables,
}: {
  readonly tables: readonly { readonly name: string }[];
}): boolean => tables.some(({ name }) => CLIENT_TABLE.test(name));

/**
 * A sheet whose looks are not known, in those that the template gives it. Rows that somebody added look like the row above
 * them: what stands in a row is known by its label, and below the headings of the table by these.
 *
 * @param plan - the sheet as the template lays it.
 * @param values - of every row of the sheet, down to the last of its table.
 * @param headings - row of the table's headings, there.
 */
export function asLaid(
  plan: BookSheet,
  values: readonly (readonly BookCell['value'][])[],
  headings: number,
): BookSheet {
  const table = plan.tables.find(({ name }) => CLIENT_TABLE.test(name));
  const top = table?.area.row ?? 0;
  const labels = new Map<BookCell['value'] | undefined, number>(
    plan.cells.flatMap(({ row, column, value }) =>
      column === 0 && row < top && value !== null ? [[value, row] as const] : [],
    ),
  );
  let above = 0;
  const like = values.map((line, row) => {
    if (row >= headings) return Math.min(top + row - headings, top + 1);
    if (line.every((value) => value === null || value === '')) return undefined;
    above = labels.get(line[0]) ?? above + (line[0] === '' ? 1 : 0);
    return above;
  });
  const cellOf = new Map(plan.cells.map((cell) => [`${cell.row},${cell.column}`, cell]));
  return {
    ...plan,
    cells: values.flatMap((line, row) =>
      line.flatMap((value, column) => {
        const style = cellOf.get(`${like[row]},${column}`)?.style;
        return value === '' && !style ? [] : [{ row, column, value, ...(style ? { style } : {}) }];
      }),
    ),
    heights: Object.fromEntries(
      like.flatMap((from, row) => {
        const height = from === undefined ? undefined : plan.heights[from];
        return height === undefined ? [] : [[row, height]];
      }),
    ),
    merges: plan.merges.flatMap((merge) => {
      const rows = [...like.keys()].filter((row) => isWithin(like[row], merge));
      return spanOf(rows, merge);
    }),
    tables: table
      ? [{ ...table, area: { ...table.area, row: headings, rows: values.length - headings } }]
      : [],
  };
}

const isWithin = (row: number | undefined, { row: first, rows }: Area): boolean =>
  row !== undefined && row >= first && row < first + rows;

/** An area over other rows; nothing where there are none. */
function spanOf(rows: readonly number[], merge: Area): Area[] {
  const [first, last] = [rows[0], rows.at(-1)];
  if (first === undefined || last === undefined) return [];
  return [{ ...merge, row: first, rows: last - first + 1 }];
}

const shotsOf = ({ tables }: Pick<BookSheet, 'tables'>): Area | undefined =>
  tables.find(({ name }) => CLIENT_TABLE.test(name))?.area;

/** Whether anything stands in the first column of its table. */
function hasShots({ tables, cells }: BookSheet): boolean {
  const area = shotsOf({ tables });
  return (
    area !== undefined &&
    cells.some((cell) => {
      const isName = cell.column === area.column && cell.row > area.row && cell.row < area.row + area.rows;
      return isName && !isBlank(cell);
    })
  );
}

const looksLike = (style: BookStyle | undefined, part: Part): boolean => {
  const { size, ink, italic } = styleOf(part);
  return style !== undefined && style.size === size && style.ink === ink && style.italic === italic;
};
/** Words beside a value, for who types it. */
const isRemark = ({ style }: BookCell): boolean => looksLike(style, 'remark');
/** Kept free for a picture. */
const isSlot = ({ style }: BookCell): boolean =>
  looksLike(style, 'slot') && style?.edges?.top?.line === styleOf('slot').edges?.top?.line;
const isTitle = ({ style, column }: BookCell): boolean => column === 0 && looksLike(style, 'section');
const isBlank = ({ value }: BookCell): boolean => value === null || String(value).trim() === '';

const INPUT = styleOf('input');
/** A look without that of a cell to type into. */
function asRead(style: BookStyle): BookStyle {
  if (style.fill !== INPUT.fill || style.edges?.top?.line !== INPUT.edges?.top?.line) return style;
  const { fill: _fill, edges: _edges, ...rest } = style;
  return rest;
}

/** What is shown, and how: no formula, no note, nothing that says what it was made of. */
const shownOnly = ({ value, style, column }: BookCell, row: number): BookCell => ({
  row,
  column,
  value,
  ...(style ? { style: asRead(style) } : {}),
});

type Line = readonly BookCell[];
const isGap = (line: Line): boolean => line.length === 0;
/** A line with a place for a value, and none in it: nobody agreed on that. */
const isUnsaid = (line: Line): boolean => {
  const values = line.filter(({ column }) => column > 0);
  return !isGap(line) && (values.length > 0 ? values.every(isBlank) : line.every(isBlank));
};
const isTitled = (line: Line | undefined): boolean => line?.some(isTitle) ?? false;

/** The lines that say something, each title over some of them, and one gap at most between two of them. */
function linesToSend(lines: readonly Line[]): number[] {
  const said = [...lines.keys()].filter((row) => !isUnsaid(lines[row] ?? []));
  const backwards: number[] = [];
  for (const row of said.reverse()) {
    const [line, below] = [lines[row] ?? [], lines[backwards.at(-1) ?? -1]];
    if (isGap(line) ? below === undefined || isGap(below) : isTitled(line) && (!below || isGap(below)))
      continue;
    backwards.push(row);
  }
  const kept = backwards.reverse();
  while (kept.length > 0 && isGap(lines[kept[0] ?? 0] ?? [])) kept.shift();
  return kept;
}

/**
 * A workbook for a client: the printed part of one sheet as values, without its first lines, which are for who types it, and
 * without remarks, with the place for a logo kept free. Nothing else of the workbook goes into it: no formulas, names, tables, rules, notes and other sheets.
 *
 * @param sheet - with its values; a sheet that still says what it lacks, or shows an error, is refused.
 *   Something in a row or a column that is hidden is refused, too: whoever hid it does not expect it there, and without it
 *   the prices would not add up.
 * @param hiddenColumns - of the sheet.
 */
export function clientBook(
  sheet: BookSheet,
  hiddenColumns: readonly number[] = [],
): { readonly book: Book } | { readonly refused: string } {
  const area = sheet.page.area ?? usedArea(sheet);
  const printed = sheet.cells.filter(({ row, column }) => row >= LEAD_ROWS && column < area.columns);
  const wrong = printed.find(({ value }) => isCellError(value) || String(value).startsWith('! '));
  if (wrong)
    return {
      refused: isCellError(wrong.value)
        ? `${address(wrong)} shows ${wrong.value.error}.`
        : `${address(wrong)} says: ${String(wrong.value).slice(2)}.`,
    };
  const cells = printed.filter((cell) => !isRemark(cell));
  const lines: BookCell[][] = Array.from({ length: usedArea({ cells }).rows }, () => []);
  for (const cell of cells) lines[cell.row]?.push(cell);
  const rows = linesToSend(lines);
  if (!hasShots(sheet)) return { refused: 'No shot stands on it yet.' };
  const hiddenRows = new Set([...(sheet.hiddenRows ?? []), ...(sheet.filteredRows ?? [])]);
  const unseen = rows
    .flatMap((row) => lines[row] ?? [])
    .find((cell) => !isBlank(cell) && (hiddenRows.has(cell.row) || hiddenColumns.includes(cell.column)));
  if (unseen) return { refused: `${address(unseen)} is hidden, and holds something: show it or clear it.` };
  const heights = rows.flatMap((from, row) => {
    const height = sheet.heights[from];
    return height === undefined ? [] : [[row, height]];
  });
  const slots = sheet.merges.filter((merge) =>
    sheet.cells.some((cell) => cell.row === merge.row && cell.column === merge.column && isSlot(cell)),
  );
  const widths = Object.fromEntries(
    Object.entries(sheet.widths).filter(([column]) => Number(column) < area.columns),
  );
  const shown = {
    cells: rows.flatMap((from, row) => (lines[from] ?? []).map((cell) => shownOnly(cell, row))),
    merges: slots.flatMap((slot) =>
      spanOf(
        [...rows.keys()].filter((row) => isWithin(rows[row], slot)),
        slot,
      ),
    ),
    widths,
    heights: Object.fromEntries(heights),
  };
  const headings = shotsOf(sheet)?.row ?? 0;
  const isTyped = ({ row, column }: BookCell): boolean => column > 0 || (rows[row] ?? 0) > headings;
  return {
    book: {
      names: [],
      sheets: [
        {
          name: CLIENT_NAME,
          hidden: false,
          widths,
          ...wholeTexts(shown, area.columns, isTyped),
          freeze: { rows: 0, columns: 0 },
          tables: [],
          rules: [],
          conditions: [],
          charts: [],
          page: {
            landscape: sheet.page.landscape,
            header: '',
            titleRows: 0,
            breaks: [],
            area: { row: 0, column: 0, rows: rows.length, columns: area.columns },
          },
        },
      ],
    },
  };
}
