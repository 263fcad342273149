import type { Area } from '../formula/area';
import type { Book, BookRule, BookSheet } from './book';
import { usedArea } from './cells';

/** Cells of one sheet that a grid can keep merged, and can watch for what is typed: it looks at each of them. */
const MOST = { merged: 100_000, ruled: 16_000_000 } as const;
/** Rows and columns behind the last that hold something, in which rules still hold. */
const SPARE = { rows: 1_000, columns: 26 } as const;

const SAID = {
  merges:
    'Merged cells of whole rows, columns or sheets are merged here as far as the sheet holds something.',
  rules:
    'Rules on what may be typed into a whole sheet hold here as far as the sheet holds something, and some cells more.',
} as const;

export interface FittedBook {
  readonly book: Book;
  /** What reaches less far than in the book given, in sentences. */
  readonly changed: readonly string[];
}

/** A book whose sheets a grid can show: what reaches over millions of empty cells reaches as far as there is something. */
export function fitted(book: Book): FittedBook {
  const changed = new Set<string>();
  const sheets = book.sheets.map((sheet) => {
    const merges = mergesOf(sheet);
    const rules = rulesOf(sheet);
    if (merges !== sheet.merges) changed.add(SAID.merges);
    if (rules !== sheet.rules) changed.add(SAID.rules);
    return { ...sheet, merges, rules };
  });
  return { book: { ...book, sheets }, changed: [...changed] };
}

/** How many cells some areas may have in all. */
class Budget {
  #left: number;

  constructor(cells: number) {
    this.#left = cells;
  }
  /** Whether there is room for an area. */
  takes({ rows, columns }: Area): boolean {
    const cells = rows * columns;
    if (cells > this.#left) return false;
    this.#left -= cells;
    return true;
  }
}

const within = ({ row, column, rows, columns }: Area, end: Pick<Area, 'rows' | 'columns'>): Area => ({
  row,
  column,
  rows: Math.min(rows, Math.max(1, end.rows - row)),
  columns: Math.min(columns, Math.max(1, end.columns - column)),
});

function mergesOf(sheet: BookSheet): readonly Area[] {
  const budget = new Budget(MOST.merged);
  const used = usedArea(sheet);
  const merges = sheet.merges.flatMap((merge) => {
    if (budget.takes(merge)) return [merge];
    const less = within(merge, used);
    return less.rows * less.columns > 1 && budget.takes(less) ? [less] : [];
  });
  const isSame = merges.every((merge, i) => merge === sheet.merges[i]);
  return isSame && merges.length === sheet.merges.length ? sheet.merges : merges;
}

function rulesOf(sheet: BookSheet): readonly BookRule[] {
  const budget = new Budget(MOST.ruled);
  const used = usedArea(sheet);
  const end = { rows: used.rows + SPARE.rows, columns: used.columns + SPARE.columns };
  let isSame = true;
  const rules = sheet.rules.map((rule) => {
    const areas = rule.areas.map((area) => (budget.takes(area) ? area : within(area, end)));
    if (areas.every((area, i) => area === rule.areas[i])) return rule;
    isSame = false;
    return { ...rule, areas };
  });
  return isSame ? sheet.rules : rules;
}
