import { type Head, isNear, isTooStrong, isTooWeak, missOf } from './head';
import type { Firing } from './firing';

/** Stops by which a head ends over (+) or under (−) its target after some pops. */
export interface MissAt {
  readonly stops: number;
  readonly pops: number;
}

/** The numbers of each remark on one head. */
export interface HeadRemarkNumbers {
  /** A head that is off, though one of its two cells is filled. */
  readonly off: { readonly lacks: 'target' | 'reading' };
  /** At full power; with the miss at one pop more, where that is too strong already. */
  readonly 'too weak': { readonly at: MissAt; readonly next?: MissAt };
  /** At least power; with the miss at one pop less, where that is too weak already. */
  readonly 'too strong': { readonly at: MissAt; readonly before?: MissAt };
  /** The same of a head that may not be switched off before the last of several pops. */
  readonly 'stays on': { readonly at: MissAt };
  /** Neither too weak nor too strong, but farther than its tolerance from any setting. */
  readonly 'between settings': { readonly at: MissAt };
  /** Before the last pop of the plan. */
  readonly 'switch off': { readonly pops: number };
  readonly 'too many pops': { readonly pops: number; readonly allowed: number };
}
export type HeadRemarkName = keyof HeadRemarkNumbers;
/** What there is to know and to do about one head. */
export type HeadRemark<K extends HeadRemarkName = HeadRemarkName> = {
  readonly [P in K]: { readonly remark: P } & HeadRemarkNumbers[P];
}[K];

/** The numbers of each remark on all heads together; heads by their places, counted from 0. */
export interface PlanRemarkNumbers {
  readonly 'all off': object;
  readonly 'out of reach': { readonly heads: readonly number[] };
  /** Heads that fire on the first pops alone, the fewest first. */
  readonly 'switch off': {
    readonly after: readonly { readonly heads: readonly number[]; readonly pops: number }[];
  };
  readonly 'too many pops': { readonly heads: readonly number[] };
}
export type PlanRemarkName = keyof PlanRemarkNumbers;
/** What there is to know and to do about all heads together. */
export type PlanRemark<K extends PlanRemarkName = PlanRemarkName> = {
  readonly [P in K]: { readonly remark: P } & PlanRemarkNumbers[P];
}[K];

const weakest = (head: Head, pops: number): MissAt => ({ stops: missOf(head, pops, 0), pops });
const strongest = (head: Head, pops: number): MissAt => ({ stops: missOf(head, pops, head.steps), pops });

/** Why a head does not come near enough, and where it helps to know, why one pop more or less does not help. */
function outOfReach({ head, pops, down }: Firing, mostPops: number): HeadRemark {
  if (isTooWeak(head, pops)) {
    const at = weakest(head, pops);
    return pops < mostPops && isTooStrong(head, pops + 1)
      ? { remark: 'too weak', at, next: strongest(head, pops + 1) }
      : { remark: 'too weak', at };
  }
  if (!isTooStrong(head, pops))
    return { remark: 'between settings', at: { stops: missOf(head, pops, down), pops } };
  const at = strongest(head, pops);
  if (!head.isSwitchable && pops > 1) return { remark: 'stays on', at };
  return pops > 1 && isTooWeak(head, pops - 1)
    ? { remark: 'too strong', at, before: weakest(head, pops - 1) }
    : { remark: 'too strong', at };
}

const isOut = ({ head, pops, down }: Firing): boolean => !isNear(head, missOf(head, pops, down));
const allowedFor = ({ head }: Firing): number => head.allowed ?? Infinity;

/** What there is to know and to do about one head that is on. */
export function remarksOn(firing: Firing, planPops: number, mostPops: number): readonly HeadRemark[] {
  const { pops } = firing;
  const remarks: HeadRemark[] = [];
  if (isOut(firing)) remarks.push(outOfReach(firing, mostPops));
  if (pops < planPops) remarks.push({ remark: 'switch off', pops });
  const allowed = allowedFor(firing);
  if (pops > allowed) remarks.push({ remark: 'too many pops', pops, allowed });
  return remarks;
}

/** What there is to know and to do about all heads together. */
export function remarksOnAll(
  firings: readonly (Firing | undefined)[],
  planPops: number,
): readonly PlanRemark[] {
  const placesOf = (isSuch: (firing: Firing) => boolean): number[] =>
    firings.flatMap((firing, i) => (firing && isSuch(firing) ? [i] : []));
  if (planPops === 0) return [{ remark: 'all off' }];
  const remarks: PlanRemark[] = [];
  const out = placesOf(isOut);
  if (out.length > 0) remarks.push({ remark: 'out of reach', heads: out });
  const after = [...new Set(firings.flatMap((firing) => firing?.pops ?? []))]
    .filter((pops) => pops < planPops)
    .sort((a, b) => a - b)
    .map((pops) => ({ heads: placesOf((firing) => firing.pops === pops), pops }));
  if (after.length > 0) remarks.push({ remark: 'switch off', after });
  const beyond = placesOf((firing) => firing.pops > allowedFor(firing));
  if (beyond.length > 0) remarks.push({ remark: 'too many pops', heads: beyond });
  return remarks;
}
