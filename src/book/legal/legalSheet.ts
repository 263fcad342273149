import type { Area } from '../../formula/area';
import { MOST_COLUMNS, MOST_ROWS } from '../../formula/areaText';
import { isTooLong } from '../../formula/spelling';
import { LONGEST_TEXT } from '../cells';
import { wordsOf } from '../listWords';
import { type BookChart, drawnChart } from '../chart';
import type { BookCell, BookCondition, BookRule, BookSheet, BookTable } from '../book';
import { type Changes, shown } from './changes';
import { textOf } from './headings';
import { cut } from './names';
import { type LegalNames, type Renaming, tableAround } from './renames';

/** Letters of what is said beside a cell, and of the words of a list. */
const LONGEST_WORDS = 255;
/** Of the line above a printed page, which has the name of the program in it too. */
const LONGEST_HEADER = 200;

/** A sheet with what a file may hold, its own name left as it is. */
export function legalSheet(
  sheet: BookSheet,
  legal: LegalNames,
  renaming: Renaming,
  changes: Changes,
): BookSheet {
  const tables = sheet.tables.flatMap((table) => tableOf(table, legal, renaming, changes));
  const cells = withHeadings(
    sheet.cells.map((cell) => cellOf(cell, sheet, renaming, changes)),
    tables,
    sheet,
    changes,
  );
  return {
    ...sheet,
    cells,
    tables,
    charts: isSame(tables, sheet.tables) ? sheet.charts : chartsOf(sheet, changes),
    merges: mergesOf(sheet, changes),
    freeze: freezeOf(sheet, changes),
    rules: sheet.rules.flatMap((rule) => ruleOf(rule, sheet, renaming, changes)),
    conditions: sheet.conditions.map((condition) => conditionOf(condition, renaming)),
    page: { ...sheet.page, header: cut(sheet.page.header, LONGEST_HEADER) },
  };
}

function cellOf(cell: BookCell, sheet: BookSheet, renaming: Renaming, changes: Changes): BookCell {
  const { formula, value } = cell;
  const text = typeof value === 'string' && value.length > LONGEST_TEXT ? cut(value, LONGEST_TEXT) : value;
  if (text !== value)
    changes.say(`Texts of more than ${LONGEST_TEXT} letters are cut in the file: a cell holds no more.`);
  if (formula === undefined) return text === value ? cell : { ...cell, value: text };
  if (isTooLong(formula)) {
    changes.say('Formulas longer than a cell can hold are left out of the file; what they last gave stays.');
    const { formula: _, spill: __, ...rest } = cell;
    return { ...rest, value: text };
  }
  const followed = renaming.formula(formula, tableAround(sheet, cell));
  return text === value && followed === formula ? cell : { ...cell, value: text, formula: followed };
}

function tableOf(table: BookTable, legal: LegalNames, renaming: Renaming, changes: Changes): BookTable[] {
  const found = legal.tables.get(table);
  if (table.area.rows < 2 || !found) {
    changes.say(
      `The table “${shown(table.name)}” has no row below its headings, and is plain cells in the file.`,
    );
    return [];
  }
  const columns = found.columns.map(({ name }, i) => {
    const formula = table.columns[i]?.formula;
    return { name, ...(formula === undefined ? {} : { formula: renaming.formula(formula, table) }) };
  });
  return [{ ...table, name: found.name.name, columns }];
}

/** Whether tables have the names and columns that charts know them by. */
const isSame = (some: readonly BookTable[], other: readonly BookTable[]): boolean =>
  some.length === other.length &&
  some.every(
    ({ name, columns }, i) =>
      name === other[i]?.name && columns.every((column, c) => column.name === other[i]?.columns[c]?.name),
  );

/** Charts by their cells alone, as a file has them: the names of tables and columns do not matter then. */
const chartsOf = ({ charts, tables, name }: BookSheet, changes: Changes): BookChart[] =>
  charts.flatMap((chart) => {
    const drawn = drawnChart(chart, tables);
    if (!drawn) {
      changes.say(`Charts whose cells are gone are left out of the file (${shown(name)}).`);
      return [];
    }
    const { names, ...rest } = drawn;
    const series = drawn.series.map((each) => ({
      ...each,
      x: { cells: each.x },
      values: { cells: each.values },
    }));
    return [{ ...rest, x: { cells: drawn.x }, series, ...(names ? { names: { cells: names } } : {}) }];
  });

/** Above each column of a table stands its name, as a text: a file in which it does not is taken for damaged. */
function withHeadings(
  cells: readonly BookCell[],
  tables: readonly BookTable[],
  { name }: BookSheet,
  changes: Changes,
): readonly BookCell[] {
  const headings = new Map<string, string>();
  for (const { area, columns } of tables)
    for (const [i, column] of columns.entries()) headings.set(`${area.row},${area.column + i}`, column.name);
  if (headings.size === 0) return cells;
  const kept = cells.map((cell) => {
    const key = `${cell.row},${cell.column}`;
    const heading = headings.get(key);
    headings.delete(key);
    if (heading === undefined || (cell.value === heading && cell.formula === undefined)) return cell;
    if (cell.formula !== undefined || textOf(cell.value) === heading)
      changes.say(`Headings of tables are plain texts in the file (${shown(name)}).`);
    const { formula: _, spill: __, ...rest } = cell;
    return { ...rest, value: heading };
  });
  const added = [...headings].map(([key, value]): BookCell => {
    const [row = 0, column = 0] = key.split(',').map(Number);
    return { row, column, value };
  });
  return added.length === 0 ? kept : [...kept, ...added].sort((a, b) => a.row - b.row || a.column - b.column);
}

const meet = (one: Area, other: Area): boolean =>
  one.row < other.row + other.rows &&
  other.row < one.row + one.rows &&
  one.column < other.column + other.columns &&
  other.column < one.column + one.columns;

/** Cells of a merge are written one by one. */
const LARGEST_MERGE = 1_000_000;

function mergesOf({ merges, name }: BookSheet, changes: Changes): readonly Area[] {
  const kept: Area[] = [];
  for (const merge of merges) {
    if (merge.rows * merge.columns === 1) continue;
    if (merge.rows * merge.columns > LARGEST_MERGE)
      changes.say(`Merged cells without measure are single cells in the file (${shown(name)}).`);
    else if (kept.some((other) => meet(other, merge)))
      changes.say(`Merged cells that lie over others are single cells in the file (${shown(name)}).`);
    else kept.push(merge);
  }
  return kept.length === merges.length ? merges : kept;
}

function freezeOf({ freeze, name }: BookSheet, changes: Changes): BookSheet['freeze'] {
  const rows = Math.min(freeze.rows, MOST_ROWS - 1);
  const columns = Math.min(freeze.columns, MOST_COLUMNS - 1);
  if (rows === freeze.rows && columns === freeze.columns) return freeze;
  changes.say(`The last row and column do not stay in view in the file: one has to move (${shown(name)}).`);
  return { rows, columns };
}

function ruleOf(rule: BookRule, { name }: BookSheet, renaming: Renaming, changes: Changes): BookRule[] {
  const { kind, bounds, refusal, prompt } = rule;
  const words = kind === 'list' ? wordsOf(bounds[0] ?? '') : undefined;
  if (words !== undefined && words.length > LONGEST_WORDS) {
    changes.say(
      `Lists with more than ${LONGEST_WORDS} letters in all their words are left out of the file (${shown(name)}).`,
    );
    return [];
  }
  const isLong = (text: string | undefined): boolean => (text?.length ?? 0) > LONGEST_WORDS;
  if (isLong(refusal) || isLong(prompt))
    changes.say(
      `What is said beside cells is cut after ${LONGEST_WORDS} letters in the file (${shown(name)}).`,
    );
  return [
    {
      ...rule,
      bounds: words === undefined ? bounds.map((bound) => renaming.formula(bound)) : bounds,
      ...(refusal === undefined ? {} : { refusal: cut(refusal, LONGEST_WORDS) }),
      ...(prompt === undefined ? {} : { prompt: cut(prompt, LONGEST_WORDS) }),
    },
  ];
}

const conditionOf = (condition: BookCondition, renaming: Renaming): BookCondition =>
  condition.kind === 'formula' ? { ...condition, formula: renaming.formula(condition.formula) } : condition;
