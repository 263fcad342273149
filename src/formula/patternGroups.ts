export type Maybe = string | undefined;

/** What stands in the parentheses of a pattern that was found; the caller knows which of them must. */
export const groupsOf = <Groups extends readonly Maybe[]>([, ...groups]: RegExpExecArray): Groups =>
  groups as readonly Maybe[] as Groups;
