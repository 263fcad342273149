import { readPlace } from './readLength';
import type { Place3 } from './space';

/** What could not be read is told as it is found. */
export type Tell = (sentence: string) => void;

export const told = (read: number | undefined | string, tell: Tell): number | undefined => {
  if (typeof read !== 'string') return read;
  tell(read);
  return undefined;
};

/** A place of three cells; undefined where one of them is missing. */
export function placeOf(
  [x, y, z]: readonly [unknown, unknown, unknown],
  name: string,
  tell: Tell,
): Place3 | undefined {
  const [a, b, c] = [
    told(readPlace(x, `x of ${name}`), tell),
    told(readPlace(y, `y of ${name}`), tell),
    told(readPlace(z, `The height of ${name}`), tell),
  ];
  return a === undefined || b === undefined || c === undefined ? undefined : { x: a, y: b, z: c };
}
