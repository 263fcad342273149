import type { Area } from './area';
import { parseArea } from './areaText';
import { lex, type Token, type TokenOf } from './lex';
import { placeOf } from './sheetPlace';

/** Cells that a formula speaks of, counted from 0. Without a sheet it is the formula's own. */
export interface CellArea extends Area {
  readonly kind: 'cells';
  readonly sheet?: string;
}

/** Columns of a table. Without a table it is the one the formula stands in. */
export interface TableColumns {
  readonly kind: 'table';
  readonly table?: string;
  readonly first: string;
  readonly last: string;
  /** The whole column, or only the formula's own row of it. */
  readonly rows: 'all' | 'this';
}

export interface NamedCells {
  readonly kind: 'name';
  readonly name: string;
  /** Where the name is said to hold. */
  readonly sheet?: string;
}

export type Reference = CellArea | TableColumns | NamedCells;

const COLUMN = "((?:[^\\[\\]'#@]|'.)+)";
const WITHIN = new RegExp(
  `^(?:(@)?${COLUMN}|(@)?\\[${COLUMN}\\](?::\\[${COLUMN}\\])?|\\[#(This Row|Data)\\], ?\\[${COLUMN}\\](?::\\[${COLUMN}\\])?)$`,
  'i',
);

const unescaped = (column: string): string => column.replace(/'(.)/g, '$1');

/** The one piece that a text is; nothing where it is more than one or none. */
function only(text: string): Token | undefined {
  const [token, more] = lex(text);
  return more ? undefined : token;
}

const areaOf = ({ from, to, spills }: TokenOf<'cells'>): Area | undefined =>
  spills ? undefined : parseArea(to === undefined ? from : `${from}:${to}`);

function cells(token: TokenOf<'cells'>): CellArea | undefined {
  const { isElsewhere, sheets } = placeOf(token.before ?? '!');
  const area = areaOf(token);
  const [sheet, more] = sheets;
  if (!area || isElsewhere || more !== undefined) return undefined;
  return { kind: 'cells', ...(sheet === undefined ? {} : { sheet }), ...area };
}

/** The columns of a table that stand in its brackets; nothing for its headings and the like. */
function tableColumns({ before, table, inside }: TokenOf<'columns'>): TableColumns | undefined {
  const found = before === undefined ? WITHIN.exec(inside) : undefined;
  if (!found) return undefined;
  const [, thisRow, plain, thisRowToo, from, to, part, partFrom, partTo] = found;
  const first = unescaped((plain ?? from ?? partFrom) as string);
  const last = to ?? partTo;
  return {
    kind: 'table',
    ...(table === undefined ? {} : { table }),
    first,
    last: last === undefined ? first : unescaped(last),
    rows: (thisRow ?? thisRowToo) !== undefined || part?.toLowerCase() === 'this row' ? 'this' : 'all',
  };
}

function named({ before, name }: TokenOf<'name'>): NamedCells | undefined {
  const { isElsewhere, sheets } = placeOf(before ?? '!');
  const [sheet, more] = sheets;
  if (isElsewhere || more !== undefined) return undefined;
  return { kind: 'name', name, ...(sheet === undefined ? {} : { sheet }) };
}

/** What a reference of a formula speaks of; nothing for whole columns, other workbooks and the like. */
export function parseReference(text: string): Reference | undefined {
  const token = only(text);
  switch (token?.kind) {
    case 'cells':
      return cells(token);
    case 'columns':
      return tableColumns(token);
    case 'name':
      return named(token);
    default:
      return undefined;
  }
}

function areaOfPiece(token: Token | undefined): Area | undefined {
  if (token?.kind === 'lines') return parseArea(`${token.from}:${token.to}`);
  return token?.kind === 'cells' ? areaOf(token) : undefined;
}

/** The cells of a reference, whole columns and rows among them, whatever sheet they lie on. */
export const areaIn = (reference: string): Area | undefined => areaOfPiece(only(reference));

/** The same of several references with commas between them. */
export const areasIn = (references: string): Area[] =>
  lex(references).flatMap((token) => areaOfPiece(token) ?? []);

/** The same where the text holds such references and nothing else. */
export function areasAlone(references: string): Area[] {
  const pieces = lex(references).filter(({ kind }) => kind !== 'comma');
  const areas = pieces.flatMap((piece) => areaOfPiece(piece) ?? []);
  return areas.length === pieces.length ? areas : [];
}

/** The same where they lie on this sheet, and the reference says so. */
export function areaOn(sheet: string, reference: string): Area | undefined {
  const { isElsewhere, sheets } = placeOf(only(reference)?.before ?? '!');
  const isThere = !isElsewhere && sheets.length === 1 && sheets[0]?.toLowerCase() === sheet.toLowerCase();
  return isThere ? areaIn(reference) : undefined;
}
