import { describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../src/catalogue';
import type { Arg } from '../../src/catalogue/types';

/** By pair of names, both ways they stand in: the functions with each. */
type Orders = ReadonlyMap<
  string,
  { readonly asNamed: readonly string[]; readonly turned: readonly string[] }
>;

/** Every pair of names that two arguments of one function have, the earlier letter first. */
function ordersOf(functions: Readonly<Record<string, readonly string[]>>): Orders {
  const orders = new Map<string, { asNamed: string[]; turned: string[] }>();
  for (const [id, names] of Object.entries(functions))
    names.forEach((first, i) => {
      for (const second of names.slice(i + 1)) {
        const key = [first, second].sort().join(' ');
        const order = orders.get(key) ?? { asNamed: [], turned: [] };
        order[key.startsWith(`${first} `) ? 'asNamed' : 'turned'].push(id);
        orders.set(key, order);
      }
    });
  return orders;
}

/** The pairs that stand in both orders. */
const both = (functions: Readonly<Record<string, readonly string[]>>): string[] =>
  [...ordersOf(functions)]
    .filter(([, { asNamed, turned }]) => asNamed.length > 0 && turned.length > 0)
    .map(([pair]) => pair)
    .sort();

const NAMES: Readonly<Record<string, readonly string[]>> = Object.fromEntries(
  CATALOGUE.map((row) => [row.id, (row.args as readonly Arg[]).map(({ name }) => name)]),
);

/** Pairs that are meant to stand both ways, and why. */
const REASONS: Readonly<Record<string, string>> = {
  'aperture focal':
    'limits of sharpness begin with the lens; a meter reading begins with the aperture, the bellows follow',
  'blurCircle focal':
    'limits of sharpness begin with the lens; a total depth needs it only where it must be exact',
  'distance reading': 'what is asked of comes first: a reading at a distance, or a distance for a reading',
  'draw pops': 'pops that must be given come before all that may be left out',
  'focal magnification': 'a draw begins with the lens; a total depth needs it only where it must be exact',
  'focal pops': 'pops that must be given come before all that may be left out',
  'focal pupil':
    'a total depth has the pupil like all depths, and the focal length after it, where it must be exact',
  'least most': 'what a head shows is read beside its full power; its least power only bounds what is set',
  'least step': 'a plan needs the range of each head, and no step',
  'loss pops': 'pops that must be given come before all that may be left out',
  'loss step': 'an energy is first rounded to what the head can do; a plan begins with what all heads share',
  'most step': 'a plan needs the range of each head, and no step',
  'pops pupil': 'pops that must be given come before all that may be left out',
  'power reading': 'what is asked for comes first: an energy for a reading, or a reading for an energy',
};

describe('two arguments stand in one order wherever both are', () => {
  const turned = both(NAMES);
  test('but for the pairs that have a reason', () =>
    expect(turned.filter((pair) => !Object.hasOwn(REASONS, pair))).toEqual([]));
  test('and no reason is kept for a pair that needs none', () =>
    expect(Object.keys(REASONS).filter((pair) => !turned.includes(pair))).toEqual([]));
});

test('the check finds a pair that stands both ways, wherever it is, and no other', () => {
  expect(both({ ONE: ['loss', 'focal', 'draw'], TWO: ['reading', 'draw', 'loss'] })).toEqual(['draw loss']);
  expect(both({ ONE: ['loss', 'focal', 'draw'], TWO: ['reading', 'loss', 'draw'] })).toEqual([]);
});
