import { tableTop } from './layout';
import type { Block, Template } from './template';

/** Of a long sheet a picture shows so many rows. */
export const PICTURED_ROWS = 60;

function withoutRest(block: Block): Block {
  if (block.kind === 'form') return block;
  const pictured = PICTURED_ROWS - tableTop(block) - 1;
  return { ...block, rows: block.rows.slice(0, Math.max(1, pictured)) };
}

/** A template without the rows that no picture shows: the longest sheet has hundreds. Not to be laid. */
export const topOf = (template: Template): Template => ({
  ...template,
  blocks: template.blocks.map(withoutRest),
});
