import { at } from './at';

/** "head 2", "heads 2 and 3", "heads 1, 2 and 3": by their places, which are said from 1. */
export function spokenHeads(places: readonly number[]): string {
  const numbers = places.map((place) => String(place + 1));
  const last = at(numbers, numbers.length - 1);
  return numbers.length === 1 ? `head ${last}` : `heads ${numbers.slice(0, -1).join(', ')} and ${last}`;
}
