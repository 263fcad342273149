import { at } from '../../core/at';
import { SLACK } from '../../core/numbers';
import { stepsDown } from '../../distance/nearestSetting';

/** A head as it stands, and what may be done with it. */
export interface Head {
  /** Power at which it was metered, with one pop, in any unit that goes with the light (above 0). */
  readonly metered: number;
  /** Power now, 0 for off, and pops. */
  readonly power: number;
  readonly pops: number;
  readonly least: number;
  readonly most: number;
  /** Stops between two settings. */
  readonly step: number;
  readonly mostPops: number;
  readonly isLocked: boolean;
  readonly mayGoOff: boolean;
}

/** One way to set a head. */
export interface Setting {
  /** Its light as a multiple of what was metered. */
  readonly factor: number;
  /** 0 for off. */
  readonly power: number;
  readonly pops: number;
  /** Stops from what it is set to now: of its power, and of its pops. */
  readonly change: number;
}

/** How far off is from on: a stop below the least power, as nobody who keeps a lighting would switch first. */
const OFF = 1;

function changeOf(head: Head, power: number, pops: number): number {
  const isOff = power === 0;
  if (isOff !== (head.power === 0))
    return OFF + Math.abs(Math.log2((isOff ? head.power : power) / head.least));
  if (isOff) return 0;
  const stops = Math.abs(Math.log2(power / head.power)) + Math.abs(Math.log2(pops / head.pops));
  return stops < SLACK ? 0 : stops;
}

const setting = (head: Head, power: number, pops: number): Setting => ({
  factor: (power * pops) / head.metered,
  power,
  pops: power === 0 ? 1 : pops,
  change: changeOf(head, power, pops),
});

/** Fewer pops come first, then the smaller change. */
const isBetter = (a: Setting, b: Setting): boolean =>
  a.pops < b.pops || (a.pops === b.pops && a.change < b.change);

/**
 * All ways to set a head, the darkest first: most·2^(−k·step), k from 0 to round(log2(most/least)/step), with each number of
 * pops that is allowed; what it is set to now; and off where it may. Of ways that bring the same light there is one alone:
 * that with the fewest pops, or the least change.
 */
export function settingsOf(head: Head): Setting[] {
  const now = setting(head, head.power, head.pops);
  if (head.isLocked) return [now];
  const all = [now];
  const last = stepsDown(head.least, head.most, head.step);
  for (let k = 0; k <= last; k++)
    for (let pops = 1; pops <= head.mostPops; pops++)
      all.push(setting(head, head.most * 2 ** (-k * head.step), pops));
  if (head.mayGoOff) all.push(setting(head, 0, 1));
  all.sort((a, b) => a.factor - b.factor);
  const apart: Setting[] = [];
  for (const one of all) {
    const before = apart[apart.length - 1];
    if (!before || one.factor > before.factor * (1 + SLACK)) apart.push(one);
    // what it is set to now stands for itself: nothing has to be turned for it
    else if (before !== now && (one === now || isBetter(one, before))) apart[apart.length - 1] = one;
  }
  return apart;
}

/** The place of the setting that a head has now. */
export const presentIn = (settings: readonly Setting[]): number => {
  const place = settings.findIndex(({ change }) => change === 0);
  return place < 0 ? settings.length - 1 : place;
};

/** The place of the setting nearest to a factor, in stops of light, between two places. */
export function nearestIn(settings: readonly Setting[], factor: number, from: number, to: number): number {
  let low = from;
  let high = to;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (at(settings, middle).factor <= factor) low = middle;
    else high = middle;
  }
  const [below, above] = [at(settings, low).factor, at(settings, high).factor];
  return factor - below <= above - factor ? low : high;
}
