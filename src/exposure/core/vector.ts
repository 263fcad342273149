/** Numbers that belong together by their places. */
export type Vector = readonly number[];
