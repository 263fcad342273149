import { cpus } from 'node:os';
import { isFail } from '../../src/exposure/core/result';
import { lightUnmix } from '../../src/exposure/light/unmix/lightUnmix';
import { measurementPattern } from '../../src/exposure/light/unmix/measurementPattern';
import {
  condition,
  drawPattern,
  hasDarkRow,
  leastSquaresByLibrary,
  nonNegativeByLibrary,
  ones,
  reads,
  tenth,
  weighted,
} from '../exposure/light/unmix/cases';
import { random } from '../exposure/random';

/**
 * How near unmixed heads come to general libraries, and how often the ± holds:
 * `npm run accuracy -- unmix`.
 */
const CASES = 10_000;
const ROUNDINGS = 20_000;
const AGREES = 1e-9;

/** Each head's light, 0 where it gives too little to tell from nothing. */
function lights(pattern: number[][], readings: readonly number[]): number[] {
  const came = lightUnmix(pattern, readings);
  if (isFail(came)) throw new Error(came.message);
  return came.map(({ reading }) => (isFail(reading) ? 0 : reading ** 2));
}
const median = (samples: readonly number[]): number =>
  [...samples].sort((a, b) => a - b)[Math.floor(samples.length / 2)] as number;

/** Largest difference from a library over many cases, relative to the brightest head. */
function besideLibrary(
  name: string,
  seed: number,
  most: number,
  draw: (pattern: number[][], next: () => number) => number[],
  library: (rows: number[][]) => number[],
  counts: (wanted: readonly number[]) => boolean,
): string {
  const next = random(seed);
  let cases = 0;
  let agreed = 0;
  let worst = 0;
  while (cases < CASES) {
    const heads = 1 + Math.floor(next() * 12);
    const rows = heads + Math.floor(next() * 6);
    const pattern = drawPattern(heads, rows, next() < 0.5, next);
    if (hasDarkRow(pattern)) continue;
    const readings = draw(pattern, next);
    const scaled = weighted(pattern, readings);
    if (!(condition(scaled) < most)) continue;
    const wanted = library(scaled);
    if (!counts(wanted)) continue;
    cases++;
    const came = lights(pattern, readings);
    const brightest = Math.max(...wanted);
    const off = Math.max(...came.map((x, j) => Math.abs(x - (wanted[j] as number)))) / brightest;
    worst = Math.max(worst, off);
    if (off <= AGREES) agreed++;
  }
  return `${name}: ${agreed} of ${cases} within ${AGREES}, worst ${worst.toExponential(1)} of the brightest head`;
}

/** How often a head lies within its ±, readings rounded to tenths, heads within a stop of one another. */
function holds(heads: number): string {
  const pattern = measurementPattern(heads);
  const next = random(heads);
  let within = 0;
  let all = 0;
  let widest = 0;
  for (let n = 0; n < ROUNDINGS / heads; n++) {
    const given = ones(heads).map(() => 2 ** (6 + next()));
    const came = lightUnmix(pattern, reads(pattern, given).map(tenth));
    if (isFail(came)) throw new Error(came.message);
    for (const [j, { reading, plusMinus }] of came.entries()) {
      if (isFail(reading) || isFail(plusMinus)) continue;
      all++;
      widest = Math.max(widest, plusMinus);
      if (Math.abs(Math.log2(reading ** 2 / (given[j] as number))) <= plusMinus) within++;
    }
  }
  return `± of ${heads} heads, proposed pattern: ${((100 * within) / all).toFixed(1)} % of ${all} within (19 of 20 promised), widest ± ${widest.toFixed(2)} stop`;
}

function time(): string {
  const next = random(12);
  const pattern = drawPattern(12, 25, false, next).map((row, i) =>
    row.map((share, j) => (j === i % 12 ? 1 : share)),
  );
  const readings = pattern.map(() => 2 ** (2 + next()));
  const samples = [1, 2, 3, 4, 5].map(() => {
    const start = performance.now();
    for (let i = 0; i < 100; i++) lights(pattern, readings);
    return (performance.now() - start) / 100;
  });
  return `12 heads, 25 measurements: ${median(samples).toPrecision(3)} ms, median of 5`;
}

console.log(
  [
    besideLibrary(
      'non-negative least squares (ml-fcnnls), readings at odds, condition below 100',
      21,
      100,
      (pattern, next) => pattern.map(() => 2 ** (1 + 3 * next())),
      nonNegativeByLibrary,
      () => true,
    ),
    besideLibrary(
      'QR (ml-matrix), readings rounded to tenths, condition below 1000',
      22,
      1000,
      (pattern, next) => reads(pattern, ones(pattern[0]?.length ?? 0).map(() => 2 ** (4 + 3 * next()))).map(tenth), // prettier-ignore
      leastSquaresByLibrary,
      (wanted) => wanted.every((x) => x > 0),
    ),
    ...[2, 3, 4, 5, 8, 12, 24].map(holds),
    time(),
    `${cpus()[0]?.model ?? 'unknown processor'}, Node ${process.version}`,
  ].join('\n'),
);
