import { describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../src/catalogue';
import { Q } from '../../src/catalogue/quantities';
import { type AnyRow, define, one } from '../../src/catalogue/types';
import { fail } from '../../src/exposure/core/result';
import { readXlsx, UnreadableFile } from '../../src/xlsx/read';
import { zip } from '../xlsx/parts';
import { BOMBS, bombs } from './bombs';
import { hostileCalls, tryCall } from './calls';
import { EVERYTHING, hostileFiles, tryFile } from './files';
import { Report, stopwatch } from './report';
import { hostileTemplates, planFault } from './templates';
import { hostileTraces, takesTrace } from './traces';
import { Verdict } from './verdict';

/** A function that is right in all but what it is planted with. */
const planted = (run: (width: number) => unknown): AnyRow =>
  define({
    id: 'PLANTED',
    family: 'light',
    gives: 'Nothing.',
    args: [one('width', 'Width', Q.share)],
    result: Q.share,
    answers: 'one',
    formula: '',
    run: run as (width: number) => number,
    sources: [],
    examples: [{ cells: [0.5], gives: 0.5 }],
  }) as AnyRow;

const escapesOf = (row: AnyRow): string => {
  const report = new Report();
  hostileCalls([row], { calls: 60, seed: 1, sizes: { cells: 20, arguments: 20 } }, report);
  return report.escapes.map(({ what }) => what).join('\n');
};

describe('what escapes from a call is caught', () => {
  test('the planted function escapes nowhere by itself', () => expect(escapesOf(planted((w) => w))).toBe(''));

  test.each([
    ['an error thrown', () => { throw new TypeError('width is not a function'); }, 'threw TypeError: width is not'],
    ['a refusal that names nothing', () => fail('domain', 'This cannot be.'), 'names none of width: This cannot be.'],
    ['a refusal that only quotes the name', () => fail('domain', 'No "width" here.'), 'names none of width'],
    ['a refusal without a sentence', () => fail('domain', ''), 'no sentence'],
    ['a refusal that is half a sentence', () => fail('domain', 'width must be'), 'no sentence'],
    ['a refusal in words of a program', () => fail('domain', 'width must not be [object Object].'), 'words of a program'],
    ['a number that a program shows', () => fail('domain', 'width must not be NaN.'), 'words of a program'],
    ['a sentence of two lines', () => fail('domain', 'width must\nbe more.'), 'fills no line'],
    ['a text longer than a cell', () => 'x'.repeat(40_000), 'longer than a cell'],
  ])('%s', (_, run, told) => expect(escapesOf(planted(run))).toContain(told)); // prettier-ignore

  test('a function that changes the cells of its host', () => {
    const given: unknown[] = [0.5];
    const row = planted(() => given.push(1));
    expect(tryCall(row, given, new Report())).toContain('threw TypeError');
  });

  test.each([
    ['NaN', Number.NaN, 'NaN in a cell'],
    ['Infinity', Number.POSITIVE_INFINITY, 'Infinity in a cell'],
    ['-0', -0, '-0 in a cell'],
    ['an object', { value: 1 }, 'object in a cell'],
    ['undefined', undefined, 'undefined in a cell'],
    ['null', null, 'null in a cell'],
    ['a function', () => 1, 'function in a cell'],
    ['no cells', [], 'no cells'],
    ['rows of no cells', [[]], 'no cells'],
    ['ragged rows', [[1, 2], [1]], 'not all as long'],
    ['a list that is no rows', [1, 2], 'no cells'],
    ['-0 deep in the rows', [[1], [-0]], '-0 in a cell'],
    ['an error without a sentence', { error: '#N/A' }, 'without a sentence'],
    ['an unknown error', { error: '#OH!', message: 'width is wrong.' }, 'object in a cell'],
    ['the error of a cell, made anew', { error: '#REF!' }, 'without a sentence'],
  ])('%s as an answer', (_, answer, told) =>
    expect(new Verdict(planted((w) => w), [{ error: '#REF!' }]).of(answer)).toContain(told)); // prettier-ignore

  test('and what is in order is not', () => {
    const error = { error: '#REF!' };
    const verdict = new Verdict(
      planted((w) => w),
      [[[error]]],
    );
    for (const answer of [1, 0, '', 'a text', true, [[1, ''], [error, 2]], error, { error: '#NUM!', message: 'width must be above 0.' }])
      expect(verdict.of(answer)).toBeUndefined(); // prettier-ignore
  });

  test('a writing of numbers that is read as others', () => {
    const report = new Report();
    const lies = [{ name: 'lies', write: (x: number): string => String(x * x + 1) }];
    const trial = { calls: 20, seed: 1, sizes: { cells: 50, arguments: 1 } };
    hostileTraces(
      CATALOGUE.filter(takesTrace).filter(({ id }) => id === 'TRACETIME'),
      trial,
      report,
      lies,
    );
    expect(report.escapes.map(({ what }) => what)).toContain('read lies and lies as other numbers');
  });
});

describe('what escapes from a template is caught', () => {
  const escapes = (own: Omit<Parameters<typeof hostileTemplates>[0], 'count' | 'seed'>): string => {
    const report = new Report();
    hostileTemplates({ count: 10, seed: 1, ...own }, report);
    return report.escapes.map(({ what }) => what).join('\n');
  };
  const refusing = (error: Error) => () => {
    throw error;
  };
  const taken = () => ({ name: 'x' }) as never;

  test.each([
    ['no file', new Error('blocks/0: is wrong')],
    ['no reason', new Error('pops-build.json: blocks/0: ')],
    ['a fault of the checker itself', new TypeError('pops-build.json: blocks/0: x')],
  ])('a refusal with %s', (_, error) =>
    expect(escapes({ read: refusing(error) })).toContain('without file, place and reason'),
  );
  test('a plan that throws', () =>
    expect(escapes({ read: taken, plan: refusing(new Error('no plan')) as never })).toContain(
      'plan threw Error: no plan',
    ));

  const plan = { merges: [], tables: [], rules: [], conditions: [], charts: [], cells: [], page: { area: { row: 0, column: 0, rows: 1, columns: 1 } } }; // prettier-ignore
  const cell = (more: object) => ({ ...plan, cells: [{ row: 0, column: 0, ...more }] });
  test.each([
    ['nothing wrong', plan, undefined],
    ['an area of no rows', { ...plan, merges: [{ row: 0, column: 0, rows: 0, columns: 1 }] }, /off the sheet/],
    ['a cell that is no place', cell({ row: Number.NaN }), /off the sheet/],
    ['two cells in one place', { ...plan, cells: [...cell({}).cells, ...cell({}).cells] }, /two cells/],
    ['a formula of nothing', cell({ formula: '=undefined[Reading]' }), /formula of nothing/],
    ['an empty formula', cell({ formula: '=' }), /formula that is none/],
    ['NaN', cell({ value: Number.NaN }), /NaN in a cell/],
  ])('a plan with %s', (_, made, told) =>
    told === undefined
      ? expect(planFault(made as never)).toBeUndefined()
      : expect(planFault(made as never)).toMatch(told)); // prettier-ignore
});

const whole = zip(EVERYTHING);
const opened = await readXlsx(whole);
const [sheet] = opened.book.sheets;

describe('what escapes from a file is caught', () => {
  const withSheet = (more: object) => async () => ({ ...opened, book: { ...opened.book, sheets: [{ ...sheet, ...more }] } }); // prettier-ignore
  const cell = (more: object) => withSheet({ cells: [{ row: 0, column: 0, value: 1, ...more }] });

  test('a reader that never ends', async () =>
    expect(await tryFile(whole, { read: () => new Promise(() => undefined), seconds: 0.05 }, new Report())).toBe(
      'hangs',
    )); // prettier-ignore
  test('a reader that lets nothing else run', async () => {
    const read: typeof readXlsx = async (bytes) => {
      for (const worked = stopwatch(); worked() < 0.2;);
      return readXlsx(bytes);
    };
    expect(await tryFile(whole, { read, seconds: 0.05 }, new Report())).toMatch(/hangs|took 0\.\d s/);
  });
  test('a bomb that is opened though it should not be', async () => {
    const report = new Report();
    const read = async () => opened;
    await bombs([{ what: 'planted', bytes: () => whole, refusal: /too large/ }], { read }, report);
    expect(report.escapes.map(({ what }) => what)).toEqual(['planted: was not met as it should be: it was opened']);
  }); // prettier-ignore
  test('a bomb that throws', async () => {
    const report = new Report();
    const read = () => Promise.reject(new RangeError('Maximum call stack size exceeded'));
    await hostileFiles({ count: 3, seed: 1, read }, report);
    expect(report.escapes).toHaveLength(3);
    expect(report.escapes[0]?.what).toContain('threw RangeError');
  });
  test.each([
    ['a refusal in no sentence', () => Promise.reject(new UnreadableFile('no')), /no sentence/],
    ['NaN', cell({ value: Number.NaN }), /NaN in a cell/],
    ['-0', cell({ value: -0 }), /0 in a cell/],
    ['an unknown error', cell({ value: { error: 'x' } }), /unknown error/],
    ['a cell off the sheet', cell({ column: -1 }), /off the sheet/],
    ['a formula that looks outside', cell({ formula: '=[1]Rates!A1' }), /looks outside/],
    ['a formula that asks another program', cell({ formula: "=cmd|'/C calc'!A0" }), /looks outside/],
    ['a formula that is none', cell({ formula: '=' }), /formula that is none/],
    ['letters beyond measure', cell({ style: { size: 1e9 } }), /beyond measure/],
    ['a merge off the sheet', withSheet({ merges: [{ row: 0, column: 0, rows: 2e6, columns: 1 }] }), /off the sheet/],
    ['a row beyond measure', withSheet({ heights: { 1: Number.POSITIVE_INFINITY } }), /beyond measure/],
    ['rows that no sheet has', withSheet({ freeze: { rows: Number.POSITIVE_INFINITY, columns: 0 } }), /no sheet has/],
    ['a list of functions of ours', async () => ({ ...opened, notUnderstood: [Object] as never }), /no sentences/],
  ] as const)('%s', async (_, read, told) =>
    expect(await tryFile(whole, { read: read as typeof readXlsx }, new Report())).toMatch(told)); // prettier-ignore

  test('there are bombs of many kinds', () => expect(BOMBS.length).toBeGreaterThan(20));
});
