import { at } from '../../exposure/core/at';
import { address } from '../../formula/address';
import { saysTheSame } from '../../formula/same';
import type { Template, TemplateValue } from '../template';
import type { Here } from './formHere';
import { changeOf, type ColumnChange, isLost, linkedTo, linkFormulas, type Looking, lookingColumns, lookingFields, ownFormula, partnerTables } from './linkColumns'; // prettier-ignore
import { type Held, knownHere, type TableHere } from './tableHere';

/** One way to join a table: look up in a sheet, by the name that it has in this workbook; or type what was looked up. */
export interface Way {
  readonly to: { readonly sheet: string; readonly table: string } | 'typed';
  readonly columns: readonly ColumnChange[];
}

/** A table or a form of a sheet that could look something up in another sheet, or that did so in one which is gone. */
export interface Join {
  readonly sheet: string;
  readonly title: string;
  /** Columns whose formulas speak of a table that is not there any more. */
  readonly lost: readonly string[];
  /** What is left as it is, in sentences. */
  readonly left: readonly string[];
  readonly ways: readonly Way[];
}

/** What is joined together: the columns of a table, or the cells of a sheet's forms. */
interface Group {
  readonly sheet: string;
  readonly title: string;
  readonly looking: readonly Looking[];
}

/** The title of the form that has the first of them. */
const formTitle = ({ blocks }: Template, looking: readonly Looking[]): string =>
  blocks.find((block) => block.kind === 'form' && block.fields.some((field) => field === looking[0]?.part))?.title ?? ''; // prettier-ignore

const groups = (templates: readonly Template[], { tables, forms }: Here): Group[] => [
  ...knownHere(templates, tables).map((known) => ({
    sheet: known.here.sheet,
    title: known.table.title,
    looking: lookingColumns(known),
  })),
  ...forms.map((form) => {
    const looking = lookingFields(form);
    return { sheet: form.sheet, title: formTitle(form.template, looking), looking };
  }),
];

const lower = (tables: readonly TableHere[]): ReadonlySet<string> =>
  new Set(tables.map(({ name }) => name.toLowerCase()));

/** The first row of a column that holds a formula which nobody of us has written. */
function foreignRow(looking: Looking, tables: readonly TableHere[]): number {
  const { table } = looking;
  const own = ownFormula(looking);
  const ours = [...(own === undefined ? [] : [own]), ...partnerTables(looking, tables).flatMap((partner) => linkFormulas(looking, partner))]; // prettier-ignore
  const names = lower(tables);
  return looking.held.findIndex(
    ({ formula }) =>
      formula !== undefined && !ours.some((each) => saysTheSame(each, formula, table)) && !isLost(formula, names),
  ); // prettier-ignore
}

/** Whether every row looks up in one of the tables that are there. */
const isLinked = (looking: Looking, tables: readonly TableHere[]): boolean =>
  partnerTables(looking, tables).some((partner) => linkedTo(looking, partner) === undefined);

/** The column as it would be typed: each cell that was looked up becomes what is given for it. */
function typed(
  looking: Looking,
  wasLookedUp: (held: Held) => boolean,
  instead: readonly TemplateValue[],
): ColumnChange {
  const own = ownFormula(looking);
  const to = looking.held.map((held, row): Held => {
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
const remains = ({ held, demo }: Looking): TemplateValue[] =>
  held.map(({ value }, row) => ((value ?? '') === '' || typeof value === 'boolean' ? at(demo, row) : value));

/** What goes the same way: those of one partner. */
function joinsOf({ sheet, title, looking: all }: Group, tables: readonly TableHere[]): Join[] {
  return [...new Set(all.map(({ from }) => from.table))].flatMap((id) => {
    const looking = all.filter(({ from }) => from.table === id);
    const names = lower(tables);
    const isHeldLost = ({ formula }: Held): boolean => formula !== undefined && isLost(formula, names);
    const lost = looking.filter(({ held }) => held.some(isHeldLost));
    const foreign = looking.flatMap((column) => {
      const row = foreignRow(column, tables);
      return row < 0 ? [] : [{ column, row }];
    });
    const free = looking.filter(
      (column) => !foreign.some((other) => other.column === column) && !isLinked(column, tables),
    );
    const lacking = free.filter(
      (column) => partnerTables(column, tables).length === 0 && !lost.includes(column),
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
    return [
      {
        sheet,
        title,
        lost: lost.map(({ name }) => name),
        left: [
          ...foreign.map(({ column: { name, area }, row }) => {
            const cell = address({ row: area.row + row, column: area.column });
            return `${name} is left as it is: ${cell} holds a formula of your own.`;
          }),
          ...lacking.map(
            ({ name, from }) => `${name} is left as it is: no list here has a column ${from.column}.`,
          ),
        ],
        ways,
      },
    ];
  });
}

/** All that could look up in another sheet of its workbook and does not, or looks up in one that is gone. */
export const findJoins = (templates: readonly Template[], here: Here): Join[] =>
  groups(templates, here).flatMap((group) => joinsOf(group, here.tables));

/** The columns and cells that look up in a sheet which is about to go, as they are to stay: with their values, typed. */
export function keptWithout(sheet: string, templates: readonly Template[], here: Here): ColumnChange[] {
  const going = here.tables.filter((table) => table.sheet === sheet);
  return groups(templates, here)
    .filter((group) => group.sheet !== sheet)
    .flatMap(({ looking }) => looking)
    .flatMap((looking) => {
      const formulas = partnerTables(looking, going).flatMap((partner) => linkFormulas(looking, partner));
      const isLookedUp = ({ formula }: Held): boolean =>
        formula !== undefined && formulas.some((each) => saysTheSame(each, formula, looking.table));
      const { held } = looking;
      if (!held.some(isLookedUp)) return [];
      const values = held.map(({ value }) => (typeof value === 'boolean' ? String(value) : value));
      return [typed(looking, isLookedUp, values)];
    });
}
