/*
 * What the browser keeps of the pane. Where a page may keep nothing, nobody can know, and it is as for a newcomer again.
 */

const unlessForbidden = <T>(ask: () => T, otherwise: T): T => {
  try {
    return ask();
  } catch (error) {
    if (!(error instanceof DOMException)) throw error;
    return otherwise;
  }
};

export const isKept = (key: string): boolean =>
  unlessForbidden(() => localStorage.getItem(key) !== null, false);

export const keep = (key: string): void => unlessForbidden(() => localStorage.setItem(key, 'yes'), undefined);
