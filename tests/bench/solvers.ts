import { evenLight } from '../../src/exposure/balance/evenLight';
import { balanceHeads } from '../../src/exposure/balance/heads/balanceHeads';
import { finished } from '../../src/exposure/balance/heads/search';
import { isFail } from '../../src/exposure/core/result';
import { lightUnmix } from '../../src/exposure/light/unmix/lightUnmix';
import { measurementPattern } from '../../src/exposure/light/unmix/measurementPattern';
import { drawCase } from '../exposure/balance/cases';
import { drawLighting } from '../exposure/balance/heads/drawn';
import { integerProgramme, loadSolver } from '../exposure/pops/plan/integerProgramme';
import { random } from '../exposure/random';
import { nonNegativeByLibrary, reads, tenth, weighted } from '../exposure/light/unmix/cases';
import { type Job, largeJob, planOf } from '../exposure/pops/plan/jobs';
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

/** Twelve heads apart, from the fewest measurements and as many again, read to a tenth of a stop. */
function unmix(): void {
  const next = random(12);
  const once = measurementPattern(12);
  const pattern = [...once, ...once].map((row) => [...row]);
  const lights = Array.from({ length: 12 }, () => 2 ** (8 * next()));
  const readings = reads(pattern, lights).map((reading) => tenth(reading));
  const ours = median(() => {
    if (isFail(lightUnmix(pattern, readings))) throw new Error('no heads apart');
  });
  const library = median(() => nonNegativeByLibrary(weighted(pattern, readings)));
  say('12 heads apart, from 24 measurements', {
    ms: ms(ours),
    'least-squares library ms': ms(library),
    'library, times ours': times(library, ours),
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

/** Heads that light points unlike each other, with one pop and with up to eight: median and slowest of so many lightings. */
function balanceWithPops(pops: number): void {
  const took = Array.from({ length: LIGHTINGS }, (_, i) => {
    const { points, heads } = drawLighting(i + 1, { heads: 12, points: 25, pops, settings: 61 });
    return median(() => {
      if (isFail(finished(balanceHeads(points, heads)))) throw new Error('no balance');
    });
  }).sort((a, b) => a - b);
  say(`12 heads balanced at 25 points, up to ${pops} ${pops === 1 ? 'pop' : 'pops'}`, {
    ms: ms(took[LIGHTINGS >> 1] as number),
    'slowest ms': ms(took[LIGHTINGS - 1] as number),
  });
}

async function main(): Promise<void> {
  await plan();
  unmix();
  balance();
  for (const pops of [1, 8]) balanceWithPops(pops);
}

void main();
