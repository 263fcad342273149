import { type BookCell, type BookSheet, type BookStyle, type Edge, SIDES } from '../../book/book';
import { usedArea } from '../../book/cells';
import type { Area } from '../../formula/area';
import { styleOf } from '../../sheets/looks';
import { excelRange, patches } from './ranges';

/** The look that is laid on the whole sheet at once, so that a cell only says how it differs: fewer commands to Excel. */
const BASE = styleOf('result');

interface Line {
  readonly style: 'Continuous' | 'Dash' | 'Dot' | 'Double';
  /** Thin unless it says otherwise. */
  readonly weight?: 'Hairline' | 'Medium' | 'Thick';
}
const LINES: Readonly<Record<Edge['line'], Line>> = {
  thin: { style: 'Continuous' },
  medium: { style: 'Continuous', weight: 'Medium' },
  thick: { style: 'Continuous', weight: 'Thick' },
  dotted: { style: 'Dot' },
  dashed: { style: 'Dash' },
  double: { style: 'Double' },
  hair: { style: 'Continuous', weight: 'Hairline' },
};
const EDGES = { top: 'EdgeTop', right: 'EdgeRight', bottom: 'EdgeBottom', left: 'EdgeLeft' } as const;
type Side = (typeof EDGES)[keyof typeof EDGES] | 'InsideHorizontal' | 'InsideVertical';
const ALIGN = { left: 'Left', center: 'Center', right: 'Right' } as const;
const VERTICAL = { top: 'Top', middle: 'Center', bottom: 'Bottom' } as const;

/** Every cell of the area gets its lines; a side between cells exists only where there are two. */
function lines(edges: NonNullable<BookStyle['edges']>, { rows, columns }: Area): [Side, Edge][] {
  const outside = SIDES.flatMap((side): [Side, Edge][] => (edges[side] ? [[EDGES[side], edges[side]]] : []));
  const [across, down] = [edges.bottom ?? edges.top, edges.right ?? edges.left];
  const between: [Side, Edge][] = [];
  if (across && rows > 1) between.push(['InsideHorizontal', across]);
  if (down && columns > 1) between.push(['InsideVertical', down]);
  return [...outside, ...between];
}

function dress(format: Excel.RangeFormat, style: BookStyle, area: Area): void {
  const { ink, size, bold, italic, fill, edges = {}, align, indent, wrap } = style;
  if (ink !== undefined && ink !== BASE.ink) format.font.color = ink;
  if (size !== undefined && size !== BASE.size) format.font.size = size;
  if (bold) format.font.bold = true;
  if (italic) format.font.italic = true;
  if (fill) format.fill.color = fill;
  for (const [side, edge] of lines(edges, area)) {
    const border = format.borders.getItem(side);
    const { style: line, weight } = LINES[edge.line];
    border.style = line;
    if (weight) border.weight = weight;
    border.color = edge.ink;
  }
  if (align) format.horizontalAlignment = ALIGN[align];
  if (indent) format.indentLevel = indent;
  if (wrap) format.wrapText = true;
}

const isDotted = ({ style }: BookCell): boolean => style?.edges?.top?.line === 'dotted';

/** Cells are dressed together that are alike in everything but their number format, which they have already. */
function lookOf({ part, style = {} }: BookCell): string {
  const { format: _, ...look } = style;
  return JSON.stringify([part, look]);
}

/** Gives every cell its look, in as few ranges as they fall into. */
export function drawLooks(sheet: Excel.Worksheet, planned: BookSheet): void {
  const { format } = excelRange(sheet, usedArea(planned));
  const { font, size, ink, vertical } = BASE;
  Object.assign(format.font, { name: font, size, color: ink });
  format.verticalAlignment = VERTICAL[vertical ?? 'bottom'];

  const cells = planned.cells.map((cell) => ({ ...cell, look: lookOf(cell) }));
  const alike = patches(cells, ({ look }) => look);
  // The line below a heading wins over the dots of the cell under it, which share an edge: it is drawn later.
  const inOrder = [
    ...alike.filter(({ first }) => isDotted(first)),
    ...alike.filter(({ first }) => !isDotted(first)),
  ];
  for (const { first, area } of inOrder) dress(excelRange(sheet, area).format, first.style ?? {}, area);
}

/**
 * Gives the cells of a column another look than the one that they have: what the new one does not say goes. The line above them
 * is their heading's.
 */
export function redress(format: Excel.RangeFormat, style: BookStyle, area: Area): void {
  const { ink, size } = BASE;
  Object.assign(format.font, { color: ink, size, bold: false, italic: false });
  format.fill.clear();
  const { top: _, ...edges } = style.edges ?? {};
  for (const side of ['right', 'bottom', 'left'] as const)
    if (!edges[side]) format.borders.getItem(EDGES[side]).style = 'None';
  if (area.rows > 1 && !edges.bottom) format.borders.getItem('InsideHorizontal').style = 'None';
  dress(format, { ...style, edges }, area);
}
