import { CHECKS } from '../book/kinds';
import type { Fault } from './fault';
import { formatOf } from './formats';
import type { Layout } from './layout';
import { chartKind } from './planChart';
import type { Template, TemplateChart, TemplateTable } from './template';

function reasons(chart: TemplateChart, table: TemplateTable, { cells }: Layout): string[] {
  const missing = [chart.x, ...chart.series].filter((name) => !table.columns.some(({ id }) => id === name));
  if (missing.length > 0) return missing.map((name) => `table ${table.id} has no column ${name}`);
  const asked = {
    ...chart,
    table,
    kind: chartKind(chart, table),
    quantityOf: (id: string) => cells.get(id)?.quantity,
  };
  return CHECKS.flatMap(({ chartFaults: faultsOf }) => faultsOf?.(asked, formatOf) ?? []);
}

/** What is wrong with the charts of a template. */
export const chartFaults = (template: Template, map: Layout): readonly Fault[] =>
  template.charts.flatMap((chart, i) => {
    const table = map.tables.get(chart.table);
    if (!table) return [{ at: `charts/${i}/table`, reason: `there is no table ${chart.table}` }];
    return reasons(chart, table, map).map((reason) => ({ at: `charts/${i}`, reason }));
  });
