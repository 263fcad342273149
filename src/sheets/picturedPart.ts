import { tableTop } from './layout';
import type { Block, Template } from './template';

/** A picture shows no more rows than these: of a long sheet nobody could read more in it. */
export const PICTURED_ROWS = 60;

function withoutRest(block: Block): Block {
  if (block.kind === 'form') return block;
  const pictured = PICTURED_ROWS - tableTop(block) - 1;
  return { ...block, rows: block.rows.slice(0, Math.max(1, pictured)) };
}

/** A template without the rows that no picture shows: the longest sheet has hundreds. Not to be laid. */
export const picturedPart = (template: Template): Template => ({
  ...template,
  blocks: template.blocks.map(withoutRest),
});
