import type { Arg } from '../catalogue/types';
import { type CellError, cellError } from '../formula/errors';

/** "reading is missing: reading of one pop." */
export const missing = ({ name, about }: Arg): CellError =>
  cellError('#VALUE!', `${name} is missing: ${about.charAt(0).toLowerCase()}${about.slice(1)}.`);
