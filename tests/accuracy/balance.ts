import { cpus } from 'node:os';
import { type EvenLight, evenLight } from '../../src/exposure/balance/evenLight';
import { evenest } from '../../src/exposure/balance/evenest';
import { changes, type Lighting } from '../../src/exposure/balance/lighting';
import { isFail, type Result } from '../../src/exposure/core/result';
import { type Case, drawCase, isSmallest, lightPerPower, missOf, oversteps } from '../exposure/balance/cases';
import { type Highs, highsLibrary } from '../exposure/balance/highs';

/**
 * How near balanced lightings come to a general linear-programming library and to all settings tried one by one:
 * `npm run accuracy -- balance`.
 */
const LIBRARY_CASES = 600;
const GRID_CASES = 300;
/** Seeds that the unit tests do not use. */
const FIRST_SEED = 1_000_000;
const AS_GOOD = 0.005;

function got<T>(result: Result<T>): T {
  if (isFail(result)) throw new Error(result.message);
  return result;
}
const run = ({ readings, powers, targets, least, most }: Case): EvenLight =>
  got(evenLight(readings, powers, targets, least, most));
const shared = (c: Case): Lighting => ({
  reach: lightPerPower(c).map((row) => row.map((a, h) => a * (c.most[h] as number))),
  now: c.powers.map((power, h) => power / (c.most[h] as number)),
  least: c.least.map((low, h) => low / (c.most[h] as number)),
  mayGoOff: c.powers.map(() => false),
});
const sorted = (samples: readonly number[]): number[] => [...samples].sort((a, b) => a - b);
const share = (samples: readonly number[], part: number): number =>
  sorted(samples)[Math.min(samples.length - 1, Math.floor(samples.length * part))] as number;

/** The smallest worst miss and the smallest largest change beside the library: not in reach by a little less. */
function besideLibrary(highs: Highs): string[] {
  let errors = 0;
  let moved = 0;
  let kept = 0;
  for (let i = 0; i < LIBRARY_CASES; i++) {
    const c = drawCase(FIRST_SEED + i, 1 + (i % 12), 1 + ((i * 7) % 25));
    const lighting = shared(c);
    const { error, shares } = got(evenest(lighting));
    if (isSmallest(highs, lighting.reach, error, lighting.least, c.most.map(() => 1))) errors++; // prettier-ignore
    const { largest } = changes(lighting.now, shares);
    if (largest <= 1e-5) continue;
    moved++;
    const within = (change: number): boolean =>
      oversteps(
        highs,
        lighting.reach,
        error + AS_GOOD,
        lighting.now.map((x, h) => Math.max(lighting.least[h] as number, x * 2 ** -change)),
        lighting.now.map((x) => Math.min(1, x * 2 ** change)),
      ) <= 1e-9;
    if (within(largest + 1e-5) && !within(largest - 1e-5)) kept++;
  }
  return [
    `smallest worst miss within 1e-6 stop of the linear-programming library: ${errors} of ${LIBRARY_CASES}`,
    `smallest largest change within 1e-5 stop of it: ${kept} of ${moved} that move`,
  ];
}

/** Worst miss of the settings found beside the best of all settings, two and three heads. */
function besideAllSettings(): string {
  const gaps: number[] = [];
  for (let i = 0; i < GRID_CASES; i++) {
    const c = drawCase(FIRST_SEED + i, 2 + (i % 2), 1 + (i % 8));
    const light = lightPerPower(c);
    const lists = c.most.map(
      (high, h) =>
      Array.from({ length: Math.round(Math.log2(high / (c.least[h] as number)) / 0.1) + 1 }, (_, k) => high * 2 ** (-k * 0.1)), // prettier-ignore
    );
    let best = Infinity;
    const choose = (h: number, powers: readonly number[]): void => {
      if (h === lists.length) best = Math.min(best, missOf(light, powers));
      else for (const power of lists[h] as number[]) choose(h + 1, [...powers, power]);
    };
    choose(0, []);
    gaps.push(run(c).worst - best);
  }
  const within = gaps.filter((gap) => gap <= AS_GOOD + 1e-9).length;
  return (
    `settings beside the best of all settings, 2 and 3 heads: ${within} of ${GRID_CASES} within ${AS_GOOD} stop, ` +
    `median ${share(gaps, 0.5).toFixed(4)}, 95 % below ${share(gaps, 0.95).toFixed(4)}, worst ${share(gaps, 1).toFixed(4)} stop above`
  );
}

/** What settling in steps adds to the smallest worst miss. */
function addedBySteps(): string {
  const added: number[] = [];
  for (let i = 0; i < 200; i++) {
    const c = drawCase(FIRST_SEED + i, 1 + (i % 12), 1 + ((i * 7) % 25));
    const { error, worst } = run(c);
    added.push(worst - error);
  }
  return `tenths of a stop add to the worst miss: median ${share(added, 0.5).toFixed(3)}, worst ${share(added, 1).toFixed(3)} stop of 200`;
}

function times(): string[] {
  return [['all heads lit', false] as const, ['all heads may go off', true] as const].map(([name, off]) => {
    const cases = Array.from({ length: 20 }, (_, i) => drawCase(FIRST_SEED + i, 12, 25));
    const sample = (c: Case): number => {
      const start = performance.now();
      got(evenLight(c.readings, c.powers, c.targets, c.least, c.most, { mayGoOff: off && c.most.map(() => true) })); // prettier-ignore
      return performance.now() - start;
    };
    const medians = cases.map((c) => share([1, 2, 3, 4, 5].map(() => sample(c)), 0.5)); // prettier-ignore
    return `12 heads, 25 points, ${name}: ${share(medians, 0.5).toPrecision(3)} ms (slowest of 20 cases ${share(medians, 1).toPrecision(3)} ms), median of 5`;
  });
}

async function report(): Promise<string> {
  const highs = await highsLibrary();
  return [
    ...besideLibrary(highs),
    besideAllSettings(),
    addedBySteps(),
    ...times(),
    `${cpus()[0]?.model ?? 'unknown processor'}, Node ${process.version}`,
  ].join('\n');
}

void report().then((text) => console.log(text));
