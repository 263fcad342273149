import { describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../src/catalogue';
import { Q } from '../../src/catalogue/quantities';
import { SOURCES } from '../../src/catalogue/sources';
import {
  type AnyRow,
  type Arg,
  choice,
  type Example,
  FAMILIES,
  flag,
  gappedList,
  isChoice,
  isTruth,
  list,
  maybeList,
  grid,
  pool,
  quantitiesOf,
  series,
} from '../../src/catalogue/types';
import { argumentHelp, exampleFormula } from '../../src/catalogue/words';
import { type Answer, call } from '../../src/cells/call';
import { isCellError } from '../../src/formula/errors';
import type { Range } from '../../src/exposure/core/range';

const asCells = (example: Example): unknown[] =>
  example.cells.map((c) => (Array.isArray(c) ? c.map((v: unknown) => [v].flat()) : c));
const flat = (answer: Answer): unknown[] => (Array.isArray(answer) ? answer.flat() : [answer]);
const args = (row: AnyRow): readonly Arg[] => row.args as readonly Arg[];

describe('examples come out of the one call path', () => {
  for (const row of CATALOGUE)
    for (const example of row.examples)
      test(exampleFormula(row, example), () => {
        const wanted = [example.gives].flat(2);
        const got = flat(call(row, asCells(example)));
        expect(got).toHaveLength(wanted.length);
        for (const [i, want] of wanted.entries()) {
          if (typeof want === 'string') expect(got[i]).toBe(want);
          else
            expect(Math.abs((got[i] as number) - want)).toBeLessThanOrEqual(
              1e-12 * Math.max(1, Math.abs(want)),
            );
        }
      });
});

/** A value just inside and one just outside each end of a range. */
function edges(range: Range): { inside: number[]; outside: number[] } {
  const inside: number[] = [];
  const outside: number[] = [];
  const step = range.whole ? 1 : 1e-3;
  const end = (value: number | undefined, into: number, belongs: boolean): void => {
    if (value === undefined) return;
    inside.push(belongs ? value : value + into * step);
    outside.push(value - into * step);
  };
  end(range.above, 1, false);
  end(range.least, 1, true);
  end(range.below, -1, false);
  end(range.most, -1, true);
  if (range.below !== undefined) outside.push(range.below);
  if (range.whole) outside.push((range.least ?? 1) + 0.5);
  return { inside, outside };
}

const refusedForRange = (answer: Answer, arg: Arg): boolean =>
  flat(answer).some((c) => isCellError(c) && c.error === '#NUM!' && (c.message ?? '').startsWith(arg.name));

/** Cells for all the arguments a check needs, so that optional partners are there. */
const PARTNERS: Readonly<Record<string, unknown>> = {
  focal: 100, draw: 200, distance: 1, newDistance: 1, width: 1, height: 1, magnification: 1, pixelPitch: 4, ambient: 4, ambientTime: '1/60', openTime: 1,
}; // prettier-ignore

const LONGER_THAN_FOCAL = new Set(['draw', 'distance', 'hinge']);

function withArgument(row: AnyRow, index: number, value: unknown): unknown[] {
  const base = asCells(row.examples[0] as Example);
  const wanted = args(row)[index]?.name;
  return args(row).map((arg, i) => {
    const cell = base[i] ?? PARTNERS[arg.name] ?? null;
    if (i === index) return Array.isArray(cell) ? [[value], ...cell.slice(1)] : value;
    // these are never less than the focal length: where one of them is tried, the lens is a tiny one
    return LONGER_THAN_FOCAL.has(wanted ?? '') && arg.name === 'focal' ? '0.0001 mm' : cell;
  });
}

describe('declared ranges are the ranges that hold', () => {
  for (const row of CATALOGUE)
    for (const [i, arg] of args(row).entries()) {
      const { inside, outside } = edges(arg.range);
      if (inside.length + outside.length === 0) continue;
      test(`${row.id} ${arg.name}`, () => {
        for (const value of inside.filter((v) => v !== 0))
          expect(refusedForRange(call(row, withArgument(row, i, value)), arg), `${value} is inside`).toBe(
            false,
          );
        for (const value of outside.filter((v) => v !== 0))
          expect(refusedForRange(call(row, withArgument(row, i, value)), arg), `${value} is outside`).toBe(
            true,
          );
      });
    }
});

describe('each row', () => {
  test('has an id of its own', () => expect(new Set(CATALOGUE.map((r) => r.id)).size).toBe(CATALOGUE.length));
  for (const row of CATALOGUE)
    test(row.id, () => {
      expect(FAMILIES[row.family]).toBeDefined();
      expect(row.gives).toMatch(/^[A-Z0-9].*\.$/);
      expect(row.examples.length).toBeGreaterThan(0);
      expect(row.sources.length).toBeGreaterThan(0);
      for (const source of row.sources) expect(SOURCES[source]).toBeDefined();
      const names = args(row).map((a) => a.name);
      expect(new Set(names).size).toBe(names.length);
      const firstOptional = args(row).findIndex((a) => a.optional);
      if (firstOptional >= 0)
        expect(
          args(row)
            .slice(firstOptional)
            .every((a) => a.optional),
        ).toBe(true);
      for (const arg of args(row)) {
        expect(arg.about).toMatch(/^[A-Za-z0-9]/);
        expect(argumentHelp(arg).length).toBeLessThanOrEqual(512);
        expect(isChoice(arg.kind) || isTruth(arg.kind) || quantitiesOf(arg.kind).length > 0).toBe(true);
        const decider = 'by' in arg.kind ? arg.kind.by : 'given' in arg.kind ? arg.kind.given : undefined;
        if (decider !== undefined) expect(names).toContain(decider);
        if ('by' in arg.kind) {
          const kind = args(row).find((a) => a.name === decider)?.kind;
          expect(Object.keys(arg.kind.of)).toEqual(
            kind && isChoice(kind) ? [...kind.choices] : ['true', 'false'],
          );
        }
      }
    });
});

/** Names of the macro language of early spreadsheets: a function of that name can never be typed. From memory. */
const OLD_MACRO_NAMES =
  'ABSREF ACTIVATE ADD ALERT APPLY ARGUMENT BEEP BORDER BREAK CALL CANCEL CLEAR CLOSE COLOR COPY CUT DELETE DIRECTORY DOCUMENTS ECHO EDIT ELSE ENTER ERROR EVALUATE EXEC EXECUTE FILES FILL FOR FORMULA FREEZE GOTO HALT HELP HIDE HLINE IF INITIATE INPUT INSERT LINKS MERGE MESSAGE MOVE NAMES NEW NEXT NOTE OPEN PASTE PAUSE POKE PRECISION PRINT PROTECT QUIT REGISTER RENAME REQUEST RESTART RESULT RESUME RETURN RUN SAVE SELECT SEND SIZE SOUND SPLIT STEP STYLE TERMINATE TEXTREF UNDO UNHIDE UNREGISTER VIEW VLINE VOLATILE WAIT WHILE WINDOW WINDOWS WORKBOOK WORKGROUP WORKSPACE ZOOM'.split(
    ' ',
  );
const isCellAddress = (name: string): boolean => /^[A-Z]{1,3}\d{1,7}$/.test(name) || /^R\d*C\d*$/.test(name);
const isLegalName = (name: string): boolean =>
  /^[A-Z][A-Z0-9]{2,63}$/.test(name) && !isCellAddress(name) && !OLD_MACRO_NAMES.includes(name);

describe('names are legal in every host', () => {
  for (const { id } of CATALOGUE) test(id, () => expect(isLegalName(id)).toBe(true));
  test('and the check refuses what a spreadsheet would', () => {
    for (const bad of ['EV', 'EV100', 'ISO100', 'R1C1', 'RC', 'RUN', 'STOP.DIFF', 'STOP_DIFF', '2STOPS'])
      expect(isLegalName(bad)).toBe(false);
  });
});

test('an optional argument with a default says what that is, and the default is one of its values', () => {
  for (const row of CATALOGUE)
    for (const arg of args(row)) {
      if (!arg.optional || arg.fallback === undefined) continue;
      expect(argumentHelp(arg)).toContain('Left out:');
      if (isChoice(arg.kind)) expect(arg.fallback).toBe(arg.kind.choices[0]);
    }
});

test('an argument says how it is taken, and what stands in for it', () => {
  const of = { name: 'it', about: 'It', range: {} };
  expect(choice('it', 'It', ['sum', 'each'])).toEqual({
    ...of,
    kind: { choices: ['sum', 'each'] },
    takes: 'one',
    optional: true,
    fallback: 'sum',
  });
  expect(flag('it', 'It')).toEqual({
    ...of,
    kind: { truth: true },
    takes: 'one',
    optional: true,
    fallback: false,
  });
  const many = { ...of, kind: Q.energy, takes: 'list', optional: false };
  expect(list('it', 'It', Q.energy)).toEqual(many);
  expect(gappedList('it', 'It', Q.energy)).toEqual({ ...many, gaps: true });
  expect(maybeList('it', 'It', Q.energy)).toEqual({ ...many, gaps: true, optional: true });
  expect(pool('it', 'It', Q.energy)).toEqual({ ...many, takes: 'pool' });
  expect(series('it', 'It', Q.energy)).toEqual({ ...many, takes: 'series' });
  expect(grid('it', 'It', Q.energy)).toEqual({ ...many, takes: 'grid' });
});

describe('the plan of pops', () => {
  const plan = (...targets: unknown[]) => {
    const two = (value: unknown) => [[value], [value]];
    const row = CATALOGUE.find(({ id }) => id === 'POPSPLAN') as AnyRow;
    return call(row, [two(8), two(400), targets.map((each) => [each]), two(50), two(400), two(1)]);
  };
  test('leaves the cells of a head that is off blank, and says why it is', () =>
    expect(plan(16, null)).toEqual([
      [400, 4, 16, 0, ''],
      ['', 0, '', '', 'off: no target'],
      ['', 4, 16, 0, ''],
    ]));
  test('has no reading and no miss where all heads are off', () =>
    expect(plan(null, null)).toEqual([
      ['', 0, '', '', 'off: no target'],
      ['', 0, '', '', 'off: no target'],
      ['', 0, '', '', 'all heads are off'],
    ]));
});
