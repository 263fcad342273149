import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawSet } from '../../src/set/drawSet';
import { crosses, isInside, overlaps, placeLabels } from '../../src/set/labels';
import { roundLength } from '../../src/set/picture';
import type { Box, DrawnView, SetPicture, Shape } from '../../src/set/shapes';
import { DOES_NOT_FOLLOW, setImage } from '../../src/set/setImage';
import { escaped, ON_PAPER, svgText } from '../../src/set/svg';
import { textWidth, wrapped } from '../../src/set/textWidth';
import { trials } from '../full';
import { light, place, setsOf, turnedSet } from './drawnSets';

const CAMERA = {
  at: place(0.1, -0.25, 1.15),
  aim: place(0.1, 0.5, 0.95),
  optics: { sensorWidth: 0.054, sensorHeight: 0.04, draw: 0.15, rise: 0, shift: 0 },
};
const wordsOf = (picture: SetPicture): string[] =>
  picture.shapes.flatMap((shape) => (shape.kind === 'words' ? [shape.text] : []));

/** Each light once, whole, inside the frame and over no other; a line leads to what stands apart. */
function holds(view: DrawnView, lights: number): void {
  const named = view.labels.flatMap(({ light: own }) => (own === undefined ? [] : [own]));
  expect([...named].sort((a, b) => a - b)).toEqual(Array.from({ length: lights }, (_, i) => i));
  for (const [i, { box, anchor, isApart, lines }] of view.labels.entries()) {
    expect(isInside(box, view.frame), `${lines.join()} is inside`).toBe(true);
    for (const [n, text] of lines.entries())
      expect(textWidth(text, 12, n === 0)).toBeLessThanOrEqual(box.width);
    for (const other of view.labels.slice(i + 1)) expect(overlaps(box, other.box), `${lines.join()} over ${other.lines.join()}`).toBe(false); // prettier-ignore
    const gap = Math.hypot(
      Math.max(box.x - anchor[0], 0, anchor[0] - box.x - box.width),
      Math.max(box.y - anchor[1], 0, anchor[1] - box.y - box.height),
    );
    expect(isApart).toBe(gap > 10);
  }
}
const leaders = ({ shapes }: SetPicture): number => shapes.filter((one) => one.kind === 'line' && one.style === 'leader').length; // prettier-ignore

describe('labels', () => {
  test.each([330, 350, 700, 1100, 1400])(
    'at %d pixels each light keeps its own, with up to 20 of them',
    (width) =>
      fc.assert(
        fc.property(setsOf(20), (set) => {
          const { picture } = drawSet(set, width);
          for (const view of [picture.plan, picture.side]) holds(view, set.lights.length);
          const apart = [...picture.plan.labels, ...picture.side.labels].filter(({ isApart }) => isApart);
          expect(leaders(picture)).toBe(apart.length);
          if (width < 400) expect(picture.isNumbered).toBe(true);
        }),
        trials(270, 60),
      ),
  );
  test.each([330, 1100])('40 lights in one place keep theirs too, at %d pixels', (width) => {
    const lights = Array.from({ length: 40 }, (_, i) => light(`Head ${i + 1}`, place(0.5, 0.5, 1)));
    const { picture } = drawSet({ lights, camera: CAMERA, subject: undefined, surface: undefined }, width);
    for (const view of [picture.plan, picture.side]) holds(view, 40);
    expect(picture.isNumbered).toBe(true);
    for (const { name } of lights) expect(wordsOf(picture).join(' ')).toContain(name.replace(' ', '\u00a0'));
  });
  test('find no place where there is none', () => {
    const frame: Box = { x: 0, y: 0, width: 30, height: 20 };
    const one = { anchor: [15, 10] as const, lines: ['1'], width: 20, height: 15, light: 0 };
    expect(placeLabels([one], { frame, lines: [], firm: [], taken: [] })).toHaveLength(1);
    expect(placeLabels([one, one], { frame, lines: [], firm: [], taken: [] })).toBeUndefined();
  });
  const ROOM: Box = { x: 0, y: 0, width: 400, height: 200 };
  const named = (x: number, own: number) => ({ anchor: [x, 100] as const, lines: [`L${own}`], width: 40, height: 17, light: own }); // prettier-ignore
  test('leave the outlines of a front whole where there is room', () => {
    // a front of 60 by 60 pixels about its mark: a label of 40 by 17 beside the mark would lie over an edge
    const corners = [[170, 70], [230, 70], [230, 130], [170, 130]] as const; // prettier-ignore
    const firm = corners.map((corner, i) => [corner, corners[(i + 1) % 4] ?? corner] as const);
    const [label] = placeLabels([named(200, 0)], { frame: ROOM, lines: [], firm, taken: [] }) ?? [];
    expect(label && firm.some((edge) => crosses(label.box, edge))).toBe(false);
  });
  test('do not stand beside the mark of another light', () => {
    // room left of the first mark, 18 pixels away and as near the second mark; and right of it, 40 away
    const marks = [named(200, 0), named(122, 1)];
    const taken: Box[] = [
      { x: 182, y: 0, width: 58, height: 200 },
      { x: 0, y: 0, width: 130, height: 200 },
      { x: 0, y: 0, width: 182, height: 88 },
      { x: 0, y: 112, width: 182, height: 88 },
    ];
    const [first] = placeLabels(marks, { frame: ROOM, lines: [], firm: [], taken }) ?? [];
    expect(first?.box.x).toBeGreaterThanOrEqual(240);
  });
  test('nothing is written beyond the edge of the picture', () =>
    fc.assert(
      fc.property(setsOf(8), fc.integer({ min: 320, max: 1400 }), (set, width) => {
        const { picture } = drawSet(set, width);
        for (const shape of picture.shapes) {
          if (shape.kind !== 'words') continue;
          expect(shape.at[0]).toBeGreaterThanOrEqual(0);
          expect(shape.at[0] + textWidth(shape.text, shape.size)).toBeLessThanOrEqual(width);
          expect(shape.at[1]).toBeLessThanOrEqual(picture.height);
        }
      }),
      trials(265, 60),
    ));
});

describe('the picture', () => {
  const set = {
    lights: [
      light('Key', place(-0.9, 0.5, 1.5), { setting: '9.5', reading: 'f/16 +0.3' }),
      light('Rim <1> & "2"', place(0.7, 1.4, 1.25)),
      light('Background', undefined),
    ],
    camera: CAMERA,
    subject: place(0.1, 0.5, 0.95),
    surface: undefined,
  };
  test('has a light without a place beside it, and nowhere in it', () => {
    const { picture, said } = drawSet(set, 1100);
    expect(picture.plan.labels.map(({ lines }) => lines[0])).not.toContain('Background');
    expect(wordsOf(picture)).toContain(
      'Background has no place, so that it is not drawn: type its x, y and height.',
    );
    expect(said).toContain('Background has no place');
  });
  test('names lights with height, setting and reading', () => {
    const { plan } = drawSet(set, 1100).picture;
    expect(plan.labels.map(({ lines }) => lines)).toContainEqual(['Key', '1.50 m high', '9.5 · f/16 +0.3']);
  });
  test('says of no line what it means that is not drawn', () => {
    const said = wordsOf(drawSet(set, 1100).picture).join(' ');
    for (const drawn of ['Thick: fronts', 'Dashes: aims', 'field of view.']) expect(said).toContain(drawn);
    for (const none of ['mirror images', 'Hatched']) expect(said).not.toContain(none);
    const surface = { at: place(0.1, 0.5, 0.7), width: 2, height: 2, tilt: place(0, 0, 0) };
    expect(wordsOf(drawSet({ ...set, surface }, 1100).picture).join(' ')).toContain('Dots: mirror images.');
  });
  test('has the place of a light over its mirror image, which lies there too from above', () => {
    const surface = { at: place(0.1, 0.5, 0.7), width: 2, height: 2, tilt: place(0, 0, 0) };
    const lights = [light('Spot', place(0.7, 1.4, 1.25), { width: undefined, height: undefined })];
    const { shapes, plan } = drawSet({ ...set, lights, surface }, 1100).picture;
    const [x, y] = plan.labels.find(({ light: own }) => own === 0)?.anchor ?? [];
    const there = shapes.filter((one) => one.kind === 'dot' && one.at[0] === x && one.at[1] === y);
    expect(there.map((dot) => dot.kind === 'dot' && dot.isFilled)).toEqual([false, true]);
  });
  test('has the floor at the foot of the elevation', () => {
    const { shapes, side } = drawSet(set, 1100).picture;
    const floor = shapes.find((one) => one.kind === 'line' && one.style === 'level');
    const bottom = side.frame.y + side.frame.height;
    expect(floor?.kind === 'line' && bottom - (floor.spots[0]?.[1] ?? 0)).toBeCloseTo(30, 1);
  });
  // 100 mm of a drawing to a metre: both views have the same scale, and the datum lies where the sums say
  test('has both views to one scale', () => {
    const { picture } = drawSet(set, 1100);
    const anchorOf = (view: DrawnView, name: string) => view.labels.find(({ lines }) => lines[0] === name)?.anchor ?? [0, 0]; // prettier-ignore
    const [planKey, planRim] = ['Key', 'Rim <1> & "2"'].map((name) => anchorOf(picture.plan, name)) as [[number, number], [number, number]]; // prettier-ignore
    const [sideKey, sideRim] = ['Key', 'Rim <1> & "2"'].map((name) => anchorOf(picture.side, name)) as [[number, number], [number, number]]; // prettier-ignore
    // the camera looks along y: 1.6 m of x are to the right, 0.9 m of y up the page and to the right from the side
    expect(planRim[0] - planKey[0]).toBeCloseTo(1.6 * picture.scale, 1);
    expect(planKey[1] - planRim[1]).toBeCloseTo(0.9 * picture.scale, 1);
    expect(sideRim[0] - sideKey[0]).toBeCloseTo(0.9 * picture.scale, 1);
    expect(sideRim[1] - sideKey[1]).toBeCloseTo(0.25 * picture.scale, 1);
  });
  test('has a bar as long as it says', () => {
    const { shapes, scale } = drawSet(set, 1100).picture;
    const bar = shapes.find((one) => one.kind === 'line' && one.style === 'scale');
    const words = shapes.flatMap((one) => (one.kind === 'words' && one.text.endsWith('in both drawings') ? [one.text] : [])); // prettier-ignore
    const [amount = '', unit = ''] = (words[0] ?? '').split(/[ ,]/);
    const metres = Number(amount) * (unit === 'cm' ? 0.01 : 1);
    const xs = bar?.kind === 'line' ? bar.spots.map(([x]) => x) : [];
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(metres * scale, 1);
  });
  test.each([
    [0.9, 0.5],
    [1, 1],
    [4.99, 2],
    [5, 5],
    [0.26, 0.2],
  ])('of %d m the round length is %d m', (metres, wanted) =>
    // prettier-ignore
    expect(roundLength(metres)).toBeCloseTo(wanted, 12),
  );
  test('is the same picture when the whole set is turned, but for the axes of the datum', () =>
    fc.assert(
      fc.property(setsOf(6), fc.integer({ min: -180, max: 180 }), (drawn, degrees) => {
        const bare = { ...drawn, surface: undefined };
        const [was, is] = [bare, turnedSet(bare, degrees, place(0, 0, 0))].map(
          (one) => drawSet(one, 350).picture,
        );
        // where the camera stands, the datum lies within the lights and the camera or frames them anew
        expect(is?.side.labels.map(({ lines }) => lines)).toEqual(was?.side.labels.map(({ lines }) => lines));
        expect(is?.scale).toBeCloseTo(was?.scale ?? 0, 6);
      }),
      trials(266, 60),
    ));
  test('is an SVG file in which words stay words', () => {
    const { picture, said } = drawSet(set, 1100);
    const svg = svgText(picture, said);
    expect(svg).toContain('>Rim &lt;1&gt; &amp; &quot;2&quot;</text>');
    expect(svg).not.toContain('<1>');
    expect(svg.match(/#[0-9a-f]{3,6}\b/g)?.every((ink) => ink === '#000000' || ink === '#ffffff')).toBe(true);
    expect(escaped('a\u0000b\ud800c')).toBe('a\ufffdb\ufffdc');
  });
  test('tells every line from every other without colour', () => {
    const looks = (['front', 'aim', 'field', 'axis', 'image', 'ray', 'highlight'] as const).map((style) => {
      const shape: Shape = { kind: 'line', style, spots: [[0, 0], [9, 9]], isClosed: false }; // prettier-ignore
      const picture = { ...drawSet(set, 1100).picture, shapes: [shape] };
      return /stroke-width.*?\/>/.exec(svgText(picture, ''))?.[0];
    });
    expect(new Set(looks).size).toBe(looks.length);
  });
});

test('words are laid in lines of a width, long ones parted', () => {
  const lines = wrapped('one two threefourfivesix seven', 60, 12);
  for (const line of lines) expect(textWidth(line, 12)).toBeLessThanOrEqual(60);
  expect(lines.join('').replaceAll(' ', '')).toBe('onetwothreefourfivesixseven');
  expect(wrapped('', 60, 12)).toEqual([]);
});

test('a sheet that has only the names of lights has no picture yet; one place is enough for one', () => {
  const sheet = (at: readonly (number | string)[]) => ({
    name: 'Lights',
    cells: [['Light', 'X', 'Y', 'Height'], ['key', ...at]],
    tables: [{ row: 0, column: 0, rows: 2, columns: 4 }],
  }); // prettier-ignore
  expect(setImage(sheet(['', '', '']), 350, ON_PAPER)).toBeUndefined();
  expect(setImage(sheet([0, 0, 0]), 350, ON_PAPER)?.said).toContain('a set with 1 light.');
  // what cannot be read is not passed over
  expect(setImage(sheet(['left', 0, 0]), 350, ON_PAPER)?.said).toContain('x of key');
});

test('a picture of pixels says that it follows nothing, and one that does follow does not', () => {
  const sheet = {
    name: 'Lights',
    cells: [['Light', 'X', 'Y', 'Height'], ['key', 0, 0, 0]],
    tables: [{ row: 0, column: 0, rows: 2, columns: 4 }],
  }; // prettier-ignore
  const still = setImage(sheet, 1000, ON_PAPER, [DOES_NOT_FOLLOW]);
  for (const text of [still?.svg, still?.said]) expect(text).toContain('does not follow them');
  expect(setImage(sheet, 1000, ON_PAPER)?.svg).not.toContain('follow');
});
