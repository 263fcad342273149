import { isWhole, log2Ratio, roundSteady } from '../core/numbers';

/** A tenth of a stop, in which most heads are set. */
export const DIAL_STEP = 0.1;
/** Parts of a stop that the trade says as fractions; a fifth and a tenth it says as decimals. */
const FRACTIONS: readonly number[] = [2, 3, 4, 6, 8];

const commonDivisor = (a: number, b: number): number => (b === 0 ? a : commonDivisor(b, a % b));

/** So many parts of a stop as a mixed number: 1 2/3. */
function mixed(parts: number, perStop: number): string {
  const whole = Math.floor(parts / perStop);
  const over = parts % perStop;
  const common = commonDivisor(over, perStop);
  const fraction = over === 0 ? '' : `${over / common}/${perStop / common}`;
  return [whole || '', fraction].filter(Boolean).join(' ');
}

/**
 * What to turn a head by, in stops: log2(newPower/power), to the step of its dial; a tie goes to the higher.
 *
 * @param power - energy now, in Ws (above 0).
 * @param newPower - energy then, in Ws (above 0).
 * @param step - stops between two settings (above 0).
 * @returns `+0.4`, `−1.3`, `+1`, `0`; where the step is a half, a third … of a stop `−1 2/3`.
 */
export function dialChange(power: number, newPower: number, step = DIAL_STEP): string {
  const steps = roundSteady(log2Ratio(newPower, power) / step);
  if (steps === 0) return '0';
  const perStop = isWhole(1 / step) ? Math.round(1 / step) : 1;
  const size = Math.abs(steps);
  // the digits beyond the twelfth are what the step has lost in binary
  const said = FRACTIONS.includes(perStop)
    ? mixed(size, perStop)
    : String(Number((size * step).toPrecision(12)));
  return `${steps > 0 ? '+' : '−'}${said}`;
}
