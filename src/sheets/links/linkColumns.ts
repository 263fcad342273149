import type { BookCell } from '../../book/book';
import type { KnownTable } from '../../book/kinds/kind';
import { earlierLookUpFormula, type LookUp, lookUpFormula, partnersOf } from '../../book/lookUp';
import { at } from '../../exposure/core/at';
import { address, type Place } from '../../formula/address';
import { area, type Area } from '../../formula/area';
import { lex } from '../../formula/lex';
import { looksOutside } from '../../formula/looksOutside';
import { saysTheSame } from '../../formula/same';
import { isGiven, layout } from '../layout';
import { makePlan } from '../makePlan';
import type { SheetPlan } from '../plan';
import { settled } from '../settleFormula';
import type { Field, Template, TemplateColumn, TemplateValue } from '../template';
import { fieldsOf, type FormHere, type Here } from './formHere';
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

/** A column of a table, or a cell of a form, that would hold something else. */
export interface ColumnChange {
  readonly sheet: string;
  /** Empty for a cell of a form. */
  readonly table: string;
  /** Its heading, or the label of the cell. */
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

/** A column, or a cell of a form, that is looked up in another table, where the workbook has both. */
export interface Looking {
  readonly sheet: string;
  readonly table: string;
  readonly template: Template;
  readonly part: Field | TemplateColumn;
  readonly from: LookUp;
  /** What a person calls it. */
  readonly name: string;
  readonly area: Area;
  readonly held: readonly Held[];
  /** What each of its cells is looked up by. */
  readonly keys: readonly Held['value'][];
  /** The demo job's value of each, where its key is the demo's. */
  readonly demo: readonly TemplateValue[];
  /** A formula of the template as it stands there, with further tables and what they are called. */
  readonly settle: (formula: string, ...others: (readonly [string, string])[]) => string;
}

/** The demo job's value of a row, where its key is the demo's. */
function demoValues({ here, table }: KnownHere, id: string, key: string): TemplateValue[] {
  const given = table.columns.filter(isGiven).map((column) => column.id);
  const [keyAt, valueAt] = [given.indexOf(key), given.indexOf(id)];
  const own = columnIn(here, key);
  return here.rows.map((row) => {
    const demo = table.rows.find((each) => each[keyAt] !== null && each[keyAt] === at(row, own).value);
    return demo?.[valueAt] ?? null;
  });
}

/** The columns of a table that may be looked up elsewhere, as far as they have kept their names. */
export const lookingColumns = (of: KnownHere): Looking[] =>
  of.table.columns.flatMap((part) => {
    const { here, table, template } = of;
    const { from } = part;
    const index = columnIn(here, part.id);
    const key = from ? columnIn(here, from.key) : -1;
    if (!from || index < 0 || key < 0) return [];
    return [
      {
        sheet: here.sheet,
        table: here.name,
        template,
        part,
        from,
        name: part.id,
        area: area({ row: here.at.row + 1, column: here.at.column + index }, here.rows.length, 1),
        held: here.rows.map((row) => at(row, index)),
        keys: here.rows.map((row) => at(row, key).value),
        demo: demoValues(of, part.id, from.key),
        settle: (formula, ...others) =>
          settled(formula, layout(template), new Map([[table.id, here.name], ...others]), table),
      },
    ];
  });

/** The cells of forms that may be looked up elsewhere, as far as their labels and that of their key are there. */
export function lookingFields({ sheet, template, cells }: FormHere): Looking[] {
  const map = layout(template);
  const places = new Map(map.cells);
  for (const [id, { at: place }] of cells) {
    const cell = map.cells.get(id);
    if (cell) places.set(id, { ...cell, place });
  }
  const fields = fieldsOf(template);
  return fields.flatMap((part) => {
    const { from } = part;
    const [cell, key] = [part.id, from?.by ?? ''].map((id) => cells.get(id));
    if (!from || !cell || !key) return [];
    const isDemo = fields.some(({ id, value }) => id === from.by && value === key.held.value);
    return [
      {
        sheet,
        table: '',
        template,
        part,
        from,
        name: part.label ?? part.id,
        area: area(cell.at, 1, 1),
        held: [cell.held],
        keys: [key.held.value],
        demo: [(isDemo ? part.value : null) ?? null],
        settle: (formula, ...others) => settled(formula, { ...map, cells: places }, new Map(others)),
      },
    ];
  });
}

/** The formula with which it looks up in a table of the workbook. */
export const linkFormula = ({ settle, from }: Looking, { name }: TableHere): string =>
  settle(lookUpFormula(from), [from.table, name]);

/** All formulas of ours with which it may look up there. */
export const linkFormulas = (looking: Looking, partner: TableHere): string[] => [
  linkFormula(looking, partner),
  looking.settle(earlierLookUpFormula(looking.from), [looking.from.table, partner.name]),
];

/** What it holds by itself where it looks nothing up; undefined where it is typed. */
export const ownFormula = ({ settle, part: { formula } }: Looking): string | undefined =>
  formula === undefined ? undefined : settle(formula);

export const partnerTables = ({ from }: Looking, tables: readonly TableHere[]): TableHere[] =>
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

/** What the formula will show for each key. */
function lookedUp({ keys, from }: Looking, partner: TableHere): string[] {
  const [theirs, column] = [columnIn(partner, from.key), columnIn(partner, from.column)];
  return keys.map((key) => {
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

/** Where the template has the first of its cells, in a plan. */
function plannedPlace({ template, part }: Looking, { sheet }: SheetPlan): Place | undefined {
  const own = layout(template).cells.get(part.id);
  if (own) return own.place;
  const of = template.blocks.find((block) => block.kind === 'table' && block.columns.some((column) => column === part)); // prettier-ignore
  const table = sheet.tables.find(({ name }) => of?.kind === 'table' && name === of.id);
  const index = of?.kind === 'table' ? of.columns.findIndex((column) => column === part) : -1;
  return table && { row: table.area.row + 1, column: table.area.column + index };
}

/** How the cells look, beside the table that they look up in or alone. */
function lookOf(looking: Looking, tables: readonly KnownTable[]): BookCell['style'] {
  const plan = planBeside(looking.template, tables);
  const place = plannedPlace(looking, plan);
  return plan.sheet.cells.find((cell) => cell.row === place?.row && cell.column === place.column)?.style;
}

/** A change, with all that a person has to see of it. */
export function changeOf(
  looking: Looking,
  to: readonly Held[],
  after: readonly string[],
  { partner, isLinked }: { readonly partner?: TableHere; readonly isLinked: boolean },
): ColumnChange {
  const { sheet, table, name, part, from, area: place, held: before, keys } = looking;
  const [alone, joined] = [
    lookOf(looking, []),
    lookOf(looking, partner ? [{ name: from.table, columns: partner.headings }] : []),
  ];
  return {
    sheet,
    table,
    column: name,
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
              key: shown(at(keys, row)),
              before: was,
              after: will,
              isOther: held.formula === undefined && was !== '' && was !== will,
            },
          ];
    }),
    look: isLinked ? joined : alone,
    lookBefore: isLinked ? alone : joined,
    follows: part.formula !== undefined,
  };
}

/** As it would be, looked up in a table; nothing where it is already. */
export function linkedTo(looking: Looking, partner: TableHere): ColumnChange | undefined {
  const formula = linkFormula(looking, partner);
  const { table, held } = looking;
  if (held.every((each) => each.formula !== undefined && saysTheSame(each.formula, formula, table)))
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

/** Whether a formula looked something up in a table that is gone, by the names of those that are there, or is in another workbook. */
export function isLost(formula: string, names: ReadonlySet<string>): boolean {
  if (!formula.replaceAll(' ', '').toUpperCase().startsWith(LOOKS_UP)) return false;
  if (formula.toUpperCase().includes('#REF!') || looksOutside(formula)) return true;
  // a table's name is the workbook's own: what stands before it is another workbook
  return lex(formula).some(
    (token) =>
      token.kind === 'columns' &&
      token.table !== undefined &&
      (token.before !== undefined || !names.has(token.table.toLowerCase())),
  );
}

const holdsTheSame = (one: Held, other: Held, table: string): boolean =>
  one.formula === undefined || other.formula === undefined
    ? one.formula === other.formula && shown(one.value) === shown(other.value)
    : saysTheSame(one.formula, other.formula, table);

/** What stands now where a change was found; undefined where that is not there any more. */
function heldNow({ sheet, table, column, area: place, before }: ColumnChange, { tables, forms }: Here): readonly Held[] | undefined {
  if (table === '') {
    const cells = forms.filter((form) => form.sheet === sheet).flatMap(({ cells: all }) => [...all.values()]);
    const cell = cells.find(({ at: here }) => here.row === place.row && here.column === place.column);
    return cell && [cell.held];
  }
  const here = tables.find(({ name }) => name === table);
  const index = here ? columnIn(here, column) : -1;
  const isThere =
    here?.sheet === sheet && here.at.row + 1 === place.row && here.at.column + index === place.column && here.rows.length === before.length;
  return isThere ? here.rows.map((row) => at(row, index)) : undefined;
} // prettier-ignore

/** The first of the columns that does not hold any more what it held when it was found: Most on “Pops plan”. */
export function changedColumn(columns: readonly ColumnChange[], here: Here): string | undefined {
  const changed = columns.find((change) => {
    const now = heldNow(change, here);
    return !now || change.before.some((held, r) => !holdsTheSame(held, at(now, r), change.table));
  });
  return changed && `${changed.column} on “${changed.sheet}”`;
}
