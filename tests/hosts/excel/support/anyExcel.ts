import {
  type Arbitrary,
  array,
  constant,
  constantFrom,
  integer,
  nat,
  oneof,
  record,
  subarray,
  tuple,
} from 'fast-check';
import { addressOf, blockAt } from './a1';
import { isFormula } from './entered';
import type { FakeWorkbook } from './fake-workbook';
import { FULL } from '../../../full';
import { LIGHTS } from './laid';
import type { Sheet } from './sheet';
import type { Ways } from './ways';

/** A sheet of somebody's, as drawn. */
export interface Theirs {
  readonly name: string;
  /** Contents of the rows of a table of two columns, and of cells beside it. */
  readonly table: readonly (readonly [unknown, unknown])[];
  readonly beside: readonly unknown[];
  readonly protects: boolean;
  readonly free: boolean;
  readonly array: boolean;
  readonly merged: boolean;
  readonly filtered: boolean;
  readonly hidden: boolean;
  readonly asText: boolean;
  /** Whether what looks like a formula beside the table is words. */
  readonly words: boolean;
  readonly comments: number;
  readonly named: boolean;
}

/** Something that happens just before a request is answered, or while it is. */
export type Incident =
  | { readonly kind: 'fails'; readonly action: number; readonly code: string }
  | { readonly kind: 'adds'; readonly name: string }
  | { readonly kind: 'writes' | 'renames' | 'adds a table' | 'protects'; readonly sheet: number }
  | { readonly kind: 'writes on ours' | 'deletes ours' | 'is not ready' | 'is ready' };

export const WISHES = ['insert', 'put', 'repair', 'copy', 'take back', 'recalculate'] as const;
/** These take three times as long. */
const JOBS = ['new job', 'take job back'] as const;

export interface Case {
  readonly sheets: readonly Theirs[];
  readonly ways: Partial<Ways> & { readonly throws: readonly ('freeze' | 'page' | 'charts')[] };
  readonly incidents: readonly { readonly request: number; readonly incident: Incident }[];
  readonly wish: (typeof WISHES | typeof JOBS)[number];
  readonly selected: number;
}

const LOST = '=_xldudf_SWEEP_STOPDIFF(8,11)';
const content = constantFrom<unknown>(undefined, undefined, 8, 'key', '=1+1', '=SWEEP.STOPDIFF(8,11)', LOST, LOST, "=_xldudf_SWEEP_STOPDIFF('Ann''s set'!A3,11)", '=A3*2', '=[1]!_xldudf_SWEEP_FNUMBER(A3)', "='Ann''s set'!A1"); // prettier-ignore
const boolean = (weight: number): Arbitrary<boolean> =>
  oneof({ weight: 10 - weight, arbitrary: constant(false) }, { weight, arbitrary: constant(true) });
const theirs = (name: string): Arbitrary<Theirs> =>
  record({
    name: constant(name),
    table: array(tuple(content, content), { minLength: 1, maxLength: 4 }),
    beside: array(content, { minLength: 1, maxLength: 5 }),
    protects: boolean(2),
    free: boolean(3),
    array: boolean(2),
    merged: boolean(2),
    filtered: boolean(2),
    hidden: boolean(2),
    asText: boolean(2),
    words: boolean(3),
    comments: nat(2),
    named: boolean(3),
  });

const CODES = ['AccessDenied', 'GeneralException', 'RequestAborted', 'InvalidArgument', 'InvalidOperation', 'ItemNotFound', 'ItemAlreadyExists'] as const; // prettier-ignore
/** Names that an insert or a copy would like, and one that it would not. */
const WANTED = [LIGHTS.name, `${LIGHTS.name} (2)`, `${LIGHTS.name} values`, "Ann's set values", 'Other'];
const incident: Arbitrary<Incident> = oneof(
  record({ kind: constant('fails' as const), action: nat(40), code: constantFrom(...CODES) }),
  record({ kind: constant('adds' as const), name: constantFrom(...WANTED) }),
  record({
    kind: constantFrom('writes' as const, 'renames' as const, 'adds a table' as const, 'protects' as const),
    sheet: nat(1),
  }),
  record({
    kind: constantFrom('writes on ours' as const, 'deletes ours' as const, 'is not ready' as const, 'is ready' as const),
  }),
); // prettier-ignore

/** Cells that a person may have selected: in a table, beside it, in merged cells, far away. */
export const SELECTIONS = [
  'B3',
  'B4',
  'A3',
  'E2',
  'E4',
  'G2',
  'H1:I1',
  'Z9',
  'A1:B2',
  'B5',
  'A6',
  'C3',
  'C2',
];

export const cases: Arbitrary<Case> = record({
  sheets: tuple(theirs("Ann's set"), theirs("Ann's set, the very long name 3")),
  ways: record({
    fillsColumns: constantFrom('never' as const, 'formulas' as const, 'everything' as const),
    growsTables: boolean(5),
    throws: subarray(['freeze' as const, 'page' as const, 'charts' as const]),
    calculation: constantFrom('Automatic' as const, 'Manual' as const),
    unready: constantFrom(undefined, undefined, { shows: '#BUSY!' as const, looks: 2 }, { shows: '#GETTING_DATA' as const, looks: 4 }),
    unregistered: constantFrom(undefined, undefined, undefined, '#NAME?' as const, '#CALC!' as const),
    spelling: constantFrom('as written' as const, 'short' as const, 'at' as const),
    structureIsProtected: boolean(1),
    copiesVisibleRows: boolean(3),
  }),
  incidents: array(record({ request: integer({ min: 1, max: 12 }), incident }), { maxLength: 3 }),
  wish: FULL ? oneof({ weight: 11, arbitrary: constantFrom(...WISHES) }, constantFrom(...JOBS)) : constantFrom(...WISHES),
  selected: nat(SELECTIONS.length - 1),
}); // prettier-ignore

const TABLE_TOP = 1;
const COLUMN_BESIDE = 4;

/** Lays a drawn sheet into a workbook in memory. */
export function addTheirs(workbook: FakeWorkbook, drawn: Theirs): Sheet {
  const sheet = workbook.addSheet(drawn.name);
  const put = (row: number, column: number, cell: unknown): void => {
    if (cell !== undefined) sheet.cells.set(addressOf(row, column), cell);
  };
  put(TABLE_TOP, 0, 'Head');
  put(TABLE_TOP, 1, 'Stops');
  for (const [i, [a, b]] of drawn.table.entries()) {
    put(TABLE_TOP + 1 + i, 0, a);
    put(TABLE_TOP + 1 + i, 1, b);
  }
  for (const [i, cell] of drawn.beside.entries()) put(TABLE_TOP + i, COLUMN_BESIDE, cell);
  const block = { row: TABLE_TOP, column: 0, rows: drawn.table.length + 1, columns: 2 };
  sheet.addTable(block, `Table_${workbook.sheets.length}`);
  if (drawn.merged) sheet.merge(blockAt('H1:I1'));
  if (drawn.array) sheet.arrays.push(blockAt('E2:F2'));
  if (drawn.free) for (const at of ['E2', 'E3', 'B3']) sheet.unlocked.add(at);
  if (drawn.filtered) sheet.filtered.add(TABLE_TOP + 1);
  if (drawn.hidden) sheet.hidden.add(TABLE_TOP + 2);
  if (drawn.asText) for (const at of ['G2', 'E3']) sheet.formats.set(at, '@');
  if (drawn.words) for (const at of ['E4', 'E5']) if (isFormula(sheet.cells.get(at))) sheet.words.add(at);
  if (drawn.named) sheet.names.set('mine', 'A1');
  sheet.comments = drawn.comments;
  sheet.isProtected = drawn.protects;
  return sheet;
}

/** All that somebody has on a sheet, to be compared. */
export const contentOf = (sheet: Sheet): Record<string, unknown> => ({
  cells: Object.fromEntries(sheet.cells),
  words: [...sheet.words],
  formats: Object.fromEntries(sheet.formats),
  looks: Object.fromEntries(sheet.looks),
  validation: Object.fromEntries(sheet.validation),
  names: [...sheet.names],
  tables: sheet.tables.map(({ name, block }) => [name, block]),
  merges: [...sheet.merges],
  arrays: [...sheet.arrays],
  charts: sheet.charts.length,
  conditions: sheet.conditions.length,
  comments: sheet.comments,
  isProtected: sheet.isProtected,
});
