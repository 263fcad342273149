import type { BookCell, BookSheet } from '../book/book';
import type { ChartKind } from '../book/chart';
import { planAlone } from '../sheets/makePlan';
import type { Area } from '../formula/area';
import type { Template } from '../sheets/template';
import { PALETTE } from '../book/palette';
import { PICTURED_ROWS } from '../sheets/picturedPart';
import { svg } from './element';

const WIDTH = 104;
const HEIGHT = 92;
const MARGIN = 4;
/** Characters that a line of text takes of a column, at most: what is longer is cut or wraps. */
const FULL = 0.9;

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Where the cells of a plan lie in the picture. */
class Scale {
  readonly #edges: number[];
  readonly #row: number;

  constructor({ widths, page }: BookSheet) {
    const columns = Object.values(widths);
    const total = columns.reduce((sum, width) => sum + width, 0);
    const edges = [MARGIN];
    for (const width of columns) edges.push((edges.at(-1) ?? 0) + (width / total) * (WIDTH - 2 * MARGIN));
    this.#edges = edges;
    this.#row = (HEIGHT - 2 * MARGIN) / Math.min(page.area?.rows ?? PICTURED_ROWS, PICTURED_ROWS);
  }

  box({ row, column, rows, columns }: Area): Box {
    const at = (edge: number): number => this.#edges[Math.min(edge, this.#edges.length - 1)] ?? 0;
    return {
      x: at(column),
      y: MARGIN + row * this.#row,
      width: at(column + columns) - at(column),
      height: rows * this.#row,
    };
  }
}

const rect = ({ x, y, width, height }: Box, fill: string): SVGElement =>
  svg('rect', {
    x: x.toFixed(1),
    y: y.toFixed(1),
    width: Math.max(width, 0.1).toFixed(1),
    height: Math.max(height, 0.1).toFixed(1),
    fill,
  });

/** A cell as a bar as long as its text, on its fill. */
function cellMarks(cell: BookCell, box: Box, chars: number): SVGElement[] {
  const { fill, ink = PALETTE.slate, align } = cell.style ?? {};
  const marks = fill ? [rect({ ...box, width: box.width - 0.4, height: box.height - 0.3 }, fill)] : [];
  const length = cell.formula === undefined ? String(cell.value ?? '').length : chars / 2;
  if (length === 0) return marks;
  const width = box.width * Math.min(FULL, length / chars);
  const x = align === 'right' ? box.x + box.width * 0.95 - width : box.x + box.width * 0.05;
  const thick = cell.part === 'title' || cell.part === 'section' ? 0.6 : 0.4;
  marks.push(rect({ x, y: box.y + box.height * (0.5 - thick / 2), width, height: box.height * thick }, ink));
  return marks;
}

/** A curve or three columns where the sheet has its chart. */
function chartMarks({ x, y, width, height }: Box, kind: ChartKind): SVGElement[] {
  const frame = rect({ x, y, width, height }, PALETTE.glazePale);
  const at = (across: number, up: number): string =>
    `${(x + across * width).toFixed(1)} ${(y + (1 - up) * height).toFixed(1)}`;
  const drawn =
    kind !== 'column'
      ? svg('path', {
          d: `M${at(0.08, 0.15)}Q${at(0.3, 0.75)} ${at(0.92, 0.85)}`,
          fill: 'none',
          stroke: PALETTE.glaze,
          'stroke-width': 1.5,
        })
      : svg('path', {
          d: [0.2, 0.5, 0.8].map((c, i) => `M${at(c, 0.1)}L${at(c, [0.8, 0.35, 0.55][i] ?? 0)}`).join(''),
          stroke: PALETTE.glaze,
          'stroke-width': (width * 0.18).toFixed(1),
        });
  return [frame, drawn];
}

/** A small picture of a sheet, drawn from the plan of its top: always what would be inserted. */
export function sheetPicture(top: Template): SVGSVGElement {
  const { sheet } = planAlone(top, true);
  const scale = new Scale(sheet);
  const merged = new Map(sheet.merges.map((area) => [`${area.row} ${area.column}`, area]));
  const marks = sheet.cells
    .filter(({ row }) => row < PICTURED_ROWS)
    .flatMap((cell) => {
      const area = merged.get(`${cell.row} ${cell.column}`) ?? { ...cell, rows: 1, columns: 1 };
      const chars = Object.values(sheet.widths)
        .slice(area.column, area.column + area.columns)
        .reduce((sum, width) => sum + width, 0);
      return cellMarks(cell, scale.box(area), chars);
    });
  return svg(
    'svg',
    { viewBox: `0 0 ${WIDTH} ${HEIGHT}`, width: WIDTH, height: HEIGHT, 'aria-hidden': 'true' },
    rect({ x: 0, y: 0, width: WIDTH, height: HEIGHT }, PALETTE.paper),
    ...marks,
    ...sheet.charts.flatMap((chart) => chartMarks(scale.box(chart.place), chart.kind)),
  );
}
