import { describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../src/catalogue';
import { Q } from '../../src/catalogue/quantities';
import { type AnyRow, type Arg, isChoice, list, maybe, one, type Row } from '../../src/catalogue/types';
import { type Answer, call } from '../../src/cells/call';
import { isCellError } from '../../src/formula/errors';
import { fail } from '../../src/exposure/core/result';
import { MADE } from './made';

const column = (...cells: unknown[]): unknown[][] => cells.map((cell) => [cell]);
const a = one('a', 'First', Q.energy);
const b = one('b', 'Second', Q.energy);

/** A function made for one test: what is known of one is kept from its first call on. */
const made = (args: readonly Arg[], answers: AnyRow['answers'], run: AnyRow['run']): AnyRow => ({
  ...MADE,
  args,
  answers,
  run,
});
const refused = (message: string): unknown => ({ error: '#VALUE!', message });

describe('values side by side', () => {
  const both = () =>
    made([a, b], ['sum', 'difference'], (x: number, y: number) =>
      x === 13 ? fail('domain', 'Unlucky.') : [x + y, x - y],
    );
  const unlucky = { error: '#NUM!', message: 'Unlucky.' };

  test('are one row, or one refusal', () => {
    expect(call(both(), [3, 2])).toEqual([[5, 1]]);
    expect(call(both(), [13, 2])).toEqual(unlucky);
  });
  test('go down with a column, a refusal in both cells of its row', () =>
    expect(call(both(), [column(3, 13, null, 'odd'), 2])).toEqual([
      [5, 1],
      [unlucky, unlucky],
      ['', ''],
      [expect.objectContaining({ error: '#VALUE!' }), expect.objectContaining({ error: '#VALUE!' })],
    ]));
  test('take no row, and say which argument is one', () => {
    const said = refused('b takes one column here: the answer is several columns wide.');
    expect(call(both(), [3, [[1, 2]]])).toEqual(said);
    expect(call(both(), [[[3]], [[1, 2]]])).toEqual(said);
    expect(call(both(), [[[3, 4]], [[1, 2]]])).toEqual(
      refused('a takes one column here: the answer is several columns wide.'),
    );
  });
});

describe('an answer that spills by itself', () => {
  const lists = [list('many', 'Many', Q.stops), a] as const;
  test('takes no range where it is a list', () =>
    expect(
      call(
        made(lists, 'list', (all: readonly number[]) => all),
        [column(1, 2), column(1, 2)],
      ),
    ).toEqual(refused('a takes one cell here, not a range: the answer is a list already.')));
  test('is one refusal', () => {
    const none = () => fail('no-answer', 'None.');
    for (const answers of ['list', { table: [], each: '' }] as const)
      expect(call(made(lists, answers, none), [column(1, 2), 1])).toEqual({
        error: '#N/A',
        message: 'None.',
      });
  });
});

test('a number that no cell can hold is refused, -0 is 0', () => {
  const same = () => made([a], 'one', (x: number) => x * 1e308 * 10);
  expect(call(same(), [1])).toEqual({ error: '#NUM!', message: expect.stringMatching(/too large/) });
  expect(
    Object.is(
      call(
        made([a], 'one', () => -0),
        [1],
      ),
      0,
    ),
  ).toBe(true);
});

test('a list where one value belongs is refused', () =>
  expect(
    call(
      made([a], 'one', () => [1, 2]),
      [1],
    ),
  ).toEqual(refused('The answer is a list where one value was expected.')));

describe('too many values are counted', () => {
  const c = maybe('c', 'Third', Q.stops);
  const takes = (...args: Arg[]): Answer =>
    call(
      made(args as unknown as Row['args'], 'one', () => 1),
      [1, 1, 1, 1, 1],
    );
  test.each([
    [[a], '1 value'],
    [[a, b], '2 values'],
    [[a, c], '1 or 2 values'],
    [[a, b, c], '2 or 3 values'],
    [[a, c, { ...c, name: 'd' }], '1 to 3 values'],
  ] as const)('%#', (args, words) => expect(takes(...args)).toEqual(refused(`MADE takes ${words}, not 5.`)));
});

describe('an argument that another one decides', () => {
  const scale: Arg<string> = {
    ...one('scale', 'Scale', Q.stops),
    kind: { choices: ['wide', 'near'] },
  } as never;
  const decided: Arg<number> = one('length', 'Length', {
    by: 'scale',
    of: { wide: Q.distance, near: Q.lensLength },
  });
  const said = () => made([scale, decided], 'one', (word: string, length: number) => `${word} ${length}`);
  test('may stand behind it', () => {
    expect(call(said(), ['wide', '2 m'])).toBe('wide 2');
    expect(call(said(), ['near', '2 m'])).toBe('near 2000');
    expect(call(said(), [column('wide', 'near'), '2 m'])).toEqual(column('wide 2', 'near 2000'));
  });
  test('is missing where its one cell is blank beside a range, and leaves a row empty where its own range is', () => {
    const missing = refused('length is missing: length.');
    expect(call(said(), [column('wide', 'near'), null])).toEqual(column(missing, missing));
    expect(call(said(), [column('wide', 'near'), column(null, '1 m')])).toEqual(column('', 'near 1000'));
  });
  test('gives a full grid as a row beside a column', () =>
    expect(call(said(), [column('wide', 'near'), [['1 m', '2 m', '3 m']]])).toEqual([
      ['wide 1', 'wide 2', 'wide 3'],
      ['near 1000', 'near 2000', 'near 3000'],
    ]));
  test('gives a full grid as a column beside a row', () =>
    expect(call(said(), [[['wide', 'near']], column('1 m', '2 m', '3 m')])).toEqual([
      ['wide 1', 'near 1000'],
      ['wide 2', 'near 2000'],
      ['wide 3', 'near 3000'],
    ]));
});

/** For every function whose answer is one: each of its arguments of one cell as a column, the others as in an example. */
describe('one argument as a column gives what it gives alone', () => {
  const cellsOf = (cell: unknown): unknown =>
    Array.isArray(cell) ? cell.map((each: unknown) => [each].flat()) : cell;
  const withCell = (cells: readonly unknown[], place: number, cell: unknown): unknown[] =>
    cells.map((each, i) => (i === place ? cell : each));
  const calls = CATALOGUE.filter(({ answers }) => answers === 'one').flatMap((row) =>
    row.args.flatMap((arg, place) =>
      arg.takes === 'one' ? [[`${row.id} ${arg.name}`, row, arg, place] as const] : [],
    ),
  );
  test.each(calls)('%s', (_, row, { kind }, place) => {
    for (const { cells } of row.examples) {
      const given = cells.map(cellsOf);
      while (given.length <= place) given.push(null);
      const tried = [given[place], ...(isChoice(kind) ? kind.choices : []), given[place]];
      const alone = tried.map((cell) => call(row, withCell(given, place, cell)));
      const isBlank = alone.map((answer) => isCellError(answer) && /is missing: /.test(answer.message ?? ''));
      expect(call(row, withCell(given, place, column(...tried)))).toEqual(
        column(...alone.map((answer, i) => (isBlank[i] ? '' : answer))),
      );
    }
  });
});
