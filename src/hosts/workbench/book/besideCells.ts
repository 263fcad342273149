import {
  DataValidationErrorStyle,
  DataValidationOperator,
  DataValidationRenderMode,
  DataValidationType,
  generateRandomId,
  type IResources,
  type ISheetDataValidationRule,
} from '@univerjs/core';
import type { IConditionFormattingRule } from '@univerjs/preset-sheets-conditional-formatting';
import type { ISheetNote } from '@univerjs/preset-sheets-note';
import { type ITableJson, TableColumnDataTypeEnum } from '@univerjs/preset-sheets-table';
import type { BookRule, BookSheet, BookTable } from '../../../book/book';
import { wordsOf } from '../../../book/listWords';
import { gridCondition } from './conditions';
import { gridRange } from '../../../engine/gridRange';
import { PLAIN_TABLE } from '../grid/tableLook';

/** What the grid keeps beside a sheet, in the form in which it stores each. */
export interface Decorations {
  readonly tables: readonly ITableJson[];
  readonly rules: readonly ISheetDataValidationRule[];
  readonly conditions: readonly IConditionFormattingRule[];
  readonly notes: readonly ISheetNote[];
}

const newId = (): string => generateRandomId(8);

const tableOf = ({ name, area, columns }: BookTable): ITableJson => ({
  id: newId(),
  name,
  range: gridRange(area),
  // The grid means its filter buttons, which would lie over the headings.
  options: { showHeader: false, showFooter: false, tableStyleId: PLAIN_TABLE },
  filters: { tableColumnFilterList: [] },
  columns: columns.map((column) => ({
    dataType: TableColumnDataTypeEnum.None,
    id: newId(),
    displayName: column.name,
    formula: column.formula ?? '',
    meta: {},
    style: {},
  })),
  meta: {},
});

export const RULE_TYPES = {
  list: DataValidationType.LIST,
  whole: DataValidationType.WHOLE,
  decimal: DataValidationType.DECIMAL,
  date: DataValidationType.DATE,
  textLength: DataValidationType.TEXT_LENGTH,
  custom: DataValidationType.CUSTOM,
  any: DataValidationType.ANY,
} as const satisfies Record<BookRule['kind'], DataValidationType>;

export const GRID_COMPARISONS = {
  between: DataValidationOperator.BETWEEN,
  notBetween: DataValidationOperator.NOT_BETWEEN,
  equal: DataValidationOperator.EQUAL,
  notEqual: DataValidationOperator.NOT_EQUAL,
  greaterThan: DataValidationOperator.GREATER_THAN,
  lessThan: DataValidationOperator.LESS_THAN,
  greaterThanOrEqual: DataValidationOperator.GREATER_THAN_OR_EQUAL,
  lessThanOrEqual: DataValidationOperator.LESS_THAN_OR_EQUAL,
} as const satisfies Record<NonNullable<BookRule['compare']>, DataValidationOperator>;

/** A bound in the grid's spelling: plain numbers, words with commas between, formulas with their =. */
function bound(text: string, kind: BookRule['kind']): string {
  const words = kind === 'list' ? wordsOf(text) : undefined;
  if (words !== undefined) return words;
  return text === '' || Number.isFinite(Number(text)) ? text : `=${text}`;
}

const ruleOf = ({
  areas,
  kind,
  compare,
  bounds,
  blank,
  refusal,
  strict,
  prompt,
}: BookRule): ISheetDataValidationRule => {
  const [first, second] = bounds.map((text) => bound(text, kind));
  return {
    uid: newId(),
    type: RULE_TYPES[kind],
    ...(compare === undefined ? {} : { operator: GRID_COMPARISONS[compare] }),
    ...(first === undefined ? {} : { formula1: first }),
    ...(second === undefined ? {} : { formula2: second }),
    ...(kind === 'list' ? { renderMode: DataValidationRenderMode.ARROW, showDropDown: true } : {}),
    ranges: areas.map(gridRange),
    allowBlank: blank,
    showErrorMessage: true,
    errorStyle: strict ? DataValidationErrorStyle.STOP : DataValidationErrorStyle.WARNING,
    ...(refusal === undefined ? {} : { error: refusal }),
    ...(prompt === undefined ? {} : { showInputMessage: true, prompt }),
  };
};

const NOTE_WIDTH = 240;
const LETTERS_IN_A_LINE = 34;
const noteOf = (note: string, row: number, col: number): ISheetNote => ({
  id: newId(),
  row,
  col,
  width: NOTE_WIDTH,
  height: 32 + 20 * Math.ceil(note.length / LETTERS_IN_A_LINE),
  note,
  show: false,
});

export const decorations = (sheet: BookSheet): Decorations => ({
  tables: sheet.tables.map(tableOf),
  rules: sheet.rules.map(ruleOf),
  conditions: sheet.conditions.map(gridCondition),
  notes: sheet.cells.flatMap(({ note, row, column }) =>
    note === undefined ? [] : [noteOf(note, row, column)],
  ),
});

/** Where a stored workbook holds what. */
export const RESOURCES = {
  tables: 'SHEET_TABLE_PLUGIN',
  rules: 'SHEET_DATA_VALIDATION_PLUGIN',
  conditions: 'SHEET_CONDITIONAL_FORMATTING_PLUGIN',
  notes: 'SHEET_NOTE_PLUGIN',
  names: 'SHEET_DEFINED_NAME_PLUGIN',
} as const;

function notesByCell(notes: readonly ISheetNote[]): Record<number, Record<number, ISheetNote>> {
  const rows: Record<number, Record<number, ISheetNote>> = {};
  for (const note of notes) (rows[note.row] ??= {})[note.col] = note;
  return rows;
}

/** The decorations of whole sheets, by the ids of the sheets, as a stored workbook holds them. */
export function resources(sheets: ReadonlyMap<string, Decorations>): IResources {
  const by = (what: (each: Decorations) => unknown): string =>
    JSON.stringify(Object.fromEntries([...sheets].map(([id, each]) => [id, what(each)])));
  return [
    { name: RESOURCES.tables, data: by(({ tables }) => ({ tables, tableFilteredOutRows: [] })) },
    { name: RESOURCES.rules, data: by(({ rules }) => rules) },
    { name: RESOURCES.conditions, data: by(({ conditions }) => conditions) },
    { name: RESOURCES.notes, data: by(({ notes }) => notesByCell(notes)) },
  ];
}
