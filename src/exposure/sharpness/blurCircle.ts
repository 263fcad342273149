import { answer, type Result } from '../core/result';

/** Blur circles in the diagonal of a format. */
export const DIAGONAL_PARTS = 1500;

/**
 * Blur circle for a format: its diagonal divided by 1500.
 *
 * @param width - mm (above 0).
 * @param height - mm (above 0).
 * @param divisor - blur circles in the diagonal (above 0).
 * @returns mm.
 */
export function blurCircle(width: number, height: number, divisor = DIAGONAL_PARTS): Result<number> {
  return answer(Math.hypot(width, height) / divisor);
}
