/**
 * The look-ups, in the place of the engine's own (0.25.1), which find a text by a number and a number by a text, take * and ?
 * for a pattern where XLOOKUP and XMATCH are to match exactly, know no ~~, find by the first of several that are alike where
 * the last is nearest, take a cell with an error for one that was not found, and widen the result of LOOKUP where it stands.
 */
import {
  type ArrayValueObject,
  type BaseValueObject,
  ErrorType,
  NumberValueObject,
} from '@univerjs/engine-formula';
import { at } from '../../exposure/core/at';
import { toNumber, toTruth } from './coerce';
import { type Cells, cellsIn } from './cellsByValue';
import {
  asReference,
  block,
  blockOrValue,
  executor,
  failed,
  isArray,
  isError,
  type Mended,
  NOTHING,
  overEach,
  referenceExecutor,
  rowsOf,
  single,
  valuesIn,
} from './nativeFunction';
import { cellOf, keyOf, order, type Plain } from './sortOrder';
import { asLargeAs } from './references';
import { hasWildcards, wholePattern } from './wildcards';

/** In a place that was found by its kind, where no error is. */
const plainAt = (cells: Cells, place: number): Plain => {
  const cell = at(cells.list, place);
  return isError(cell) ? null : cell;
};
/** The first place, or the last. */
const pick = (places: readonly number[], isLast: boolean): number | undefined => places.at(isLast ? -1 : 0);

const exactly = (cells: Cells, value: Plain, isLast = false) => pick(cells.placesOf(keyOf(value)), isLast);

function byPattern(cells: Cells, value: Plain, isLast = false): number | undefined {
  if (typeof value !== 'string' || !hasWildcards(value)) return exactly(cells, value, isLast);
  const pattern = wholePattern(value);
  const matches = (place: number): boolean => pattern.test(String(cells.list[place]));
  return pick(cells.placesOfKind(value).filter(matches), isLast);
}

/** In cells that run upwards: the last that is not above the value. Halved, as Microsoft's help has it of the sorted. */
function lastNotAbove(cells: Cells, value: Plain): number | undefined {
  const places = cells.placesOfKind(value);
  let [from, to] = [0, places.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    const cell = plainAt(cells, at(places, middle));
    if (order(cell, value) <= 0) from = middle + 1;
    else to = middle;
  }
  return places[from - 1];
}

/** In cells that run downwards: the last that is not below the value. */
function lastNotBelow(cells: Cells, value: Plain): number | undefined {
  let found: number | undefined;
  for (const place of cells.placesOfKind(value)) {
    if (order(plainAt(cells, place), value) < 0) break;
    found = place;
  }
  return found;
}

/** In cells of any order: the value, or else the nearest on one side of it; of several alike the first, or the last. */
function nearest(cells: Cells, value: Plain, side: number, isLast: boolean): number | undefined {
  const same = exactly(cells, value, isLast);
  if (same !== undefined) return same;
  let best: { readonly place: number; readonly cell: Plain } | undefined;
  for (const place of cells.placesOfKind(value)) {
    const cell = plainAt(cells, place);
    if (order(cell, value) * side < 0) continue;
    const nearer = best ? order(best.cell, cell) * side : 1;
    if (nearer > 0 || (nearer === 0 && isLast)) best = { place, cell };
  }
  return best?.place;
}

const isVector = (value: BaseValueObject): boolean =>
  !isArray(value) || value.getRowCount() === 1 || value.getColumnCount() === 1;
const position = (place: number | undefined): BaseValueObject =>
  place === undefined ? failed(ErrorType.NA) : NumberValueObject.create(place + 1);
/** The older look-ups look for 0 where they are given an empty cell. */
const sought = (value: BaseValueObject): Plain => (value.isNull() ? 0 : value.getValue());

function match(
  value: BaseValueObject,
  list: BaseValueObject,
  kind: BaseValueObject = NumberValueObject.create(1),
) {
  if (!isVector(list)) return failed(ErrorType.NA);
  const cells = cellsIn(list);
  return overEach([value, kind], (one, type) => {
    const sign = toNumber(type as BaseValueObject);
    if (isError(sign)) return sign;
    const wanted = sought(one as BaseValueObject);
    if (sign === 0) return position(byPattern(cells, wanted));
    return position(sign > 0 ? lastNotAbove(cells, wanted) : lastNotBelow(cells, wanted));
  });
}

const MATCH_MODES = [0, -1, 1, 2];
const SEARCH_MODES = [1, -1, 2, -2];
/** Left out or left empty it is the one that is taken for granted. */
const modeOf = (value: BaseValueObject | undefined, standard: number): BaseValueObject =>
  !value || value.isNull() ? NumberValueObject.create(standard) : value;

/** Where XLOOKUP and XMATCH find a value; halving finds no other than going through, where it may be used. */
function placeFor(cells: Cells, value: Plain, mode: number, search: number): number | undefined {
  const isLast = search === -1;
  if (mode === 2) return byPattern(cells, value, isLast);
  return mode === 0 ? exactly(cells, value, isLast) : nearest(cells, value, mode, isLast);
}

type Found = (place: number | undefined) => BaseValueObject;
function find(
  cells: Cells,
  value: BaseValueObject,
  modes: readonly [BaseValueObject | undefined, BaseValueObject | undefined],
  found: Found,
): BaseValueObject {
  return overEach([value, modeOf(modes[0], 0), modeOf(modes[1], 1)], (one, how, way) => {
    const mode = toNumber(how as BaseValueObject);
    if (isError(mode)) return mode;
    const search = toNumber(way as BaseValueObject);
    if (isError(search)) return search;
    const isKnown = MATCH_MODES.includes(mode) && SEARCH_MODES.includes(search);
    if (!isKnown || (mode === 2 && Math.abs(search) === 2)) return failed(ErrorType.VALUE);
    return found(placeFor(cells, cellOf(one as BaseValueObject) as Plain, mode, search));
  });
}

function xmatch(
  value: BaseValueObject,
  list: BaseValueObject,
  mode?: BaseValueObject,
  search?: BaseValueObject,
) {
  return isVector(list) ? find(cellsIn(list), value, [mode, search], position) : failed(ErrorType.VALUE);
}

/** Rows and columns. */
const sizeOf = (value: BaseValueObject): readonly [number, number] =>
  isArray(value) ? [value.getRowCount(), value.getColumnCount()] : [1, 1];
const valueAt = (value: BaseValueObject, row: number, column: number): BaseValueObject =>
  isArray(value) ? (value.get(row, column) ?? NOTHING) : value;

/** The row or the column of an array that belongs to a place of the list. */
function lineAt(values: BaseValueObject, place: number, isAcross: boolean): BaseValueObject {
  const [rows, columns] = sizeOf(values);
  if ((isAcross ? rows : columns) === 1)
    return isAcross ? valueAt(values, 0, place) : valueAt(values, place, 0);
  if (isAcross) return block(Array.from({ length: rows }, (_, row) => [valueAt(values, row, place)]));
  return block([Array.from({ length: columns }, (_, column) => valueAt(values, place, column))]);
}

function xlookup(
  value: BaseValueObject,
  list: BaseValueObject,
  from: BaseValueObject,
  otherwise?: BaseValueObject,
  mode?: BaseValueObject,
  search?: BaseValueObject,
): BaseValueObject {
  if (list.isError()) return list;
  if (from.isError()) return from;
  const [[rows, columns], [height, width]] = [sizeOf(list), sizeOf(from)];
  const isAcross = rows === 1 && columns > 1;
  if (!isVector(list) || (isAcross ? columns !== width : rows !== height)) return failed(ErrorType.VALUE);
  const none = !otherwise || otherwise.isNull() ? failed(ErrorType.NA) : otherwise;
  const isOne = !isArray(single(value));
  return find(cellsIn(list), value, [mode, search], (place) => {
    if (place === undefined) return isOne ? none : single(none);
    return isOne ? lineAt(from, place, isAcross) : valueAt(from, isAcross ? 0 : place, isAcross ? place : 0);
  });
}

/** VLOOKUP and HLOOKUP: the first line of a table is gone through, and another one answers. */
const lookupIn = (isAcross: boolean) =>
  executor(3, 4, (value, table, index, isNear = NumberValueObject.create(1)) => {
    const whole = table as BaseValueObject;
    if (whole.isError()) return whole;
    if (!isArray(whole)) return failed(ErrorType.VALUE);
    const cells = cellsIn(
      (isAcross ? whole.slice([0, 1], null) : whole.slice(null, [0, 1])) as ArrayValueObject,
    );
    return overEach([value as BaseValueObject, index as BaseValueObject, isNear], (one, which, near) => {
      const line = toNumber(which as BaseValueObject);
      if (isError(line)) return line;
      const isApproximate = toTruth(near as BaseValueObject);
      if (isError(isApproximate)) return isApproximate;
      const last = isAcross ? whole.getRowCount() : whole.getColumnCount();
      if (line < 1) return failed(ErrorType.VALUE);
      if (line >= last + 1) return failed(ErrorType.REF);
      const wanted = sought(one as BaseValueObject);
      const place = isApproximate ? lastNotAbove(cells, wanted) : byPattern(cells, wanted);
      if (place === undefined) return failed(ErrorType.NA);
      const other = Math.trunc(line) - 1;
      return (isAcross ? whole.get(other, place) : whole.get(place, other)) ?? NOTHING;
    });
  });

/** The longer way of an array is gone through, its first line, and its last answers. */
function ends(array: BaseValueObject): readonly [BaseValueObject[], BaseValueObject[]] {
  const rows = rowsOf(array);
  if ((rows[0]?.length ?? 0) > rows.length) return [rows[0] ?? [], rows.at(-1) ?? []];
  return [rows.map((row) => row[0] ?? NOTHING), rows.map((row) => row.at(-1) ?? NOTHING)];
}

/** As many answers as there are cells to go through; cells that are named go on below or beside those that are. */
function answersFor(list: BaseValueObject, results: BaseValueObject): BaseValueObject[] {
  const reference = asReference(results);
  const given = rowsOf(valuesIn(results)).flat();
  if (!reference || !isArray(list) || given.length === list.getRowCount() * list.getColumnCount())
    return given;
  return rowsOf(asLargeAs(list, reference)).flat();
}

function lookup(value: BaseValueObject, list: BaseValueObject, results?: BaseValueObject): BaseValueObject {
  if (list.isError()) return list;
  if (results?.isError()) return results;
  const [firsts, lasts] = ends(list);
  const isGivenResults = results !== undefined && isVector(list);
  const cells = isGivenResults ? cellsIn(list) : cellsIn(blockOrValue([firsts]));
  const answers = isGivenResults ? answersFor(list, results) : lasts;
  return overEach([value], (one) => {
    const place = lastNotAbove(cells, sought(one as BaseValueObject));
    if (place === undefined) return failed(ErrorType.NA);
    return answers[place] ?? failed(ErrorType.NA);
  });
}

type Three = [BaseValueObject, BaseValueObject, BaseValueObject];
export const LOOKUPS: readonly Mended[] = [
  [executor(2, 3, (...values) => match(...(values as Three))), 'MATCH'],
  [executor(2, 4, (...values) => xmatch(...(values as Three))), 'XMATCH'],
  [executor(3, 6, (...values) => xlookup(...(values as Three))), 'XLOOKUP'],
  [lookupIn(false), 'VLOOKUP'],
  [lookupIn(true), 'HLOOKUP'],
  [
    referenceExecutor(2, 3, (value, list, results) =>
      lookup(valuesIn(value as BaseValueObject), valuesIn(list as BaseValueObject), results),
    ),
    'LOOKUP',
  ],
];
