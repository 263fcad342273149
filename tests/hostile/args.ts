import type { Quantity } from '../../src/catalogue/quantities';
import {
  type AnyRow,
  type Arg,
  type ExampleCell,
  isChoice,
  isTruth,
  quantitiesOf,
} from '../../src/catalogue/types';
import { anyCell, anyRange, number } from './cells';
import type { Draws } from './draws';
import { anyTrace, asColumn, withJunk, WRITINGS } from './trace';

/** Most cells of one argument. Where calls are few they stay small. */
export interface Sizes {
  readonly cells: number;
  readonly arguments: number;
}

const asRows = (cell: ExampleCell | undefined): readonly (readonly unknown[])[] =>
  Array.isArray(cell) ? cell.map((row: unknown) => (Array.isArray(row) ? row : [row])) : [[cell]];

/** A cell like that of an example: the same, a few stops beside it, or in another of the texts of its quantity. */
function like(draws: Draws, cell: unknown, quantity: Quantity | undefined): unknown {
  const kind = draws.share();
  if (kind < 0.35 || quantity === undefined) return cell;
  if (kind < 0.5 && quantity.forms.length > 0) return draws.pick(quantity.forms);
  const given = typeof cell === 'number' && cell !== 0 ? cell : 10 ** draws.between(-2, 2);
  const size = given * 2 ** draws.between(-4, 4);
  if (kind < 0.85) return draws.isSo(0.3) ? Math.ceil(size) : Number(size.toPrecision(draws.whole(1, 6)));
  const units = Object.keys(quantity.units ?? {});
  const written = draws.pick(WRITINGS).write(Number(size.toPrecision(4)));
  return units.length > 0 && draws.isSo(0.6) ? `${written} ${draws.pick(units)}` : written;
}

function plausibleCell(draws: Draws, arg: Arg, example: unknown): unknown {
  if (isChoice(arg.kind)) return draws.pick(arg.kind.choices);
  if (isTruth(arg.kind)) return draws.pick([true, false, 'yes', 'no', 1, 0]);
  if (arg.optional && draws.isSo(0.35)) return draws.pick([undefined, null, '', 'none']);
  const quantities = quantitiesOf(arg.kind);
  return like(draws, example, quantities.length > 0 ? draws.pick(quantities) : undefined);
}

/** How many members the lists of one call have, that they pair up. */
interface Lengths {
  readonly rows: number;
  readonly columns: number;
}

function plausible(
  draws: Draws,
  arg: Arg,
  example: ExampleCell | undefined,
  { rows, columns }: Lengths,
): unknown {
  const given = asRows(example).flat();
  const cell = (): unknown => plausibleCell(draws, arg, draws.pick(given));
  if (arg.takes === 'one') return cell();
  const isAsGiven = example !== undefined && draws.isSo(0.3);
  if (isAsGiven) return asRows(example).map((row) => row.map((c) => (draws.isSo(0.7) ? c : cell())));
  return draws.times(rows, () => draws.times(arg.takes === 'grid' ? columns : 1, cell));
}

/** Times and values of a flash, for functions that take a recording. */
function recorded(draws: Draws, sizes: Sizes): readonly unknown[] {
  const { times, values } = anyTrace(draws, sizes.cells);
  const isEven = draws.isSo(0.15);
  const write = draws.isSo(0.5) ? (x: number): unknown => x : draws.pick(WRITINGS).write;
  return [isEven ? (times[1] as number) - (times[0] as number) : times.map(write), values.map(write)].map(
    (cells) => (Array.isArray(cells) ? asColumn(withJunk(draws, cells, 0.2)) : cells),
  );
}

/** Arguments as somebody means them: those of an example of the row, varied. */
function meant(draws: Draws, row: AnyRow, sizes: Sizes): unknown[] {
  const args = row.args as readonly Arg[];
  const { cells } = draws.pick(row.examples);
  const lengths = { rows: draws.whole(1, draws.isSo(0.1) ? 40 : 8), columns: draws.whole(1, 5) };
  const made = args.map((arg, i) => plausible(draws, arg, cells[i], lengths));
  const [first, second] = args;
  if (first?.takes === 'series' && second?.takes === 'series' && draws.isSo(0.8))
    made.splice(0, 2, ...recorded(draws, sizes));
  return made;
}

/** One of the ways in which what was meant goes wrong. */
function spoilt(draws: Draws, made: readonly unknown[], sizes: Sizes): unknown[] {
  const all = [...made];
  const at = draws.whole(0, Math.max(0, all.length - 1));
  const it = all[at];
  const way = draws.share();
  const anything = (): unknown => anyCell(draws);
  if (way < 0.35)
    all[at] = Array.isArray(it) && draws.isSo(0.8) ? withOne(draws, it, anything()) : anything();
  else if (way < 0.5) all[at] = anyRange(draws, anyCell, sizes.cells);
  else if (way < 0.65) all[at] = anyRange(draws, () => (Array.isArray(it) ? it.flat(9)[0] : it), sizes.cells);
  else if (way < 0.72) all[at] = anyRange(draws, number, sizes.cells);
  else if (way < 0.8) all.length = at;
  else if (way < 0.88) all.push(...draws.times(draws.whole(1, 3), anything));
  else if (way < 0.91) all.push(...draws.times(sizes.arguments, anything));
  else if (way < 0.96) all.reverse();
  else all[at] = [it, [it], [[it]], null];
  return all;
}

/** The same rows with one cell replaced. */
function withOne(draws: Draws, rows: readonly unknown[], cell: unknown): unknown[] {
  const at = draws.whole(0, Math.max(0, rows.length - 1));
  return rows.map((row, r) => {
    if (r !== at) return row;
    if (!Array.isArray(row)) return cell;
    const c = draws.whole(0, Math.max(0, row.length - 1));
    return row.map((old: unknown, i) => (i === c ? cell : old));
  });
}

const anything = (draws: Draws, sizes: Sizes): unknown =>
  draws.isSo(0.7) ? anyCell(draws) : anyRange(draws, anyCell, sizes.cells);

/** Arguments for a call: as they are meant, with one or more gone wrong, or anything at all. */
export function argumentsFor(draws: Draws, row: AnyRow, sizes: Sizes): unknown[] {
  if (draws.isSo(0.15)) return draws.times(draws.whole(0, row.args.length + 1), () => anything(draws, sizes));
  let made = meant(draws, row, sizes);
  if (draws.isSo(0.3)) return made;
  for (let times = draws.pick([1, 1, 1, 2, 3]); times > 0; times--) made = spoilt(draws, made, sizes);
  return made;
}
