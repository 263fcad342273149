import { at } from '../../exposure/core/at';
import { isFail } from '../../exposure/core/result';
import { SLACK, spoken, spokenStops } from '../../exposure/core/numbers';
import { dialChange } from '../../exposure/distance/dialChange';
import { shownAt } from '../../exposure/distance/headScale';
import { alikeHeads } from '../../exposure/balance/heads/alike';
import type { Balanced, PointOutcome, Proposal } from '../../exposure/balance/heads/balanceHeads';
import type { Limit } from '../../exposure/balance/heads/limits';
import type { PointKind } from '../../exposure/balance/heads/points';
import type { Setting } from '../../exposure/balance/heads/settings';
import { stopText } from '../../exposure/stops/stopText';
import type { TableHead } from './readHeads';
import type { ReadTable } from './readTable';

/** A head, as it is to be set. */
export interface HeadLine {
  readonly name: string;
  readonly now: string;
  readonly setTo: string;
  readonly turn: string;
  readonly pops: number;
  readonly isChanged: boolean;
}

/** A point, before and after. */
export interface PointLine {
  readonly name: string;
  readonly wanted: string;
  readonly before: string;
  readonly after: string;
  readonly missBefore: string;
  readonly miss: string;
  /** Stops off its target after, with their sign, for a picture. */
  readonly stops: number;
  readonly isOff: boolean;
  readonly place: { readonly across: number; readonly up: number } | undefined;
}

/** What the view says of an answer. */
export interface Said {
  readonly headline: string;
  /** What is known of the worst point, and of better settings. */
  readonly sure: readonly string[];
  readonly heads: readonly HeadLine[];
  readonly hasPops: boolean;
  readonly points: readonly PointLine[];
  readonly limits: readonly string[];
  readonly doubts: readonly string[];
  readonly fewer: { readonly headline: string; readonly heads: readonly HeadLine[] } | undefined;
}

/** Without their sign, in tenths: nobody reads a meter finer. */
const inTenths = (stops: number): number => Math.round(Math.abs(stops) * 10) / 10;
const tenths = (stops: number): string => spokenStops(inTenths(stops));
const hundredths = (stops: number): string => spokenStops(Math.round(Math.abs(stops) * 100) / 100);
/** What a search has shown is rounded up: that nothing is nearer by more than 0.04 does not follow from 0.044. */
const upToHundredths = (stops: number): string => spokenStops(Math.ceil(stops * 100 - SLACK) / 100);
/** Less than half a tenth is not told from none. */
const NONE = 0.05;

const quoted = (names: readonly string[]): string => names.map((name) => `“${name}”`).join(', ');

/** A reading as the meter shows it; an f-number beyond its scale as it is. */
export function readingText(reading: number): string {
  const text = stopText(reading);
  return isFail(text) ? (reading > 0 ? `f/${spoken(reading, 3)}` : 'no light') : text;
}

/** What a head shows at a power. */
export function shownPower({ head: { most, step }, scale, top }: TableHead, power: number): string {
  if (power === 0) return 'off';
  const text = shownAt(power, { most, scale, top, step });
  return isFail(text) ? `${spoken(power)} Ws` : text;
}

function turnText({ head }: TableHead, { power, change }: Setting): string {
  if (change === 0) return '0';
  if (power === 0) return 'off';
  return head.power === 0 ? 'on' : dialChange(head.power, power, head.step);
}

const headLine = (head: TableHead, setting: Setting): HeadLine => ({
  name: head.name,
  now: `${shownPower(head, head.head.power)}${head.head.pops > 1 ? `, ${head.head.pops} pops` : ''}`,
  setTo: shownPower(head, setting.power),
  turn: turnText(head, setting),
  pops: setting.pops,
  isChanged: setting.change > 0,
});

const wantedText = (kind: PointKind, target: number): string =>
  kind === 'ignore' ? 'ignored' : `${kind === 'equal' ? '' : `${kind} `}${readingText(target)}`;

/** A miss as it is said: 0.3 over; within half a tenth nothing. */
function missText({ miss }: PointOutcome, kind: PointKind): string {
  if (kind === 'ignore') return '';
  if (!Number.isFinite(miss)) return 'no light';
  const size = inTenths(miss);
  return size === 0 ? '0' : `${size} ${miss > 0 ? 'over' : 'under'}`;
}

function pointLines({ points }: ReadTable, before: Proposal, after: Proposal): PointLine[] {
  return points.map(({ name, place, metered: { kind, target, tolerance } }, p) => {
    const [was, is] = [at(before.points, p), at(after.points, p)];
    return {
      name,
      place,
      wanted: wantedText(kind, target),
      before: readingText(was.reading),
      after: readingText(is.reading),
      missBefore: missText(was, kind),
      miss: missText(is, kind),
      stops: is.stops,
      isOff: inTenths(is.miss) > tolerance + 1e-9,
    };
  });
}

const counted = (count: number, one: string, more = `${one}s`): string =>
  `${count} ${count === 1 ? one : more}`;

function headline(table: ReadTable, { before, after, isLeft }: Balanced): string {
  const dark = after.points.findIndex(({ miss }) => !Number.isFinite(miss));
  if (dark >= 0) return `“${at(table.points, dark).name}” gets no light: no setting was found that brings it any.`; // prettier-ignore
  if (!isLeft) {
    const changed = after.heads.filter(({ change }) => change > 0).length;
    const from = Number.isFinite(before.worst) ? ` in place of ${tenths(before.worst)}` : '';
    return `Change ${counted(changed, 'head')}: the worst point is then off by ${tenths(after.worst)}${from}.`;
  }
  if (after.excess === 0) {
    const isOpen = after.points.some(({ miss }, p) => Math.abs(miss) > at(table.points, p).metered.tolerance + SLACK); // prettier-ignore
    return `Leave the heads as they are: no point is off by more than is allowed${isOpen ? ' and its readings leave open' : ''}.`;
  }
  const off = `The worst point is off by ${tenths(after.worst)}.`;
  if (table.heads.every(({ head }) => head.isLocked))
    return `Every head is locked, so that nothing can be turned. ${off}`;
  return `Leave the heads as they are: no change brings the worst point nearer by more than the readings tell. ${off}`;
}

/** What is known of the worst point and of better settings; nothing where a point has no light at all. */
function sureTexts(table: ReadTable, answer: Balanced): string[] {
  const { after, before, isUneven, isLeft } = answer;
  if (!Number.isFinite(after.worst)) return [];
  const unlit = table.points.find(
    ({ metered: { kind } }, p) =>
      (kind === 'equal' || kind === 'at least') && !Number.isFinite(at(after.points, p).mayBeUnder),
  );
  const open = after.utmost - after.worst;
  const from = isLeft || !Number.isFinite(before.worst) ? '' : ` in place of ${hundredths(before.excess)}`;
  return [
    ...(unlit ? [`With what the readings leave open “${unlit.name}” may get no light at all.`] : []),
    ...(open > 0.005 && Number.isFinite(open)
      ? [`With what the readings leave open it may be ${hundredths(after.utmost)}.`]
      : []),
    ...(isUneven && after.excess > 0
      ? [`Points may miss unlike amounts here: beyond what each may, the worst is ${hundredths(after.excess)}${from}, and that is what is made small.`] // prettier-ignore
      : []),
    shownText(answer),
  ];
}

/** What the search has shown, and only that. */
function shownText({ isShown, after: { excess }, bound, isLeft }: Balanced): string {
  if (excess === 0) return 'Every point is within its tolerance and what its readings leave open.';
  if (!isShown)
    return `A better setting is not ruled out: the search ended when it had shown that none is nearer by more than ${upToHundredths(excess - bound)}.`;
  return isLeft && excess - bound > 0.01
    ? `No setting within these limits is nearer by more than ${upToHundredths(excess - bound)}.`
    : 'No better setting within these limits, to a hundredth of a stop: the search has gone through them all.';
}

const END = { most: 'at its most', least: 'at its least', locked: 'locked' } as const;

function limitText({ heads }: ReadTable, { head, at: end, stops, pops, gains }: Limit): string {
  const ways = [
    `${hundredths(stops)} ${stops > 0 ? 'more' : 'less'} of its light`,
    ...(end === 'locked'
      ? []
      : [`${spoken(2 ** (-stops / 2), 2)} × its distance where it is small and near`]),
    ...(end === 'most' && pops !== undefined && pops > 1 ? [`${pops} pops`] : []),
    ...(end === 'least' ? ['a filter'] : []),
  ];
  const last = at(ways, ways.length - 1);
  const said = ways.length === 1 ? last : `${ways.slice(0, -1).join(', ')} or ${last}`;
  return `“${at(heads, head).name}” is ${END[end]}: ${said} would bring the worst point up to ${hundredths(gains)} nearer.`;
}

/** What the readings leave open, and what cannot be told apart. */
function doubtTexts({ heads, points, isChecked, drift }: ReadTable): string[] {
  const below = points.flatMap(
    ({ name, below: faint }) =>
    faint.length === 0
      ? []
      : [`At “${name}” the meter shows E for ${quoted(faint)}: counted as anything from none up to the least it reads.`], // prettier-ignore
  );
  const alike = alikeHeads(points.map(({ metered }) => metered)).map(
    ([one, other]) =>
      `${quoted([at(heads, one).name, at(heads, other).name]).replace(', ', ' and ')} light all points alike: turning one does what turning the other does.`,
  );
  const far = drift.reduce((most, stops, p) => (Math.abs(stops) > Math.abs(drift[most] ?? 0) ? p : most), 0);
  const drifted = drift[far] ?? 0;
  const check = !isChecked
    ? []
    : Math.abs(drifted) < NONE
      ? ['This starts from what was measured, which is what was foretold.']
      : [`This starts from what was measured: “${at(points, far).name}” is ${tenths(drifted)} ${drifted > 0 ? 'over' : 'under'} what was foretold. All heads are taken to be off alike there.`]; // prettier-ignore
  return [...check, ...below, ...alike];
}

/** An answer in words. */
export function saidOf(table: ReadTable, answer: Balanced): Said {
  const { before, after, fewer, limits } = answer;
  const lines = ({ heads }: Proposal): HeadLine[] =>
    table.heads.map((head, h) => headLine(head, at(heads, h)));
  return {
    headline: headline(table, answer),
    sure: sureTexts(table, answer),
    heads: lines(after),
    hasPops: [...before.heads, ...after.heads, ...(fewer?.heads ?? [])].some(({ pops }) => pops > 1),
    points: pointLines(table, before, after),
    limits: limits.map((limit) => limitText(table, limit)),
    doubts: doubtTexts(table),
    fewer: fewer && {
      headline: fewerText(
        fewer.heads.filter(({ change }) => change > 0).length,
        Math.max(fewer.worst - after.worst, fewer.excess - after.excess),
      ),
      heads: lines(fewer),
    },
  };
}

function fewerText(count: number, costs: number): string {
  const which = count === 0 ? 'Leaving all heads as they are' : `Changing ${counted(count, 'head')} alone`;
  return `${which} costs ${costs < 0.005 ? 'nothing' : `${hundredths(costs)} at the worst point`}.`;
}
