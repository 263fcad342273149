import { templateReference, templateTokens } from '../formula/template';
import type { Fault } from './fault';
import { formatOf } from './formats';
import type { Layout } from './layout';
import { chartKind } from './planChart';
import type { Template, TemplateChart, TemplateTable } from './template';

const unitOf = (quantity: string | undefined): string => formatOf(quantity ?? '')?.unit ?? '';
const quantityOf = ({ columns }: TemplateTable, name: string | undefined): string | undefined =>
  columns.find(({ id }) => id === name)?.quantity;

/** Why something cannot be drawn along an axis whose numbers are of a quantity. */
function unitFaults(what: string, quantity: string, axis: string | undefined): string[] {
  const [unit, wanted] = [unitOf(quantity), unitOf(axis)];
  return unit === wanted ? [] : [`${what} is in ${unit || 'no unit'}, but its axis in ${wanted || 'none'}`];
}

function limitFaults({ limit, series }: TemplateChart, table: TemplateTable): string[] {
  const column = table.columns.find(({ id }) => id === limit);
  if (!column) return [];
  const isConstant =
    column.formula !== undefined &&
    !templateTokens(column.formula).some((token) => templateReference(token)?.kind === 'row');
  return [
    ...(isConstant ? [] : [`a constant line is the same in every row: let a formula of ${limit} say it`]),
    ...unitFaults(column.id, column.quantity, quantityOf(table, series[0])),
  ];
}

function pointFaults(chart: TemplateChart, table: TemplateTable, { cells }: Layout): string[] {
  const { point, x, series } = chart;
  if (!point) return [];
  const onAxis = (id: string, axis: string | undefined): string[] => {
    const cell = cells.get(id);
    return cell
      ? unitFaults(`{${id}}`, cell.quantity, quantityOf(table, axis))
      : [`there is no cell {${id}}`];
  };
  return [
    ...(chartKind(chart, table) === 'line' ? ['a marked point needs numbers along the axis'] : []),
    ...onAxis(point.x, x),
    ...onAxis(point.y, series[0]),
  ];
}

function reasons(chart: TemplateChart, table: TemplateTable, map: Layout): string[] {
  const { type, x, series, limit, point } = chart;
  const named = [x, ...series, ...(limit === undefined ? [] : [limit])];
  const missing = named.filter((name) => quantityOf(table, name) === undefined);
  if (missing.length > 0) return missing.map((name) => `table ${table.id} has no column ${name}`);
  if (type === 'column' && (limit !== undefined || point))
    return ['columns have neither a constant line nor a marked point'];
  return [...limitFaults(chart, table), ...pointFaults(chart, table, map)];
}

/** What is wrong with the charts of a template. */
export const chartFaults = (template: Template, map: Layout): readonly Fault[] =>
  template.charts.flatMap((chart, i) => {
    const table = map.tables.get(chart.table);
    if (!table) return [{ at: `charts/${i}/table`, reason: `there is no table ${chart.table}` }];
    return reasons(chart, table, map).map((reason) => ({ at: `charts/${i}`, reason }));
  });
