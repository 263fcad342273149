import { CHECKS } from '../book/kinds';
import type { Fault } from './fault';
import { formatOf } from './formats';
import { layout } from './layout';
import type { Template, TemplateTable } from './template';

const tablesOf = ({ blocks }: Template): TemplateTable[] =>
  blocks.filter((block): block is TemplateTable => block.kind === 'table');

/** What is wrong with the fields and columns of a template that speak of tables of others. */
export function partnerFaults(template: Template, all: readonly Template[]): Fault[] {
  const others = all.filter((other) => other !== template).flatMap(tablesOf);
  const cells = new Set(layout(template).cells.keys());
  return template.blocks.flatMap((block, b) => {
    const isTable = block.kind === 'table';
    const own = isTable ? { table: block, cells } : { cells };
    return (isTable ? block.columns : block.fields).flatMap((part, i) =>
      CHECKS.flatMap(({ property, partnerFaults: faultsOf }) =>
        (faultsOf?.(part, own, others, formatOf) ?? []).map((reason) => ({
          at: `blocks/${b}/${isTable ? 'columns' : 'fields'}/${i}/${property}`,
          reason,
        })),
      ),
    );
  });
}
