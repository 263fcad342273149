import type { Area } from '../../../formula/area';
import type { After, Lines } from '../../../formula/followEdit';
import type { BookPicture } from '../../../book/picture';
import type { BookChart, ChartCells, ChartSeries } from '../../../book/chart';

/** What an edit does to the places of a sheet. */
export interface Edit {
  readonly after: After;
  /** Whole rows or columns that go away, all of one axis. */
  readonly removed: readonly Lines[];
}

/** A chart keeps at least so many rows and columns. */
export const LEAST = { rows: 5, columns: 2 } as const;

/** Where an area was whose rows or columns are all gone: it has none of them left. */
function remnant(area: Area, axis: Lines['axis'], removed: readonly Lines[]): Area {
  const along = axis === 'rows' ? 'row' : 'column';
  const goneBefore = removed.reduce((sum, { at, count }) => sum + clamp(area[along] - at, count), 0);
  return { ...area, [along]: area[along] - goneBefore, [axis]: 0 };
}
const clamp = (value: number, most: number): number => Math.min(Math.max(value, 0), most);

/**
 * Where a place on a sheet is after an edit; one that has no rows or no columns left where all of them went. Where the cells
 * below it go away or come from elsewhere, it stays.
 */
export function placeAfter(area: Area, { after, removed }: Edit): Area {
  const axis = removed[0]?.axis;
  return after(area) ?? (axis ? remnant(area, axis, removed) : area);
}

/** Plain cells after an edit; nothing where they are gone. Columns of a table find themselves. */
function cellsAfter(from: ChartCells, { after }: Edit): ChartCells | undefined {
  if (!('cells' in from)) return from;
  const cells = after(from.cells);
  return cells && { cells };
}

function seriesAfter({ x, values, ...rest }: ChartSeries, edit: Edit): ChartSeries[] {
  const [along, up] = [x && cellsAfter(x, edit), cellsAfter(values, edit)];
  if (!up || (x && !along)) return [];
  return [{ ...rest, values: up, ...(along ? { x: along } : {}) }];
}

/** A place after an edit, no smaller than can be read. */
function legible(was: Area, edit: Edit): Area {
  const place = placeAfter(was, edit);
  return {
    ...place,
    rows: Math.max(Math.min(LEAST.rows, was.rows), place.rows),
    columns: Math.max(Math.min(LEAST.columns, was.columns), place.columns),
  };
}

export const pictureAfter = (picture: BookPicture, edit: Edit): BookPicture => ({
  ...picture,
  place: legible(picture.place, edit),
});

/** A chart after an edit: it moves with its cells and keeps what is left to draw, which may be nothing. */
export function chartAfter(chart: BookChart, edit: Edit): BookChart {
  const x = cellsAfter(chart.x, edit);
  const { names: from, ...rest } = chart;
  const names = from && cellsAfter(from, edit);
  return {
    ...rest,
    ...(names ? { names } : {}),
    x: x ?? chart.x,
    series: x ? chart.series.flatMap((each) => seriesAfter(each, edit)) : [],
    place: legible(chart.place, edit),
  };
}
