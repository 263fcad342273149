import { random } from '../../random';
import type { Result } from '../../../../src/exposure/core/result';
import { type Plan, popsPlan } from '../../../../src/exposure/pops/plan/popsPlan';

type Column = readonly (number | undefined)[];

/** All arguments of the planner, by name. */
export interface Job {
  readonly readings: Column;
  readonly powers: Column;
  readonly targets: Column;
  readonly least: Column;
  readonly most: Column;
  readonly recycleFull: Column;
  /** At least power; undefined where it is not known. */
  readonly recycleLeast: Column;
  readonly loss: number;
  readonly step: readonly number[];
  readonly mostPops: number;
  readonly pause: number;
  readonly tolerance: number | undefined;
  readonly allowed: Column;
  readonly switchable: readonly boolean[];
}

/** Columns of numbers that hold one a head; `step`, `allowed` and `switchable` may be left out. */
export const COLUMNS = ['readings', 'powers', 'targets', 'least', 'most', 'recycleFull'] as const;
export const ALL_COLUMNS = [...COLUMNS, 'recycleLeast', 'step', 'allowed', 'switchable'] as const;

/** Stops that a head may end from its target. */
export const toleranceOf = (job: Job, head: number): number =>
  job.tolerance ?? (job.step[head] as number) / 2;

/** The arguments of a job in their order. */
export const argumentsOf = (job: Job): Parameters<typeof popsPlan> => [
  job.readings,
  job.powers,
  job.targets,
  job.least,
  job.most,
  job.recycleFull.map((full, i) => [full, job.recycleLeast[i]]),
  job.loss,
  job.step,
  job.mostPops,
  job.pause,
  job.tolerance,
  job.allowed,
  job.switchable,
];
export const planOf = (job: Job): Result<Plan> => popsPlan(...argumentsOf(job));

/** Draws from a seeded generator. */
export interface Draw {
  readonly between: (low: number, high: number) => number;
  readonly whole: (low: number, high: number) => number;
  readonly one: <T>(of: readonly T[]) => T;
  readonly chance: (share: number) => boolean;
}

export function draws(seed: number): Draw {
  const next = random(seed);
  const between = (low: number, high: number): number => low + (high - low) * next();
  const whole = (low: number, high: number): number => low + Math.floor((high - low + 1) * next());
  return {
    between,
    whole,
    one: <T>(of: readonly T[]): T => of[whole(0, of.length - 1)] as T,
    chance: (share) => next() < share,
  };
}

/** One head by what matters to a plan; the cells are made from it. */
export interface Made {
  /** Steps from full power down to the lowest setting. */
  readonly steps: number;
  /** Stops between two of them. */
  readonly step: number;
  /** Stops over its target at full power, with one pop and after the loss. */
  readonly over: number;
  /** Whether it may be switched off; it may unless said otherwise. */
  readonly isSwitchable?: boolean;
}

/** The cells of heads that have these ranges and lie so far from their targets; energies, readings and times at will. */
export function jobOf(
  draw: Draw,
  made: readonly Made[],
  rest: Pick<Job, 'loss' | 'tolerance' | 'mostPops'>,
): Job {
  const { loss } = rest;
  const lines = made.map(({ steps, step, over }) => {
    const most = draw.one([200, 400, 600, 1200, 2400, 3000]);
    const stray = draw.chance(0.5) ? 0 : draw.between(-0.4, 0.4);
    const down = Math.max(0, steps + stray);
    const power = most * 2 ** (-step * (draw.chance(0.5) ? draw.whole(0, steps) : draw.between(0, down)));
    const reading = 2 ** draw.between(0, 5);
    return {
      reading,
      power,
      target: reading * 2 ** ((Math.log2(most / power) - loss - over) / 2),
      least: most * 2 ** (-step * down),
      most,
      recycle: draw.one([0.5, 1, 1.5, 2, draw.between(0.2, 6)]),
      recycleLeast: draw.one([undefined, undefined, 0.1, 0.5, draw.between(0.1, 8)]),
    };
  });
  const off = lines.map(() => (draw.chance(0.08) ? draw.one(['reading', 'target', 'both']) : 'on'));
  return {
    readings: lines.map((l, i) => (off[i] === 'reading' || off[i] === 'both' ? undefined : l.reading)),
    powers: lines.map((l, i) => (off[i] === 'both' ? undefined : l.power)),
    targets: lines.map((l, i) => (off[i] === 'target' || off[i] === 'both' ? undefined : l.target)),
    least: lines.map((l) => l.least),
    most: lines.map((l) => l.most),
    recycleFull: lines.map((l) => l.recycle),
    recycleLeast: lines.map((l) => l.recycleLeast),
    step: made.map(({ step }) => step),
    allowed: lines.map(() => draw.one([undefined, 1, 4, 12])),
    switchable: made.map(({ isSwitchable = true }) => isSwitchable),
    ...rest,
    pause: draw.one([0, 0, 1, draw.between(0, 4)]),
  };
}

/**
 * Stops over the target at full power, of the sorts on which a planner may fail: anywhere in and around the reach of the
 * head, on a mark, between two marks, at the very end of the reach, and between m pops and m + 1.
 */
function awkward(draw: Draw, steps: number, step: number, mostPops: number): number {
  const pops = draw.whole(1, mostPops);
  switch (draw.whole(0, 6)) {
    case 0:
      return draw.whole(0, steps) * step - Math.log2(pops);
    case 1:
      return (draw.whole(0, steps) + 0.5) * step - Math.log2(pops);
    case 2:
      return -step / 2 - Math.log2(pops);
    case 3:
      return (steps * step - Math.log2(pops) - Math.log2(pops + 1)) / 2;
    default:
      return draw.between(-Math.log2(mostPops) - step, steps * step + step);
  }
}

/** A job small enough for brute force: one to four heads, few settings, few pops. */
export function smallJob(seed: number): Job {
  const draw = draws(seed);
  const heads = draw.whole(1, 4);
  const shared = draw.one([0.1, 0.2, 1 / 3, 0.5, 1]);
  const isMixed = draw.chance(0.3);
  const mostPops = draw.whole(1, heads === 4 ? 8 : 16);
  const made = Array.from({ length: heads }, () => {
    const steps = draw.chance(0.3) ? 0 : draw.whole(1, heads === 4 ? 3 : 6);
    const step = isMixed ? draw.one([0.1, 1 / 3, 1]) : shared;
    return { steps, step, over: awkward(draw, steps, step, mostPops), isSwitchable: draw.chance(0.85) };
  });
  const tolerance = draw.one([
    undefined,
    undefined,
    undefined,
    0,
    shared / 2,
    0.02,
    shared / 4,
    shared * 0.8,
    draw.between(0, 1),
  ]);
  return jobOf(draw, made, { loss: draw.one([0, 0, 1, -1, draw.between(-2, 3)]), tolerance, mostPops });
}

interface Size {
  readonly heads?: number;
  readonly mostPops?: number;
  /** Share of the heads that are out of reach, or lie between m pops and m + 1 with little range to help. */
  readonly strays?: number;
}

/** A job of the size met at work: heads with full dials, narrow dials and no dial at all; in reach but for strays. */
export function largeJob(seed: number, size: Size = {}): Job {
  const draw = draws(seed);
  const heads = size.heads ?? draw.whole(6, 12);
  const mostPops = size.mostPops ?? draw.one([12, 24, 48, 99]);
  const step = draw.one([0.1, 0.1, 1 / 3]);
  const made = Array.from({ length: heads }, () => {
    const steps = draw.one([0, 2, 5, 10, 20, 50]);
    const pops = draw.whole(1, mostPops);
    const tooWeak = -Math.log2(mostPops) - 0.4;
    const tooStrong = steps * step + 1.1;
    const between = (steps * step - Math.log2(pops) - Math.log2(pops + 1)) / 2;
    if (draw.chance(size.strays ?? 0)) return { steps, step, over: draw.one([tooWeak, tooStrong, between]) };
    // a dial of a stop or more has no gap between m pops and m + 1; a narrower one fits with these pops
    return steps >= 10 && draw.chance(0.5)
      ? { steps, step, over: draw.between(-Math.log2(mostPops), steps * step) }
      : { steps, step, over: draw.between(-0.45, 0.45) * step - Math.log2(pops) };
  });
  return jobOf(draw, made, { loss: draw.between(-1, 2), tolerance: undefined, mostPops });
}
