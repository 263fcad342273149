import loadHighs, { type Highs } from 'highs';
import { type Job, toleranceOf } from './jobs';
import { recycle as recycleAt, SLACK } from './keys';

/**
 * The plan as a mixed-integer programme in the LP format, for HiGHS: https://highs.dev
 *
 * Binaries: z[n], the plan has n pops; y[i,k,m], head i stands k steps below full power and fires on the first m pops;
 * o[i], head i is switched off before the last pop. Reals: w, the worst miss; t[j], the seconds of pop j.
 */

/** The keys of plans in reach, as the programme finds them stage by stage. */
export interface ProgrammeKeys {
  readonly off: number;
  readonly pops: number;
  readonly worst: number;
  readonly sum: number;
  readonly seconds: number;
}

/** A setting of a head with a number of pops: the size of its miss in stops, and its seconds to ready. */
interface Option {
  readonly name: string;
  readonly pops: number;
  readonly miss: number;
  readonly recycle: number;
}
/** The solver, and the milliseconds that it has worked. */
export interface Solver {
  readonly highs: Highs;
  milliseconds: number;
}

type Term = readonly [factor: number, name: string];

export const loadSolver = async (): Promise<Solver> => ({ highs: await loadHighs(), milliseconds: 0 });

const OPTIONS = {
  output_flag: false,
  mip_rel_gap: 0,
  mip_abs_gap: 0,
  mip_feasibility_tolerance: 1e-9,
  primal_feasibility_tolerance: 1e-9,
} as const;
/** What a stage may lose of the one before: above the tolerance of the solver, below any difference that counts. */
const STAGE_SLACK = 1e-7;

/** Every setting of a head with every number of pops. */
function optionsOf(job: Job, head: number): Option[] {
  const [reading, power, target, least, most, step] = [
    job.readings,
    job.powers,
    job.targets,
    job.least,
    job.most,
    job.step,
  ].map((column) => column[head] as number) as [number, number, number, number, number, number];
  const lowest = Math.floor(Math.log(most / least) / Math.LN2 / step + 0.5 + SLACK);
  const full = Math.log((reading / target) ** 2 * (most / power)) / Math.LN2 - job.loss;
  const options: Option[] = [];
  for (let pops = 1; pops <= job.mostPops; pops++) {
    const over = full + Math.log(pops) / Math.LN2;
    for (let k = 0; k <= lowest; k++)
      options.push({
        name: `y${head}_${k}_${pops}`,
        pops,
        miss: Math.abs(over - k * step),
        recycle: recycleAt(job, head, most * 0.5 ** (k * step)),
      });
  }
  return options;
}

const headsOn = (job: Job): number[] =>
  job.readings.flatMap((reading, i) => (reading === undefined || job.targets[i] === undefined ? [] : [i]));

/** A sum in the LP format; one of nothing is 0. */
const written = (terms: readonly Term[]): string =>
  terms
    .map(
      ([factor, name], i) =>
        `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${name}${i % 8 === 7 ? '\n' : ''}`,
    )
    .join(' ') || '0 z1';

/** Solves one stage; `solver.milliseconds` gathers the time in the solver, the making of the model left out. */
function solve(
  solver: Solver,
  goal: readonly Term[],
  rules: readonly string[],
  binaries: readonly string[],
): { status: string; best: number } {
  const model = [
    'Minimize',
    ` obj: ${written(goal)}`,
    'Subject To',
    ...rules.map((rule, i) => ` r${i}: ${rule}`),
    'Binaries',
    ...binaries.map((name) => ` ${name}`),
    'End',
  ].join('\n');
  const start = performance.now();
  const { Status, ObjectiveValue } = solver.highs.solve(model, OPTIONS);
  solver.milliseconds += performance.now() - start;
  return { status: Status, best: ObjectiveValue };
}

const solved = ({ status, best }: { status: string; best: number }): number => {
  if (status !== 'Optimal') throw new Error(`the integer programme ended as ${status}`);
  return best;
};

const each = (options: readonly Option[], factor: (o: Option) => number = () => 1): Term[] =>
  options.map((o) => [factor(o), o.name]);

/** The keys of the best plan in reach, stage after stage; undefined where the solver proves that there is none. */
export function integerProgramme(solver: Solver, job: Job): ProgrammeKeys | undefined {
  const counts = Array.from({ length: job.mostPops }, (_, j) => j + 1);
  const total: Term[] = counts.map((n) => [n, `z${n}`]);
  const minus = (terms: readonly Term[]): Term[] => terms.map(([factor, name]) => [-factor, name]);
  const rules = [`${written(counts.map((n) => [1, `z${n}`]))} = 1`];
  const fitting = headsOn(job).map((i) =>
    optionsOf(job, i).filter(({ miss }) => miss <= toleranceOf(job, i) + SLACK),
  );
  for (const [i, options] of fitting.entries()) {
    const fewest = Math.min(...options.map((o) => o.pops));
    rules.push(`${written(each(options))} = 1`);
    // no more pops than the plan has
    rules.push(`${written([...total, ...minus(each(options, (o) => o.pops))])} >= 0`);
    for (const n of counts) {
      const here = each(options.filter((o) => o.pops === n));
      // off, unless it fires on all pops
      rules.push(`${written([[1, `o${i}`], ...here, [-1, `z${n}`]])} >= 0`);
      if (here.length === 0) continue;
      // it fires on all pops where a setting fits; on more than the fewest that fit only where those are all pops
      rules.push(`${written([...here, [-1, `z${n}`]])} >= 0`);
      if (n > fewest) rules.push(`${written([...here, [-1, `z${n}`]])} <= 0`);
    }
  }
  const binaries = [...counts.map((n) => `z${n}`), ...fitting.map((_, i) => `o${i}`)];
  binaries.push(...fitting.flat().map((o) => o.name));

  const switchedOff: Term[] = fitting.map((_, i) => [1, `o${i}`]);
  const first = solve(solver, switchedOff, rules, binaries);
  if (first.status === 'Infeasible') return undefined;
  const off = Math.round(solved(first));
  rules.push(`${written(switchedOff)} <= ${off}`);
  const pops = Math.round(solved(solve(solver, total, rules, binaries)));
  rules.push(`z${pops} = 1`);

  for (const options of fitting)
    rules.push(`${written([[1, 'w'], ...minus(each(options, (o) => o.miss))])} >= 0`);
  const worst = solved(solve(solver, [[1, 'w']], rules, binaries));
  rules.push(`w <= ${worst + STAGE_SLACK}`);
  const misses = each(fitting.flat(), (o) => o.miss);
  const sum = solved(solve(solver, misses, rules, binaries));
  rules.push(`${written(misses)} <= ${sum + STAGE_SLACK}`);

  const time: Term[] = counts.slice(0, pops).map((j) => [1, `t${j}`]);
  for (let j = 1; j <= pops; j++) {
    rules.push(`t${j} >= ${job.pause}`);
    for (const options of fitting) {
      const firing = options.filter((o) => o.pops >= j);
      if (firing.length > 0)
        rules.push(`${written([[1, `t${j}`], ...minus(each(firing, (o) => o.recycle))])} >= 0`);
    }
  }
  return { off, pops, worst, sum, seconds: solved(solve(solver, time, rules, binaries)) };
}

/** The smallest worst miss of any plan, in reach or not: each head with any setting on any number of pops. */
export function smallestWorst(solver: Solver, job: Job): number {
  const heads = headsOn(job).map((i) => optionsOf(job, i));
  const rules: string[] = [];
  for (const options of heads) {
    rules.push(`${written(each(options))} = 1`);
    rules.push(`${written([[1, 'w'], ...each(options, (o) => -o.miss)])} >= 0`);
  }
  const names = heads.flat().map((o) => o.name);
  return solved(solve(solver, [[1, 'w']], rules, names));
}
