import { roundStops } from '../core/numbers';
import { NOT_NEGATIVE, outside, type Range } from '../core/range';
import { answer, type Result } from '../core/result';

/** How a filter states what it takes: a factor, an optical density, the share it lets through, or stops. */
export type FilterKind = 'factor' | 'density' | 'transmission' | 'stops';
export const FILTER_KINDS: readonly FilterKind[] = ['factor', 'density', 'transmission', 'stops'];

const RANGES: Readonly<Record<FilterKind, Range>> = {
  factor: { least: 1, hint: 'Is it a density? Then write "density" as the kind.' },
  density: NOT_NEGATIVE,
  transmission: { above: 0, most: 1, hint: 'Write 30 per cent as 30% or 0.3.' },
  stops: NOT_NEGATIVE,
};

/**
 * Stops that a filter takes.
 *
 * Factor: log2(factor). Density: D/log10(2), as density is the decimal logarithm of the factor.
 * Transmission: −log2(share). Stops: themselves.
 *
 * @param value - factor (from 1), density (from 0), transmission (above 0, up to 1) or stops (from 0).
 * @returns stops; a factor of 8, a density of 0.9 and a transmission of 12.5 % are three stops or nearly so.
 */
export function filterLoss(value: number, kind: FilterKind = 'factor'): Result<number> {
  const wrong = outside('value', value, RANGES[kind]);
  if (wrong) return wrong;
  if (kind === 'stops') return answer(value);
  if (kind === 'density') return answer(roundStops(value / Math.LOG10E / Math.LN2));
  return answer(roundStops(kind === 'factor' ? Math.log2(value) : -Math.log2(value)));
}
