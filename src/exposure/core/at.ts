/**
 * The member at a place that is known to be there: the place was worked out from the list itself, or from one as long.
 * The compiler cannot see that, and would have every such place checked; this is the one that says so.
 */
export const at = <T>(list: ArrayLike<T>, place: number): T => list[place] as T;
