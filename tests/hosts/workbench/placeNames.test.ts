import { describe, expect, test } from 'vitest';
import { array, assert, constant, double, integer, property, record } from 'fast-check';
import { type Box, nearestIn, placeNames } from '../../../src/hosts/workbench/charts/drawing/placeNames';
import { trials } from '../../full';

const WITHIN: Box = { x: 40, y: 10, width: 340, height: 180 };
const GAP = 6;
const size = { width: 90, height: 14 };

const apart = (a: Box, b: Box): boolean =>
  a.x >= b.x + b.width || b.x >= a.x + a.width || a.y >= b.y + b.height || b.y >= a.y + a.height;

describe('names of points', () => {
  test('stand to the right of their points, and to the left where the chart ends', () => {
    expect(placeNames([{ x: 100, y: 100, ...size }], WITHIN, GAP)).toEqual([{ x: 106, y: 93, ...size }]);
    expect(placeNames([{ x: 370, y: 100, ...size }], WITHIN, GAP)).toEqual([{ x: 274, y: 93, ...size }]);
  });
  test('make room for a name that was there before, and for a point', () => {
    const [first, second] = placeNames([{ x: 100, y: 100, ...size }, { x: 104, y: 100, ...size }], WITHIN, GAP); // prettier-ignore
    // each lies where the other would have its name at the side: above the first, then below the second
    expect([first, second]).toEqual([
      { x: 55, y: 80, ...size },
      { x: 59, y: 106, ...size },
    ]);
  });
  test('are left out where the chart has no room for them', () =>
    expect(placeNames([{ x: 50, y: 50, width: 400, height: 14 }], WITHIN, GAP)).toEqual([undefined]));
  test('are all there for nine models in a corner, the last of them further off', () => {
    const points = [
      [67.00000000000003, 10, 64],
      [40, 10, 40],
      [40, 94.00000000000001, 99],
      [40, 10, 40],
      [81.00000000000004, 24.000000000000004, 49],
      [142.00000000000003, 17, 66],
      [110.00000000000001, 81.00000000000003, 97],
      [40, 37.00000000000004, 40],
      [47.00000000000001, 30.000000000000018, 42],
    ].map(([x = NaN, y = NaN, width = NaN]) => ({ x, y, width, height: 14 }));
    expect(placeNames(points, WITHIN, GAP).filter((place) => place !== undefined)).toHaveLength(9);
  });

  test('never lie over another name or a point, and are missing only where no room is left', () => {
    const at = (low: number, high: number) => double({ min: low, max: high, noNaN: true });
    const point = record({ x: at(40, 380), y: at(10, 190), width: integer({ min: 40, max: 110 }), height: constant(14) }); // prettier-ignore
    assert(
      property(array(point, { minLength: 1, maxLength: 12 }), (points) => {
        const places = placeNames(points, WITHIN, GAP);
        const there = places.filter((place) => place !== undefined);
        const marks = points.map(({ x, y }) => ({ x: x - GAP, y: y - GAP, width: 2 * GAP, height: 2 * GAP }));
        for (const [i, { width, height }] of points.entries()) {
          if (places[i]) continue;
          // the names before it and all the points leave no room, wherever one looks
          const taken = [...marks, ...places.slice(0, i).filter((before) => before !== undefined)];
          for (let x = WITHIN.x; x + width <= 380; x += 3)
            for (let y = WITHIN.y; y + height <= 190; y += 3)
              expect(taken.some((other) => !apart({ x, y, width, height }, other))).toBe(true);
        }
        for (const [i, place] of there.entries()) {
          expect(place.x >= 40 && place.y >= 10 && place.x + place.width <= 380 && place.y + place.height <= 190).toBe(true); // prettier-ignore
          for (const other of there.slice(i + 1)) expect(apart(place, other)).toBe(true);
          for (const { x, y } of points) {
            const near = nearestIn(place, { x, y });
            expect(Math.max(Math.abs(near.x - x), Math.abs(near.y - y))).toBeGreaterThanOrEqual(GAP - 1e-9);
          }
        }
      }),
      trials(24, 500),
    );
  });
});
