import type { Block, Template } from './template';

const withoutRest = (block: Block): Block =>
  block.kind === 'form' ? block : { ...block, rows: block.rows.slice(0, 1) };

/** A template without the rows that no list tells of: the longest sheet has hundreds. Not to be laid. */
export const topOf = (template: Template): Template => ({
  ...template,
  blocks: template.blocks.map(withoutRest),
});
