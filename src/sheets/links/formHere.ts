import type { Place } from '../../formula/address';
import { layout } from '../layout';
import type { Field, Template } from '../template';
import { type Held, knownHere, type TableHere } from './tableHere';

/** All cells of a sheet from one of its cells on. */
export interface CellsHere {
  readonly at: Place;
  readonly rows: readonly (readonly Held[])[];
}

/** The forms of a template's sheet as they stand in the workbook: the cells of those fields that are found there, by their ids. */
export interface FormHere {
  readonly sheet: string;
  readonly template: Template;
  readonly cells: ReadonlyMap<string, { readonly at: Place; readonly held: Held }>;
}

/** The tables and forms of a workbook that templates know. */
export interface Here {
  readonly tables: readonly TableHere[];
  readonly forms: readonly FormHere[];
}

export const fieldsOf = ({ blocks }: Template): readonly Field[] =>
  blocks.flatMap((block) => (block.kind === 'form' ? block.fields : []));

/** The sheets that have cells outside tables which may be looked up elsewhere: only their cells are worth a look. */
export const sheetsWithForms = (
  templates: readonly Template[],
  tables: readonly TableHere[],
): { readonly sheet: string; readonly template: Template }[] => {
  const looking = templates.filter((template) => fieldsOf(template).some(({ from }) => from));
  const found = knownHere(looking, tables).map(({ here: { sheet }, template }) => ({ sheet, template }));
  return found.filter(
    (one, i) =>
      found.findIndex((other) => one.sheet === other.sheet && one.template === other.template) === i,
  );
};

/**
 * Finds the cells of a sheet's forms: each stands right of its label, wherever rows and columns have moved that. Where a label
 * stands more than once, it is the cell in the place that the template gives it, or none.
 */
export function formHere({ sheet, template }: Omit<FormHere, 'cells'>, { at, rows }: CellsHere): FormHere {
  const places = new Map<string, Place[]>();
  for (const [r, row] of rows.entries())
    for (const [c, { formula, value }] of row.entries())
      if (formula === undefined && typeof value === 'string' && value !== '')
        places.set(value, [...(places.get(value) ?? []), { row: at.row + r, column: at.column + c }]);
  const planned = layout(template).cells;
  const cells = new Map<string, { readonly at: Place; readonly held: Held }>();
  for (const { id, label } of fieldsOf(template)) {
    const found = (label === undefined ? undefined : places.get(label)) ?? [];
    const own = planned.get(id)?.place;
    const isOwn = ({ row, column }: Place): boolean => row === own?.row && column + 1 === own.column;
    const place = found.length === 1 ? found[0] : found.find(isOwn);
    if (!place) continue;
    const held = rows[place.row - at.row]?.[place.column + 1 - at.column] ?? { value: null };
    cells.set(id, { at: { row: place.row, column: place.column + 1 }, held });
  }
  return { sheet, template, cells };
}
