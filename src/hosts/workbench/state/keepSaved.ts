import { CommandType, ICommandService, type IWorkbookData } from '@univerjs/core';
import type { Grid } from '../grid';
import { remember } from './memory';

const AFTER_A_CHANGE = 500;

export interface Saving {
  /** Stores at once what has not been stored. */
  now(): Promise<void>;
}

/** Stores the workbook half a second after a change, and at once when the page goes out of sight. */
export function keepSaved(
  { univer }: Grid,
  snapshot: () => IWorkbookData | undefined,
  failed: (reason: unknown) => void,
): Saving {
  let waiting: ReturnType<typeof setTimeout> | undefined;
  async function now(): Promise<void> {
    if (waiting === undefined) return;
    clearTimeout(waiting);
    waiting = undefined;
    const present = snapshot();
    if (!present) return;
    try {
      await remember(present);
    } catch (reason) {
      failed(reason);
    }
  }
  univer
    .__getInjector()
    .get(ICommandService)
    .onCommandExecuted(({ type }) => {
      if (type !== CommandType.MUTATION) return;
      clearTimeout(waiting);
      waiting = setTimeout(() => void now(), AFTER_A_CHANGE);
    });
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') void now();
  });
  addEventListener('pagehide', () => void now());
  return { now };
}
