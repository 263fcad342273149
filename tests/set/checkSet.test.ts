import { describe, expect, test } from 'vitest';
import { checkSet } from '../../src/set/checkSet';
import { drawSet } from '../../src/set/drawSet';
import { doubtText } from '../../src/set/said';
import type { SetUp } from '../../src/set/setUp';
import { light, place } from './drawnSets';

const CAMERA = {
  at: place(0, -1, 1),
  aim: place(0, 0, 1),
  optics: { sensorWidth: 0.054, sensorHeight: 0.04, draw: 0.15, rise: 0, shift: 0 },
};
const set = (...lights: SetUp['lights'][number][]): SetUp => ({ lights, camera: CAMERA, subject: undefined, surface: undefined }); // prettier-ignore
const said = (one: SetUp): string[] => checkSet(one).doubts.map(doubtText);
const key = (more = {}) => light('Key', place(1, 0, 1), { aim: place(0, 0, 1), ...more });

describe('what cannot be drawn is said', () => {
  test('a set without fault is not spoken of', () => expect(said(set(key()))).toEqual([]));
  test.each<[SetUp, RegExp]>([
    [set(key({ at: undefined })), /^Key has no place, so that it is not drawn/],
    [set(key(), key()), /^2 lights are called Key: give each its own name/],
    [set(key({ at: place(1, 0, -0.2) })), /^Key lies 0\.20 m below the floor: look at the sign/],
    [set(key({ aim: place(1, 0, 1) })), /^Key is aimed at its own place/],
    [set(key({ aim: undefined })), /^Key has no aim/],
    [set(key({ width: undefined })), /^The front of Key has no width/],
    [set(key({ width: 0 })), /^The front of Key has no width/],
    [set(key({ width: -1 })), /^The front of Key has no width/],
    [
      set(key({ at: place(100, 0, 150) })),
      /^Key would be 180 m away, and is not drawn. Lengths are in metres/,
    ],
    [set(key({ width: 60 })), /^The front of Key would be 60 m wide/],
    [
      set(key({ at: place(10.5, 0, 1) })),
      /^Key would be 11 m away, and is not drawn. Lengths are in metres, up to 10/,
    ],
    [set(key({ at: place(0, -15, 1) })), /^Key would be 15 m away/],
    [set(key({ at: place(1, 0, 5.5) })), /^Key would be 6 m away/],
    [
      set(key({ width: 5.5, height: 1 })),
      /^The front of Key would be 6 m wide, and is not drawn. Lengths are in metres, up to 5/,
    ],
    [
      { ...set(key()), surface: { at: place(0, 0, 0), width: 1, height: 15, tilt: place(0, 0, 0) } },
      /^The surface would be 15 m wide or high, and is not drawn/,
    ],
    [
      set(key({ own: 'Key' }), key({ name: 'Key, Alder 600', own: 'key' })),
      /^2 lights are called Key: give each its own name/,
    ],
    [{ ...set(key()), datum: { name: '' } }, /^The datum has no name: nobody will find again/],
    [{ ...set(key()), meter: { iso: undefined } }, /^The readings have no ISO: type that of the meter/],
    [set(key({ aim: place(100, 0, 0) })), /^The aim of Key would be 100 m away/],
    [{ ...set(key()), camera: undefined }, /^The camera has no place/],
    [{ ...set(key()), camera: { ...CAMERA, aim: CAMERA.at } }, /^The camera is aimed at its own place/],
    [{ ...set(key()), camera: { ...CAMERA, optics: undefined } }, /^Without sensor and draw/],
    [{ ...set(key()), camera: { ...CAMERA, aim: place(0, -1, 0) } }, /^The camera looks straight up or down/],
    [
      { ...set(key()), surface: { at: place(0, 0, 0), width: 0, height: 1, tilt: place(0, 0, 0) } },
      /^The surface has no width/,
    ],
    [
      { ...set(key()), surface: { at: place(0, 0, 1), width: 1, height: 1, tilt: place(0, 0, 0) } },
      /^The lens lies in the plane/,
    ],
    [
      { ...set(key()), surface: { at: place(0, 0, 2), width: 1, height: 1, tilt: place(0, 0, 0) } },
      /^The lens is behind/,
    ],
  ])('%#', (one, sentence) => {
    expect(said(one)).toHaveLength(1);
    expect(said(one)[0]).toMatch(sentence);
    // and it is drawn all the same, as far as it can be
    const { picture, said: words } = drawSet(one, 350);
    expect(words).toMatch(new RegExp(sentence.source.slice(1)));
    expect(picture.shapes.flatMap((shape) => ('spots' in shape ? shape.spots.flat() : [])).every(Number.isFinite)).toBe(true); // prettier-ignore
  });
  test('what is as large as it may be is drawn, and a datum or an ISO that nobody needs is not asked for', () => {
    expect(said(set(key({ at: place(-10, 10, 5), width: 5, height: 5 })))).toEqual([]);
    expect(said({ ...set(), datum: { name: '' }, meter: { iso: undefined } })).toEqual([]);
    expect(said({ ...set(key({ reading: '' })), meter: { iso: undefined } })).toEqual([]);
  });
  test('the ISO of the readings stands below the picture, and is said', () => {
    const { picture, said: words } = drawSet({ ...set(key()), meter: { iso: 200 } }, 1000);
    const written = picture.shapes.flatMap((shape) => (shape.kind === 'words' ? [shape.text] : []));
    expect(written).toContain('Readings are at ISO 200.');
    expect(words).toContain('Readings are at ISO 200.');
    expect(drawSet({ ...set(key({ reading: '' })), meter: { iso: 200 } }, 1000).said).not.toContain('ISO');
  });
  test('two lights of one part with other heads are two', () =>
    expect(said(set(key({ name: 'key, Alder 600' }), key({ name: 'key, Hazel 400' })))).toEqual([]));
  test('of a light that is not drawn nothing is at the datum', () =>
    expect(drawSet(set(key({ at: undefined })), 350).picture.plan.labels.map(({ lines }) => lines)).toEqual([['Camera']])); // prettier-ignore
  test('40 lights', () =>
    expect(said(set(...Array.from({ length: 40 }, (_, i) => light(`Head ${i}`, place(1, 0, 1)))))).toEqual([
      '40 lights are many for one picture: look at each number twice.',
    ]));
});

// Key stands 1 m from its aim: 3 cm is as much as 3 %. At 2 m it is 6 cm, at 0.5 m still 3 cm.
describe('a typed distance', () => {
  test.each([
    [1, 1.03, false],
    [1, 1.031, true],
    [1, 0.97, false],
    [1, 0.969, true],
    [2, 2.06, false],
    [2, 2.061, true],
    [0.5, 0.53, false],
    [0.5, 0.531, true],
  ])('at %d m, %d m typed', (drawn, distance, isTold) =>
    expect(said(set(key({ at: place(drawn, 0, 1), distance })))).toEqual(
      isTold ? [`Key: ${distance.toFixed(2)} m was typed, and the places are ${drawn.toFixed(2)} m apart. One of them is wrong.`] : [], // prettier-ignore
    ),
  );
  const beyond = (more = {}) => key({ at: place(1.5, 0, 1), aim: place(0.5, 0, 1), ...more });
  test('counts to the subject where there is one', () =>
    expect(said({ ...set(beyond({ distance: 1.5 })), subject: place(0, 0, 1) })).toEqual([]));
  test('counts to its aim where its light does not reach the subject', () =>
    expect(said({ ...set(beyond({ distance: 1, isAway: true })), subject: place(0, 0, 1) })).toEqual([]));
});

// At 1 m the picture reaches 27 mm / 150 mm = 0.18 m to each side, and 20 mm / 150 mm = 0.133 m up and down.
test.each([
  [0.17, 1.12, false],
  [-0.19, 1, true],
  [0, 0.86, true],
])('a subject at x %d and %d high', (x, z, isOutside) =>
  expect(said({ ...set(key()), subject: place(x, 0, z) })).toEqual(
    isOutside ? [expect.stringMatching(/^The middle of the subject lies outside the picture/)] : [],
  ),
);
