import type { Place } from '../../formula/address';
import { alike, numberOf } from '../../book/lookUp';
import type { Template, TemplateTable } from '../template';

/** What a cell holds: what its formula shows, or what was typed. */
export interface Held {
  readonly formula?: string;
  readonly value: string | number | boolean | null;
}

/** A table as it stands in the workbook. */
export interface TableHere {
  readonly name: string;
  readonly sheet: string;
  /** Its first heading. */
  readonly at: Place;
  readonly headings: readonly string[];
  /** Its rows below the headings. */
  readonly rows: readonly (readonly Held[])[];
}

/** A table of a template that stands in the workbook. */
export interface KnownHere {
  readonly here: TableHere;
  readonly template: Template;
  readonly table: TemplateTable;
}

export const columnIn = ({ headings }: TableHere, name: string): number =>
  headings.findIndex((heading) => alike(heading, name));

/** Somebody's own table may be called alike: one of a template has more than half of its columns. */
const isOf = (here: TableHere, { id, columns }: TemplateTable): boolean =>
  numberOf(here.name, id) !== undefined &&
  columns.filter((column) => columnIn(here, column.id) >= 0).length * 2 > columns.length;

/** Whether a table's name is one that a template gives: only then its cells are worth a look. */
export const isNamedLike = (name: string, templates: readonly Template[]): boolean =>
  templates.some(({ blocks }) =>
    blocks.some((block) => block.kind === 'table' && numberOf(name, block.id) !== undefined),
  );

/** The tables of a workbook that templates know. */
export const knownHere = (templates: readonly Template[], tables: readonly TableHere[]): KnownHere[] =>
  tables.flatMap((here) =>
    templates.flatMap((template) =>
      template.blocks.flatMap((block) =>
        block.kind === 'table' && isOf(here, block) ? [{ here, template, table: block }] : [],
      ),
    ),
  );
