import { NAMESPACE, rowOf } from '../catalogue';
import type { AnyRow, Arg } from '../catalogue/types';
import { unitOf } from '../catalogue/words';
import { place } from './address';
import { formatOf, SHEET_QUANTITIES } from './formats';
import { type Call, calls, isBalanced, type Token, tokens } from './formula';
import { blockColumns, blockPlace, blockRows, isGiven, LEAD_ROWS, type Layout, layout } from './layout';
import { NATIVE_FUNCTIONS } from './natives';
import type { Column, Table, Template, Value } from './template';

/** What is wrong with a template, and where in it. */
export interface Fault {
  readonly at: string;
  readonly reason: string;
}

const OURS = `${NAMESPACE}.`;
const isOurs = (name: string): boolean => name.startsWith(OURS);
/** Deepest chain of cells that hold our functions: each level costs about half a second in Excel. */
export const MOST_DEPTH = 2;

/** One formula of a template, as a node that may depend on others. */
interface Node {
  /** Of its cell or column: rows of a column that have formulas of their own share it. */
  readonly id: string;
  readonly at: string;
  readonly formula: string;
  /** The table whose rows the formula stands in. */
  readonly table: Table | undefined;
}

const columnId = (table: string, column: string): string => `${table}[${column}]`;

function nodes(template: Template): Node[] {
  const found: Node[] = [];
  for (const [b, block] of template.blocks.entries()) {
    const parts = block.kind === 'form' ? block.fields : block.columns;
    const table = block.kind === 'table' ? block : undefined;
    for (const [i, part] of parts.entries()) {
      const at = `blocks/${b}/${block.kind === 'form' ? 'fields' : 'columns'}/${i}`;
      const id = table ? columnId(table.id, part.id) : part.id;
      if (table !== undefined && 'fixed' in part && part.fixed === 'formulas') {
        const position = table.columns.filter(isGiven).indexOf(part);
        for (const [r, row] of table.rows.entries())
          found.push({ id, at: `blocks/${b}/rows/${r}`, formula: String(row[position]), table });
      }
      if (part.formula !== undefined) found.push({ id, at: `${at}/formula`, formula: part.formula, table });
      if (part.warning !== undefined)
        found.push({ id: `${id} warning`, at: `${at}/warning/when`, formula: part.warning.when, table });
    }
  }
  return found;
}

/** What a piece refers to, as the id of a node or an input; or why it refers to nothing. */
function target(
  piece: Token,
  { table }: Node,
  { cells, tables }: Layout,
): { id: string; quantity: string } | string | undefined {
  if (piece.kind === 'cell') {
    if (piece.template !== undefined) return undefined;
    const cell = cells.get(piece.id);
    return cell ? { id: piece.id, quantity: cell.quantity } : `there is no cell ${piece.raw}`;
  }
  if (piece.kind !== 'row' && piece.kind !== 'column') return undefined;
  const of = piece.kind === 'row' ? table : tables.get(piece.table);
  if (!of)
    return piece.kind === 'row' ? `${piece.raw} stands outside a table` : `there is no table ${piece.table}`;
  const column = of.columns.find((c) => c.id === piece.column);
  return column
    ? { id: columnId(of.id, column.id), quantity: column.quantity }
    : `table ${of.id} has no column ${piece.column}`;
}

const meaningful = (argument: readonly Token[]): readonly Token[] =>
  argument.filter((t) => t.kind !== 'space');

function callFault(call: Call, node: Node, map: Layout): string | undefined {
  if (!isOurs(call.name))
    return NATIVE_FUNCTIONS.has(call.name)
      ? undefined
      : `${call.name} is not on the list of functions that every spreadsheet knows`;
  const row = rowOf(call.name.slice(OURS.length));
  if (!row) return `there is no function ${call.name}`;
  const args = row.args as readonly Arg[];
  const needed = args.filter((a) => !a.optional).length;
  const endless = args.some((a) => a.takes === 'rest');
  if (call.args.length < needed || (!endless && call.args.length > args.length))
    return `${call.name} takes ${needed === args.length ? needed : `${needed} to ${args.length}`} values, not ${call.args.length}`;
  if (row.answers !== 'one' && call.within !== 'INDEX')
    return `${call.name} gives a list: it would spill out of its cell`;
  for (const [i, argument] of call.args.entries()) {
    const wrong = unitFault(argument, args[Math.min(i, args.length - 1)] as Arg, row, node, map);
    if (wrong) return wrong;
  }
  return undefined;
}

/** A cell that is a whole argument must have the argument's unit. */
function unitFault(
  argument: readonly Token[],
  arg: Arg,
  row: AnyRow,
  node: Node,
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

function formulaFaults(node: Node, map: Layout): string[] {
  const pieces = tokens(node.formula);
  const wrong: string[] = [];
  const unknown = pieces.find((t) => t.kind === 'unknown');
  if (unknown) wrong.push(`${unknown.raw} is not understood`);
  if (!isBalanced(pieces)) wrong.push('a bracket is not closed');
  for (const piece of pieces) {
    const to = target(piece, node, map);
    if (typeof to === 'string') wrong.push(to);
  }
  for (const call of calls(pieces, isOurs)) {
    const fault = callFault(call, node, map);
    if (fault) wrong.push(fault);
  }
  return wrong;
}

/** Cells that blocks share. */
function overlaps(template: Template): Fault[] {
  const taken = new Map<string, number>();
  const found: Fault[] = [];
  for (const [b, block] of template.blocks.entries()) {
    const start = place(block.at);
    if (!start) {
      found.push({ at: `blocks/${b}/at`, reason: `${block.at} is no cell` });
      continue;
    }
    if (start.row < LEAD_ROWS)
      found.push({
        at: `blocks/${b}/at`,
        reason: `${block.at} lies in the first ${LEAD_ROWS} rows, which the sheet needs itself`,
      });
    const { row, column } = blockPlace(block);
    const neighbours = new Set<number>();
    for (let r = row; r < row + blockRows(block); r++)
      for (let c = column; c < column + blockColumns(block); c++) {
        const other = taken.get(`${r},${c}`);
        if (other !== undefined) neighbours.add(other);
        taken.set(`${r},${c}`, b);
      }
    for (const other of neighbours)
      found.push({ at: `blocks/${b}/at`, reason: `shares cells with block ${other}` });
  }
  const { cautions, cautionsAt } = template;
  if (cautionsAt === undefined) return found;
  const first = place(cautionsAt)?.row ?? 0;
  const rows = new Set([...taken.keys()].map((key) => parseInt(key, 10)));
  if (cautions.some((_, i) => first + i < LEAD_ROWS || rows.has(first + i)))
    found.push({ at: 'cautionsAt', reason: `${cautionsAt} leaves no room for ${cautions.length} lines` });
  return found;
}

/** A row has a value for each column that is given; formulas stand where formulas are expected, and nowhere else. */
function rowFaults(row: readonly Value[], given: readonly Column[]): string[] {
  if (row.length !== given.length)
    return [`has ${row.length} values for ${given.length} columns without a formula`];
  return given.flatMap(({ id, fixed }, i) => {
    const isFormula = typeof row[i] === 'string' && row[i].startsWith('=');
    if (isFormula === (fixed === 'formulas')) return [];
    return [isFormula ? `${id} holds no formulas` : `${id} must hold a formula`];
  });
}

/** What a spreadsheet takes for a cell, so that nothing can be called so: A1, or R1C1 and its short forms. */
const LIKE_A_CELL = /^([a-z]{1,3}\d+|r\d*(c\d*)?|c\d*)$/i;

function names(template: Template): Fault[] {
  const seen = new Set<string>();
  const found: Fault[] = [];
  const claim = (id: string, at: string): void => {
    if (seen.has(id.toLowerCase())) found.push({ at, reason: `the id ${id} stands twice` });
    if (LIKE_A_CELL.test(id)) found.push({ at, reason: `the id ${id} reads like the address of a cell` });
    seen.add(id.toLowerCase());
  };
  for (const [b, block] of template.blocks.entries()) {
    if (block.kind === 'table') {
      claim(block.id, `blocks/${b}/id`);
      const given = block.columns.filter(isGiven);
      for (const [i, column] of block.columns.entries())
        claim(columnId(block.id, column.id), `blocks/${b}/columns/${i}/id`);
      for (const [i, row] of block.rows.entries())
        for (const reason of rowFaults(row, given)) found.push({ at: `blocks/${b}/rows/${i}`, reason });
      for (const [i, column] of block.columns.entries())
        if (column.fixed !== undefined && column.formula !== undefined)
          found.push({ at: `blocks/${b}/columns/${i}`, reason: 'is both fixed and a formula' });
      continue;
    }
    for (const [i, field] of block.fields.entries()) {
      const at = `blocks/${b}/fields/${i}`;
      claim(field.id, `${at}/id`);
      if (field.tenths) claim(field.tenths.id, `${at}/tenths/id`);
      if (field.formula !== undefined && field.value !== undefined)
        found.push({ at, reason: 'is both an input and a formula' });
    }
  }
  return found;
}

/** What a file may write as it likes, as a reason may quote it. */
const onOneLine = (text: string): string =>
  text
    .replace(/[\p{C}\s]+/gu, ' ')
    .trim()
    .slice(0, 40) || 'an empty text';

function quantities(template: Template): Fault[] {
  return template.blocks.flatMap((block, b) =>
    (block.kind === 'form' ? block.fields : block.columns).flatMap((part, i) =>
      formatOf(part.quantity)
        ? []
        : [
            {
              at: `blocks/${b}/${block.kind === 'form' ? 'fields' : 'columns'}/${i}/quantity`,
              reason: `${onOneLine(part.quantity)} is none of ${SHEET_QUANTITIES.join(', ')}`,
            },
          ],
    ),
  );
}

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

/** Levels of our functions on the longest path that ends in each node; faults for circles and for chains too deep. */
function depths(
  all: readonly Node[],
  map: Layout,
): { readonly deepest: number; readonly faults: readonly Fault[] } {
  const byId = new Map<string, Node[]>();
  for (const node of all) {
    const alike = byId.get(node.id);
    if (alike) alike.push(node);
    else byId.set(node.id, [node]);
  }

  const known = new Map<Node, number>();
  const wrong: Fault[] = [];
  const visit = (node: Node, path: readonly string[]): number => {
    const already = known.get(node);
    if (already !== undefined) return already;
    if (path.includes(node.id)) {
      const circle = [...path.slice(path.indexOf(node.id)), node.id].join(' → ');
      wrong.push({ at: node.at, reason: `goes round in a circle: ${circle}` });
      return 0;
    }
    const pieces = tokens(node.formula);
    let below = 0;
    for (const piece of pieces) {
      const to = target(piece, node, map);
      const next = to !== undefined && typeof to !== 'string' ? (byId.get(to.id) ?? []) : [];
      for (const other of next) below = Math.max(below, visit(other, [...path, node.id]));
    }
    const own = Math.max(0, ...calls(pieces, isOurs).map((call) => (isOurs(call.name) ? call.depth : 0)));
    known.set(node, below + own);
    return below + own;
  };
  const levels = all.map((node) => ({ node, depth: visit(node, []) }));
  for (const { node, depth } of levels)
    if (depth > MOST_DEPTH)
      wrong.push({ at: node.at, reason: `ends a chain of ${depth} of our functions: at most ${MOST_DEPTH}` });
  return { deepest: Math.max(0, ...levels.map((l) => l.depth)), faults: wrong };
}

/** Everything that is wrong with what a template says; its shape is checked against the schema before. */
export function faults(template: Template): readonly Fault[] {
  const first = [...names(template), ...quantities(template), ...overlaps(template)];
  if (first.length > 0) return first;
  const map = layout(template);
  const all = nodes(template);
  const inFormulas = all.flatMap((node) =>
    formulaFaults(node, map).map((reason) => ({ at: node.at, reason })),
  );
  return [...inFormulas, ...chartFaults(template, map), ...depths(all, map).faults];
}

/** The deepest chain of our functions in a template. */
export const depthOf = (template: Template): number => depths(nodes(template), layout(template)).deepest;
