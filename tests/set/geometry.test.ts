import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { magnification } from '../../src/exposure/sharpness/magnification';
import { clipped } from '../../src/set/clip';
import { cameraAxes, fieldCorners, fieldSlopes } from '../../src/set/field';
import { type Figure, type Figures, figuresOf, type Place2 } from '../../src/set/figures';
import { frontCorners, type PlacedLight } from '../../src/set/front';
import { mirrored, mirrorOf, outline, seenIn } from '../../src/set/mirror';
import type { Camera, Surface } from '../../src/set/setUp';
import { axesAlong, length, minus, type Place3 } from '../../src/set/space';
import { trials } from '../full';
import { light, place, setsOf, turnedAbout, turnedSet } from './drawnSets';

const RIGHT = place(1, 0, 0);
/** A 120 mm lens drawn out to 150 mm, 0.6 m from the subject. */
const CAMERA: Camera = {
  at: place(0, -0.6, 0.5),
  aim: place(0, 0, 0.5),
  optics: { sensorWidth: 0.054, sensorHeight: 0.04, draw: 0.15, rise: 0, shift: 0 },
};
const LEVEL: Surface = { at: place(0, 0, 0), width: 1, height: 1, tilt: place(0, 0, 0) };

const near = (found: Place3 | undefined, wanted: Place3, digits = 4): void => {
  expect(found).toBeDefined();
  for (const axis of ['x', 'y', 'z'] as const)
    expect(found?.[axis], `${axis} of ${JSON.stringify(found)}`).toBeCloseTo(wanted[axis], digits);
};
const placed = (at: Place3, more = {}): PlacedLight => ({ ...light('Key', at, more), at });
const of = (figures: readonly Figure[], kind: Figure['kind']): readonly Place2[] =>
  figures.find((one) => one.kind === kind)?.places ?? [];

describe('the field of view', () => {
  // 1/u = 1/120 − 1/150 = 1/600 mm, so m = 150/600 = 0.25, and a sensor of 54 × 40 mm sees 216 × 160 mm
  test('is as wide at the subject as the sensor over the magnification', () => {
    const { field } = figuresOf({
      lights: [],
      camera: CAMERA,
      subject: place(0, 0, 0.5),
      surface: undefined,
    });
    expect(field?.distance).toBeCloseTo(0.6, 12);
    expect(field?.width).toBeCloseTo(0.216, 12);
    expect(field?.height).toBeCloseTo(0.16, 12);
    expect(0.054 / (magnification(120, 150) as number)).toBeCloseTo(0.216, 12);
  });
  test('and is drawn so, in the plan and from the side', () => {
    const { plan, side } = figuresOf({ lights: [], camera: CAMERA, subject: undefined, surface: undefined });
    expect(of(plan, 'fieldWidth').map(({ u, v }) => [u, v].map((n) => Math.round(n * 1e6) / 1e6))).toEqual([[-0.108, 0.6], [0.108, 0.6]]); // prettier-ignore
    expect(of(side, 'fieldWidth').map(({ u, v }) => [u, v].map((n) => Math.round(n * 1e6) / 1e6))).toEqual([[0.6, 0.42], [0.6, 0.58]]); // prettier-ignore
  });
  // a lens 10 mm up sees 10/150 of the distance higher: 0.04 m at 0.6 m; one 6 mm to the right 0.024 m further right
  test('moves with rise and shift, and the sensor stays behind', () => {
    const optics = { sensorWidth: 0.054, sensorHeight: 0.04, draw: 0.15, rise: 0.01, shift: 0.006 };
    const axes = axesAlong(place(0, 1, 0), RIGHT);
    const [bottomLeft, , topRight] = fieldCorners(CAMERA.at, axes, fieldSlopes(optics), 0.6);
    near(bottomLeft, place(-0.108 + 0.024, 0, 0.42 + 0.04), 12);
    near(topRight, place(0.108 + 0.024, 0, 0.58 + 0.04), 12);
    const { side } = figuresOf({ lights: [], camera: { ...CAMERA, optics }, subject: undefined, surface: undefined }); // prettier-ignore
    const [low, high] = of(side, 'sensor');
    expect(low).toEqual({ u: expect.closeTo(-0.15, 12) as number, v: expect.closeTo(0.47, 12) as number });
    expect(high?.v).toBeCloseTo(0.51, 12);
  });
  test('has the right on the right, whichever way the camera looks', () => {
    near(cameraAxes({ ...CAMERA, at: place(0, 0, 0), aim: place(0, 1, 0) })?.right, place(1, 0, 0), 12);
    near(cameraAxes({ ...CAMERA, at: place(0, 0, 0), aim: place(1, 0, 0) })?.right, place(0, -1, 0), 12);
    near(cameraAxes({ ...CAMERA, at: place(0, 0, 0), aim: place(0, -1, 0) })?.right, place(-1, 0, 0), 12);
    // straight down: the datum's x to the right, its y at the top
    const down = cameraAxes({ ...CAMERA, at: place(0, 0, 1), aim: place(0, 0, 0) });
    near(down?.right, place(1, 0, 0), 12);
    near(down?.up, place(0, 1, 0), 12);
    expect(cameraAxes({ ...CAMERA, aim: CAMERA.at })).toBeUndefined();
  });
});

describe('a front', () => {
  // aimed along −y it lies in the plane of x and height, and a half of each length to both sides
  test('stands at right angles to its aim, as large as it is', () =>
    expect(
      frontCorners(placed(place(0, 2, 1), { aim: place(0, 0, 1), width: 0.8, height: 0.2 }), RIGHT),
    ).toEqual([place(0.4, 2, 0.9), place(-0.4, 2, 0.9), place(-0.4, 2, 1.1), place(0.4, 2, 1.1)]));
  test('lies level where it is aimed straight down', () => {
    const [first] = frontCorners(
      placed(place(1, 2, 3), { aim: place(1, 2, 0), width: 0.8, height: 0.2 }),
      RIGHT,
    );
    near(first, place(0.6, 1.9, 3), 12);
  });
  test.each([{ width: undefined }, { width: 0 }, { aim: undefined }, { aim: place(1, 2, 3) }])(
    'is a place without %j',
    (less) => expect(frontCorners(placed(place(1, 2, 3), less), RIGHT)).toEqual([place(1, 2, 3)]),
  );
});

describe('a surface', () => {
  test('is polished upwards, and turned as it is told', () => {
    near(mirrorOf(LEVEL).normal, place(0, 0, 1), 12);
    near(mirrorOf({ ...LEVEL, tilt: place(90, 0, 0) }).normal, place(0, -1, 0), 12);
    near(mirrorOf({ ...LEVEL, tilt: place(0, 90, 0) }).normal, place(1, 0, 0), 12);
    near(mirrorOf({ ...LEVEL, tilt: place(90, 0, 90) }).normal, place(1, 0, 0), 12);
    near(mirrorOf({ ...LEVEL, tilt: place(0, 0, 90) }).across, place(0, 1, 0), 12);
  });
  test('has its corners half its width and height away', () =>
    expect(outline(mirrorOf({ ...LEVEL, width: 2, height: 1 }))).toEqual([
      place(-1, -0.5, 0),
      place(1, -0.5, 0),
      place(1, 0.5, 0),
      place(-1, 0.5, 0),
    ]));
  test('shows a light as far behind it as it stands before', () => {
    near(mirrored(mirrorOf(LEVEL), place(0.5, 1, 2)), place(0.5, 1, -2), 12);
    // at 45° about x its normal is (0, −1, 1)/√2: what stands upright above lies before
    near(mirrored(mirrorOf({ ...LEVEL, tilt: place(45, 0, 0) }), place(0, 0, 1)), place(0, 1, 0), 12);
  });
  test('the mirror of a mirror is the light', () =>
    fc.assert(
      fc.property(setsOf(3), ({ surface, lights }) => {
        if (!surface) return;
        for (const { at } of lights) {
          if (!at) continue;
          const mirror = mirrorOf(surface);
          near(mirrored(mirror, mirrored(mirror, at)), at, 9);
          // and its image is as far from any place of the surface as itself
          for (const corner of outline(mirror))
            expect(length(minus(mirrored(mirror, at), corner))).toBeCloseTo(length(minus(at, corner)), 9);
        }
      }),
      trials(261, 200),
    ));
});

describe('a highlight', () => {
  const looking = (at: Place3, aim: Place3) => ({
    at,
    axes: axesAlong(direct(minus(aim, at)), RIGHT),
    slopes: undefined,
  });
  const direct = (a: Place3): Place3 => ({ x: a.x / length(a), y: a.y / length(a), z: a.z / length(a) });
  const lens = looking(place(0, -1, 1), place(0, 0, 0));
  const soft = placed(place(0, 1, 1), { aim: place(0, 0, 0), width: 0.4, height: 0.2 });

  // The front leans back by 45°: its lower edge lies at y 1.0707 and height 0.9293, the upper one the other way round. A line from
  // the lens 1 m up to the image so deep crosses the level at 1/(1 + depth) of its way: y = −1 + 2.0707/1.9293 = 0.0733 and
  // x = 0.2/1.9293 = 0.1037; above −1 + 1.9293/2.0707 = −0.0683 and 0.2/2.0707 = 0.0966.
  test('lies where the lines from the lens to the mirrored front cross the surface', () => {
    const seen = seenIn(mirrorOf(LEVEL), soft, lens, RIGHT);
    const corners = 'highlight' in seen ? seen.highlight : [];
    expect(corners).toHaveLength(4);
    const ofSide = ({ x, y, z }: Place3): Place3 => place(Math.abs(x), y, z);
    near(corners[0] && ofSide(corners[0]), place(0.1037, 0.0733, 0));
    near(corners[2] && ofSide(corners[2]), place(0.0966, -0.0683, 0));
  });
  test('ends at the outline of the surface', () => {
    // from x −0.1 to 0, and the highlight goes on to the right
    const seen = seenIn(
      mirrorOf({ ...LEVEL, at: place(-0.05, 0, 0), width: 0.1, height: 0.02 }),
      soft,
      lens,
      RIGHT,
    );
    const xs = 'highlight' in seen ? seen.highlight.map(({ x }) => x) : [];
    expect(Math.max(...xs)).toBeCloseTo(0, 12);
    expect(Math.min(...xs)).toBeCloseTo(-0.1, 2);
  });
  test('and at the edge of the picture', () => {
    // 0.06 to each side at 1.414 m: what the picture shows of the level around the axis is half as wide as the highlight
    const slopes = { left: -0.06 / Math.SQRT2, right: 0.06 / Math.SQRT2, down: -1, up: 1 };
    const seen = seenIn(mirrorOf(LEVEL), soft, { ...lens, slopes }, RIGHT);
    const xs = 'highlight' in seen ? seen.highlight.map(({ x }) => x) : [];
    expect(Math.max(...xs)).toBeLessThan(0.064);
    expect(Math.max(...xs)).toBeGreaterThan(0.06);
  });
  const none = (surface: Surface, one: PlacedLight, from = lens) =>
    seenIn(mirrorOf(surface), one, from, RIGHT);
  test('is none where the light or the lens is behind, where only the back is seen, and where it misses', () => {
    expect(none(LEVEL, placed(place(0, 1, -1)))).toEqual({ none: 'light behind' });
    expect(none(LEVEL, soft, looking(place(0, -1, -1), place(0, 0, 0)))).toEqual({ none: 'lens behind' });
    expect(none(LEVEL, soft, looking(place(0, -1, 0), place(0, 0, 0)))).toEqual({
      none: 'lens in the plane',
    });
    expect(none(LEVEL, { ...soft, aim: place(0, 2, 1) })).toEqual({ none: 'shows its back' });
    expect(none({ ...LEVEL, at: place(1, 0, 0) }, soft)).toEqual({ none: 'misses' });
  });
  test('turned over, the polish shows nothing from above', () =>
    expect(none({ ...LEVEL, tilt: place(180, 0, 0) }, soft)).toEqual({ none: 'lens behind' }));
  // the angle of each ray against the normal: a law that the sum above does not use
  test('has rays with like angles on both sides', () =>
    fc.assert(
      fc.property(setsOf(4), ({ surface, lights, camera }) => {
        if (!surface || !camera) return;
        const mirror = mirrorOf({ ...surface, width: 50, height: 50 });
        for (const one of lights) {
          if (!one.at) continue;
          const point = placed(one.at, { width: undefined });
          const seen = seenIn(mirror, point, looking(camera.at, camera.aim), RIGHT);
          if (!('highlight' in seen)) continue;
          const [at] = seen.highlight;
          if (!at) continue;
          const cosine = (to: Place3): number => {
            const way = minus(to, at);
            return (
              (way.x * mirror.normal.x + way.y * mirror.normal.y + way.z * mirror.normal.z) / length(way)
            );
          };
          expect(cosine(point.at)).toBeCloseTo(cosine(camera.at), 6);
        }
      }),
      trials(262, 300),
    ));
});

test('a polygon is cut by a half of the room', () => {
  const square = [place(0, 0, 0), place(2, 0, 0), place(2, 2, 0), place(0, 2, 0)];
  expect(clipped(square, { normal: place(1, 0, 0), offset: 1 })).toEqual([
    place(1, 0, 0),
    place(2, 0, 0),
    place(2, 2, 0),
    place(1, 2, 0),
  ]);
  expect(clipped(square, { normal: place(1, 0, 0), offset: 3 })).toEqual([]);
  expect(clipped([place(1, 1, 0)], { normal: place(1, 0, 0), offset: 0 })).toEqual([place(1, 1, 0)]);
});

describe('what turning a set does to its drawing', () => {
  const likes = (a: readonly Figure[], b: readonly Figure[]): void => {
    expect(b.map(({ kind, light: of1, places }) => [kind, of1, places.length])).toEqual(a.map(({ kind, light: of1, places }) => [kind, of1, places.length])); // prettier-ignore
    const flat = (all: readonly Figure[]): number[] => all.flatMap(({ places }) => places.flatMap(({ u, v }) => [u, v])); // prettier-ignore
    const [one, two] = [flat(a), flat(b)];
    const worst = one.reduce((most, value, i) => Math.max(most, Math.abs(value - (two[i] ?? Number.NaN))), 0);
    expect(worst).toBeLessThan(1e-6);
  };
  /** A highlight whose edge touches another one may have a corner more or less after the turn. */
  const steady = (figures: Figures): readonly Figure[] =>
    [...figures.plan, ...figures.side].filter(({ kind }) => kind !== 'highlight' && kind !== 'ray');
  test('all of it, camera included: nothing but the axes of the datum', () =>
    fc.assert(
      fc.property(setsOf(8), fc.integer({ min: -180, max: 180 }), (setUp, degrees) => {
        const [was, is] = [figuresOf(setUp), figuresOf(turnedSet(setUp, degrees, place(0.7, -1.3, 0)))];
        likes(steady(was), steady(is));
        // the set goes one way, and the axes as the drawing has them the other
        const back = turnedAbout(-degrees, place(0, 0, 0))({ x: was.datum.x.u, y: was.datum.x.v, z: 0 });
        expect(is.datum.x.u).toBeCloseTo(back.x, 9);
        expect(is.datum.x.v).toBeCloseTo(back.y, 9);
      }),
      trials(263, 200),
    ));
  test('the lights alone: their drawing turns', () =>
    fc.assert(
      fc.property(setsOf(6), fc.integer({ min: -180, max: 180 }), (setUp, degrees) => {
        const camera: Camera = { ...CAMERA, at: place(0, -3, 1), aim: place(0, 0, 1) };
        const still = { ...setUp, camera, surface: undefined };
        const turn = turnedAbout(degrees, place(0, 0, 0));
        const moved = still.lights.map((one) => ({ ...one, at: one.at && turn(one.at), aim: one.aim && turn(one.aim) })); // prettier-ignore
        const isOfLight = ({ light: own }: Figure): boolean => own !== undefined;
        const was = figuresOf(still).plan.filter(isOfLight);
        const is = figuresOf({ ...still, lights: moved }).plan.filter(isOfLight);
        // the datum lies 3 m before the camera, where the plan has its 0
        const turned2 = was.map((figure) => ({
          ...figure,
          places: figure.places.map(({ u, v }) => {
            const { x, y } = turn({ x: u, y: v - 3, z: 0 });
            return { u: x, v: y + 3 };
          }),
        }));
        const isSteep = still.lights.some(({ at, aim }) => at && aim && Math.hypot(at.x - aim.x, at.y - aim.y) < 0.01); // prettier-ignore
        if (!isSteep) likes(turned2, is);
      }),
      trials(264, 200),
    ));
});
