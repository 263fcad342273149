import * as fc from 'fast-check';
import type { Light, SetUp, Surface } from '../../src/set/setUp';
import type { Place3 } from '../../src/set/space';

export const place = (x: number, y: number, z: number): Place3 => ({ x, y, z });

export const light = (name: string, at: Place3 | undefined, more: Partial<Light> = {}): Light => ({
  name,
  at,
  aim: place(0, 0, 0.1),
  width: 0.6,
  height: 0.4,
  setting: '1/2',
  reading: 'f/11 +0.3',
  distance: undefined,
  ...more,
});

const metres = (least: number, most: number) =>
  fc.integer({ min: least * 1000, max: most * 1000 }).map((mm) => mm / 1000);
const placeIn = fc.record({ x: metres(-3, 3), y: metres(-3, 3), z: metres(0, 3) });
const words = fc.stringMatching(/^[A-Za-z][a-z]{1,12}( [A-Z0-9][a-z0-9]{0,6}){0,2}$/);
const lightIn = fc.record({
  name: words,
  at: placeIn,
  aim: placeIn,
  width: metres(0.1, 1.5),
  height: metres(0.1, 1.5),
  setting: fc.constantFrom('', '1/2', '9.5', '600 Ws'),
  reading: fc.constantFrom('', 'f/11 +0.3', 'f/22'),
  distance: fc.constant(undefined),
});
const surfaceIn: fc.Arbitrary<Surface> = fc.record({
  at: fc.record({ x: metres(-1, 1), y: metres(-1, 1), z: metres(0, 1) }),
  width: metres(0.1, 2),
  height: metres(0.1, 2),
  tilt: fc.record({ x: metres(-90, 90), y: metres(-90, 90), z: metres(-90, 90) }),
});

/** Sets of up to so many lights. The camera stands a little away and looks about level. */
export const setsOf = (most: number): fc.Arbitrary<SetUp> =>
  fc.record({
    lights: fc.array(lightIn, { maxLength: most }),
    camera: fc.record({
      at: fc.record({ x: metres(-1, 1), y: metres(-4, -1), z: metres(0, 2) }),
      aim: fc.record({ x: metres(-0.5, 0.5), y: metres(0, 1), z: metres(0, 2) }),
      optics: fc.constant({ sensorWidth: 0.054, sensorHeight: 0.04, draw: 0.15, rise: 0.01, shift: -0.005 }),
    }),
    subject: fc.option(placeIn, { nil: undefined }),
    surface: fc.option(surfaceIn, { nil: undefined }),
  });

/** A place turned about the height through another place. */
export function turnedAbout(degrees: number, centre: Place3): (from: Place3) => Place3 {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return ({ x, y, z }) => {
    const [u, v] = [x - centre.x, y - centre.y];
    return { x: centre.x + u * cos - v * sin, y: centre.y + u * sin + v * cos, z };
  };
}

/** The whole set turned and carried elsewhere on the floor. */
export function turnedSet(setUp: SetUp, degrees: number, by: Place3): SetUp {
  const turn = turnedAbout(degrees, place(0, 0, 0));
  const move = (from: Place3): Place3 => {
    const { x, y, z } = turn(from);
    return { x: x + by.x, y: y + by.y, z };
  };
  const { camera, subject, surface } = setUp;
  return {
    lights: setUp.lights.map((one) => ({
      ...one,
      at: one.at && move(one.at),
      aim: one.aim && move(one.aim),
    })),
    camera: camera && { ...camera, at: move(camera.at), aim: move(camera.aim) },
    subject: subject && move(subject),
    surface: surface && {
      ...surface,
      at: move(surface.at),
      tilt: { ...surface.tilt, z: surface.tilt.z + degrees },
    },
  };
}
