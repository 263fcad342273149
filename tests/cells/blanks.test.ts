import { describe, expect, test } from 'vitest';
import { CATALOGUE, rowOf } from '../../src/catalogue';
import type { AnyRow, Arg, Example } from '../../src/catalogue/types';
import { type Answer, call } from '../../src/cells/call';
import { isCellError } from '../../src/formula/errors';

const run = (id: string, ...cells: unknown[]): Answer => call(rowOf(id) as AnyRow, cells);
const column = (...cells: unknown[]): unknown[][] => cells.map((cell) => [cell]);
const refused = (message: string): unknown => ({ error: '#VALUE!', message });

/** What hosts pass for an empty cell, and what a formula leaves in one. */
const EMPTY = [0, null, undefined, ''];

/** Cells of an example as a host passes them. */
const given = ({ cells }: Example): unknown[] =>
  cells.map((cell) =>
    Array.isArray(cell) ? cell.map((member: unknown) => (Array.isArray(member) ? member : [member])) : cell,
  );

const typed = (cells: readonly unknown[], place: number, one: unknown): unknown[] =>
  cells.map((cell, i) => (i === place ? one : cell));

/** Every argument of one cell that has to be there, in every example of its row. */
const required = CATALOGUE.flatMap((row) =>
  row.examples.flatMap((example, which) =>
    (row.args as readonly Arg[]).flatMap((arg, place) =>
      arg.optional || arg.takes !== 'one'
        ? []
        : [[`${row.id}, example ${which + 1}: ${arg.name}`, row, given(example), arg, place] as const],
    ),
  ),
);

describe('an argument that has to be there and is blank', () => {
  test('is tried in every function that has one', () => {
    const tried = new Set(required.map(([, row]) => row.id));
    const without = CATALOGUE.filter(({ id }) => !tried.has(id));
    expect(
      without
        .flatMap(({ args }) => args as readonly Arg[])
        .filter(({ optional, takes }) => !optional && takes === 'one'),
    ).toEqual([]);
    expect(tried.size).toBeGreaterThan(50);
  });

  test.each(required)('%s is refused, or its row says what a blank means', (_, row, cells, arg, place) => {
    for (const empty of EMPTY) {
      const answer = call(row, typed(cells, place, empty));
      const isSaid = /\bblank\b/.test(arg.about);
      expect(isCellError(answer) || isSaid, `${arg.name} as ${String(empty)}`).toBe(true);
    }
  });

  test.each(required)('%s is the same however a host passes it', (_, row, cells, __, place) => {
    const [first, ...others] = EMPTY.map((empty) => call(row, typed(cells, place, empty)));
    for (const other of others) expect(other).toEqual(first);
  });
});

test('a head that shows 0 stops at full power gives all it has there, and a blank is that 0', () => {
  for (const empty of EMPTY) expect(run('HEADPOWER', empty, 800, 'stops', 'none')).toBe(800);
});

describe('a blank is not taken for 0 where 0 would be an answer', () => {
  test('in the rate of a day, which is not free', () => {
    for (const empty of EMPTY)
      expect(run('HIRECOST', empty, 10)).toEqual(
        refused('dayRate is missing: rate for a day; none where it costs nothing.'),
      );
    expect(run('HIRECOST', 'none', 10)).toBe(0);
    // a week for three days, and three days more
    expect(run('HIRECOST', column(80, ''), 10)).toEqual(column(480, ''));
  });
});

describe('one of two that belong together and is blank', () => {
  const blank = (name: string): unknown =>
    refused(`${name} is blank at place 2 of the list, where the other list is not.`);

  test('is refused in a build, whichever it is, but for a head that does not fire', () => {
    expect(run('POPSBUILD', column('f/16', null, 'f/16'), column(1, 4, 1))).toEqual(blank('readings'));
    // f/16 twice is a stop more: f/22.6
    for (const off of [0, null, ''])
      expect(run('POPSBUILD', column('f/16', null, 'f/16'), column(1, off, 1))).toBeCloseTo(16 * Math.SQRT2);
    expect(run('POPSBUILD', column('', 'f/16'), column(4, 1))).toMatchObject({
      message: expect.stringContaining('readings is blank at place 1'),
    });
    // one number for all is beside each head that there is
    for (const heads of [column('f/16', null, 'f/16'), column(null, 'f/16', 'f/16')])
      expect(run('POPSBUILD', heads, 1)).toBeCloseTo(16 * Math.SQRT2);
  });

  test('is refused in the table of a head, whichever it is', () => {
    const energies = column(100, null, 400);
    const durations = column('1/4000', '1/3000', '1/1000');
    expect(run('FREEZEPOWER', energies, durations, '1/2000')).toEqual(blank('powers'));
    expect(run('FREEZEDURATION', energies, durations, 200)).toEqual(blank('powers'));
    expect(run('FREEZEPOWER', column(100, 200, 400), column('1/4000', null, '1/1000'), '1/2000')).toEqual(
      blank('durations'),
    );
    // a row in which both are blank is none
    expect(run('FREEZEPOWER', energies, column('1/4000', null, '1/1000'), '1/2000')).toBe(200);
  });
});

test('a focal length in the place of the loss is refused, and believed with its unit', () => {
  const said = /is too large for a number of stops: a focal length in the place of the loss\?/;
  for (const [id, ...cells] of [
    ['METERTARGET', 22, 150],
    ['POPSFORTARGET', 16, 45, 150],
    ['POPSREADING', 16, 4, 150],
    ['POPSMISS', 16, 45, 4, 150],
    ['POPSBUILD', [[16]], 1, null, null, null, 150],
    ['POWERFORREADING', 100, 8, 11, null, null, null, 150],
    ['READINGFORPOWER', 8, 100, 200, null, null, 150],
    ['GUIDEREADING', 45, 3, 100, 100, 1, 150],
    ['FILTERLOSS', 150, 'stops'],
  ] as const)
    expect(run(id, ...cells), id).toMatchObject({ error: '#VALUE!', message: expect.stringMatching(said) });
  // 20 stops are the densest filter there is, and 24 are believed where they are said to be stops
  expect(run('FILTERLOSS', 20, 'stops')).toBe(20);
  expect(run('FILTERLOSS', '24 stops', 'stops')).toBe(24);
});
