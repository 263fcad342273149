import { blockFaults } from './blockFaults';
import { chains } from './chains';
import type { Fault } from './fault';
import { formulaFaults } from './formulaFaults';
import { type Layout, layout } from './layout';
import { nodes } from './nodes';
import type { Template } from './template';

function chartFaults(template: Template, { tables }: Layout): Fault[] {
  return template.charts.flatMap((chart, i) => {
    const table = tables.get(chart.table);
    if (!table) return [{ at: `charts/${i}/table`, reason: `there is no table ${chart.table}` }];
    const missing = [chart.x, ...chart.series].filter((name) => !table.columns.some((c) => c.id === name));
    return missing.map((name) => ({
      at: `charts/${i}`,
      reason: `table ${chart.table} has no column ${name}`,
    }));
  });
}

/** Everything that is wrong with what a template says; its shape is checked against the schema before. */
export function faults(template: Template): readonly Fault[] {
  const first = blockFaults(template);
  if (first.length > 0) return first;
  const map = layout(template);
  const all = nodes(template);
  const inFormulas = all.flatMap((node) =>
    formulaFaults(node, map).map((reason) => ({ at: node.at, reason })),
  );
  return [...inFormulas, ...chartFaults(template, map), ...chains(all, map).faults];
}

/** The deepest chain of our functions in a template. */
export const depthOf = (template: Template): number => chains(nodes(template), layout(template)).deepest;
