import { evenLight } from '../../src/exposure/balance/evenLight';
import { isFail } from '../../src/exposure/core/result';
import { drawCase } from '../exposure/balance/cases';
import { integerProgramme, loadSolver } from '../exposure/plan/integerProgramme';
import { type Job, largeJob, planOf } from '../exposure/plan/jobs';
import { median, medianOf, ms, say, times } from './measure';

/** Twelve heads that are all on, and up to 99 pops. */
function twelveHeads(): Job {
  for (let seed = 1; ; seed++) {
    const job = largeJob(seed, { heads: 12, mostPops: 99 });
    if ([...job.readings, ...job.targets].every((x) => x !== undefined)) return job;
  }
}

/** The plan beside an integer programme that finds the same plan, its models made beforehand. */
async function plan(): Promise<void> {
  const job = twelveHeads();
  const ours = median(() => planOf(job));
  const solver = await loadSolver();
  const library = await medianOf(() => {
    solver.milliseconds = 0;
    integerProgramme(solver, job);
    return Promise.resolve(solver.milliseconds);
  });
  say('a plan of 12 heads, up to 99 pops', {
    ms: ms(ours),
    'integer programming ms': ms(library),
    'integer programming, times ours': times(library, ours),
  });
}

const LIGHTINGS = 20;

/** Even light at many points: the median of so many lightings, and the slowest of them. */
function balance(): void {
  const took = Array.from({ length: LIGHTINGS }, (_, i) => {
    const { readings, powers, targets, least, most } = drawCase(i + 1, 12, 25);
    return median(() => {
      if (isFail(evenLight(readings, powers, targets, least, most))) throw new Error('no even light');
    });
  }).sort((a, b) => a - b);
  say('even light of 12 heads at 25 points', {
    ms: ms(took[LIGHTINGS >> 1] as number),
    'slowest ms': ms(took[LIGHTINGS - 1] as number),
  });
}

async function main(): Promise<void> {
  await plan();
  balance();
}

void main();
