import { expect } from 'vitest';
import { type Model } from './fleet';

/** Whole numbers and numbers drawn from a seed, the same each time (mulberry32, public domain). */
export function drawnFrom(seed: number) {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  const between = (low: number, high: number): number => low + (high - low) * next();
  const whole = (low: number, high: number): number => Math.floor(between(low, high + 1));
  const of = <T>(...all: readonly T[]): T => all[whole(0, all.length - 1)] as T;
  return { between, whole, of, sometimes: (share: number) => next() < share };
}
type Draw = ReturnType<typeof drawnFrom>;

export interface Job {
  readonly target: number;
  readonly distance: number;
  readonly iso: number;
  readonly limit: number | null;
  readonly level: 't0.1' | 't0.5';
  readonly mostPops: number;
  readonly frames: number;
  readonly volts: number | null;
  readonly amps: number | null;
  readonly days: number;
  readonly week: number;
  readonly crew: number;
}

const LEAST_VOLTS = 100;

export const drawnJob = ({ between, whole, of, sometimes }: Draw): Job => ({
  target: between(8, 64),
  distance: between(0.5, 4),
  iso: of(50, 100, 200),
  limit: sometimes(0.6) ? Math.round(between(40, 1500)) : null,
  level: of('t0.1', 't0.5'),
  mostPops: whole(1, 16),
  frames: whole(1, 400),
  volts: sometimes(0.8) ? of(LEAST_VOLTS, 120, 208, 230, 240) : null,
  amps: sometimes(0.8) ? of(10, 13, 15, 16, 20) : null,
  days: whole(1, 12),
  week: of(3, 4),
  crew: whole(0, 150),
});

export function drawnModel({ between, whole, of, sometimes }: Draw, name: string): Model {
  const most = of(200, 400, 600, 1000, 1200, 2400, 3200);
  const unless = <T>(value: T): T | null => (sometimes(0.06) ? null : value);
  const own = sometimes(0.3);
  const recycle = unless(Math.round(between(0.4, 4) * 10) / 10);
  // no plate says less than the charging takes, on whichever mains
  const leastPlate = Math.ceil((10 * most) / ((recycle ?? 4) * LEAST_VOLTS)) / 10;
  const pairs = sometimes(0.1) ? 0 : whole(2, 6);
  const reading = unless(of(8, 11, 16, 22, 32, 45));
  let flash = between(200, 3000);
  const falls = sometimes(0.8) ? -1 : 1;
  const durations = Array.from({ length: pairs }, (_, i) => {
    flash *= i === 0 ? 1 : 2 ** (falls * between(0.3, 1.4));
    return { [`Energy ${i + 1}`]: most / 2 ** i, [`Flash ${i + 1}`]: `${Math.round(flash * 10) / 10} µs` };
  });
  return {
    Head: name, From: own ? 'own' : 'hire', Had: own && sometimes(0.7) ? null : unless(whole(0, 8)), Rate: own ? null : unless(whole(5, 120)),
    Plate: sometimes(0.7) ? Math.max(leastPlate, Math.round(between(2, 22) * 10) / 10) : null, Lamp: sometimes(0.5) ? 150 : null, Owned: own ? unless(whole(1, 4)) : null,
    Front: sometimes(0.5) ? of(0.18, 0.6, 0.9, 1.5) : null, Most: most, Least: most / 2 ** whole(4, 7), Step: of('0.1', '1/3', '1/2', '1'),
    Recycle: recycle, 'Recycle least': sometimes(0.6) ? 0.1 : null, 'In a row': sometimes(0.5) ? whole(10, 80) : null,
    Cool: sometimes(0.6) ? 60 : null, Level: of('t0.1', 't0.5'), ...Object.assign({}, ...durations),
    Reading: reading, Tenths: reading === null ? null : whole(0, 9), 'Read at': most, Distance: of(1, 1.5, 2), Modifier: of('octagon 90 cm', 'dish 18 cm'),
  } as Model; // prettier-ignore
}

/** Full stops as they are engraved, and what they mean. */
const FULL_STOPS: Readonly<Record<number, number>> = { 8: 2 ** 3, 11: 2 ** 3.5, 16: 2 ** 4, 22: 2 ** 4.5, 32: 2 ** 5, 45: 2 ** 5.5 }; // prettier-ignore
const STEPS: Readonly<Record<string, number>> = { '0.1': 0.1, '1/3': 1 / 3, '1/2': 0.5, '1': 1 };
const LOG10_OF_2 = Math.log2(10);

/** The duration of a head at an energy, at t0.1: straight between the rows of its table by the logarithms of both. */
function lasts(model: Model, energy: number): number | undefined {
  const rows = [1, 2, 3, 4, 5, 6].flatMap((i) => {
    const [ws, text] = [model[`Energy ${i}`], model[`Flash ${i}`]];
    return typeof ws === 'number' ? [[Math.log2(ws), Math.log2(parseFloat(String(text)))] as const] : [];
  });
  const x = Math.log2(energy);
  const turned = model['Level'] === 't0.5' ? LOG10_OF_2 : 1;
  for (const [high, low] of rows.map((row, i) => [row, rows[i + 1]] as const))
    if (low && x <= high[0] + 1e-9 && x >= low[0] - 1e-9)
      return turned * 2 ** (low[1] + ((high[1] - low[1]) * (x - low[0])) / (high[0] - low[0]));
  return undefined;
}

/** What a row must say, by another route: every setting of the head is tried. */
export function worked(model: Model, job: Job) {
  const number = (id: string): number => Number(model[id] ?? 0);
  const [most, least, step] = [number('Most'), number('Least'), STEPS[String(model['Step'])] as number];
  const count = Math.round(Math.log2(most / least) / step);
  const settings = Array.from({ length: count + 1 }, (_, k) => most * 2 ** (-k * step));
  const limit = job.limit === null ? undefined : job.limit * (job.level === 't0.5' ? LOG10_OF_2 : 1);
  const isShort = (energy: number): boolean =>
    (lasts(model, energy) ?? Infinity) <= (limit ?? 0) * (1 + 1e-9);
  const freezing = limit === undefined ? undefined : settings.find(isShort);
  const had =
    typeof model['Had'] === 'number' ? model['Had'] : model['From'] === 'own' ? model['Owned'] : null;
  const listed = typeof model['Energy 1'] === 'number';
  const missing = [
    ...(limit !== undefined && !listed ? ['its durations'] : []),
    ...(model['Reading'] === null ? ['a measured reading'] : []),
    ...(model['Recycle'] === null ? ['its recycle time'] : []),
    ...(model['From'] === 'hire' && model['Rate'] === null ? ['its day rate'] : []),
    ...(typeof had === 'number' ? [] : ['how many can be had']),
    ...(job.amps !== null && model['Plate'] === null && job.volts === null ? ['its plate current or the mains'] : []),
  ]; // prettier-ignore
  const radius = number('Front') / 2;
  const [there, here] = [number('Distance') ** 2 + radius ** 2, job.distance ** 2 + radius ** 2];
  const reads = (FULL_STOPS[number('Reading')] ?? NaN) * 2 ** (number('Tenths') / 20);
  /** Light of one pop of one head at full power, and what is wanted. */
  const full = (reads ** 2 * job.iso * there) / 100 / here;
  const wants = job.target ** 2;
  const enough = (light: number): boolean => light >= (wants / 2 ** 0.05) * (1 - 1e-9);
  const least1 = (test: (n: number) => boolean): number => {
    let n = 1;
    while (!test(n)) n++;
    return n;
  };
  if (Number.isNaN(full) || (limit !== undefined && freezing === undefined))
    return { missing, freezing, listed, had, limit, wants, full: NaN, heads: undefined, isShort };
  const at = freezing === undefined ? full : (full * freezing) / most;
  const heads =
    limit === undefined ? least1((n) => enough(full * n * job.mostPops)) : least1((n) => enough(at * n));
  const pops = limit === undefined ? least1((n) => enough(full * n * heads)) : 1;
  const turned =
    pops > 1 ? most : ([...settings].reverse().find((s) => enough((full * heads * s) / most)) ?? most);
  const power = limit === undefined ? turned : !enough(at) ? freezing : isShort(turned) && turned <= (freezing as number) * (1 + 1e-9) ? turned : freezing; // prettier-ignore
  return { missing, freezing, listed, had, limit, wants, full, heads, pops, power: power as number, short: Math.log2(wants / at), here, radius, isShort }; // prettier-ignore
}

const figures = (text: string): number[] => [...text.matchAll(/\d+(?:\.\d+)?/g)].map(([n]) => Number(n));

/** Holds a sentence to the row that it stands in, figure by figure, and to what is worked by the other route. */
export function expectTrue(says: string, row: (column: string) => unknown, model: Model, job: Job): string {
  const is = worked(model, job);
  const kind = /^[A-Z]?[a-z]+(?: [a-z]+)?/.exec(says)?.[0] ?? says;
  const tooMany = typeof is.had === 'number' && is.heads !== undefined && is.heads > is.had;
  const [draw, amps] = [row('Draw'), job.amps];
  const drawsTooMuch = amps !== null && typeof draw === 'number' && draw > amps * (1 + 1e-9);
  if (is.limit !== undefined && is.listed && is.freezing === undefined)
    expect(says).toBe(`Too slow: no setting in its durations is within ${job.limit} µs at ${job.level}`);
  else if (tooMany) expect(says).toMatch(/^(Too dark|Freezes, but|None can be had)/);
  else if (drawsTooMuch) expect(says).toMatch(/^Draws too much/);
  else if (is.missing.length > 0) expect(says).toBe(`Not known: ${is.missing.join(', ')}`);
  else expect(says).toMatch(/^(\d|Freezes)/);
  const isBeaten = /^(Too|Draws|None)/.test(says) || (says.startsWith('Freezes, but') && tooMany);
  expect(row('State')).toBe(says.startsWith('Not known') ? 'unknown' : isBeaten ? 'fails' : 'ok');
  expect(typeof row('Cost')).toBe(row('State') === 'ok' ? 'number' : 'string');
  if (is.heads !== undefined) {
    expect([row('Heads'), row('Pops')]).toEqual([is.heads, is.pops]);
    expect(Number(row('Works Ws')) / is.power).toBeCloseTo(1, 9);
  }
  const numbers = figures(says);
  if (says.startsWith('Too dark')) expect(numbers).toEqual([row('Pops of one'), job.mostPops, row('Heads')]);
  if (says.startsWith('Draws too much')) expect(numbers.at(-1)).toBe(amps);
  if (says.startsWith('Freezes, but')) {
    const [short, heads] = numbers as [number, number];
    expect(short).toBeCloseTo(is.short ?? NaN, 0.9);
    expect(heads).toBe(is.heads);
    if (tooMany) expect(says).toContain(`not ${is.had},`);
    // moved so near, one head has the light; a hundredth farther it has not, but for the tenth that is let go
    const near = says.includes('×') ? (numbers.at(-1) as number) : 0;
    const lightAt = (share: number): number =>
      ((is.full * (is.freezing as number)) / Number(model['Most'])) * ((is.here as number) / ((share * job.distance) ** 2 + (is.radius as number) ** 2));
    if (near > 0) expect(lightAt(near)).toBeGreaterThanOrEqual(is.wants * (1 - 1e-9));
    expect(lightAt(near + 0.01)).toBeLessThan(is.wants * (1 + 1e-9));
  } // prettier-ignore
  if (row('State') === 'ok') {
    const days = Math.floor(job.days / 7) * job.week + Math.min(job.days % 7, job.week);
    const hire = model['From'] === 'own' ? 0 : Number(model['Rate']) * days * Number(row('Heads'));
    const crew = (job.frames * Number(row('Frame')) * job.crew) / 3600;
    expect(Math.abs(Number(row('Cost')) - hire - crew)).toBeLessThanOrEqual(0.005 + 1e-9);
    const pauses = model['Cool'] && model['In a row'] ? Math.ceil((job.frames * Number(row('Pops'))) / Number(model['In a row']) - 1e-9) - 1 : 0; // prettier-ignore
    expect(Number(row('Frame'))).toBeCloseTo(Number(row('Pops')) * Number(row('Recycles')) + (pauses * 60) / job.frames, 9); // prettier-ignore
  }
  return kind;
}
