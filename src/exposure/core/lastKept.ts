/**
 * A function that keeps its last answers by its arguments, so that the many cells of a sheet that ask the same have it
 * worked out once. What is kept must not be changed by those who get it.
 *
 * @param most - answers that are kept; the one that was not asked for the longest time goes first.
 * @param work - pure; its arguments finite numbers, truths, texts, undefined and lists of them.
 */
export function lastKept<A extends readonly unknown[], R>(
  most: number,
  work: (...args: A) => R,
): (...args: A) => R {
  const kept = new Map<string, R>();
  return (...args) => {
    const key = JSON.stringify(args);
    const answer = kept.has(key) ? (kept.get(key) as R) : work(...args);
    // a map goes through its keys in the order in which they came
    kept.delete(key);
    kept.set(key, answer);
    const [oldest] = kept.keys();
    if (kept.size > most) kept.delete(oldest as string);
    return answer;
  };
}
