import type { ArrayValueObject, BaseValueObject } from '@univerjs/engine-formula';
import { numberInText } from './coerce';
import { fifteen } from './digits';
import { isError, NOTHING } from './nativeFunction';
import { type Cell, cellOf, type Key, keyOf, type Plain } from './sortOrder';

/**
 * The cells of an array, row by row, and where each value stands among them: by its kind and its value, so that 12, "12", an
 * empty cell, "" and 0 are five. The engine gives one and the same array for one range throughout a calculation and makes
 * a new one for the next, so what is found for an array holds as long as the array lives.
 */
export class Cells {
  readonly list: readonly Cell[];
  #places: Map<Key, number[]> | undefined;
  #textNumbers: Map<number, number[]> | undefined;
  #kinds: Map<string, number[]> | undefined;

  constructor(list: readonly Cell[]) {
    this.list = list;
  }

  /** From the first on. Empty cells are gone through: a whole column may have a million of them. */
  placesOf(key: Key): readonly number[] {
    if (key === null) return this.list.flatMap((cell, place) => (cell === null ? [place] : []));
    this.#places ??= grouped(this.list, (cell) => (cell === null || isError(cell) ? undefined : keyOf(cell)));
    return this.#places.get(key) ?? [];
  }

  /** Texts that stand for a number. */
  placesOfTextFor(number: number): readonly number[] {
    this.#textNumbers ??= grouped(this.list, (cell) => {
      const read = typeof cell === 'string' ? numberInText(cell) : undefined;
      return read === undefined ? undefined : fifteen(read);
    });
    return this.#textNumbers.get(fifteen(number)) ?? [];
  }

  /** What stands at a place that one of the lists of places names: they name no errors. */
  valueAt(place: number): Plain {
    return this.list[place] as Plain;
  }

  /** All of the kind of a value: of numbers, of texts, of truths. */
  placesOfKind(value: Plain): readonly number[] {
    this.#kinds ??= grouped(this.list, (cell) => (cell === null || isError(cell) ? undefined : typeof cell));
    return this.#kinds.get(typeof value) ?? [];
  }
}

function grouped<K>(list: readonly Cell[], keyFor: (cell: Cell) => K | undefined): Map<K, number[]> {
  const groups = new Map<K, number[]>();
  list.forEach((cell, place) => {
    const key = keyFor(cell);
    if (key === undefined) return;
    const group = groups.get(key);
    if (group) group.push(place);
    else groups.set(key, [place]);
  });
  return groups;
}

const known = new WeakMap<ArrayValueObject, Cells>();
export function cellsIn(value: BaseValueObject): Cells {
  if (!value.isArray()) return new Cells([cellOf(value)]);
  const array = value as ArrayValueObject;
  let cells = known.get(array);
  if (!cells) known.set(array, (cells = new Cells(listOf(array))));
  return cells;
}

function listOf(array: ArrayValueObject): Cell[] {
  const [rows, columns] = [array.getRowCount(), array.getColumnCount()];
  const list: Cell[] = [];
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) list.push(cellOf(array.get(row, column) ?? NOTHING));
  return list;
}
