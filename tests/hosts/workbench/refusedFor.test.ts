import { describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../../src/catalogue';
import { Q } from '../../../src/catalogue/quantities';
import { call } from '../../../src/cells/call';
import { isCellError } from '../../../src/formula/errors';
import { refusedFor, unreadIn } from '../../../src/hosts/workbench/cell/refusedFor';

/** What a function says of one argument that it refuses. */
function refusal(id: string, ...cells: (string | number)[]): string {
  const row = CATALOGUE.find((each) => each.id === id);
  const answer = row && call(row, cells);
  return isCellError(answer) ? (answer.message ?? '') : '';
}

describe('what is told at the cell that was typed', () => {
  it('is the refusal without the name of the argument', () => {
    expect(refusedFor(refusal('STOPDIFF', 'elf', 8), 'elf')).toMatch(/^"elf" cannot be read as .*\. Write /);
    expect(refusedFor(refusal('FNUMBER', -5), -5)).toBe('It must be above 0, not -5.');
    // in a cell of texts
    expect(refusedFor(refusal('EXPOSUREVALUE', 8, '-5'), '-5')).toBe('It must be above 0, not -5.');
    expect(refusedFor(refusal('EXPOSUREVALUE', 8, '-5'), '-5.0')).toBe('It must be above 0, not -5.');
  });

  it('is nothing where another value was refused', () => {
    expect(refusedFor(refusal('STOPDIFF', 'elf', 8), 'el')).toBeUndefined();
    expect(refusedFor(refusal('STOPDIFF', 'elf', 8), 8)).toBeUndefined();
    expect(refusedFor(refusal('FNUMBER', -5), -50)).toBeUndefined();
    expect(refusedFor(refusal('FNUMBER', -50), -5)).toBeUndefined();
    expect(refusedFor(refusal('FNUMBER', -5), '-50')).toBeUndefined();
    expect(refusedFor(refusal('FNUMBER', -5), '-5 elf')).toBeUndefined();
  });
});

describe('a text in a cell with the format of a quantity', () => {
  const { input } = Q.aperture.shown;

  it.each(['elf', 'f/', '1//60', 'abc'])('is told of where it is none: %s', (typed) =>
    expect(unreadIn(input, typed)).toMatch(/cannot be read as an f-number/),
  );

  it.each(['f/8 2/3', '11³', 'f/11+0.3'])('is let be where it is one: %s', (typed) =>
    expect(unreadIn(input, typed)).toBeUndefined(),
  );

  it.each(['General', '@', ''])('is a text where the format says nothing: %s', (format) =>
    expect(unreadIn(format, 'elf')).toBeUndefined(),
  );
});
