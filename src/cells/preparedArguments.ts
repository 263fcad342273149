import type { Quantity } from '../catalogue/quantities';
import { type AnyRow, type Arg, isChoice, isChosen, isTruth } from '../catalogue/types';
import { chosenQuantity, dependsOn, type ArgumentRead } from './argument';

/** What can be said of a function's arguments before any cell is known. */
export class Prepared {
  readonly args: readonly Arg[];
  /** Places of the arguments of one cell, each after the one that decides its quantity. */
  readonly ones: readonly number[];
  /** Places of the arguments of many cells. */
  readonly many: readonly number[];
  /** For each argument the place of the one that decides its quantity; -1 where none does. */
  readonly deciders: readonly number[];
  private readonly quantities: readonly (Quantity | undefined)[];

  constructor(row: AnyRow) {
    this.args = row.args as readonly Arg[];
    const names: readonly (string | undefined)[] = this.args.map((arg) => arg.name);
    this.deciders = this.args.map((arg) => names.indexOf(dependsOn(arg)));
    const places = [...this.args.keys()];
    const takesOne = (place: number): boolean => this.arg(place).takes === 'one';
    const ones = places.filter(takesOne);
    const isDecided = (place: number): boolean => this.deciders[place] !== -1;
    this.ones = [...ones.filter((place) => !isDecided(place)), ...ones.filter(isDecided)];
    this.many = places.filter((place) => !takesOne(place));
    this.quantities = this.args.map(({ kind }) =>
      isChosen(kind) || isChoice(kind) || isTruth(kind) ? undefined : kind,
    );
  }

  arg(place: number): Arg {
    return this.args[place] as Arg;
  }

  /** What to read an argument as; `values` holds the argument that decides it, if one does. */
  quantity(place: number, values: readonly unknown[]): Quantity | undefined {
    const decider = this.deciders[place] as number;
    return decider < 0 ? this.quantities[place] : this.decided(place, values[decider] as ArgumentRead);
  }

  /** What to read an argument as beside a value of the one that decides it. */
  decided(place: number, other: ArgumentRead): Quantity | undefined {
    const { kind } = this.arg(place);
    return isChosen(kind) ? chosenQuantity(kind, other) : undefined;
  }
}

const known = new WeakMap<AnyRow, Prepared>();

export function prepared(row: AnyRow): Prepared {
  let found = known.get(row);
  if (found === undefined) known.set(row, (found = new Prepared(row)));
  return found;
}
