import { describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../src/catalogue';
import { Q } from '../../src/catalogue/quantities';
import { type AnyRow, define, one } from '../../src/catalogue/types';
import { search } from '../../src/pane/search';

/** Rows made up for this test, so that the order it asks for does not hang on the catalogue's wording. */
const row = (id: string, gives: string, more: { about?: string; words?: string[]; notes?: string } = {}) =>
  define({
    id,
    family: 'light',
    gives,
    args: [one('value', more.about ?? 'A value', Q.stops)],
    result: Q.stops,
    answers: 'one',
    formula: 'value',
    run: (value: number) => value,
    sources: ['common-practice'],
    examples: [],
    ...(more.words ? { words: more.words } : {}),
    ...(more.notes ? { notes: more.notes } : {}),
  }) as AnyRow;
const ids = (rows: readonly AnyRow[]): string[] => rows.map(({ id }) => id);
const find = (query: string): string[] => ids(search(CATALOGUE, query));

describe('the order of what is found', () => {
  const rows = [
    row('FIRST', 'Nothing', { notes: 'A sweep of paper' }),
    row('SECOND', 'The sweep of a curve'),
    row('THIRD', 'Nothing', { words: ['long sweep'] }),
    row('LONGSWEEPER', 'Nothing'),
    row('SWEEPLENGTH', 'Nothing'),
    row('LAST', 'Nothing'),
  ];
  test('a name that starts so, a name, a trade word, what it gives, anything else', () => {
    expect(ids(search(rows, 'sweep'))).toEqual([
      // The formula's own prefix is no word to look for: everything is there, in its own order.
      ...ids(rows),
    ]);
    expect(ids(search(rows, 'swee'))).toEqual(['SWEEPLENGTH', 'LONGSWEEPER', 'THIRD', 'SECOND', 'FIRST']);
  });
  test('equals stay in the order of the catalogue', () => {
    expect(ids(search(rows, 'nothing'))).toEqual(['FIRST', 'THIRD', 'LONGSWEEPER', 'SWEEPLENGTH', 'LAST']);
  });
  test('every word must be found, each wherever it is', () => {
    expect(ids(search(rows, 'nothing swee'))).toEqual(['SWEEPLENGTH', 'LONGSWEEPER', 'THIRD', 'FIRST']);
    expect(search(rows, 'swee absent')).toEqual([]);
  });
});

describe('the catalogue', () => {
  test.each([
    ['bellows', 'BELLOWSLOSS'],
    ['BelloW', 'BELLOWSLOSS'],
    ['pops', 'POPSFORTARGET'],
    ['nd', 'FILTERLOSS'],
    ['ND', 'FILTERLOSS'],
    ['inverse square', 'FALLOFF'],
    ['joules', 'POWERFORDISTANCE'],
    ['=SWEEP.STOPDIFF(8,11)'.slice(0, 15), 'STOPDIFF'],
    ['sweep.stopd', 'STOPDIFF'],
    ['diff', 'STOPDIFF'],
    ['ratio lighting', 'LIGHTRATIO'],
    ['polariser', 'FILTERLOSS'],
  ])('%s finds %s', (query, id) => {
    expect(find(query)).toContain(id);
  });
  test('the best stands first', () => {
    expect(find('stopdiff')[0]).toBe('STOPDIFF');
    expect(find('bellows')[0]).toBe('BELLOWSLOSS');
    expect(find('nd')[0]).toBe('FILTERLOSS');
  });
  test('ND is not found within and, round or second', () => {
    expect(find('nd')).not.toContain('LIGHTSPREAD');
    expect(find('nd')).not.toContain('SECONDS');
  });
  test('nothing typed shows everything in order', () => {
    for (const query of ['', '   ', '=', 'SWEEP.', '=sweep.']) expect(find(query)).toEqual(ids(CATALOGUE));
  });
  test('what is nowhere finds nothing', () => {
    expect(find('helicopter')).toEqual([]);
  });
  test('each function is found by its name and by each of its trade words', () => {
    for (const { id, words = [] } of CATALOGUE)
      for (const query of [id, id.toLowerCase(), ...words]) expect(find(query), query).toContain(id);
  });
});
