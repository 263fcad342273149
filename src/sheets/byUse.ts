import type { Template } from './template';

/** The sheets of a job, in the order in which they are filled: each looks up in those before it. */
export const JOB = ['heads', 'pops-plan', 'set-card'] as const;

/** In the order in which a job needs them. A sheet that is not named here comes after those. */
const ORDER: readonly string[] = [
  ...JOB,
  'lights-on-set',
  'shot-record',
  'pops-build',
  'freeze-check',
  'depth-options',
  'copy-evenness',
  'mains-plan',
  'fleet-compare',
  'estimate',
  'client-page',
  'flash-trace',
  'proof',
];

const placeOf = ({ id }: Template): number => (ORDER.includes(id) ? ORDER.indexOf(id) : ORDER.length);

export const byUse = (templates: readonly Template[]): readonly Template[] =>
  [...templates].sort((a, b) => placeOf(a) - placeOf(b));
