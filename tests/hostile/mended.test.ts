import { describe, expect, test } from 'vitest';
import { rowOf } from '../../src/catalogue';
import type { AnyRow } from '../../src/catalogue/types';
import { call } from '../../src/cells/call';
import { kelvinShift } from '../../src/exposure/colour/mired';
import { faults } from '../../src/sheets/checkTemplate';
import type { Template } from '../../src/sheets/template';

/** Calls that once escaped, and what they give now: the sentences name an argument of the function that was called. */
const MAX = Number.MAX_VALUE;
/** Numbers so small and so large are believed with their unit alone, and with it stand in full. */
const tiny = (zeros: number): string => `0.${'0'.repeat(zeros)}1`;
const huge = (zeros: number): string => `1${'0'.repeat(zeros)}`;
const BEYOND = 'The answer is too large or too small for a cell: check the numbers that go in.';
const MENDED: readonly (readonly [why: string, id: string, cells: readonly unknown[], message: string])[] = [
  ['the largest numbers are not rounded up to Infinity', 'FNUMBER', [-MAX], `text must be above 0, not ${-MAX}.`],
  ['nor as a focal length', 'BELLOWSLOSS', [MAX, 300], `draw must be at least the focal length, ${MAX} mm, not 300 mm: it is measured from the lens to the sensor.`],
  ['a draw without measure is no magnification', 'BELLOWSLOSS', [`${tiny(319)} mm`, 300], BEYOND],
  ['nor is it among other losses', 'METERTARGET', [8, 0, `${tiny(319)} mm`, 300], BEYOND],
  ['a duration of no length is no argument', 'FREEZETIME', [1e300, 1e-300], BEYOND],
  ['nor is one without end', 'FREEZETIME', [1e-300, 1e300], BEYOND],
  ['a depth that is lost in the image is no spread', 'BESTAPERTURE', [1, 1e-200], BEYOND],
  ['nor is energy, at either end', 'POWERFORREADING', [2300, `f/${tiny(299)}`, 11, undefined, undefined, 1000], BEYOND],
  ['nor is it where there is none', 'POWERFORREADING', [100, `f/${huge(300)}`, `f/${tiny(9)}`, undefined, 10], BEYOND],
  ['nor by distance', 'POWERFORDISTANCE', [400, 1e-300, 2, undefined, undefined, undefined, 1000], BEYOND],
  ['nor is a reading at the light', 'DISTANCEFORREADING', [0.1684, `f/${huge(286)}`, 8, 2.3e-308], BEYOND],
  ['nor how often a limit is passed', 'FREEZEPOWER', [[[400]], [[0.001]], 1e-320], BEYOND],
]; // prettier-ignore

test('a refusal of a template stays on one line, whatever the template says', () => {
  const reason = (quantity: string): string | undefined =>
    faults({
      blocks: [{ kind: 'form', at: 'A4', fields: [{ id: 'a', quantity }] }],
    } as unknown as Template)[0]?.reason;
  expect(reason(`share\n${'x'.repeat(99)}`)).toMatch(/^share x{34} is none of aperture, [^\n]+$/);
  expect(reason('\n')).toMatch(/^an empty text is none of aperture, /);
});

describe('calls that escaped once', () => {
  for (const [why, id, cells, message] of MENDED)
    test(`${why}: ${id}`, () => {
      expect(call(rowOf(id) as AnyRow, cells)).toEqual({ error: '#NUM!', message });
    });
  // no cell with so few kelvin is read any more
  test('mired without end are not told', () =>
    expect(kelvinShift(1e-320, 10)).toEqual({ fail: 'domain', message: BEYOND }));
});
