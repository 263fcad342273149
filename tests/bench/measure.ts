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

/** Rounds before what is set beside one another is measured: by then the engine has compiled what it will. */
const WARM = 3;

/** Milliseconds that each takes, in turns, so that a pause of the collector or of the machine falls on none of them alone. */
export function medians<Name extends string>(
  runs: Readonly<Record<Name, () => unknown>>,
): Record<Name, number> {
  const names = Object.keys(runs) as Name[];
  const rounds = Array.from({ length: WARM + RUNS }, () =>
    names.map((name) => {
      const start = performance.now();
      runs[name]();
      return performance.now() - start;
    }),
  ).slice(WARM);
  return Object.fromEntries(
    names.map((name, i) => [name, middle(rounds.map((times) => times[i] as number))]),
  ) as Record<Name, number>;
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
