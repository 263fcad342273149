import { isFail } from '../../../../src/exposure/core/result';
import { bruteForce, isAllowed } from './bruteForce';
import { integerProgramme, smallestWorst, type Solver } from './integerProgramme';
import { type Job, planOf, toleranceOf } from './jobs';
import { compareKeys, type Keys, keysOf, missed, SLACK, type Use, usesOf } from './keys';

/** What a comparison found: the keys of our plan, and what is wrong with it, if anything. */
export interface Finding {
  readonly keys: Keys;
  readonly wrong?: string;
}

const finding = (keys: Keys, wanted: unknown, right: boolean): Finding =>
  right ? { keys } : { keys, wrong: `${JSON.stringify(keys)} for ${JSON.stringify(wanted)}` };

/** Our plan beside the best of all plans: all keys the same, its own figures right, each head within the rules. */
export function besideBruteForce(job: Job): Finding | { keys: undefined; wrong: string } {
  const plan = planOf(job);
  if (isFail(plan)) return { keys: undefined, wrong: plan.message };
  const uses = usesOf(plan);
  const keys = keysOf(job, uses);
  const best = bruteForce(job);
  const right =
    compareKeys(keys, best) === 0 &&
    isAllowed(job, uses, plan.pops) &&
    plan.pops === keys.pops &&
    Math.abs(plan.seconds.ready - keys.seconds) < 1e-9 &&
    plan.heads.every(
      ({ miss }, i) => miss === undefined || Math.abs(miss - missed(job, i, uses[i] as Use)) < 1e-9,
    ) &&
    plan.heads.filter(({ miss }, i) => miss !== undefined && Math.abs(miss) > toleranceOf(job, i) + SLACK)
      .length === best.beyond.length;
  return finding(keys, best, right);
}

/** The solver's answers are good to the slack between its stages. */
const TOLERANCE = 1e-6;

/** Our plan beside the integer programme: all stages where a plan is in reach, else the smallest worst miss. */
export function besideIntegerProgramme(
  solver: Solver,
  job: Job,
): Finding | { keys: undefined; wrong: string } {
  const plan = planOf(job);
  if (isFail(plan)) return { keys: undefined, wrong: plan.message };
  const keys = keysOf(job, usesOf(plan));
  const near = (a: number, b: number): boolean => Math.abs(a - b) < TOLERANCE;
  const best = integerProgramme(solver, job);
  if (!best) {
    const worst = smallestWorst(solver, job);
    return finding(keys, { worst }, keys.beyond.length > 0 && near(keys.worst, worst));
  }
  const right =
    keys.beyond.length === 0 &&
    keys.off === best.off &&
    keys.pops === best.pops &&
    near(keys.worst, best.worst) &&
    near(keys.sum, best.sum) &&
    near(keys.seconds, best.seconds);
  return finding(keys, best, right);
}
