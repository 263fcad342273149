/** What the engine was about, and what it threw. */
type Tell = (what: string, reason: unknown) => void;

let tell: Tell = (what, reason) => {
  // oxlint-disable-next-line no-console -- a page or a thread has nothing else to tell a developer by
  console.warn(what, reason);
};

/** For developers, who would otherwise look for the fault in vain; the person at the sheet sees the error value. */
export const remark: Tell = (what, reason) => tell(what, reason);

/** Has remarks told elsewhere than on the console. */
export function remarkTo(other: Tell): void {
  tell = other;
}
