import type { BookCell } from '../../book/book';
import { address, type Place } from '../../formula/address';
import { isCellError } from '../../formula/errors';
import { isGiven, isInput } from '../layout';
import { type SheetRead, tableCalled, tableRows, valuesOf } from '../sheetRead';
import type { Block, Field, Form, Template, TemplateTable, TemplateValue } from '../template';

export const SHOT_RECORD = 'shot-record';
/** Its table of lights. */
export const LIGHTS = 'Record';

export type Values = Readonly<Record<string, TemplateValue>>;

/** What was typed into a record, and nothing else: of the set by the ids of its cells, of each light by columns. */
export interface ShotRecord {
  readonly set: Values;
  readonly lights: readonly Values[];
}

const formsOf = ({ blocks }: Template): readonly Form[] =>
  blocks.filter((block): block is Form => block.kind === 'form' && block.fields.some(isInput));
const isLights = (block: Block): block is TemplateTable => block.kind === 'table' && block.id === LIGHTS;
/** Columns of a light that are typed. */
export const lightColumns = ({ blocks }: Template): readonly string[] =>
  blocks.filter(isLights).flatMap(({ columns }) => columns.filter(isInput).map(({ id }) => id));
/** Cells of the set that are typed. */
export const setCells = (template: Template): readonly string[] =>
  formsOf(template).flatMap(({ fields }) => fields.filter(isInput).map(({ id }) => id));

/** What came into a record with version 2 of its file. Files and sheets of before have nothing of it, and it is blank there. */
const SINCE_2: ReadonlySet<string> = new Set([
  'subjectX', 'subjectY', 'subjectHeight',
  'surfaceX', 'surfaceY', 'surfaceHeight', 'surfaceWidth', 'surfaceDepth', 'surfaceTiltX', 'surfaceTiltY', 'surfaceTurn',
  'Distance',
]); // prettier-ignore
/** Whether a record of a version has a cell, or a column of lights. */
export const isOfVersion =
  (version: number) =>
  (id: string): boolean =>
    version >= 2 || !SINCE_2.has(id);

/** Whether a sheet is a record. */
export const isRecord = ({ tables }: Pick<SheetRead, 'tables'>): boolean =>
  [LIGHTS, 'AsLit', 'Again'].every((id) => tableCalled(id, tables) !== undefined);

const only = (values: Values, names: readonly string[]): Values =>
  Object.fromEntries(names.map((name) => [name, values[name] ?? null]));

/**
 * A label outside the tables: of two alike the one further left, beside which something is typed.
 *
 * @param ofWords - labels beside which words are typed: what stands there is no label, whatever it says.
 */
export function labelled(
  { cells, tables }: SheetRead,
  label: string,
  ofWords: readonly string[] = [],
): BookCell | undefined {
  const isInTable = ({ row, column }: BookCell): boolean =>
    tables.some(
      ({ area }) =>
        row >= area.row &&
        row < area.row + area.rows &&
        column >= area.column &&
        column < area.column + area.columns,
    );
  const isTyped = ({ row, column }: BookCell): boolean =>
    cells.some((cell) => cell.row === row && cell.column === column - 1 && ofWords.includes(String(cell.value)));
  return cells
    .filter((cell) => cell.value === label && !isInTable(cell) && !isTyped(cell))
    .reduce<BookCell | undefined>((left, cell) => (left && left.column <= cell.column ? left : cell), undefined);
} // prettier-ignore

const typedFields = (template: Template): readonly Field[] =>
  formsOf(template).flatMap(({ fields }) => fields.filter(isInput));
const labelledIn = (template: Template, sheet: SheetRead): ((label: string) => BookCell | undefined) => {
  const ofWords = typedFields(template).flatMap(({ label, quantity }) => (label !== undefined && quantity === 'text' ? [label] : [])); // prettier-ignore
  return (label) => labelled(sheet, label, ofWords);
};

/**
 * Labels of typed cells, and headings of lights, that stand nowhere on a sheet any more, so that nobody knows what was typed there. A
 * sheet that was laid before version 2 lacks all that is newer.
 */
export function lostLabels(template: Template, sheet: SheetRead): readonly string[] {
  const here = labelledIn(template, sheet);
  const fields = typedFields(template).flatMap(({ id, label }) =>
    label === undefined ? [] : [{ id, label }],
  );
  const headings = tableCalled(LIGHTS, sheet.tables)?.columns.map(({ name }) => name) ?? [];
  const all = [
    ...fields.map(({ id, label }) => ({ id, label, isHere: here(label) !== undefined })),
    ...lightColumns(template).map((id) => ({ id, label: id, isHere: headings.includes(id) })),
  ];
  const version = all.some(({ id, isHere }) => isHere && !isOfVersion(1)(id)) ? 2 : 1;
  return all.filter(({ id, isHere }) => !isHere && isOfVersion(version)(id)).map(({ label }) => label);
}

/** Headings of columns beside a light that only this sheet has and something stands in: no record takes them with it. */
export function ownColumns(template: Template, sheet: SheetRead): readonly string[] {
  const table = tableCalled(LIGHTS, sheet.tables);
  if (!table) return [];
  const known = template.blocks.filter(isLights).flatMap(({ columns }) => columns.map(({ id }) => id));
  const rows = tableRows(table, valuesOf(sheet));
  return table.columns
    .map(({ name }) => name)
    .filter((name) => !known.includes(name) && rows.some((row) => (row[name] ?? null) !== null));
}

/** Addresses of what was typed and holds an error now: nobody knows what it said. */
export function errorsIn(template: Template, sheet: SheetRead): readonly string[] {
  const errors = sheet.cells.filter(({ value }) => isCellError(value));
  if (errors.length === 0) return [];
  const here = labelledIn(template, sheet);
  const beside = typedFields(template).flatMap(({ label }) => {
    const found = label === undefined ? undefined : here(label);
    return found ? [address({ row: found.row, column: found.column + 1 })] : [];
  });
  const table = tableCalled(LIGHTS, sheet.tables);
  const columns = lightColumns(template);
  const isOfLight = ({ row, column }: Place): boolean => {
    const heading = table?.columns[column - table.area.column]?.name;
    const isInRows = table && row > table.area.row && row < table.area.row + table.area.rows;
    return isInRows === true && heading !== undefined && columns.includes(heading);
  };
  return errors.flatMap((cell) => {
    const at = address(cell);
    return beside.includes(at) || isOfLight(cell) ? [at] : [];
  });
}

/** What a record holds in a workbook: rows and columns may have been added, in its table and before it. */
export function recordIn(template: Template, sheet: SheetRead): ShotRecord {
  const at = valuesOf(sheet);
  const here = labelledIn(template, sheet);
  const set = typedFields(template).map(({ id, label }) => {
    const found = label === undefined ? undefined : here(label);
    return [id, found ? at(found.row, found.column + 1) : null] as const;
  });
  const table = tableCalled(LIGHTS, sheet.tables);
  const columns = lightColumns(template);
  const rows = table ? tableRows(table, at) : [];
  return {
    set: Object.fromEntries(set),
    lights: rows
      .map((row) => only(row, columns))
      .filter((row) => Object.values(row).some((value) => value !== null)),
  };
}

/** The sheet with what a record holds, and no less than so many rows. */
export function withRecord(template: Template, { set, lights }: ShotRecord): Template {
  const field = (each: Field): Field => (isInput(each) ? { ...each, value: set[each.id] ?? null } : each);
  const blocks = template.blocks.map((block) => {
    if (block.kind === 'form') return { ...block, fields: block.fields.map(field) };
    if (!isLights(block)) return block;
    const given = block.columns.filter(isGiven);
    const count = Math.max(block.rows.length, lights.length);
    const rows = Array.from({ length: count }, (_, r) => given.map(({ id }) => lights[r]?.[id] ?? null));
    return { ...block, rows };
  });
  return { ...template, blocks };
}

/** Today, which no record of another day has. */
const OF_TODAY = ['isoToday', 'cardThen', 'blackThen', 'cardToday', 'blackToday'];
const READINGS = ['Reading', 'Tenths', 'Today', 'Its tenths'];

/** The same set for another shot: its readings are gone, and each head is as it was turned last. */
export const nextShot = ({ set, lights }: ShotRecord): ShotRecord => ({
  set: { ...set, ...Object.fromEntries(OF_TODAY.map((id) => [id, null])) },
  lights: lights.map((light) => ({
    ...light,
    Shows: light['Shows today'] ?? light['Shows'] ?? null,
    'Shows today': null,
    ...Object.fromEntries(READINGS.map((id) => [id, null])),
  })),
});
