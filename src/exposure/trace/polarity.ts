import { at } from '../core/at';
import { SURE_OF } from './noiseChance';
import { median } from './median';
import { MIDDLE, SHOWS_NOISE } from './noise';
import { type Samples, tenthOf } from './samples';

/** So many steps tell the noise to a tenth, enough to choose a direction, however long the recording. */
const MOST_AT_END = 200;
/** Where a pulse stands out from the ends by as much upward as downward, to this share of the range, they do not tell. */
const ALIKE = 0.1;

/** Noise without memory in the last tenth, from the median step between neighbours. 0 in a short recording. */
function noiseAtEnd({ values, count }: Samples): number {
  const length = Math.min(MOST_AT_END, tenthOf(count));
  if (length < SHOWS_NOISE) return 0;
  const steps = Float64Array.from({ length }, (_, k) =>
    Math.abs(at(values, count - 1 - k) - at(values, count - 2 - k)),
  );
  return median(steps) / (MIDDLE * Math.SQRT2);
}

/**
 * Whether light raises (1) or lowers (−1) the recorded values.
 *
 * The pulse stands out from both ends of the recording on one side. Where it does on neither, as in a recording that starts
 * at the peak, most of the time is dark: the mean lies nearer to the base.
 */
export function polarityOf(samples: Samples, base: number | undefined): 1 | -1 {
  const { values, lowest, highest, mean, count } = samples;
  if (base !== undefined) return highest - base >= base - lowest ? 1 : -1;
  const first = at(values, 0);
  const last = at(values, count - 1);
  const up = highest - Math.min(first, last);
  const down = Math.max(first, last) - lowest;
  if (Math.abs(up - down) > ALIKE * (highest - lowest) + SURE_OF * noiseAtEnd(samples))
    return up > down ? 1 : -1;
  return mean - lowest <= highest - mean ? 1 : -1;
}
