import { describe, expect, test } from 'vitest';
import { drawSet } from '../../src/set/drawSet';
import type { SetUp } from '../../src/set/setUp';
import type { SetPicture } from '../../src/set/shapes';
import { light, place } from './drawnSets';

const CAMERA = {
  at: place(0.6, -0.4, 1),
  aim: place(0.6, 0.4, 1),
  optics: { sensorWidth: 0.054, sensorHeight: 0.04, draw: 0.15, rise: 0, shift: 0 },
};
const set = (more: Partial<SetUp> = {}): SetUp => ({
  lights: [light('Key', place(0.1, 0.2, 1.4))],
  camera: CAMERA,
  subject: undefined,
  surface: undefined,
  ...more,
});
const written = ({ shapes }: SetPicture): string =>
  shapes.flatMap((shape) => (shape.kind === 'words' ? [shape.text] : [])).join(' ');
const saysBoth = (more: Partial<SetUp>, sentence: string): void => {
  const { picture, said } = drawSet(set(more), 1000);
  expect(said).toContain(sentence);
  expect(written(picture)).toContain(sentence);
};

describe('what a tired hand types', () => {
  test('a lens that is aimed at its own place has no left and right', () => {
    const { picture, said } = drawSet(set({ camera: { ...CAMERA, aim: CAMERA.at } }), 1000);
    expect(said).toContain('nobody knows which way it looks');
    expect(said).not.toContain('as seen from it');
    expect(said).not.toContain('of the lens');
    expect(said).toContain('at x 0.10 m and y 0.20 m');
    expect(written(picture)).not.toContain('No camera is placed');
  });
  test('a camera that looks straight down does not look up the page', () => {
    const { picture, said } = drawSet(set({ camera: { ...CAMERA, aim: place(0.6, -0.4, 0) } }), 1000);
    expect(written(picture)).not.toContain('looks up the page');
    expect(written(picture)).not.toContain('looks to the right');
    // 0.1 − 0.6 = −0.5 along x; 0.2 + 0.4 = 0.6 along y, which is neither before nor behind a lens that looks down
    expect(said).toContain('0.50 m left of the lens, 0.60 m up the page from it');
  });
  test('a datum at 75 m was typed in centimetres', () => {
    saysBoth({ datumHeight: 75 }, 'The datum would be 75 m away, and is not drawn.');
    // the views keep the scale that they have without it
    expect(drawSet(set({ datumHeight: 75 }), 1000).picture.scale).toBe(drawSet(set(), 1000).picture.scale);
    saysBoth({ datumHeight: -0.75 }, 'The datum lies 0.75 m below the floor');
  });
  test.each([0.00015, 1e-12, 1e-300])('a draw of %d m has no field of view', (draw) =>
    saysBoth(
      { camera: { ...CAMERA, optics: { ...CAMERA.optics, draw } } },
      'Sensor, draw, rise and shift do not go together',
    ),
  );
  test('a front without a width is none in words either', () => {
    const { said } = drawSet(set({ lights: [light('Key', place(1, 1, 1), { width: 0, height: -1 })] }), 1000);
    expect(said).not.toContain('front 0');
    expect(said).toContain('The front of Key has no width');
  });
  test('more lights than anybody can tell apart: the first are drawn, and it says so', () => {
    const lights = Array.from({ length: 3000 }, (_, i) => light(`l${i}`, place(1, 1, 1)));
    const { picture, said } = drawSet(set({ lights }), 1000);
    expect(picture.plan.labels.filter(({ light: own }) => own !== undefined)).toHaveLength(40);
    expect(said).toContain('3000 lights are too many for one picture: only the first 40 are drawn.');
    expect(said).not.toContain('l40 has no place');
  });
  test('a subject behind the lens', () =>
    saysBoth({ subject: place(0.6, -2, 1) }, 'The subject lies behind the lens'));
});

test('who does not see the picture hears of all that is drawn', () => {
  const { said } = drawSet(
    set({
      subject: place(0.6, 0.4, 0.8),
      surface: { at: place(0.6, 0.3, 0.75), width: 0.5, height: 0.4, tilt: place(10, 0, 0) },
    }),
    1000,
  );
  expect(said).toContain('The camera’s lens is at x 0.60 m, y -0.40 m, 1.00 m high, aimed level');
  expect(said).toContain('The subject is 0.80 m before the lens, 0.80 m high.');
  expect(said).toContain('A glossy surface of 0.50 m × 0.40 m, tilted by 10° about x, is 0.70 m before the lens, 0.75 m high.');
  // the front looks at x 0, y 0 and height 0.1
  expect(said).toContain('at a place 0.60 m left of the lens, 0.40 m before it, 0.10 m high');
}); // prettier-ignore
