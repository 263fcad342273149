import { expect, test } from 'vitest';
import { CATALOGUE } from '../../src/catalogue';
import { hostileCalls } from './calls';
import { Report } from './report';
import { hostileTraces, takesTrace } from './traces';
import { EXCEPTIONS } from './verdict';

const SIZES = { cells: 100, arguments: 250 };
const trial = { calls: 40, seed: 1, sizes: SIZES };

test('nothing escapes from 40 hostile calls of every function, and they reach answers as well as refusals', () => {
  const report = new Report();
  hostileCalls(CATALOGUE, trial, report);
  expect(report.escapes).toEqual([]);
  expect(report.answers + report.refusals).toBe(40 * CATALOGUE.length);
  expect(report.answers).toBeGreaterThan(10 * CATALOGUE.length);
  expect(report.refusals).toBeGreaterThan(10 * CATALOGUE.length);
});

test('every exception that a refusal may name no argument by is met', () => {
  const report = new Report();
  hostileCalls(CATALOGUE, trial, report);
  expect([...report.exceptions.keys()].sort()).toEqual(Object.keys(EXCEPTIONS).sort());
});

test('recordings pasted as texts are read as the numbers that they are, or refused', () => {
  const report = new Report();
  hostileTraces(CATALOGUE, { ...trial, calls: 60 }, report);
  expect(report.escapes).toEqual([]);
  expect(report.answers + report.refusals).toBe(60 * CATALOGUE.filter(takesTrace).length);
  expect(report.answers).toBeGreaterThan(20);
});

test('a call draws the same again from its own seed', () => {
  const first = CATALOGUE[0] as (typeof CATALOGUE)[number];
  const throwing = {
    ...first,
    run: () => {
      throw new Error('always');
    },
  };
  const given = (seed: number, calls: number): readonly string[] => {
    const report = new Report();
    hostileCalls([throwing], { calls, seed, sizes: SIZES }, report);
    return report.escapes.map((escape) => `${escape.seed} ${escape.given}`);
  };
  const some = given(100, 50);
  expect(some.length).toBeGreaterThan(5);
  const [seed = ''] = (some.at(-1) as string).split(' ');
  expect(given(Number(seed), 1)).toEqual(some.slice(-1));
});
