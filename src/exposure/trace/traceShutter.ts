import { answer, isFail, type Result } from '../core/result';
import { CLIP_LOSS } from '../duration/shutter';
import { crossingOf } from './crossing';
import { type Pulse, readPulse } from './pulse';
import { timeAt } from './samples';
import { lightAt } from './signal';
import { allLight, wholeOf } from './span';

/** Instant after which no more than so much light of the pulse is left, added up from its end. */
function lastInstant({ signal, from, to }: Pulse, rest: number): number {
  let left = rest;
  for (let i = to; i > from; i--) {
    const end = timeAt(signal.samples, i);
    const width = end - timeAt(signal.samples, i - 1);
    const here = lightAt(signal, i);
    const before = lightAt(signal, i - 1);
    const cell = ((here + before) / 2) * width;
    if (cell >= left) {
      // here·s + (before − here)/(2·width)·s² = left, by the form of the root that keeps its digits
      const bend = (before - here) / width;
      const back = (2 * left) / (here + Math.sqrt(Math.max(0, here * here + 2 * bend * left)));
      return end - Math.min(width, back);
    }
    left -= cell;
  }
  return timeAt(signal.samples, from);
}

/**
 * Shortest opening that loses no more of a recorded flash than a number of stops: `shutterForFlash` for a pulse of any shape.
 *
 * Counted from the instant at which the shutter is open. The flash starts `delay` later, at its first rise: the instant at
 * which it comes up through 2 % of its height (three times the noise, where that is more). The little light before that
 * instant counts as passed.
 *
 * @param times - seconds, or the sample interval, as in `traceTime`.
 * @param values - in any unit, as in `traceTime`.
 * @param loss - stops that may be lost (above 0).
 * @param delay - seconds from open to the flash (from 0).
 * @param base - what the sensor shows without light, as in `traceTime`.
 * @returns seconds; refusals as in `traceInside`.
 */
export function traceShutter(
  times: ArrayLike<number>,
  values: ArrayLike<number>,
  loss: number = CLIP_LOSS,
  delay = 0,
  base?: number,
): Result<number> {
  const pulse = readPulse(times, values, base);
  if (isFail(pulse)) return pulse;
  const light = allLight(pulse);
  if (isFail(light)) return light;
  const rise = crossingOf(pulse, pulse.foot.low, 1, pulse.from).place ?? wholeOf(pulse).rise;
  const close = lastInstant(pulse, -Math.expm1(-loss * Math.LN2) * light);
  return answer(delay + Math.max(0, close - rise.time));
}
