/*
 * How far noise goes by chance, in its standard deviations, where it is Gaussian. Which of these a comparison takes depends
 * on how often it is made, and on what a wrong answer costs.
 */

/** One sample in 370 lies farther off. What is nearer cannot be told from no difference, and is taken for none. */
export const WITHIN_CHANCE = 3;

/** One sample in 16,000 lies farther off: enough where a few comparisons tell what the whole measurement stands on. */
export const SURE_OF = 4;

/** One sample in 500 million lies farther off: enough where every sample of the longest recording is asked. */
export const NEVER_BY_CHANCE = 6;

/** What the highest of so many samples of noise alone comes to: √(2·ln n) (Donoho and Johnstone 1994). */
export const highestOfNoise = (count: number): number => Math.sqrt(2 * Math.log(count));
