import { spokenHeads } from '../exposure/core/spokenHeads';
import { spokenStops } from '../exposure/core/numbers';
import type {
  HeadRemark,
  HeadRemarkName,
  MissAt,
  PlanRemark,
  PlanRemarkName,
} from '../exposure/pops/plan/remarks';

const stopsOf = ({ stops }: MissAt): string => spokenStops(Math.abs(stops));
const counted = (pops: number): string => (pops === 1 ? 'one pop' : `${pops} pops`);

const weak = (at: MissAt): string => `${stopsOf(at)} too weak at ${counted(at.pops)}`;
const strong = (at: MissAt): string => `${stopsOf(at)} too strong at least power, ${counted(at.pops)}`;

const ON_HEAD: { readonly [K in HeadRemarkName]: (found: HeadRemark<K>) => string } = {
  off: ({ lacks }) => `off: no ${lacks}`,
  'too weak': ({ at, next }) => (next ? `${weak(at)}, and ${strong(next)}` : weak(at)),
  'too strong': ({ at, before }) => (before ? `${strong(at)}, and ${weak(before)}` : strong(at)),
  'stays on': ({ at }) => `${strong(at)}, and it stays on for all of them`,
  'between settings': ({ at }) =>
    `${stopsOf(at)} too ${at.stops < 0 ? 'weak' : 'strong'} at its nearest setting, ${counted(at.pops)}`,
  'switch off': ({ pops }) => `switch off after ${counted(pops)}`,
  'too many pops': ({ pops, allowed }) =>
    `${counted(pops)} in a row, where ${allowed} ${allowed === 1 ? 'is' : 'are'} allowed`,
};

const ON_ALL: { readonly [K in PlanRemarkName]: (found: PlanRemark<K>) => string } = {
  'all off': () => 'all heads are off',
  'out of reach': ({ heads }) => `out of reach: ${spokenHeads(heads)}; of all plans this one misses least`,
  'switch off': ({ after }) =>
    `switch off ${after.map(({ heads, pops }) => `${spokenHeads(heads)} after ${counted(pops)}`).join(', ')}`,
  'too many pops': ({ heads }) => `more pops in a row than allowed: ${spokenHeads(heads)}`,
};

const onHead = <K extends HeadRemarkName>(found: HeadRemark<K>): string => ON_HEAD[found.remark as K](found);
const onAll = <K extends PlanRemarkName>(found: PlanRemark<K>): string => ON_ALL[found.remark as K](found);

/** What a plan says of one head; empty where there is nothing to say. */
export const headNote = (remarks: readonly HeadRemark[]): string =>
  remarks.map((found) => onHead(found)).join('; ');

/** What a plan says of all heads together; empty where there is nothing to say. */
export const planNote = (remarks: readonly PlanRemark[]): string =>
  remarks.map((found) => onAll(found)).join('; ');
