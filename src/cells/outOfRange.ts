import type { Arg } from '../catalogue/types';
import type { Fail } from '../exposure/core/result';
import { outside } from '../exposure/core/range';

/** Members of a list that has gaps, truths among them, pairs, or rows of a grid. */
type Members = readonly (number | boolean | undefined | readonly (number | undefined)[])[];

/** Samples of a recording may be anything, so only plain lists have members to hold. */
const isMembers = (value: unknown): value is Members => Array.isArray(value);

function memberOutside({ name, range }: Arg, members: Members): Fail | undefined {
  for (let i = 0; i < members.length; i++) {
    const member = members[i];
    if (typeof member === 'boolean') continue;
    if (typeof member !== 'object') {
      const called = members.length === 1 ? name : `${name} (number ${i + 1} of the list)`;
      const wrong = outside(called, member, range);
      if (wrong) return wrong;
      continue;
    }
    for (let j = 0; j < member.length; j++) {
      const wrong = outside(`${name} (row ${i + 1}, column ${j + 1})`, member[j], range);
      if (wrong) return wrong;
    }
  }
  return undefined;
}

/**
 * Holds the values of a call against the ranges of their arguments, so that functions can trust what they get.
 *
 * @param values - as read, each in the place of its argument; what is no number has no range.
 * @returns a refusal of the first that lies outside, in the order of the arguments.
 */
export function outOfRange(args: readonly Arg[], values: readonly unknown[]): Fail | undefined {
  for (let place = 0; place < args.length; place++) {
    const arg = args[place] as Arg;
    const value = values[place];
    const wrong =
      typeof value === 'number'
        ? outside(arg.name, value, arg.range)
        : isMembers(value)
          ? memberOutside(arg, value)
          : undefined;
    if (wrong) return wrong;
  }
  return undefined;
}
