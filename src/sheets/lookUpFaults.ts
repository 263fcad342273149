import { CHECKS } from '../book/kinds';
import type { Fault } from './fault';
import { formatOf } from './formats';
import type { Template, TemplateTable } from './template';

const tablesOf = ({ blocks }: Template): TemplateTable[] =>
  blocks.filter((block): block is TemplateTable => block.kind === 'table');

/** What is wrong with the columns of a template that speak of tables of others. */
export function partnerFaults(template: Template, all: readonly Template[]): Fault[] {
  const others = all.filter((other) => other !== template).flatMap(tablesOf);
  return template.blocks.flatMap((block, b) => {
    if (block.kind !== 'table') return [];
    return block.columns.flatMap((column, c) =>
      CHECKS.flatMap(({ property, columnFaults }) =>
        (columnFaults?.(column, block, others, formatOf) ?? []).map((reason) => ({
          at: `blocks/${b}/columns/${c}/${property}`,
          reason,
        })),
      ),
    );
  });
}
