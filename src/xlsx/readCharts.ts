import type { BookCell } from '../book/book';
import type { Area } from '../formula/area';
import {
  type BookChart,
  byColumn,
  type ChartCells,
  type ChartKind,
  type ChartSeries,
  type TableShape,
} from '../book/chart';
import type { LeftOut } from './notKept';
import { isOnSheet } from '../formula/areaText';
import { areaOn } from '../formula/reference';
import { roleOf } from './chartLook';
import { relationsOf } from './relations';
import { below, child, children, type XmlNode, treeOf, words } from './xml';
import type { Package } from './zip';

const OTHERS = 'Charts that are not plain lines or columns over the sheet’s own cells are left out.';

/** The sheet that charts are drawn on, and draw. */
export interface ChartSheet {
  readonly name: string;
  readonly tables: readonly TableShape[];
  readonly cells: readonly BookCell[];
}

/** The charts of a sheet's drawing that we can draw again. */
export async function readCharts(
  file: Package,
  drawing: string,
  sheet: ChartSheet,
  leftOut: LeftOut,
): Promise<BookChart[]> {
  const root = await treeOf(file, drawing);
  if (!root) return [];
  const parts = new Map((await relationsOf(file, drawing)).map(({ id, part }) => [id, part]));
  if (below(root, 'sp').length > 0 || below(root, 'cxnSp').length > 0)
    leftOut.say('Shapes and text boxes are left out.');
  const charts: BookChart[] = [];
  for (const anchor of root.children) {
    const [reference] = below(anchor, 'chart');
    if (!reference) continue;
    const space = await treeOf(file, parts.get(reference.attributes.id ?? ''));
    const place = placeOf(anchor);
    const chart = space && place && chartOf(space, place, sheet);
    if (chart) charts.push(chart);
    else leftOut.say(OTHERS);
  }
  return charts;
}

function placeOf(anchor: XmlNode): Area | undefined {
  const corner = (name: string) => {
    const at = child(anchor, name);
    const of = (what: string): number => Number(words(child(at, what)));
    return at && { row: of('row'), column: of('col') };
  };
  const [from, to] = [corner('from'), corner('to')];
  if (!from || !to) return undefined;
  const area = { ...from, rows: to.row - from.row, columns: to.column - from.column };
  return isOnSheet(area) ? area : undefined;
}

function chartOf(space: XmlNode, place: Area, sheet: ChartSheet): BookChart | undefined {
  const chart = child(space, 'chart');
  const plot = child(chart, 'plotArea');
  const groups = plot?.children.filter(({ name }) => name.endsWith('Chart')) ?? [];
  const kind = kindOfAll(groups);
  if (kind === undefined || !plot) return undefined;
  const cells = (source: XmlNode | undefined): ChartCells | undefined => {
    const area = areaIn(source, sheet.name);
    return area && byColumn(area, sheet.tables);
  };
  const title = (node: XmlNode | undefined): string => titleOf(node, sheet);
  const all = groups.flatMap((group) => children(group, 'ser'));
  const x = cells(along(all[0]));
  const named = kind === 'scatter' ? namedPoints(all, sheet) : undefined;
  const series = all.flatMap((each) => {
    const found = x && seriesOf(each, kind, x, cells);
    return found ? [{ name: title(child(each, 'tx')), ...found }] : [];
  });
  if (!x || series.length !== all.length) return undefined;
  const numbered = children(plot, 'valAx');
  const across = child(plot, 'catAx') ?? numbered.find(liesBelow);
  const up = numbered.find((axis) => axis !== across);
  return {
    kind,
    title: title(child(chart, 'title')),
    xTitle: title(child(across, 'title')),
    yTitle: title(child(up, 'title')),
    x,
    series,
    ...named,
    place,
  };
}

/** Cells of one column, one below the other, as one area. */
function oneBelowTheOther(areas: readonly (Area | undefined)[]): Area | undefined {
  const [first] = areas;
  const isInLine = areas.every(
    (each, i) =>
      first &&
      each?.row === first.row + i &&
      each.column === first.column &&
      each.rows === 1 &&
      each.columns === 1,
  );
  return first && isInLine ? { ...first, rows: areas.length } : undefined;
}

/** Points with their names beside them: a file has each as a series of its own, whose name is a cell's. */
function namedPoints(
  all: readonly XmlNode[],
  sheet: ChartSheet,
): Pick<BookChart, 'x' | 'series' | 'names'> | undefined {
  const saysName = (series: XmlNode): boolean =>
    child(child(series, 'dLbls'), 'showSerName')?.attributes.val === '1';
  if (all.length < 2 || !all.every(saysName)) return undefined;
  const [names, x, values] = ['tx', 'xVal', 'yVal'].map((part) =>
    oneBelowTheOther(all.map((series) => areaIn(child(series, part), sheet.name))),
  );
  if (!names || !x || !values) return undefined;
  const up = byColumn(values, sheet.tables);
  return {
    x: byColumn(x, sheet.tables),
    series: [{ name: 'table' in up ? up.column : '', values: up, role: 'named' }],
    names: byColumn(names, sheet.tables),
  };
}

const along = (series: XmlNode | undefined): XmlNode | undefined =>
  child(series, 'cat') ?? child(series, 'xVal');

/** Only in a scatter may a series have points elsewhere than the first; all others take its axis. */
function seriesOf(
  series: XmlNode,
  kind: ChartKind,
  common: ChartCells,
  cells: (source: XmlNode | undefined) => ChartCells | undefined,
): Omit<ChartSeries, 'name'> | undefined {
  const values = cells(child(series, 'val') ?? child(series, 'yVal'));
  const own = kind === 'scatter' ? cells(along(series)) : common;
  if (!values || !own) return undefined;
  const elsewhere = JSON.stringify(own) !== JSON.stringify(common);
  const role = roleOf(series, isOneCell(own), elsewhere);
  return {
    values,
    ...(elsewhere ? { x: own } : {}),
    ...(role ? { role } : {}),
  };
}

const isOneCell = (from: ChartCells): boolean =>
  'cells' in from && from.cells.rows === 1 && from.cells.columns === 1;

const liesBelow = (axis: XmlNode): boolean => ['b', 't'].includes(child(axis, 'axPos')?.attributes.val ?? '');

/** Columns may have constant lines over them, on the same axes. */
function kindOfAll([group, over, ...more]: readonly XmlNode[]): ChartKind | undefined {
  const kind = group && kindOf(group);
  if (!group || !over) return kind;
  const axesOf = (of: XmlNode): string => children(of, 'axId').map(({ attributes }) => attributes.val).join(' '); // prettier-ignore
  const isOverColumns = kind === 'column' && kindOf(over) === 'line' && more.length === 0;
  const isConstant = children(over, 'ser').every((series) => roleOf(series, false, false) === 'limit');
  return isOverColumns && isConstant && axesOf(group) === axesOf(over) ? kind : undefined;
}

function kindOf(group: XmlNode): ChartKind | undefined {
  const grouping = child(group, 'grouping')?.attributes.val ?? '';
  if (group.name === 'lineChart') return grouping === 'standard' || grouping === '' ? 'line' : undefined;
  if (group.name === 'scatterChart')
    return child(group, 'scatterStyle')?.attributes.val === 'lineMarker' ? 'scatter' : undefined;
  const upright = child(group, 'barDir')?.attributes.val === 'col';
  return group.name === 'barChart' && upright && grouping === 'clustered' ? 'column' : undefined;
}

/** Words typed in, or those last seen in the cell that they come from; some programs leave it to the cell to say them. */
function titleOf(node: XmlNode | undefined, { name, cells }: ChartSheet): string {
  const kept = [...below(node, 't'), ...below(node, 'v')];
  const from = kept.length === 0 ? areaIn(node, name) : undefined;
  const cell = from && cells.find(({ row, column }) => row === from.row && column === from.column);
  return (cell ? wordsIn(cell) : kept.map(words).join('')).trim();
}

const wordsIn = ({ value }: BookCell): string =>
  typeof value === 'string' || typeof value === 'number' ? String(value) : '';

/** The cells that hold the values, where they lie on the sheet itself. */
function areaIn(source: XmlNode | undefined, sheetName: string): Area | undefined {
  const [formula] = below(source, 'f');
  return areaOn(sheetName, words(formula));
}
