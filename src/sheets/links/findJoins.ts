import { at } from '../../exposure/core/at';
import { address } from '../../formula/address';
import { saysTheSame } from '../../formula/same';
import { isGiven } from '../layout';
import type { Template, TemplateValue } from '../template';
import { changeOf, type ColumnChange, heldIn, isLost, linkedTo, linkFormula, type LookingColumn, lookingColumns, ownFormula, partnerTables } from './linkColumns'; // prettier-ignore
import { columnIn, type Held, type KnownHere, knownHere, type TableHere } from './tableHere';

/** One way to join a table: look up in a sheet, by the name that it has in this workbook; or type what was looked up. */
export interface Way {
  readonly to: { readonly sheet: string; readonly table: string } | 'typed';
  readonly columns: readonly ColumnChange[];
}

/** A table of a sheet that could look something up in another sheet, or that did so in one which is gone. */
export interface Join {
  readonly sheet: string;
  readonly table: string;
  readonly title: string;
  /** Columns whose formulas speak of a table that is not there any more. */
  readonly lost: readonly string[];
  /** What is left as it is, in sentences. */
  readonly left: readonly string[];
  readonly ways: readonly Way[];
}

const lower = (tables: readonly TableHere[]): ReadonlySet<string> =>
  new Set(tables.map(({ name }) => name.toLowerCase()));

/** The first row of a column that holds a formula which nobody of us has written. */
function foreignRow(looking: LookingColumn, tables: readonly TableHere[]): number {
  const { name } = looking.of.here;
  const own = ownFormula(looking);
  const ours = [...(own === undefined ? [] : [own]), ...partnerTables(looking, tables).map((partner) => linkFormula(looking, partner))]; // prettier-ignore
  const names = lower(tables);
  return heldIn(looking).findIndex(
    ({ formula }) =>
      formula !== undefined &&
      !ours.some((each) => saysTheSame(each, formula, name)) &&
      !isLost(formula, names),
  );
}

/** Whether every row looks up in one of the tables that are there. */
const isLinked = (looking: LookingColumn, tables: readonly TableHere[]): boolean =>
  partnerTables(looking, tables).some((partner) => linkedTo(looking, partner) === undefined);

/** The demo job's value of a row, where its key is the demo's. */
function demoValues({ of, column, from }: LookingColumn): TemplateValue[] {
  const given = of.table.columns.filter(isGiven).map(({ id }) => id);
  const [key, value] = [given.indexOf(from.key), given.indexOf(column.id)];
  const own = columnIn(of.here, from.key);
  return of.here.rows.map((row) => {
    const demo = of.table.rows.find((each) => each[key] !== null && each[key] === at(row, own).value);
    return demo?.[value] ?? null;
  });
}

/** The column as it would be typed: each cell that was looked up becomes what is given for it. */
function typed(
  looking: LookingColumn,
  wasLookedUp: (held: Held) => boolean,
  instead: readonly TemplateValue[],
): ColumnChange {
  const own = ownFormula(looking);
  const to = heldIn(looking).map((held, row): Held => {
    if (!wasLookedUp(held)) return held;
    return own === undefined ? { value: at(instead, row) } : { formula: own, value: held.value };
  });
  return changeOf(
    looking,
    to,
    to.map(({ value }) => String(value ?? '')),
    { isLinked: false },
  );
}

/** What a lost column has kept, else the demo job's values. */
const remains = (looking: LookingColumn): TemplateValue[] => {
  const demo = demoValues(looking);
  return heldIn(looking).map(({ value }, row) =>
    (value ?? '') === '' || typeof value === 'boolean' ? at(demo, row) : value,
  );
};

/** The columns of a table that go the same way: those of one partner. */
function joinsOf(known: KnownHere, tables: readonly TableHere[]): Join[] {
  const all = lookingColumns(known);
  return [...new Set(all.map(({ from }) => from.table))].flatMap((id) => {
    const looking = all.filter(({ from }) => from.table === id);
    const names = lower(tables);
    const isHeldLost = ({ formula }: Held): boolean => formula !== undefined && isLost(formula, names);
    const lost = looking.filter((column) => heldIn(column).some(isHeldLost));
    const foreign = looking.flatMap((column) => {
      const row = foreignRow(column, tables);
      return row < 0 ? [] : [{ column, row }];
    });
    const free = looking.filter(
      (column) => !foreign.some((other) => other.column === column) && !isLinked(column, tables),
    );
    const partners = new Set(free.flatMap((column) => partnerTables(column, tables)));
    const ways = [
      ...[...partners].map((partner) => ({
        to: { sheet: partner.sheet, table: partner.name },
        columns: free.flatMap((column) =>
          partnerTables(column, tables).includes(partner) ? (linkedTo(column, partner) ?? []) : [],
        ),
      })),
      ...(lost.length > 0
        ? [
            {
              to: 'typed' as const,
              columns: lost.map((column) => typed(column, isHeldLost, remains(column))),
            },
          ]
        : []),
    ].filter(({ columns }) => columns.length > 0);
    if (ways.length === 0) return [];
    const { here, table } = known;
    return [
      {
        sheet: here.sheet,
        table: here.name,
        title: table.title,
        lost: lost.map(({ column }) => column.id),
        left: foreign.map(({ column, row }) => {
          const cell = address({ row: here.at.row + 1 + row, column: here.at.column + column.index });
          return `${column.column.id} is left as it is: ${cell} holds a formula of your own.`;
        }),
        ways,
      },
    ];
  });
}

/** All tables of a workbook that could look up in another of its sheets and do not, or look up in one that is gone. */
export const findJoins = (templates: readonly Template[], tables: readonly TableHere[]): Join[] =>
  knownHere(templates, tables).flatMap((known) => joinsOf(known, tables));

/** The columns that look up in a sheet which is about to go, as they are to stay: with their values, typed. */
export function keptWithout(
  sheet: string,
  templates: readonly Template[],
  tables: readonly TableHere[],
): ColumnChange[] {
  const going = tables.filter((table) => table.sheet === sheet);
  return knownHere(templates, tables)
    .filter(({ here }) => here.sheet !== sheet)
    .flatMap(lookingColumns)
    .flatMap((looking) => {
      const formulas = partnerTables(looking, going).map((partner) => linkFormula(looking, partner));
      const isLookedUp = ({ formula }: Held): boolean =>
        formula !== undefined && formulas.some((each) => saysTheSame(each, formula, looking.of.here.name));
      const held = heldIn(looking);
      if (!held.some(isLookedUp)) return [];
      const values = held.map(({ value }) => (typeof value === 'boolean' ? String(value) : value));
      return [typed(looking, isLookedUp, values)];
    });
}
