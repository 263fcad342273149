import { cpus } from 'node:os';
import { besideBruteForce, besideIntegerProgramme } from '../exposure/pops/plan/agreement';
import { integerProgramme, loadSolver } from '../exposure/pops/plan/integerProgramme';
import { type Job, largeJob, planOf, smallJob } from '../exposure/pops/plan/jobs';

const SMALL_JOBS = 5000;
const LARGE_JOBS = 40;
const STRAY_JOBS = 20;
/** Seeds that the unit tests do not use. */
const FIRST_SEED = 1_000_000;
/** Calls in one sample of our own time: one alone is too short for the clock. */
const CALLS = 1000;

const jobs = (count: number, make: (seed: number) => Job): Job[] =>
  Array.from({ length: count }, (_, i) => make(FIRST_SEED + i));

/** "name: 39 of 40", and what is wrong with the others. */
function agreement(name: string, list: readonly Job[], compare: (job: Job) => { wrong?: string }): string[] {
  const wrong = list.flatMap((job, i) => {
    const found = compare(job);
    return found.wrong === undefined ? [] : [`  job ${FIRST_SEED + i}: ${found.wrong}`];
  });
  return [`${name}: ${list.length - wrong.length} of ${list.length}`, ...wrong];
}

const median = (samples: readonly number[]): number =>
  [...samples].sort((a, b) => a - b)[Math.floor(samples.length / 2)] as number;
const medianOfFive = (sample: () => number): number => median([1, 2, 3, 4, 5].map(sample));

/** Twelve heads that are all on. */
function twelveHeads(): Job {
  for (let seed = FIRST_SEED; ; seed++) {
    const job = largeJob(seed, { heads: 12, mostPops: 99 });
    if ([...job.readings, ...job.targets].every((x) => x !== undefined)) return job;
  }
}

/**
 * How often the planner agrees with brute force and with an integer programme, and how long it takes beside the latter:
 * `npm run accuracy -- plan`.
 */
async function report(): Promise<string> {
  const twelve = twelveHeads();
  const before = performance.now();
  planOf(twelve);
  const first = performance.now() - before;
  const solver = await loadSolver();

  const withBruteForce = agreement('brute force', jobs(SMALL_JOBS, smallJob), besideBruteForce);
  const large = [
    ...jobs(LARGE_JOBS, largeJob),
    ...jobs(STRAY_JOBS, (seed) => largeJob(seed, { mostPops: 24, strays: 0.1 })),
  ];
  const withProgramme = agreement('integer programming', large, (job) => besideIntegerProgramme(solver, job));

  const ours = medianOfFive(() => {
    const start = performance.now();
    for (let i = 0; i < CALLS; i++) planOf(twelve);
    return (performance.now() - start) / CALLS;
  });
  const library = medianOfFive(() => {
    solver.milliseconds = 0;
    integerProgramme(solver, twelve);
    return solver.milliseconds;
  });
  return [
    ...withBruteForce,
    ...withProgramme,
    `twelve heads, up to 99 pops, median of 5: ours ${ours.toPrecision(3)} ms (first call ${first.toPrecision(3)} ms), ` +
      `library ${library.toPrecision(3)} ms for its five stages, models made beforehand: ${Math.round(library / ours)} times as long`,
    `${cpus()[0]?.model ?? 'unknown processor'}, Node ${process.version}`,
  ].join('\n');
}

void report().then((text) => console.log(text));
