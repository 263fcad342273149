import { spokenHeads } from '../../core/heads';
import { spokenStops } from '../../core/numbers';
import { type Head, isNear, isTooStrong, isTooWeak, missOf } from './head';
import type { Firing } from './firing';

const stopsOf = (miss: number): string => spokenStops(Math.abs(miss));
const counted = (pops: number): string => (pops === 1 ? 'one pop' : `${pops} pops`);

const weakAt = (head: Head, pops: number): string =>
  `${stopsOf(missOf(head, pops, 0))} too weak at ${counted(pops)}`;
const strongAt = (head: Head, pops: number): string =>
  `${stopsOf(missOf(head, pops, head.steps))} too strong at least power, ${counted(pops)}`;

/** Why a head does not come near enough, and where it helps to know, why one pop more or less does not help. */
function outOfReach({ head, pops, down }: Firing, mostPops: number): string {
  const miss = missOf(head, pops, down);
  if (isTooWeak(head, pops))
    return pops < mostPops && isTooStrong(head, pops + 1)
      ? `${weakAt(head, pops)}, and ${strongAt(head, pops + 1)}`
      : weakAt(head, pops);
  if (!isTooStrong(head, pops))
    return `${stopsOf(miss)} too ${miss < 0 ? 'weak' : 'strong'} at its nearest setting, ${counted(pops)}`;
  if (!head.isSwitchable && pops > 1) return `${strongAt(head, pops)}, and it stays on for all of them`;
  return pops > 1 && isTooWeak(head, pops - 1)
    ? `${strongAt(head, pops)}, and ${weakAt(head, pops - 1)}`
    : strongAt(head, pops);
}

export const isOut = ({ head, pops, down }: Firing): boolean => !isNear(head, missOf(head, pops, down));
export const isBeyondAllowed = ({ head, pops }: Firing): boolean => pops > (head.allowed ?? Infinity);

/** What there is to know and to do about one head. */
export function remarkOn(firing: Firing, planPops: number, mostPops: number): string {
  const { head, pops } = firing;
  const remarks: string[] = [];
  if (isOut(firing)) remarks.push(outOfReach(firing, mostPops));
  if (pops < planPops) remarks.push(`switch off after ${counted(pops)}`);
  if (isBeyondAllowed(firing))
    remarks.push(
      `${counted(pops)} in a row, where ${head.allowed} ${head.allowed === 1 ? 'is' : 'are'} allowed`,
    );
  return remarks.join('; ');
}

/** What there is to know and to do about all heads together. */
export function remarkOnAll(firings: readonly (Firing | undefined)[], planPops: number): string {
  const placesOf = (isSuch: (firing: Firing) => boolean): number[] =>
    firings.flatMap((firing, i) => (firing && isSuch(firing) ? [i] : []));
  if (planPops === 0) return 'all heads are off';
  const remarks: string[] = [];
  const out = placesOf(isOut);
  if (out.length > 0) remarks.push(`out of reach: ${spokenHeads(out)}; of all plans this one misses least`);
  const offs = [...new Set(firings.flatMap((firing) => firing?.pops ?? []))]
    .filter((pops) => pops < planPops)
    .sort((a, b) => a - b)
    .map((pops) => `${spokenHeads(placesOf((firing) => firing.pops === pops))} after ${counted(pops)}`);
  if (offs.length > 0) remarks.push(`switch off ${offs.join(', ')}`);
  const beyond = placesOf(isBeyondAllowed);
  if (beyond.length > 0) remarks.push(`more pops in a row than allowed: ${spokenHeads(beyond)}`);
  return remarks.join('; ');
}
