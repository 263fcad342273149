import type { Draws } from './draws';

/** How a recorder or a country writes a number: read as that number, or not at all. */
export interface Writing {
  readonly name: string;
  readonly write: (x: number) => string;
}
const grouped = (x: number, group: string, point: string): string => {
  const [whole = '', part] = String(x).split('.');
  return whole.replace(/\B(?=(?:\d{3})+$)/g, group) + (part === undefined ? '' : point + part);
};
/** All digits, without a power of ten. */
const plain = (x: number): string => {
  const text = String(x);
  return text.includes('e') ? x.toFixed(12).replace(/0+$/, '').replace(/\.$/, '') : text;
};
export const WRITINGS: readonly Writing[] = [
  { name: 'a point', write: plain },
  { name: 'a comma', write: (x) => plain(x).replace('.', ',') },
  { name: 'a power of ten', write: (x) => x.toExponential() },
  { name: 'a power of ten, capital', write: (x) => x.toExponential().toUpperCase() },
  { name: 'a power of ten with a comma', write: (x) => x.toExponential().replace('.', ',') },
  { name: 'spaces and a comma', write: (x) => grouped(x, ' ', ',') },
  { name: 'hard spaces and a comma', write: (x) => grouped(x, '\u00a0', ',') },
  { name: 'narrow spaces and a point', write: (x) => grouped(x, '\u202f', '.') },
  { name: 'apostrophes and a point', write: (x) => grouped(x, "'", '.') },
  { name: 'typographic apostrophes', write: (x) => grouped(x, '’', '.') },
  { name: 'commas and a point', write: (x) => `${grouped(x, ',', '.')}${String(x).includes('.') ? '' : '.0'}` },
  { name: 'points and a comma', write: (x) => `${grouped(x, '.', ',')}${String(x).includes('.') ? '' : ',0'}` },
  { name: 'a real minus', write: (x) => plain(x).replace('-', '−') },
  { name: 'a sign and spaces', write: (x) => ` ${x < 0 ? '' : '+'}${plain(x)}\u00a0` },
  { name: 'Arabic digits', write: (x) => plain(x).replace(/\d/g, (d) => String.fromCharCode(0x660 + Number(d))) },
  { name: 'wide digits', write: (x) => plain(x).replace(/\d/g, (d) => String.fromCharCode(0xff10 + Number(d))) },
  { name: 'seconds', write: (x) => `${plain(x)} s` },
  { name: 'milliseconds', write: (x) => `${plain(Number((x * 1000).toPrecision(12)))} ms` },
  { name: 'microseconds', write: (x) => `${plain(Number((x * 1e6).toPrecision(12)))}µs` },
  { name: 'volts', write: (x) => `${plain(x)} V` },
  { name: 'an apostrophe before it', write: (x) => `'${plain(x)}` },
]; // prettier-ignore

const JUNK = ['Time (s)', 'CH1', 'OVER', '---', '#N/A', 'NaN', 'inf', '0,1;0,2', '0.1\t0.2', '1.2.3', 'mV', '0.5 foo', '12:00:01', '1e', '--1', '\ud800', 'x'.repeat(5000)]; // prettier-ignore

export interface Trace {
  readonly times: readonly number[];
  readonly values: readonly number[];
}
const kept = (x: number, digits: number): number => Number(x.toPrecision(digits)) + 0;

/** A flash as a sensor records it: a rise, a tail, a base, noise, either way up; at times clipped, cut, or twice. */
export function anyTrace(draws: Draws, most: number): Trace {
  const count = draws.whole(3, draws.isSo(0.8) ? Math.min(200, most) : most);
  const span = 10 ** draws.between(-4, 0.5);
  const start = draws.pick([0, 0, span, -span / 3, 1234.5]);
  const [rise, tail] = [span * draws.between(0.005, 0.1), span * draws.between(0.02, 0.4)];
  const at = span * draws.between(0, 0.4);
  const height = draws.pick([1, -1]) * 10 ** draws.between(-3, 4);
  const base = draws.pick([0, height * draws.between(-0.2, 0.2), 1500]);
  const noise = draws.pick([0, 0, 0.001, 0.05]);
  const top = draws.pick([2, 2, 0.4]);
  const flash = (t: number): number => (t <= 0 ? 0 : (1 - Math.exp(-t / rise)) * Math.exp(-t / tail));
  const again = draws.isSo(0.15) ? span * 0.4 : Number.POSITIVE_INFINITY;
  const times = draws.times(count, (i) => kept(start + (span * i) / (count - 1), 9));
  const values = times.map((t) =>
    kept(
      base + height * Math.min(top, flash(t - start - at) + 0.8 * flash(t - start - at - again) + noise * (draws.share() - 0.5)),
      6,
    ),
  ); // prettier-ignore
  return { times, values };
}

/** Junk put among the cells of a column, or nothing. */
export function withJunk(draws: Draws, cells: readonly unknown[], chance: number): unknown[] {
  const all = [...cells];
  if (!draws.isSo(chance)) return all;
  for (let n = draws.whole(1, 3); n > 0; n--) all[draws.whole(0, all.length - 1)] = draws.pick(JUNK);
  return all;
}
export const asColumn = (cells: readonly unknown[]): unknown[][] => cells.map((cell) => [cell]);
