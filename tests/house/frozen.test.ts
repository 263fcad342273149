import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { format, resolveConfig } from 'prettier';
import { describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../src/catalogue';
import { Q } from '../../src/catalogue/quantities';
import { type AnyRow, choice, list, maybe, one } from '../../src/catalogue/types';
import { breaks, faults, listed, type Released } from './released';

/**
 * What workbooks hold on to: functions by id, arguments by place, words of choice by their letters. New ones may come;
 * what is released stays. released.json has all of the catalogue, or nothing:
 *
 * - It grows: after adding to the catalogue, write what is new into it. A catalogue that would break a workbook fails
 *   instead, and nothing is written.
 *
 *   UPDATE_RELEASED=1 npx vitest run --config tests/vitest.config.mts --project unit tests/house/frozen.test.ts
 *
 * - It starts anew: make `{}` of it, by hand and in a commit that says why. That means that nothing is released yet:
 *   everything in the catalogue may change, and no test asks for the list, until the line above fills it again.
 */
const FILE = join(import.meta.dirname, 'released.json');
const readReleased = (): Released => JSON.parse(readFileSync(FILE, 'utf8')) as Released;

async function grow(now: Released): Promise<void> {
  expect(breaks(readReleased(), now)).toEqual([]);
  const options = { ...(await resolveConfig(FILE)), parser: 'json' };
  writeFileSync(FILE, await format(JSON.stringify(now), options));
}

test('what is released stays as workbooks know it, and the list has all of it', async () => {
  const now = listed(CATALOGUE);
  if (process.env['UPDATE_RELEASED']) await grow(now);
  expect(faults(readReleased(), now)).toEqual([]);
});

describe('the check', () => {
  const released: Released = { POPS: ['reading', 'loss?', 'unit?: m | ft'], SUM: ['readings'] };
  const pops = (...args: string[]): Released => ({ ...released, POPS: args });

  test('reads the catalogue', () => {
    const [row] = CATALOGUE as readonly [AnyRow];
    const counted = { ...row, id: 'POPS', args: [one('reading', '', Q.aperture), maybe('loss', '', Q.stops), choice('unit', '', ['m', 'ft'])] }; // prettier-ignore
    const sum = { ...row, id: 'SUM', args: [list('readings', '', Q.aperture)] };
    expect(listed([counted, sum])).toEqual(released);
  });
  test('passes a list of all there is, in any order', () => {
    expect(faults(released, { SUM: released['SUM'] ?? [], POPS: released['POPS'] ?? [] })).toEqual([]);
  });
  test('passes everything where nothing is released yet', () => {
    expect(faults({}, released)).toEqual([]);
  });

  // prettier-ignore
  test.each([
    ['a function that is new', { ...released, DRAW: ['focal'] }, 'the list lacks DRAW'],
    ['an argument that comes last and may be left out', pops('reading', 'loss?', 'unit?: m | ft', 'pupil?'), 'the list lacks POPS: pupil?'],
    ['a word that is new', pops('reading', 'loss?', 'unit?: m | cm | ft'), 'the list lacks POPS: unit?: m | cm | ft'],
    ['an argument that need not be there any more', pops('reading?', 'loss?', 'unit?: m | ft'), 'the list lacks POPS: reading?'],
  ])('asks for %s, which breaks nothing', (_, now, fault) => {
    expect(breaks(released, now)).toEqual([]);
    expect(faults(released, now)).toEqual([fault]);
    expect(faults(now, now)).toEqual([]);
  });

  // prettier-ignore
  test.each([
    ['a function that is gone', { SUM: ['readings'] }, ['POPS is gone']],
    ['a function of another id', { POP: released['POPS'] ?? [], SUM: ['readings'] }, ['POPS is gone', 'the list lacks POP']],
    ['an argument that is gone', pops('reading', 'loss?'), ['POPS has lost unit']],
    ['arguments that changed places', pops('loss?', 'reading', 'unit?: m | ft'), ['POPS has loss in the place of reading', 'POPS has reading in the place of loss']],
    ['an argument in between', pops('reading', 'pupil?', 'loss?', 'unit?: m | ft'), ['POPS has pupil in the place of loss', 'POPS has loss in the place of unit', 'the list lacks POPS: pupil?']],
    ['an argument of another name', pops('light', 'loss?', 'unit?: m | ft'), ['POPS has light in the place of reading', 'the list lacks POPS: light']],
    ['an argument that is needed now', pops('reading', 'loss', 'unit?: m | ft'), ['POPS needs loss', 'the list lacks POPS: loss']],
    ['a new argument that is needed', pops('reading', 'loss?', 'unit?: m | ft', 'pupil'), ['POPS needs pupil, which is new', 'the list lacks POPS: pupil']],
    ['a word that is gone', pops('reading', 'loss?', 'unit?: m'), ['POPS takes no more "ft" for unit', 'the list lacks POPS: unit?: m']],
    ['another word where none is given', pops('reading', 'loss?', 'unit?: ft | m'), ['POPS takes another word where unit is left out', 'the list lacks POPS: unit?: ft | m']],
  ])('stops %s', (_, now, found) => {
    expect(faults(released, now)).toEqual(found);
    expect(breaks(released, now)).not.toEqual([]);
  });
});
