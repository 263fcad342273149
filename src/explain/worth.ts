import { Q, type Quantity } from '../catalogue/quantities';
import { SLACK } from '../exposure/core/numbers';

/** Units that are things to count: one pop, two pops. */
const COUNTED: Readonly<Record<string, string>> = {
  stops: 'stop',
  pops: 'pop',
  frames: 'frame',
  days: 'day',
  tenths: 'tenth',
};

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

/** A value with its unit, as one says it: 11.31, 1/64 s, ISO 100, 0.05 stop, 80 %. */
export function worth(value: number, quantity: Quantity, figures = 4): string {
  if (quantity.unit === 'f-number') return near(value, figures);
  if (quantity.unit === 'ISO') return `ISO ${near(value, figures)}`;
  if (quantity === Q.shutterTime && value > 0) return `${timeText(value, figures)} s`;
  const number = near(value, figures);
  const unit =
    Math.abs(value) <= 1 && value !== 0 ? (COUNTED[quantity.unit] ?? quantity.unit) : quantity.unit;
  return unit === '' ? number : unit === '°' ? `${number}°` : `${number} ${unit}`;
}
