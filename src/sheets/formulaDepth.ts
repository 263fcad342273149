import type { Fault } from './fault';
import { calls } from '../formula/calls';
import { isOurs, OURS } from '../formula/names';
import { templateTokens } from '../formula/templateReference';
import type { Layout } from './layout';
import { type FormulaNode, target } from './formulaNodes';

/** Deepest chain of cells that hold our functions: each level costs about half a second in Excel. */
export const MOST_DEPTH = 2;

/** What says a number in words: it may end one chain a level deeper, where no other cell waits for it. */
const SAYING: ReadonlySet<string> = new Set(
  ['DIALCHANGE', 'HEADSETTING', 'STOPTEXT'].map((id) => `${OURS}${id}`),
);

/** Whether all that a formula gives by our functions is text. */
const says = (node: FormulaNode): boolean =>
  calls(templateTokens(node.formula)).every(
    ({ name, depth }) => depth > 1 || !isOurs(name) || SAYING.has(name),
  );

/** Levels of our functions on the longest path that ends in each node; faults for circles and for chains too deep. */
export function chains(
  all: readonly FormulaNode[],
  map: Layout,
): { readonly deepest: number; readonly faults: readonly Fault[] } {
  const byId = new Map<string, FormulaNode[]>();
  for (const node of all) {
    const alike = byId.get(node.id);
    if (alike) alike.push(node);
    else byId.set(node.id, [node]);
  }

  const known = new Map<FormulaNode, number>();
  const wrong: Fault[] = [];
  const read = new Set<string>();
  const visit = (node: FormulaNode, path: readonly string[]): number => {
    const already = known.get(node);
    if (already !== undefined) return already;
    if (path.includes(node.id)) {
      const circle = [...path.slice(path.indexOf(node.id)), node.id].join(' → ');
      wrong.push({ at: node.at, reason: `goes round in a circle: ${circle}` });
      return 0;
    }
    const pieces = templateTokens(node.formula);
    let below = 0;
    for (const piece of pieces) {
      const to = target(piece, node, map);
      if (to === undefined || typeof to === 'string') continue;
      read.add(to.id);
      const next = byId.get(to.id) ?? [];
      for (const other of next) below = Math.max(below, visit(other, [...path, node.id]));
    }
    const own = Math.max(0, ...calls(pieces).map((call) => (isOurs(call.name) ? call.depth : 0)));
    known.set(node, below + own);
    return below + own;
  };
  const levels = all.map((node) => ({ node, depth: visit(node, []) }));
  for (const { node, depth } of levels)
    if (depth > MOST_DEPTH + (says(node) && !read.has(node.id) ? 1 : 0))
      wrong.push({ at: node.at, reason: `ends a chain of ${depth} of our functions: at most ${MOST_DEPTH}` });
  return { deepest: Math.max(0, ...levels.map((l) => l.depth)), faults: wrong };
}
