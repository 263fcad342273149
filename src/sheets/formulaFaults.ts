import { rowOf } from '../catalogue';
import type { AnyRow, Arg } from '../catalogue/types';
import { unitOf } from '../catalogue/words';
import { at } from '../exposure/core/at';
import { formatOf } from './formats';
import { calls, type FormulaCall, isBalanced } from '../formula/calls';
import type { Token } from '../formula/lex';
import { isOurs, OURS } from '../formula/names';
import { isOfTemplate, templateReference, templateTokens } from '../formula/templateReference';
import type { Layout } from './layout';
import { PORTABLE_FUNCTIONS } from './portableFunctions';
import { type FormulaNode, target } from './formulaNodes';

const meaningful = (argument: readonly Token[]): readonly Token[] =>
  argument.filter((t) => t.kind !== 'space');

function callFault(call: FormulaCall, node: FormulaNode, map: Layout): string | undefined {
  if (!isOurs(call.name))
    return PORTABLE_FUNCTIONS.has(call.name)
      ? undefined
      : `${call.name} is not on the list of functions that every spreadsheet knows`;
  const row = rowOf(call.name.slice(OURS.length));
  if (!row) return `there is no function ${call.name}`;
  const args = row.args as readonly Arg[];
  const needed = args.filter((a) => !a.optional).length;
  if (call.args.length < needed || call.args.length > args.length)
    return `${call.name} takes ${needed === args.length ? needed : `${needed} to ${args.length}`} values, not ${call.args.length}`;
  if (row.answers !== 'one' && call.within !== 'INDEX')
    return `${call.name} gives a list: it would spill out of its cell`;
  for (const [i, argument] of call.args.entries()) {
    const wrong = unitFault(argument, at(args, i), row, node, map);
    if (wrong) return wrong;
  }
  return undefined;
}

/** A cell that is a whole argument must have the argument's unit. */
function unitFault(
  argument: readonly Token[],
  arg: Arg,
  row: AnyRow,
  node: FormulaNode,
  map: Layout,
): string | undefined {
  const [only, more] = meaningful(argument);
  if (only === undefined || more !== undefined) return undefined;
  const to = target(only, node, map);
  if (to === undefined || typeof to === 'string') return undefined;
  const wanted = unitOf(arg);
  const unit = formatOf(to.quantity)?.unit ?? '';
  if (wanted === '' || unit === '' || unit === wanted) return undefined;
  return `${only.raw} is in ${unit}, but ${arg.name} of ${row.id} is in ${wanted}`;
}

/** What is wrong with one formula, a reason each. */
export function formulaFaults(node: FormulaNode, map: Layout): string[] {
  const pieces = templateTokens(node.formula);
  const wrong: string[] = [];
  const unknown = pieces.find((t) => !isOfTemplate(t));
  if (unknown) wrong.push(`${unknown.raw} is not understood`);
  if (!isBalanced(pieces)) wrong.push('a bracket is not closed');
  for (const piece of pieces) {
    const to = target(piece, node, map);
    if (typeof to === 'string') wrong.push(to);
    if (node.isCondition && templateReference(piece)?.kind === 'column')
      wrong.push(
        `${piece.raw} names a table, and no spreadsheet marks cells by one: let a cell of its own say it`,
      );
  }
  for (const call of calls(pieces)) {
    const fault = callFault(call, node, map);
    if (fault) wrong.push(fault);
  }
  return wrong;
}
