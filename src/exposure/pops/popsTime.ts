import { answer, type Result } from '../core/result';

/** `ready`: until the next frame can start. `open`: while the shutter stands open. */
export type PopsTimeBasis = 'ready' | 'open';
export const POPS_TIME_BASES: readonly PopsTimeBasis[] = ['ready', 'open'];

/**
 * Seconds that a number of pops takes: n·(recycle + pause), or (n − 1)·(recycle + pause) from the first to the last.
 *
 * @param pops - whole pops (from 1 up).
 * @param recycle - seconds from a pop to ready (above 0).
 * @param pause - seconds of waiting after ready (from 0).
 */
export function popsTime(
  pops: number,
  recycle: number,
  pause = 0,
  basis: PopsTimeBasis = 'ready',
): Result<number> {
  return answer((basis === 'open' ? pops - 1 : pops) * (recycle + pause));
}
