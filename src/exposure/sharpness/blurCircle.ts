import { ABOVE_ZERO, outside } from '../core/range';
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
  const wrong =
    outside('width', width, ABOVE_ZERO) ??
    outside('height', height, ABOVE_ZERO) ??
    outside('divisor', divisor, ABOVE_ZERO);
  return wrong ?? answer(Math.hypot(width, height) / divisor);
}
