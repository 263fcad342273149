import type { FilterMeasure } from '../catalogue/quantities';
import { spokenStops } from '../exposure/core/numbers';
import { fail, type Fail, isFail, type Result } from '../exposure/core/result';
import { decimal, FIGURE, leadingNumber } from './textParts';

const NEUTRAL = new RegExp(`^(?:nd ?(${FIGURE})|(${FIGURE}) ?nd)$`);
const FACTOR = new RegExp(`^(?:x ?(${FIGURE})|(${FIGURE}) ?x)$`);

/** Whether filters are sold by this factor: 2, 4, 8 … 1024, some round ones, 1000 and more. */
const isSold = (factor: number): boolean =>
  factor >= 1000 ||
  [50, 100, 200, 400, 500].includes(factor) ||
  (factor > 1 && Number.isInteger(Math.log2(factor)));

/** What a filter's density is where something else is wanted. */
const fromDensity = (density: number, wanted: FilterMeasure): number =>
  wanted === 'density' ? density : fromFactor(10 ** density, wanted);

function fromFactor(factor: number, wanted: FilterMeasure): number {
  if (wanted === 'stops') return Math.log2(factor);
  if (wanted === 'density') return Math.log10(factor);
  return wanted === 'factor' ? factor : 1 / factor;
}

/** `ND8` and `ND 0.9`: with a point it is a density, a whole number is a factor that filters are sold by. */
function neutral(digits: string, wanted: FilterMeasure): Result<number> {
  const value = decimal(digits, true);
  if (isFail(value)) return value;
  if (/[.,]/.test(digits)) return fromDensity(value, wanted);
  return isSold(value)
    ? fromFactor(value, wanted)
    : fail('unreadable', `may be a factor, a density or stops: write ${inFull(value)}`);
}

/** How a filter is written that one maker calls by its stops and another by its factor. */
const inFull = (figure: number): string =>
  figure <= MOST_STOPS
    ? `ND ${(figure * Math.log10(2)).toFixed(1)} or ${2 ** figure}x where it takes ${spokenStops(figure)}`
    : `${figure}x where that is its factor`;
/** Denser filters are not made for cameras. */
const MOST_STOPS = 20;

function times(digits: string, wanted: FilterMeasure): Result<number> {
  const value = decimal(digits, true);
  if (isFail(value)) return value;
  return value >= 1
    ? fromFactor(value, wanted)
    : fail('unreadable', 'is a factor below 1: a density is written ND 0.9');
}

/**
 * What a filter's name says, whichever way it is wanted: ND8 and 8x are factors, ND 0.9 is a density, and stops are stops.
 *
 * @param text - normalised, in small letters.
 * @returns undefined where the text names no filter.
 */
export function filterNamed(text: string, wanted: FilterMeasure): number | Fail | undefined {
  const nd = NEUTRAL.exec(text);
  if (nd) return neutral((nd[1] ?? nd[2]) as string, wanted);
  const factor = FACTOR.exec(text);
  if (factor) return times((factor[1] ?? factor[2]) as string, wanted);
  const stops = wanted === 'stops' ? undefined : leadingNumber(text);
  return stops !== undefined && !isFail(stops) && /^ ?stops?$/.test(stops.rest)
    ? fromFactor(2 ** stops.value, wanted)
    : undefined;
}
