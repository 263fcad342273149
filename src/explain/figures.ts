import type { Quantity } from '../catalogue/quantities';
import { SLACK } from '../exposure/core/numbers';

/** More figures than these a number does not hold. */
const MOST_FIGURES = 17;

/** A number with at least so many significant figures; none of a whole part is lost. */
export function near(value: number, figures = 4): string {
  const whole = Math.floor(Math.log10(Math.abs(value))) + 1;
  const typed = Number(value.toPrecision(6));
  const kept = Math.min(Math.max(figures, whole), MOST_FIGURES);
  return String(typed === value ? value : Number(value.toPrecision(kept)));
}

/** A short time as the fraction that shutters show, where it is one. */
function timeText(value: number, figures: number): string {
  const below = Math.round(1 / value);
  const isFraction = value < 0.3 && Math.abs(value * below - 1) <= SLACK;
  return isFraction ? `1/${below}` : near(value, figures);
}

/** A number with the unit after it, where there is one. */
export const withUnit = (number: string, unit: string): string =>
  unit === '' ? number : unit === '°' ? `${number}°` : `${number} ${unit}`;

/** A value with its unit, as one says it: 11.31, 1/64 s, ISO 100, 0.05 stop, 80 %. */
export function worth(value: number, quantity: Quantity, figures = 4): string {
  const { unit, one = unit, grammar, prefixes, marks } = quantity;
  if (grammar === 'aperture') return near(value, figures);
  if (prefixes?.includes(unit.toLowerCase())) return `${unit} ${near(value, figures)}`;
  const isShutterTime = marks === 'time' && value > 0;
  const number = isShutterTime ? timeText(value, figures) : near(value, figures);
  return withUnit(number, Math.abs(value) <= 1 && value !== 0 ? one : unit);
}
