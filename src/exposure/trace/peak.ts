import { bendIn } from './bendBetween';
import { doubtOf, fitPolynomial, highestOf, polynomialAt } from './polynomial';
import { lightAt, type Signal } from './signal';

/** Three samples for each of the five terms of a quartic: with fewer it follows their noise. */
const LEAST = 15;
/** How far down the top is fitted, in standard deviations of the noise: each 1.6 times as far, so that one lies near the best. */
const DEPTHS = [5, 8, 13, 20];
/** Half the width of the bands that must overlap, in standard deviations of the fitted height: 19 in 20 lie within. */
const BAND = 2;
/** What the highest of some hundred samples near the top lies above the light, in standard deviations of the noise. */
const RAISED = 3;

/** Samples about the top, and how high it is. */
export interface Top {
  readonly height: number;
  /** Standard deviation of the height. */
  readonly doubt: number;
  /** Sample at the highest point. */
  readonly at: number;
  readonly from: number;
  readonly to: number;
  /** What the light falls by, from the top to the ends of these samples. */
  readonly falls: number;
}

/** Height of the parabola through the highest sample and its neighbours, where samples are fine; else of the sample. */
function betweenSamples(signal: Signal, peak: number, raw: number): number {
  if (bendIn(signal, peak - 1) === 0 || bendIn(signal, peak) === 0) return raw;
  const fit = fitPolynomial(signal, peak - 1, peak + 1, 2);
  return fit ? Math.max(raw, polynomialAt(fit, highestOf(fit))) : raw;
}

/**
 * Height of the peak.
 *
 * The highest of many noisy samples lies above the light. So a quartic is fitted to the samples around it, down to some
 * multiple of the noise, and its highest point is taken: the largest multiple whose band of doubt still overlaps those of
 * all smaller ones (intersection of confidence intervals, Goldenshluger and Nemirovski 1997). In a clean recording it is
 * the highest sample, or what lies between fine samples. The samples stop at a jump: an instant rise is not smoothed.
 */
export function topOf(signal: Signal, peak: number, noise: number): Top {
  const raw = lightAt(signal, peak);
  const sample = betweenSamples(signal, peak, raw);
  let top: Top = { height: sample, doubt: noise, at: peak, from: peak, to: peak, falls: 0 };
  let [low, high] = [-Infinity, Infinity];
  let from = peak;
  let to = peak;
  for (const depth of DEPTHS) {
    const least = raw - (depth + RAISED) * noise;
    while (from > 0 && lightAt(signal, from - 1) >= least) from--;
    while (to + 1 < signal.samples.count && lightAt(signal, to + 1) >= least) to++;
    if (to - from + 1 < LEAST) continue;
    const fit = fitPolynomial(signal, from, to, 4);
    if (fit === undefined) break;
    const at = highestOf(fit);
    const height = polynomialAt(fit, at);
    const doubt = noise * doubtOf(fit, at);
    const band = BAND * doubt;
    low = Math.max(low, height - band);
    high = Math.min(high, height + band);
    if (low > high || height > raw) break;
    top = {
      height,
      doubt,
      at: Math.round(from + ((at + 1) / 2) * (to - from)),
      from,
      to,
      falls: height - Math.min(polynomialAt(fit, -1), polynomialAt(fit, 1)),
    };
  }
  return top;
}
