import { DataValidationErrorStyle, type ISheetDataValidationRule, type IWorkbookData } from '@univerjs/core';
import type { IConditionFormattingRule } from '@univerjs/preset-sheets-conditional-formatting';
import type { ISheetNote } from '@univerjs/preset-sheets-note';
import type { ITableJson } from '@univerjs/preset-sheets-table';
import type { BookRule, BookSheet, BookTable } from '../../../book/book';
import { quotedText } from '../../../formula/quotedText';
import { bookCondition } from './conditions';
import { type Decorations, GRID_COMPARISONS, RESOURCES, RULE_TYPES } from './besideCells';
import type { NotWritten } from './notWritten';
import { areaOfGridRange } from '../../../engine/gridRange';

/** Finds what a stored workbook holds beside each sheet. */
export function storedDecorations({ resources }: IWorkbookData): (sheetId: string) => Decorations {
  const stored = <T>(name: string): Readonly<Record<string, T>> =>
    JSON.parse(resources?.find((each) => each.name === name)?.data || '{}') as Record<string, T>;
  const tables = stored<{ tables: ITableJson[] }>(RESOURCES.tables);
  const rules = stored<ISheetDataValidationRule[]>(RESOURCES.rules);
  const conditions = stored<IConditionFormattingRule[]>(RESOURCES.conditions);
  const notes = stored<Record<string, Record<string, ISheetNote>>>(RESOURCES.notes);
  return (id) => ({
    tables: tables[id]?.tables ?? [],
    rules: rules[id] ?? [],
    conditions: conditions[id] ?? [],
    notes: Object.values(notes[id] ?? {}).flatMap((row) => Object.values(row)),
  });
}

const keyOf = <K extends string>(record: Readonly<Record<K, unknown>>, value: unknown): K | undefined =>
  (Object.keys(record) as K[]).find((key) => record[key] === value);

/** The same as a file holds them. */
export function decorationsToBook(
  { tables, rules, conditions }: Decorations,
  sheet: string,
  notWritten: NotWritten,
): Pick<BookSheet, 'tables' | 'rules' | 'conditions'> {
  return {
    tables: tables.map((table) => tableOf(table, sheet, notWritten)),
    rules: rules.flatMap((rule) => ruleOf(rule, sheet, notWritten)),
    conditions: conditions.flatMap((condition) => bookCondition(condition, sheet, notWritten)),
  };
}

function tableOf(
  { name, range, columns, filters }: ITableJson,
  sheet: string,
  notWritten: NotWritten,
): BookTable {
  if (filters.tableColumnFilterList?.some(Boolean))
    notWritten.note('Filters of tables: the file shows all rows', sheet);
  return {
    name,
    area: areaOfGridRange(range),
    columns: columns.map(({ displayName, formula }) => ({
      name: displayName,
      ...(formula ? { formula } : {}),
    })),
  };
}

function ruleOf(rule: ISheetDataValidationRule, sheet: string, notWritten: NotWritten): BookRule[] {
  const kind = keyOf(RULE_TYPES, rule.type);
  if (!kind) {
    notWritten.note('Tick boxes and lists for several words become plain cells', sheet);
    return [];
  }
  const compare = keyOf(GRID_COMPARISONS, rule.operator);
  const bounds = [rule.formula1, rule.formula2].flatMap((text) => (text ? [fileBound(text, kind)] : []));
  return [
    {
      areas: rule.ranges.map(areaOfGridRange),
      kind,
      ...(compare ? { compare } : {}),
      bounds,
      blank: rule.allowBlank !== false,
      ...(rule.error ? { refusal: rule.error } : {}),
      strict: rule.errorStyle === DataValidationErrorStyle.STOP,
      ...(rule.prompt ? { prompt: rule.prompt } : {}),
    },
  ];
}

function fileBound(text: string, kind: BookRule['kind']): string {
  if (text.startsWith('=')) return text.slice(1);
  return kind === 'list' ? quotedText(text) : text;
}
