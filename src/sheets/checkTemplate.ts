import { blockFaults } from './blockFaults';
import { chains } from './formulaDepth';
import { chartFaults } from './chartFaults';
import type { Fault } from './fault';
import { formulaFaults } from './formulaFaults';
import { inListFaults } from './inList';
import { layout } from './layout';
import { nodes } from './formulaNodes';
import type { Template } from './template';

/** Everything that is wrong with what a template says; its shape is checked against the schema before. */
export function faults(template: Template): readonly Fault[] {
  const first = blockFaults(template);
  if (first.length > 0) return first;
  const map = layout(template);
  const all = nodes(template);
  const inFormulas = all.flatMap((node) =>
    formulaFaults(node, map).map((reason) => ({ at: node.at, reason })),
  );
  return [
    ...inFormulas,
    ...chartFaults(template, map),
    ...inListFaults(template, map),
    ...chains(all, map).faults,
  ];
}

/** The deepest chain of our functions in a template. */
export const depthOf = (template: Template): number => chains(nodes(template), layout(template)).deepest;
