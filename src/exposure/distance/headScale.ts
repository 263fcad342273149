import { floorSteady, log2Ratio, roundSteady, SLACK } from '../core/numbers';
import { type Fail, fail, type Result } from '../core/result';
import { stepsDown } from './nearestSetting';

/** What a head shows its power in: Ws, stops of which a whole number is one, a fraction of full power, per cent of it. */
export type HeadScale = 'energy' | 'stops' | 'fraction' | 'percent';
export const HEAD_SCALES: readonly HeadScale[] = ['energy', 'stops', 'fraction', 'percent'];

/** A head and its display. */
export interface HeadDisplay {
  /** Energy at full power, in Ws (above 0). */
  readonly most: number;
  readonly scale: HeadScale;
  /** What it shows at full power, where it shows stops. */
  readonly top: number | undefined;
  /** Stops between two settings (above 0), where they are known. */
  readonly step: number | undefined;
}

/** Displays round to a tenth of a stop or finer: what one shows lies within half of that of the setting. */
const ROUNDS_BY = 0.05;
const PER_CENT = 100;
/** Decimals on a display: whole Ws and per cent, tenths of a stop. */
const DECIMALS: Readonly<Record<HeadScale, number>> = { energy: 0, stops: 1, fraction: 1, percent: 0 };
/** A cell has no more of them. */
const MOST_DECIMALS = 15;

/** A refusal where what the head shows at full power is missing, or stands beside a scale that has no use for it. */
export function wrongTop(scale: HeadScale, top: number | undefined): Fail | undefined {
  if ((scale === 'stops') === (top !== undefined)) return undefined;
  return fail(
    'unreadable',
    scale === 'stops'
      ? 'The scale "stops" needs top, what the head shows at full power: none where it shows 0.'
      : `top is for heads that show stops: leave it blank for the scale "${scale}".`,
  );
}

/** Energy of what a head shows, as it stands there. */
export function energyShown(shown: number, { most, scale, top = 0 }: HeadDisplay): number {
  if (scale === 'energy') return shown;
  return most * (scale === 'stops' ? 2 ** (shown - top) : shown);
}

/** Whether a display may show one energy for the other. */
export const showsAlike = (one: number, other: number): boolean =>
  Math.abs(log2Ratio(one, other)) <= ROUNDS_BY + SLACK;

/** The setting most·2^(−k·step) that an energy on the display stands for; that energy itself where none lies near. */
export function settingMeant(energy: number, { most, step }: HeadDisplay): number {
  if (step === undefined) return energy > most && showsAlike(energy, most) ? most : energy;
  const setting = most * 2 ** (-stepsDown(energy, most, step) * step);
  return showsAlike(energy, setting) ? setting : energy;
}

/** A text on a display, and the energy that it says. */
interface Shown {
  readonly text: string;
  readonly energy: number;
}

/** To so many decimals, a tie upward; without zeros at the end once it is a text. */
const rounded = (x: number, decimals: number): number =>
  Number((roundSteady(x * 10 ** decimals) / 10 ** decimals).toFixed(decimals));

/** A point before exactly three digits may as well part thousands, and is not read: 1.2340. */
const plain = (x: number): string => String(x).replace(/\.\d{3}$/, '$&0');

/** The nearest fraction at or above, and the stops by which the head is turned down from there: 1/4 −0.3. */
function fractionShown(energy: number, most: number, decimals: number): Shown {
  const down = -rounded(log2Ratio(energy, most), decimals);
  const halvings = floorSteady(down);
  const off = rounded(down - halvings, decimals);
  return { text: `1/${2 ** halvings}${off > 0 ? ` −${off}` : ''}`, energy: most * 2 ** -down };
}

function shownAs(head: HeadDisplay, energy: number, decimals: number): Shown {
  const { most, scale, top = 0 } = head;
  if (scale === 'fraction') return fractionShown(energy, most, decimals);
  if (scale === 'stops') {
    const stops = rounded(top + log2Ratio(energy, most), decimals);
    return { text: String(stops).replace('-', '−'), energy: energyShown(stops, head) };
  }
  if (scale === 'percent') {
    const percent = rounded((PER_CENT * energy) / most, decimals);
    return { text: `${plain(percent)} %`, energy: (percent / PER_CENT) * most };
  }
  const whole = rounded(energy, decimals);
  return { text: `${plain(whole)} Ws`, energy: whole };
}

/**
 * What a head shows at a setting: in the decimals of a display, or in as many more as it takes for the text to mean that
 * setting and no other.
 */
export function shownAt(setting: number, head: HeadDisplay): Result<string> {
  const means = (energy: number): boolean =>
    head.step === undefined
      ? showsAlike(energy, setting)
      : Math.abs(log2Ratio(settingMeant(energy, head), setting)) <= SLACK;
  for (let decimals = DECIMALS[head.scale]; decimals <= MOST_DECIMALS; decimals++) {
    const { text, energy } = shownAs(head, setting, decimals);
    if (means(energy)) return text;
  }
  return fail('no-answer', 'There is no text for so small a part of full power.');
}
