import { at } from '../../core/at';
import { roundStops, SLACK, spoken } from '../../core/numbers';
import { answer, fail, type Fail, type Result } from '../../core/result';
import type { Vector } from '../../core/vector';
import { METER_STEP } from '../lightMinusRange';
import { nonNegative } from './nonNegative';
import { length, pivotedQr } from './pivotedQr';
import { named, notToldApart } from './toldApart';

/** What one head reads alone, and how far off that may be. */
export interface HeadReading {
  /** f-number of this head alone, at full share. */
  readonly reading: Result<number>;
  /** Stops. */
  readonly plusMinus: Result<number>;
}

/** As many as are solved in no time. */
const MOST_HEADS = 50;
const MOST_MEASUREMENTS = 500;

/** A meter rounds by up to half of what it shows. */
const HALF_STEP = METER_STEP / 2;
/** Standard deviation of a rounding that is equally likely anywhere within half a tenth. */
const ROUNDING = HALF_STEP / Math.sqrt(3);
/** Standard deviations on either side within which 19 of 20 lie. */
const NINETEEN_OF_TWENTY = 1.96;
/** From here on the light that may be wrong is as much as there is: the lower limit is no light at all. */
const HIDDEN = 1 / Math.LN2;

function wrongShape(pattern: readonly Vector[], readings: Vector): Fail | undefined {
  const heads = pattern[0]?.length ?? 0;
  if (heads === 0)
    return fail('unreadable', 'pattern is blank: give one row a measurement, one column a head.');
  for (const [i, row] of pattern.entries()) {
    if (row.length !== heads)
      return fail(
        'unreadable',
        `pattern must have as many columns in each row: ${row.length} in row ${i + 1}, ${heads} in row 1.`,
      );
  }
  if (readings.length !== pattern.length)
    return fail(
      'unreadable',
      `readings must be as many as the rows of the pattern: ${readings.length} for ${pattern.length} rows.`,
    );
  if (heads > MOST_HEADS || pattern.length > MOST_MEASUREMENTS)
    return fail(
      'domain',
      `pattern may have up to ${MOST_HEADS} heads and ${MOST_MEASUREMENTS} measurements, not ${heads} and ${pattern.length}.`,
    );
  const dark = pattern.findIndex((row) => row.every((share) => share === 0));
  if (dark >= 0)
    return fail(
      'domain',
      `pattern has every head off in row ${dark + 1}, which reads f/${spoken(at(readings, dark))}: give the ambient light a column of ones.`,
    );
  if (pattern.length < heads)
    return fail(
      'domain',
      `pattern has fewer measurements than heads: ${pattern.length} for ${heads}; there must be at least one for each head.`,
    );
  return undefined;
}

/**
 * For each measurement the first that is the same and reads the same: both are rounded by the same amount, so that taking a
 * measurement again makes nothing surer.
 */
function firstAlike(pattern: readonly Vector[], readings: Vector): number[] {
  const same = (a: Vector, b: Vector): boolean => a.every((share, j) => share === b[j]);
  return readings.map((reading, i) =>
    readings.findIndex((other, k) => other === reading && same(at(pattern, i), at(pattern, k))),
  );
}

/** ± stops of a head, from how much each reading changes its light. */
function plusMinus(head: number, light: number, influence: Vector, alike: Vector): Result<number> {
  const parts = influence.map(() => 0);
  influence.forEach((part, i) => {
    const k = at(alike, i);
    parts[k] = at(parts, k) + part / light;
  });
  const likely = NINETEEN_OF_TWENTY * ROUNDING * length(parts);
  const utmost = HALF_STEP * parts.reduce((sum, part) => sum + Math.abs(part), 0);
  const stops = Math.min(likely, utmost);
  if (stops >= HIDDEN)
    return fail(
      'no-answer',
      `${named([head])} gives less light than the tenths of the readings hide: meter it with fewer heads lit, or nearer.`,
    );
  return answer(roundStops(stops));
}

/**
 * A refusal where no lights are read so, however the meter has rounded them: the true lights miss each reading by its rounding
 * at most, and the sum of squares is least elsewhere.
 *
 * @param columns - for each head the part of each measurement's light that it brings with light 1.
 */
function contradiction(columns: readonly Vector[], lights: Vector): Fail | undefined {
  const misses = at(columns, 0).map((_, i) =>
    columns.reduce((miss, column, j) => miss + at(column, i) * at(lights, j), -1),
  );
  const utmost = (2 ** HALF_STEP - 1) * Math.sqrt(misses.length);
  if (length(misses) <= utmost * (1 + SLACK)) return undefined;
  const sizes = misses.map(Math.abs);
  const worst = sizes.indexOf(sizes.reduce((a, b) => Math.max(a, b)));
  return fail(
    'no-answer',
    `The readings contradict each other, that of measurement ${worst + 1} most: meter again, or check what was lit.`,
  );
}

/**
 * What each head reads alone, from readings of several heads at once, for heads that cannot be fired one at a time.
 *
 * Light adds: measurement i has the light yᵢ = Nᵢ² of the heads lit in it, each with its share. The lights xⱼ ≥ 0 minimise
 * Σ((Σaᵢⱼxⱼ − yᵢ)/yᵢ)², the sum of squared relative misses, as a meter is off by a part of a stop wherever it stands. A
 * head reads √xⱼ. Non-negative least squares by the active-set method of Lawson and Hanson (1974).
 *
 * The ± is for readings rounded to a tenth of a stop, each off by up to 0.05 stop, equally likely anywhere between: 19 times
 * out of 20, or more often, the head lies within it (1.96 standard deviations, or the utmost that all roundings together can
 * do where that is less: half a tenth for a head metered alone). That is what one expects of "f/8 ± 0.1 stop"; one standard deviation would be missed by every third head. It is
 * the linearised effect of each reading, without the limit x ≥ 0, so where that limit acts it is rather too wide.
 * A measurement that is taken again and reads the same counts once, as it was rounded the same way. Heads that do not
 * repeat, or a pattern that was not what was lit, are not in it: where the readings show that, as they lie farther apart than
 * roundings can bring them, there is no ±.
 *
 * @param pattern - one row a measurement, one column a head: 1 lit, 0 off, or its share of the power (from 0). A column of
 *   ones stands for the ambient light. As many rows as columns, or more.
 * @param readings - exact f-number of each measurement (above 0).
 * @returns for each head its f-number at share 1 and ± stops. Heads that cannot be told apart (pivoted QR, 1e-9) are
 *   `no-answer` refusals that name them, as is a head whose light comes out as nothing; the other heads are answered.
 */
export function lightUnmix(
  pattern: readonly (readonly number[])[],
  readings: readonly number[],
): Result<readonly HeadReading[]> {
  const wrong = wrongShape(pattern, readings);
  if (wrong) return wrong;
  const brightest = readings.reduce((a, b) => Math.max(a, b), 0);
  const light = readings.map((n) => (n / brightest) ** 2);
  const heads = at(pattern, 0).map((_, j) => pattern.map((row) => at(row, j)));
  /** Part of each measurement's light that a head brings with light 1, and its length. */
  const parts = heads.map((column) => column.map((share, i) => share / at(light, i)));
  const lengths = parts.map(length);
  if (!lengths.every((all) => Number.isFinite(all)))
    return fail('domain', 'readings lie too far apart: the dimmest would be nothing beside the brightest.');
  const columns = parts.map((part, j) => part.map((p) => p / (at(lengths, j) || 1)));
  const qr = pivotedQr(columns);
  const tangled = notToldApart(heads, qr);
  const sums = nonNegative(
    columns,
    readings.map(() => 1),
  );
  const alike = firstAlike(pattern, readings);
  const odds = contradiction(columns, sums);
  return heads.map((_, j) => {
    const refused = tangled[j];
    if (refused) return { reading: refused, plusMinus: refused };
    const sum = at(sums, j);
    const most = at(columns, j).reduce((a, b) => Math.max(a, b), 0) * sum;
    const reading = brightest * Math.sqrt(sum / at(lengths, j));
    if (most <= SLACK || reading === 0) {
      const nothing = fail(
        'no-answer',
        `${named([j])} gives too little light to tell from nothing: meter it with fewer heads lit, or check what was lit.`,
      );
      return { reading: nothing, plusMinus: nothing };
    }
    const influence = qr.influence(qr.order.indexOf(j));
    return { reading: answer(reading), plusMinus: odds ?? plusMinus(j, sum, influence, alike) };
  });
}
