import { describe, expect, test } from 'vitest';
import { halfMark, readAperture } from '../../src/cells/aperture';

const refused = (message: string) => ({ fail: 'unreadable', message });

describe('a range, as on a zoom lens, is refused as one', () => {
  test.each([
    'f/3.5-5.6',
    'f/3.5~5.6',
    'f/3.5—5.6',
    'f/3.5 - 5.6',
    'f/3.5-f/5.6',
    'f/3.5-f5.6',
    'f/3.5 — f/ 5.6',
    'f/8-8',
    // less than the figure, and no whole number of stops
    'f/22-5.6',
  ])('%s', (text) =>
    expect(readAperture(text)).toMatchObject({
      read: refused('is a range, as on a zoom lens: write the aperture in use'),
    }),
  );
});

describe('what stands after an f-number, and is no tail of stops, is refused with what to write', () => {
  test.each([
    ['1:2.8', 'is how a lens names its widest aperture: write f/2.8'],
    ['11+0.3', 'needs its f/: write f/11+0.3'],
    ['11 -1/3', 'needs its f/: write f/11 -1/3'],
    ['8 2/3', 'needs its f/: write f/8 2/3'],
    // three tenths above f/11, or three stops above it, which are f/32
    ['f/11+3', 'can be read two ways: write f/11+0.3, or f/32'],
    // two stops below f/16 are f/8
    ['f/16-2', 'can be read two ways: write f/16-0.2, or f/8'],
    // one and three tenths above f/8 are three tenths above f/11
    ['f/8+1.3', 'has more than tenths after it: write f/11 +0.3'],
    ['f/12 half', 'names no half-stop mark'],
  ])('%s', (text, message) => {
    const found = readAperture(text);
    expect(found && 'read' in found ? found.read : found).toEqual(refused(message));
  });
  test('a figure that can be read two ways is refused before', () =>
    expect(readAperture('f/1,200')).toEqual(refused('can be read two ways: write 1200, or 1.2')));
});

test.each([
  // no tail without its space or sign
  'f/5.6.3 stops',
  'f/8x',
  // no fraction that a stop is divided by
  'f/11+1/7',
  'f/11-5/9',
  // neither tenths nor whole stops
  'f/4+3.5',
  // beyond the last mark
  'f/128+2.5',
])('%s is no f-number', (text) => expect(readAperture(text)).toBeUndefined());

test('a half-stop mark is refused where there is none', () => {
  expect(halfMark('aperture', 12)).toEqual(refused('names no half-stop mark'));
  // f/13 of the half stops lies seven and a half stops above f/1
  expect(halfMark('aperture', 13)).toEqual({
    value: 2 ** 3.75,
    reason: { by: 'mark', mark: { scale: 'aperture', figure: 13, tenths: 0 } },
  });
});
