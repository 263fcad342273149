import { median } from './median';
import type { Samples } from './samples';

/** Noise without memory in the last tenth, at most 200 samples: the median step / (0.6745·√2). 0 in a short recording. */
function noiseAtEnd({ values, count }: Samples): number {
  const length = Math.min(200, Math.floor(count / 10));
  if (length < 20) return 0;
  const steps = Float64Array.from({ length }, (_, k) =>
    Math.abs((values[count - 1 - k] as number) - (values[count - 2 - k] as number)),
  );
  return median(steps) / (0.6745 * Math.SQRT2);
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
  const first = values[0] as number;
  const last = values[count - 1] as number;
  const up = highest - Math.min(first, last);
  const down = Math.max(first, last) - lowest;
  if (Math.abs(up - down) > 0.1 * (highest - lowest) + 4 * noiseAtEnd(samples)) return up > down ? 1 : -1;
  return mean - lowest <= highest - mean ? 1 : -1;
}
