import { describe, expect, test } from 'vitest';
import { Q } from '../../src/catalogue/quantities';
import { type Arg, choice, flag, maybe, one, withDefault } from '../../src/catalogue/types';
import { chosenQuantity, dependsOn, readArgument, readWithReason } from '../../src/cells/argument';
import { cellsOf, isSingle, cellRange } from '../../src/cells/cellRange';
import { BLANK } from '../../src/cells/quantityReader';
import { isFail } from '../../src/exposure/core/result';

const read = (cell: unknown, arg: Arg): unknown => {
  const value = readArgument(cell, arg, 'title' in arg.kind ? arg.kind : undefined);
  return isFail(value) ? value.message : value;
};
const BLANKS = [null, undefined, '', '  ', '\u00a0'];

describe('a word', () => {
  const basis = choice('basis', 'Basis', ['sum', 'each']);
  test('is read in any letters, and blank is the first', () => {
    for (const cell of ['each', 'EACH', ' Each ']) expect(read(cell, basis)).toBe('each');
    for (const cell of [...BLANKS, 0, 'none', ' None']) expect(read(cell, basis)).toBe('sum');
  });
  test.each([
    ['both', '"both"'],
    [8, '8'],
    [true, 'TRUE'],
    [Infinity, 'a number without end'],
    [new Date(0), 'a date'],
    [{}, 'something that is neither a number nor a text'],
  ])('is not %s', (cell, said) =>
    expect(read(cell, basis)).toBe(`basis must be "sum" or "each", not ${said}.`),
  );
  test('may be one that has to be there', () => expect(read('', { ...basis, optional: false })).toBe(BLANK));
});

describe('yes or no', () => {
  const marked = flag('marked', 'Marked');
  test('is read as a truth, a word or a number', () => {
    for (const cell of [true, 'TRUE', ' yes ', 1, '1']) expect(read(cell, marked)).toBe(true);
    for (const cell of [false, 'false', 'No', 0, '0', ...BLANKS, 'none'])
      expect(read(cell, marked)).toBe(false);
  });
  const because = (value: unknown, by: string) => ({ value, reason: { by } });
  test('is a choice, or the default where nothing is there', () => {
    for (const cell of [true, 1, 'yes'])
      expect(readWithReason(cell, marked, undefined)).toEqual(because(true, 'choice'));
    for (const cell of [false, 0, '0', 'no'])
      expect(readWithReason(cell, marked, undefined)).toEqual(because(false, 'choice'));
    for (const cell of BLANKS)
      expect(readWithReason(cell, marked, undefined)).toEqual(because(false, 'nothing'));
  });
  test('is yes for an empty cell that arrives as 0, where yes is the default', () => {
    const kept = { ...marked, fallback: true };
    for (const cell of [...BLANKS, 0])
      expect(readWithReason(cell, kept, undefined)).toEqual(because(true, 'nothing'));
    for (const cell of [false, 'no', '0'])
      expect(readWithReason(cell, kept, undefined)).toEqual(because(false, 'choice'));
    expect(read(1, kept)).toMatch(/^marked must be TRUE or FALSE, not a number/);
  });
  test('is nothing else', () => {
    for (const cell of ['perhaps', 2, {}, ['yes'], 'constructor'])
      expect(read(cell, marked)).toBe('marked must be TRUE or FALSE.');
  });
  test('is neither in numbers where nothing is yes: a 0 may as well be an empty cell', () => {
    const switchable = { ...marked, name: 'switchable', fallback: true };
    for (const cell of [true, 'yes', '1', 0, ...BLANKS]) expect(read(cell, switchable)).toBe(true);
    for (const cell of [false, 'no', '0', 'none']) expect(read(cell, switchable)).toBe(false);
    for (const cell of [1, 2])
      expect(read(cell, switchable)).toBe(
        'switchable must be TRUE or FALSE, not a number: 0 is an empty cell.',
      );
  });
});

describe('a number', () => {
  test('that is blank is its default, missing, or not there', () => {
    for (const cell of [...BLANKS, 0]) {
      expect(read(cell, withDefault('power', 'Power', Q.energy, 400))).toBe(400);
      expect(read(cell, one('power', 'Power', Q.energy))).toBe(BLANK);
      expect(read(cell, maybe('power', 'Power', Q.energy))).toBeUndefined();
    }
  });
  test('of which an empty text is a gap has its default where there is no cell at all', () => {
    const gap = { ...withDefault('power', 'Power', Q.energy, 400), emptyText: 'gap' as const };
    for (const cell of [null, undefined]) expect(read(cell, gap)).toBe(400);
    for (const cell of ['', ' ']) expect(read(cell, gap)).toBe(BLANK);
  });
  test('that is said to be none is 0 where there is a default, and not there where there is none', () => {
    for (const cell of ['none', ' NONE ']) {
      expect(read(cell, withDefault('power', 'Power', Q.energy, 400))).toBe(0);
      expect(read(cell, maybe('power', 'Power', Q.energy))).toBeUndefined();
      expect(read(cell, one('power', 'Power', Q.energy))).toContain('cannot be read as an energy');
    }
  });
});

describe('an argument that another decides', () => {
  const pitched = { given: 'pitch', yes: Q.pixels, no: Q.smallLength };
  const scaled = { by: 'scale', of: { time: Q.duration, true: Q.iso } };
  test('names it', () => {
    expect(dependsOn(one('blur', 'Blur', pitched))).toBe('pitch');
    expect(dependsOn(one('from', 'From', scaled))).toBe('scale');
    expect(dependsOn(one('power', 'Power', Q.energy))).toBeUndefined();
    expect(dependsOn(choice('basis', 'Basis', ['sum']))).toBeUndefined();
  });
  test('is read by whether that is given, or by its word', () => {
    expect(chosenQuantity(pitched, 4)).toBe(Q.pixels);
    expect(chosenQuantity(pitched, undefined)).toBe(Q.smallLength);
    expect(chosenQuantity(pitched, BLANK)).toBe(Q.smallLength);
    expect(chosenQuantity(scaled, 'time')).toBe(Q.duration);
    expect(chosenQuantity(scaled, true)).toBe(Q.iso);
    expect(chosenQuantity(scaled, 'iso')).toBeUndefined();
  });
  test('is blank where what decides it cannot be read', () =>
    expect(readArgument(8, one('from', 'From', scaled), undefined)).toBe(BLANK));
});

describe('what a host passes is a rectangle', () => {
  const cells = (given: unknown): unknown[] => [...cellsOf(cellRange(given))];
  const size = (given: unknown): unknown => {
    const { rows, columns } = cellRange(given);
    return [rows, columns];
  };
  test.each([
    ['one value', 8, [1, 1], [8]],
    ['nothing', undefined, [1, 1], [undefined]],
    ['an empty range', [], [1, 1], [null]],
    ['rows without cells', [[], []], [1, 1], [null]],
    ['a column', [[8], [11]], [2, 1], [8, 11]],
    ['a row', [[8, 11]], [1, 2], [8, 11]],
    ['ragged rows', [[8], [11, 16], []], [3, 2], [8, undefined, 11, 16, undefined, undefined]],
    ['a list of values', [8, 11], [2, 1], [8, 11]],
    ['values and rows', [8, [11, 16]], [2, 2], [8, undefined, 11, 16]],
    ['a list with a gap', Array(2), [2, 1], [undefined, undefined]],
  ])('%s', (_, given, wanted, all) => {
    expect(size(given)).toEqual(wanted);
    expect(cells(given)).toEqual(all);
  });
  test('has nothing beyond its rows and columns', () => {
    const grid = cellRange([[8, 11]]);
    expect([grid.at(0, 1), grid.at(0, 2), grid.at(1, 0)]).toEqual([11, undefined, undefined]);
  });
  test('of one cell or of several', () => {
    expect(isSingle(cellRange(8))).toBe(true);
    expect(isSingle(cellRange([[8]]))).toBe(true);
    expect(isSingle(cellRange([[8, 11]]))).toBe(false);
    expect(isSingle(cellRange([[8], [11]]))).toBe(false);
  });
});
