import type { BookChart } from '../../../book/chart';

/** Rows and columns of a sheet. */
interface Extent {
  readonly rows: number;
  readonly columns: number;
}

/** How far beyond the last cell a chart may end: a file may say the millionth row, and the grid has to draw all before it. */
const FAR: Extent = { rows: 1000, columns: 100 };

const within = (from: number, length: number, most: number): [from: number, length: number] => {
  const kept = Math.min(length, most);
  return [Math.min(from, most - kept), kept];
};

/** Charts that stand on a grid with so many cells; one far away from all of them comes as near as has to be. */
export const chartsInReach = (charts: readonly BookChart[], cells: Extent): readonly BookChart[] =>
  charts.map((chart) => {
    const [row, rows] = within(chart.place.row, chart.place.rows, cells.rows + FAR.rows);
    const [column, columns] = within(chart.place.column, chart.place.columns, cells.columns + FAR.columns);
    return { ...chart, place: { row, column, rows, columns } };
  });

/** What a grid must have at least, so that its charts stand on it. */
export const extentOf = (charts: readonly Pick<BookChart, 'place'>[]): Extent => ({
  rows: charts.reduce((most, { place }) => Math.max(most, place.row + place.rows), 0),
  columns: charts.reduce((most, { place }) => Math.max(most, place.column + place.columns), 0),
});
