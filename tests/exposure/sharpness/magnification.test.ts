import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { rowOf } from '../../../src/catalogue';
import type { AnyRow } from '../../../src/catalogue/types';
import { call } from '../../../src/cells/call';
import { drawFor, fieldMagnification, magnification } from '../../../src/exposure/sharpness/magnification';
import { expectNear, itKeepsItsRanges, refusal, value } from '../support';

const mm = fc.double({ min: 10, max: 1000, noNaN: true });
const scale = fc.double({ min: -3, max: 2, noNaN: true }).map((x) => 10 ** x);

describe('magnification', () => {
  it('is life size at twice the focal length on either side, and half at one and a half, worked by hand', () => {
    expect(magnification(100, 200)).toBe(1);
    expect(magnification(100, undefined, 200)).toBe(1);
    expectNear(value(magnification(100, 150)), 0.5);
    expectNear(value(magnification(100, undefined, 150)), 2);
  });

  it('comes back from the draw and from the distance for it', () => {
    fc.assert(
      fc.property(mm, scale, (f, m) => {
        const [draw, distance] = value(drawFor(f, m)) as [number, number];
        expectNear(value(magnification(f, draw)), m, 1e-12);
        expectNear(value(magnification(f, undefined, distance)), m, 1e-11);
      }),
      trials(231),
    );
  });

  it('keeps the thin-lens equation 1/f = 1/u + 1/v', () => {
    fc.assert(
      fc.property(mm, scale, (f, m) => {
        const [draw, distance] = value(drawFor(f, m)) as [number, number];
        expectNear(1 / draw + 1 / distance, 1 / f);
      }),
      trials(232),
    );
  });

  it('grows with the draw, shrinks with the distance, and is the same for a lens k times as large', () => {
    fc.assert(
      fc.property(mm, scale, scale, (f, m, k) => {
        const [draw, distance] = value(drawFor(f, m)) as [number, number];
        expect(value(magnification(f, draw * 1.01))).toBeGreaterThan(m);
        expect(value(magnification(f, undefined, distance * 1.01))).toBeLessThan(m);
        expectNear(value(magnification(f * k, draw * k)), m, 1e-11);
      }),
      trials(233),
    );
  });

  it('is none at a draw of the focal length, and where rounding error puts the draw below it', () => {
    expect(magnification(150, 150)).toBe(0);
    expect(magnification(150, 150 * (1 - 1e-12))).toBe(0);
  });

  it('is refused for a draw below the focal length, and for a distance that is no more than it', () => {
    expect(refusal(magnification(150, 149))).toMatchObject({
      fail: 'domain',
      message: expect.stringMatching(/draw.*150 mm.*149 mm/),
    });
    for (const distance of [150, 149, 150 * (1 + 1e-12)]) {
      const { fail, message } = refusal(magnification(150, undefined, distance));
      expect(fail).toBe('domain');
      expect(message).toMatch(/distance.*150 mm/);
    }
  });

  it('is refused with neither draw nor distance, and with both', () => {
    expect(refusal(magnification(150))).toMatchObject({ fail: 'unreadable' });
    expect(refusal(magnification(150)).message).toContain('draw is missing');
    expect(refusal(magnification(150, 300, 300))).toMatchObject({
      fail: 'unreadable',
      message: expect.stringContaining('not both'),
    });
  });

  describe('from the draw', () =>
    itKeepsItsRanges('MAGNIFICATION', { focal: [100, 'above 0'], draw: [200, 'above 0'] }));
  describe('from the distance', () =>
    itKeepsItsRanges('MAGNIFICATION', {
      focal: [100, 'above 0'],
      draw: [undefined],
      distance: [300, 'above 0'],
    }));
});

describe('draw and distance for a magnification', () => {
  it('change places when it is turned over', () => {
    const [draw, distance] = value(drawFor(210, 1 / 3)) as [number, number];
    const [other, from] = value(drawFor(210, 3)) as [number, number];
    expectNear(other, distance);
    expectNear(from, draw);
  });

  it('are refused in a cell that could not hold them, and in no other', () => {
    expect(call(rowOf('DRAWFOR') as AnyRow, [100, 1e-310])).toMatchObject([[100, { error: '#NUM!' }]]);
  });

  itKeepsItsRanges('DRAWFOR', { focal: [100, 'above 0'], magnification: [0.5, 'above 0'] });
});

describe('magnification for a field', () => {
  it('is sensor over field: a field of 12 mm fills 24 mm at 2:1, worked by hand', () => {
    expect(fieldMagnification(12, 24)).toBe(2);
  });

  itKeepsItsRanges('FIELDMAGNIFICATION', { field: [100, 'above 0'], sensor: [36, 'above 0'] });
});
