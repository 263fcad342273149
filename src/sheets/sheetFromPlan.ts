import { address } from '../formula/address';
import type { InputRule, PlanCell, SheetPlan } from './plan';
import { FONT, PALETTE } from '../book/palette';
import { isIndented, type Look, THEME, WARNED } from './theme';
import { pageBreaks, rowHeights } from './pages';
import type { BookCell, BookRule, BookSheet, BookStyle } from '../book/book';

/** What the formula in a cell gives. */
export type ValueAt = (row: number, column: number) => BookCell['value'];

const EDGES: Readonly<Record<NonNullable<Look['edge']>, (ink: string) => NonNullable<BookStyle['edges']>>> = {
  dotted: () => {
    const edge = { line: 'dotted', ink: PALETTE.slateSoft } as const;
    return { top: edge, right: edge, bottom: edge, left: edge };
  },
  below: (ink) => ({ bottom: { line: 'thin', ink } }),
  thick: (ink) => ({ bottom: { line: 'thick', ink } }),
};

/** The one place where a look of the theme becomes the style of a cell. */
export const styleOf = ({ ink, fill, bold, italic, size, edge }: Look): BookStyle => ({
  font: FONT,
  size,
  ink,
  ...(fill === undefined ? {} : { fill }),
  ...(bold ? { bold } : {}),
  ...(italic ? { italic } : {}),
  ...(edge === undefined ? {} : { edges: EDGES[edge](ink) }),
});

/** Of a cell in a state: only what sets it apart. */
const WARNED_STYLE: BookStyle = {
  ink: WARNED.ink,
  bold: true,
  ...(WARNED.fill ? { fill: WARNED.fill } : {}),
};

/** A sheet ready for a file. Without values its formulas are stored without results. */
export function sheetFromPlan(plan: SheetPlan, values: ValueAt): BookSheet {
  const spans = new Map(plan.merges.map((area) => [`${area.row},${area.column}`, area]));
  const isLine = (cell: PlanCell): boolean => spans.has(`${cell.row},${cell.column}`);
  const heights = rowHeights(plan);
  return {
    name: plan.name,
    hidden: false,
    widths: { ...plan.columns },
    heights,
    cells: plan.cells.map((cell) => bookCell(cell, isLine(cell), values)),
    merges: plan.merges,
    freeze: { rows: plan.freezeRows, columns: 0 },
    tables: plan.tables,
    rules: plan.rules.map(rule),
    warnings: plan.warnings.map(({ area, formula }) => ({ areas: [area], formula, look: WARNED_STYLE })),
    charts: plan.charts,
    page: {
      landscape: plan.page.landscape,
      header: plan.page.header,
      titleRows: plan.page.titleRows,
      breaks: pageBreaks(plan, heights),
      area: plan.page.area,
    },
  };
}

function bookCell(cell: PlanCell, isLine: boolean, values: ValueAt): BookCell {
  const { row, column, part, formula, format, align, wrap, note } = cell;
  const style: BookStyle = {
    ...styleOf(THEME[part]),
    ...(format === 'General' ? {} : { format }),
    align,
    ...(isIndented(cell) ? { indent: 1 } : {}),
    ...(wrap || isLine ? { wrap: true, vertical: isLine ? 'top' : 'bottom' } : {}),
  };
  return {
    row,
    column,
    style,
    value: formula === undefined ? (cell.value ?? null) : values(row, column),
    ...(formula === undefined ? {} : { formula }),
    ...(note === undefined ? {} : { note }),
  };
}

function rule({ area, list, least, above, most, whole, message }: InputRule): BookRule {
  const common = { areas: [area], blank: true, refusal: message, strict: true };
  if (list) return { ...common, kind: 'list', bounds: [`"${list.join(',')}"`] };
  const kind = whole ? 'whole' : 'decimal';
  if (least !== undefined && most !== undefined)
    return { ...common, kind, compare: 'between', bounds: [String(least), String(most)] };
  if (above === undefined) {
    const [compare, bound] =
      least !== undefined ? (['greaterThanOrEqual', least] as const) : (['lessThanOrEqual', most] as const);
    return { ...common, kind, compare, bounds: [String(bound)] };
  }
  if (most === undefined) return { ...common, kind, compare: 'greaterThan', bounds: [String(above)] };
  const cell = address(area);
  const parts = [`ISNUMBER(${cell})`, `${cell}>${above}`, `${cell}<=${most}`];
  if (whole) parts.push(`${cell}=INT(${cell})`);
  return { ...common, kind: 'custom', bounds: [`AND(${parts.join(',')})`] };
}
