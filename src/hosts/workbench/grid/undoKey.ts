/** What takes a step back, as a sentence begins with it: the key for it, or the button where a finger has no keys. */
export const undoKey = (): string =>
  globalThis.matchMedia?.('(pointer: coarse)').matches ? 'Undo' : 'Ctrl+Z';

export const undone = (): string => `${undoKey()} takes that back.`;
