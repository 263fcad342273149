import { CellValueType } from '@univerjs/core';
import { describe, expect, test } from 'vitest';
import { Q } from '../../../src/catalogue/quantities';
import { pastedValue, type Target, typedValue } from '../../../src/hosts/workbench/tables/pastedCell';

const { STRING, NUMBER, FORCE_STRING, BOOLEAN } = CellValueType;
const of = (format: string | undefined, isNumber = false): Target => ({ format, isNumber });
const METRES = of(Q.distance.shown.input, true);

describe('a text from elsewhere', () => {
  test.each<[words: string, target: Target, v: unknown, t: unknown, format?: string]>([
    // into a cell of texts
    ['1/2', of('@'), '1/2', STRING],
    ['007', of('@'), '007', STRING],
    // into one with a unit
    ['1.4', METRES, 1.4, NUMBER],
    [' 1.4 ', METRES, 1.4, NUMBER],
    ['1,200', of('0.0" Ws"'), 1200, NUMBER],
    // a date is no length, a percentage none either, an amount of money no energy
    ['1/2', METRES, '1/2', STRING],
    ['3:1', METRES, '3:1', STRING],
    ['50%', METRES, '50%', STRING],
    ['$5', of('0.0" Ws"'), '$5', STRING],
    ['50%', of('0.0%'), 0.5, NUMBER],
    // feet are no metres without a unit: 5 × 0.3048, by definition
    ["5'", METRES, 1.524, NUMBER],
    ["5'", of('0.0" Ws"'), "5'", STRING],
    // the 117th day of 2026, which begins with day 46023: counted by hand
    ['2026-04-27', of('yyyy-mm-dd'), 46139, NUMBER],
    // by the metre: 100 cm and 1000 mm
    ['80 cm', METRES, 0.8, NUMBER],
    ['1400 mm', METRES, 1.4, NUMBER],
    // as f-numbers and times are written: no words that a rule of numbers would mark as wrong
    ['f/5.6', of(Q.aperture.shown.input, true), 5.6, NUMBER],
    ['1.2 s', of(Q.duration.shown.input, true), 1.2, NUMBER],
    // where texts may stand too, nobody knows whether a number was wanted
    ['80 cm', of(Q.distance.shown.input), '80 cm', STRING],
    ['80 Ws', METRES, '80 Ws', STRING],
    // into a cell without a format: as if it had been typed
    ['11.3', of(undefined), 11.3, NUMBER],
    ['f/16', of(undefined), 'f/16', STRING],
    ['3:1', of(undefined), '3:1', STRING],
    ["5'", of('General'), "5'", STRING],
    // half past eight: 8.5/24 of a day
    ['8:30', of(undefined), 8.5 / 24, NUMBER, 'h:mm'],
    ['50%', of('General'), 0.5, NUMBER, '0%'],
    ['true', of(undefined), 1, BOOLEAN],
    ['12345678901234567890', of(undefined), '12345678901234567890', FORCE_STRING],
    ['  ', METRES, null, null],
  ])('%j into %j', (words, target, v, t, format) =>
    expect(pastedValue(words, target)).toEqual({ v, t, ...(format === undefined ? {} : { format }) }),
  );
});

describe('what is typed', () => {
  test.each<[words: string, target: Target, v?: unknown, t?: unknown]>([
    ['3:1', METRES, '3:1', STRING],
    ['1/4', METRES, '1/4', STRING],
    ['8-11', METRES, '8-11', STRING],
    ['$5', METRES, '$5', STRING],
    ['1,200', METRES, 1200, NUMBER],
    ['80 cm', METRES, 0.8, NUMBER],
    ['1:2', of(undefined), '1:2', STRING],
    ['10:1', of('General'), '10:1', STRING],
    ["5'", of(undefined), "5'", STRING],
    // the grid's to read: what may be a date or a time where nothing says otherwise, texts, and dates among dates
    ['1/4', of(undefined)],
    ['8:30', of(undefined)],
    ['11', of(undefined)],
    ['3:1', of('@')],
    ['2026-04-27', of('yyyy-mm-dd')],
  ])('%j into %j', (words, target, v, t) =>
    expect(typedValue(words, target)).toEqual(t === undefined ? undefined : { v, t }),
  );
});

describe('a text that means an entry of a list', () => {
  const listed = (entries: readonly string[], format?: string): Target => ({ ...of(format), entries });
  const CURVES = ['B', 'C', 'D'];
  test.each<[words: string, target: Target, v: unknown, t: unknown]>([
    ['c', listed(CURVES), 'C', STRING],
    [' C ', listed(CURVES), 'C', STRING],
    ['\u00a0c', listed(CURVES, '@'), 'C', STRING],
    ['AS SRGB', listed(['refuse', 'as sRGB']), 'as sRGB', STRING],
    // one of them as it was typed, apart from the blanks
    ['c ', listed(['C', 'c']), 'c', STRING],
    // a date, if the list did not say otherwise
    ['1/3', listed(['0.1', '1/3']), '1/3', STRING],
    [' 0.1', listed(['0.1', '1/3']), 0.1, NUMBER],
    [' 0.1', listed(['0.1', '1/3'], '@'), '0.1', STRING],
  ])('%j among %j', (words, target, v, t) => {
    expect(typedValue(words, target)).toEqual({ v, t });
    expect(pastedValue(words, target)).toEqual({ v, t });
  });

  // as a list of another program may have them: =SUM would leave a text out, and =B5=TRUE would be FALSE
  test.each<[words: string, entries: readonly string[], v: unknown, t: unknown, format?: string]>([
    ['True', ['TRUE', 'FALSE'], 1, BOOLEAN],
    ['1.10', ['1', '1.10'], 1.1, NUMBER],
    ['10%', ['10%', '20%'], 0.1, NUMBER, '0%'],
  ])('%j among %j is what it is elsewhere', (words, entries, v, t, format) => {
    expect(typedValue(words, listed(entries))).toBeUndefined();
    expect(pastedValue(words, listed(entries))).toEqual({ v, t, ...(format ? { format } : {}) });
  });

  test.each<[words: string, entries: readonly string[]]>([
    ['x', CURVES],
    ['cc', CURVES],
    // either may be meant
    ['KEY', ['Key', 'key']],
  ])('%j means none among %j', (words, entries) => {
    expect(typedValue(words, listed(entries))).toBeUndefined();
    expect(pastedValue(words, listed(entries))).toEqual({ v: words, t: STRING });
  });
});
