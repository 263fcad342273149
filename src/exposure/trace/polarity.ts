import { median } from './median';
import type { Samples } from './samples';

/** 1.05 × the median of the last steps: the standard deviation of noise without memory. */
function noiseAtEnd({ values, count }: Samples): number {
  const steps = Float64Array.from({ length: Math.min(20, count - 1) }, (_, k) =>
    Math.abs((values[count - 1 - k] as number) - (values[count - 2 - k] as number)),
  );
  return count > 200 ? 1.05 * median(steps) : 0;
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
