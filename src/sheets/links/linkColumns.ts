import type { BookCell } from '../../book/book';
import type { KnownTable } from '../../book/kinds/kind';
import { type LookUp, lookUpFormula, partnersOf } from '../../book/lookUp';
import { at } from '../../exposure/core/at';
import { address } from '../../formula/address';
import { area, type Area } from '../../formula/area';
import { lex } from '../../formula/lex';
import { saysTheSame } from '../../formula/same';
import { layout } from '../layout';
import { makePlan } from '../makePlan';
import type { SheetPlan } from '../plan';
import { settled } from '../settleFormula';
import type { Template, TemplateColumn } from '../template';
import { columnIn, type Held, type KnownHere, type TableHere } from './tableHere';

/** What becomes of a cell, as a person would see both. */
export interface CellChange {
  /** Such as M65. */
  readonly cell: string;
  /** What its row is looked up by. */
  readonly key: string;
  readonly before: string;
  readonly after: string;
  /** Whether something would go that somebody may have typed: it is there, and will be another. */
  readonly isOther: boolean;
}

/** A column of a table that would hold something else. */
export interface ColumnChange {
  readonly sheet: string;
  readonly table: string;
  readonly column: string;
  /** Its cells below the heading. */
  readonly area: Area;
  /** What they hold now: where they hold something else by then, nothing is written. */
  readonly before: readonly Held[];
  /** What they are to hold. */
  readonly to: readonly Held[];
  readonly cells: readonly CellChange[];
  /** How its cells look then, and how they look where they are typed in. */
  readonly look: BookCell['style'];
  readonly lookBefore: BookCell['style'];
  /** Nothing is typed into it, and it goes with the other columns of its table. */
  readonly follows: boolean;
}

/** A column that is looked up in another table, where the workbook has both. */
export interface LookingColumn {
  readonly of: KnownHere;
  readonly column: TemplateColumn;
  readonly from: LookUp;
  readonly index: number;
}

/** The columns of a table that may be looked up elsewhere, as far as they have kept their names. */
export const lookingColumns = (of: KnownHere): LookingColumn[] =>
  of.table.columns.flatMap((column) => {
    const index = columnIn(of.here, column.id);
    return column.from && index >= 0 && columnIn(of.here, column.from.key) >= 0
      ? [{ of, column, from: column.from, index }]
      : [];
  });

export const heldIn = ({ of, index }: LookingColumn): Held[] => of.here.rows.map((row) => at(row, index));

/** The formula with which it looks up in a table of the workbook. */
export const linkFormula = ({ of, from }: LookingColumn, { name }: TableHere): string =>
  settledHere(of, lookUpFormula(from), [from.table, name]);

const settledHere = (
  { here, table, template }: KnownHere,
  formula: string,
  ...others: (readonly [string, string])[]
): string => settled(formula, layout(template), new Map([[table.id, here.name], ...others]), table);

/** What the column holds by itself where it looks nothing up; undefined where it is typed. */
export const ownFormula = ({ of, column }: LookingColumn): string | undefined =>
  column.formula === undefined ? undefined : settledHere(of, column.formula);

export const partnerTables = ({ from }: LookingColumn, tables: readonly TableHere[]): TableHere[] =>
  partnersOf(
    from,
    tables.map(({ name, headings }) => ({ name, columns: headings })),
  ).flatMap((name) => tables.filter((table) => table.name === name));

const shown = (value: Held['value'] | undefined): string => String(value ?? '');
/** A number is not the text of its figures, and capitals count for nothing, as where a spreadsheet looks for a match. */
const isMatch = (wanted: Held['value'], other: Held['value']): boolean =>
  typeof wanted === 'string' && typeof other === 'string'
    ? wanted.toLowerCase() === other.toLowerCase()
    : wanted === other;

/** What the formula will show in each row. */
function lookedUp({ of, from }: LookingColumn, partner: TableHere): string[] {
  const [own, theirs, column] = [columnIn(of.here, from.key), columnIn(partner, from.key), columnIn(partner, from.column)]; // prettier-ignore
  return of.here.rows.map((row) => {
    const key = at(row, own).value;
    if (key === null || key === '') return '';
    const found = partner.rows.find((other) => isMatch(key, at(other, theirs).value));
    const value = shown(found && at(found, column).value);
    return value.startsWith('#') ? '' : value;
  });
}

/** Sheets as they lie beside such tables: a template's is planned once for all of its columns. */
const planned = new WeakMap<Template, Map<string, SheetPlan>>();
function planBeside(template: Template, tables: readonly KnownTable[]): SheetPlan {
  const plans = planned.get(template) ?? new Map<string, SheetPlan>();
  planned.set(template, plans);
  const key = JSON.stringify(tables);
  const plan = plans.get(key) ?? makePlan(template, { filled: true, sheets: [], tables, names: [] });
  plans.set(key, plan);
  return plan;
}

/** How the cells of a column look, beside the table that it looks up in or alone. */
function lookOf({ of, column }: LookingColumn, tables: readonly KnownTable[]): BookCell['style'] {
  const { sheet } = planBeside(of.template, tables);
  const table = sheet.tables.find(({ name }) => name === of.table.id);
  const index = of.table.columns.indexOf(column);
  return sheet.cells.find(
    (cell) => table && cell.row === table.area.row + 1 && cell.column === table.area.column + index,
  )?.style;
}

const columnArea = ({ of: { here }, index }: LookingColumn): Area =>
  area({ row: here.at.row + 1, column: here.at.column + index }, here.rows.length, 1);

/** A change of a column, with all that a person has to see of it. */
export function changeOf(
  looking: LookingColumn,
  to: readonly Held[],
  after: readonly string[],
  { partner, isLinked }: { readonly partner?: TableHere; readonly isLinked: boolean },
): ColumnChange {
  const { of, column, from } = looking;
  const place = columnArea(looking);
  const before = heldIn(looking);
  const [alone, joined] = [
    lookOf(looking, []),
    lookOf(looking, partner ? [{ name: from.table, columns: partner.headings }] : []),
  ];
  const key = columnIn(of.here, from.key);
  return {
    sheet: of.here.sheet,
    table: of.here.name,
    column: column.id,
    area: place,
    before,
    to,
    cells: before.flatMap((held, row) => {
      const [was, will] = [shown(held.value), at(after, row)];
      const isSame = held.formula === at(to, row).formula && was === will;
      return isSame || (was === '' && will === '')
        ? []
        : [
            {
              cell: address({ row: place.row + row, column: place.column }),
              key: shown(at(at(of.here.rows, row), key).value),
              before: was,
              after: will,
              isOther: held.formula === undefined && was !== '' && was !== will,
            },
          ];
    }),
    look: isLinked ? joined : alone,
    lookBefore: isLinked ? alone : joined,
    follows: column.formula !== undefined,
  };
}

/** The column as it would be, looked up in a table; nothing where it is already. */
export function linkedTo(looking: LookingColumn, partner: TableHere): ColumnChange | undefined {
  const formula = linkFormula(looking, partner);
  const { name } = looking.of.here;
  if (heldIn(looking).every((held) => held.formula !== undefined && saysTheSame(held.formula, formula, name)))
    return undefined;
  const after = lookedUp(looking, partner);
  return changeOf(
    looking,
    after.map((value) => ({ formula, value })),
    after,
    { partner, isLinked: true },
  );
}

/** How the formulas of looked-up columns begin. */
const LOOKS_UP = '=IFERROR(IF(INDEX(';

/** Whether a formula looked something up in a table that is gone, by the names of those that are there. */
export function isLost(formula: string, names: ReadonlySet<string>): boolean {
  if (!formula.replaceAll(' ', '').toUpperCase().startsWith(LOOKS_UP)) return false;
  if (formula.toUpperCase().includes('#REF!')) return true;
  return lex(formula).some(
    (token) => token.kind === 'columns' && token.table !== undefined && !names.has(token.table.toLowerCase()),
  );
}

const holdsTheSame = (one: Held, other: Held, table: string): boolean =>
  one.formula === undefined || other.formula === undefined
    ? one.formula === other.formula && shown(one.value) === shown(other.value)
    : saysTheSame(one.formula, other.formula, table);

/** The first of the columns that does not hold any more what it held when it was found: Most on “Pops plan”. */
export function changedColumn(
  columns: readonly ColumnChange[],
  tables: readonly TableHere[],
): string | undefined {
  const changed = columns.find(({ table, sheet, column, area: { row, column: left }, before }) => {
    const here = tables.find(({ name }) => name === table);
    const index = here ? columnIn(here, column) : -1;
    const isThere =
      here?.sheet === sheet && here.at.row + 1 === row && here.at.column + index === left && here.rows.length === before.length; // prettier-ignore
    return !isThere || before.some((held, r) => !holdsTheSame(held, at(at(here.rows, r), index), table));
  });
  return changed && `${changed.column} on “${changed.sheet}”`;
}
