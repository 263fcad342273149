import type { Area } from '../formula/area';
import type { BookChart } from '../book/chart';
import type { LeftOut } from './leftOut';
import { isOnSheet } from '../formula/areas';
import { areaOn } from '../formula/reference';
import { relationsOf } from './relations';
import { below, child, children, type XmlNode, treeOf, words } from './xml';
import type { Package } from './zip';

const OTHERS = 'Charts that are not plain lines or columns over the sheet’s own cells are left out.';

/** The charts of a sheet's drawing that we can draw again. */
export async function readCharts(
  file: Package,
  drawing: string,
  sheetName: string,
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
    const chart = space && place && chartOf(space, place, sheetName);
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

function chartOf(space: XmlNode, place: Area, sheetName: string): BookChart | undefined {
  const chart = child(space, 'chart');
  const plot = child(chart, 'plotArea');
  const groups = plot?.children.filter(({ name }) => name.endsWith('Chart')) ?? [];
  const [group] = groups;
  const type = groups.length === 1 && group ? typeOf(group) : undefined;
  if (type === undefined || !group || !plot) return undefined;
  const all = children(group, 'ser').map((series) => ({
    name: titleOf(child(series, 'tx')),
    x: areaIn(child(series, 'cat') ?? child(series, 'xVal'), sheetName),
    values: areaIn(child(series, 'val') ?? child(series, 'yVal'), sheetName),
  }));
  const x = all[0]?.x;
  const numbered = children(plot, 'valAx');
  const across = child(plot, 'catAx') ?? numbered.find(liesBelow);
  const up = numbered.find((axis) => axis !== across);
  const series = all.flatMap(({ name, values }) => (values ? [{ name, values }] : []));
  if (!x || series.length !== all.length) return undefined;
  return {
    type,
    title: titleOf(child(chart, 'title')),
    xTitle: titleOf(child(across, 'title')),
    yTitle: titleOf(child(up, 'title')),
    x,
    series,
    place,
  };
}

const liesBelow = (axis: XmlNode): boolean => ['b', 't'].includes(child(axis, 'axPos')?.attributes.val ?? '');

function typeOf(group: XmlNode): BookChart['type'] | undefined {
  const grouping = child(group, 'grouping')?.attributes.val ?? '';
  if (group.name === 'lineChart') return grouping === 'standard' || grouping === '' ? 'line' : undefined;
  if (group.name === 'scatterChart')
    return child(group, 'scatterStyle')?.attributes.val === 'lineMarker' ? 'line' : undefined;
  const upright = child(group, 'barDir')?.attributes.val === 'col';
  return group.name === 'barChart' && upright && grouping === 'clustered' ? 'column' : undefined;
}

/** Words typed in, or those last seen in the cell that they come from. */
const titleOf = (node: XmlNode | undefined): string =>
  [...below(node, 't'), ...below(node, 'v')].map(words).join('').trim();

/** The cells that hold the values, where they lie on the sheet itself. */
function areaIn(source: XmlNode | undefined, sheetName: string): Area | undefined {
  const [formula] = below(source, 'f');
  return areaOn(sheetName, words(formula));
}
