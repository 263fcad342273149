const KEY = 'sweeptable opening';
/** A page can be closed before it has shown its workbook, without a word: once proves nothing. */
const TOO_OFTEN = 2;

function times(): number {
  try {
    return Number(localStorage.getItem(KEY) ?? 0);
  } catch {
    return 0; // forbidden: there is no workbook of a last visit either
  }
}

/** Whether pages before this one began to open the stored workbook and ended with it, so that this one would as well. */
export const hasFailed = (): boolean => times() >= TOO_OFTEN;

/** Before the stored workbook is opened: what ends the page then is known to the next. */
export function begin(): void {
  try {
    localStorage.setItem(KEY, String(times() + 1));
  } catch {
    // Forbidden: see above.
  }
  // Left on purpose it has not failed.
  addEventListener('pagehide', end, { once: true });
}

/** The workbook is shown, or put aside. */
export function end(): void {
  removeEventListener('pagehide', end);
  try {
    localStorage.removeItem(KEY);
  } catch {
    // Where it is forbidden there is nothing.
  }
}
