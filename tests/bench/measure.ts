/** Runs that count; what is said is their median. */
const RUNS = 5;

const middle = (times: number[]): number => times.sort((a, b) => a - b)[RUNS >> 1] as number;

/** Milliseconds that something takes, after one run that does not count. */
export function median(run: () => unknown): number {
  run();
  return middle(
    Array.from({ length: RUNS }, () => {
      const start = performance.now();
      run();
      return performance.now() - start;
    }),
  );
}

/** The same of times that are measured within. */
export async function medianOf(run: () => Promise<number>): Promise<number> {
  const times: number[] = [];
  for (let i = 0; i < RUNS; i++) times.push(await run());
  return middle(times);
}

export const say = (what: string, figures: Readonly<Record<string, number | string>>): void =>
  console.log(JSON.stringify({ what, ...figures }));
export const ms = (time: number): number => Number(time.toPrecision(3));
export const times = (time: number, other: number): number => Number((time / other).toPrecision(3));
