import { at } from '../exposure/core/at';

/** A cell's place, counted from 0. */
export interface Place {
  readonly row: number;
  readonly column: number;
}

/** "C6" as a place; undefined where it is no address. */
export function parseAddress(address: string): Place | undefined {
  const found = /^([A-Z]{1,3})([1-9]\d{0,6})$/.exec(address);
  if (!found) return undefined;
  const column = [...at(found, 1)].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
  return { row: Number(found[2]) - 1, column };
}

export function columnName(column: number): string {
  const rest = Math.floor(column / 26);
  return (rest > 0 ? columnName(rest - 1) : '') + String.fromCharCode(65 + (column % 26));
}

export const address = ({ row, column }: Place): string => `${columnName(column)}${row + 1}`;
export const fixedAddress = ({ row, column }: Place): string => `$${columnName(column)}$${row + 1}`;
