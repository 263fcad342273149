import { areaText, parseArea, quotedSheet } from '../../formula/areaText';
import { lex, type TokenOf } from '../../formula/lex';
import { placeOf } from '../../formula/sheetPlace';
import type { Book } from '../../book/book';
import { usedArea } from '../../book/cells';

/** What stands in a formula that is whole columns or rows and nothing else. */
function onlyLines(formula: string): TokenOf<'lines'> | undefined {
  const [token, more] = lex(formula.trim().replace(/^=\s*/, ''));
  return more === undefined && token?.kind === 'lines' ? token : undefined;
}

/**
 * Whole columns or rows, as far as there is something in their sheet: =A:A would be a million lines, most of them 0.
 *
 * @param home - the sheet that is meant where none is named
 * @returns the formula to calculate in its place; nothing where it is another formula
 */
export function usedPart(formula: string, { sheets }: Book, home: string): string | undefined {
  const token = onlyLines(formula);
  const area = token && parseArea(`${token.from}:${token.to}`);
  if (!area) return undefined;
  const [named = home] = placeOf(token.before ?? '!').sheets;
  const sheet = sheets.find(({ name }) => name.toLowerCase() === named.toLowerCase());
  // A sheet that is not there is an error, and needs no more than one cell to be one.
  const { rows, columns } = sheet ? usedArea(sheet) : { rows: 1, columns: 1 };
  const within = (from: number, count: number, used: number): number =>
    Math.max(1, Math.min(count, used - from));
  const used = {
    ...area,
    rows: within(area.row, area.rows, rows),
    columns: within(area.column, area.columns, columns),
  };
  return `=${named === '' ? '' : `${quotedSheet(sheet?.name ?? named)}!`}${areaText(used)}`;
}
