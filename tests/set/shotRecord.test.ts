import { expect, test } from 'vitest';
import { planAlone } from '../../src/sheets/makePlan';
import { TEMPLATES } from '../../src/sheets/templates';
import { BELIEVED, SHOWN } from '../../src/set/limits';
import { readSet } from '../../src/set/readSet';
import { setImage } from '../../src/set/setImage';
import type { TemplateValue } from '../../src/sheets/template';
import { recordIn, withRecord } from '../../src/sheets/shotRecord/shotRecord';
import type { SheetAsRead } from '../../src/set/sheetAsRead';
import { ON_PAPER } from '../../src/set/svg';
import { place } from './drawnSets';

/** Shot record as it is laid, without what its formulas show. */
function record(
  typed: Readonly<Record<string, TemplateValue>> = {},
  lights: Readonly<Record<string, TemplateValue>> = {},
): SheetAsRead {
  const found = TEMPLATES.find(({ id }) => id === 'shot-record');
  if (!found) throw new Error('There is no Shot record.');
  const { set, lights: all } = recordIn(found, planAlone(found, true).sheet);
  const other = {
    set: { ...set, ...typed },
    lights: all.map((light, i) => (i === 0 ? { ...light, ...lights } : light)),
  };
  const { cells, tables, name } = planAlone(withRecord(found, other), true).sheet;
  const lines: unknown[][] = [];
  for (const { row, column, value } of cells) (lines[row] ??= [])[column] = value;
  const whole = Array.from(lines, (line) => Array.from(line ?? [], (value) => value ?? ''));
  return { name, cells: whole, tables: tables.map(({ area }) => area) };
}

// x, y and heights as the template has them
const template = TEMPLATES.find(({ id }) => id === 'shot-record');
const columnNamed = (name: string) =>
  template?.blocks.flatMap((block) => (block.kind === 'table' && block.id === 'Record' ? block.columns : [])).find(({ id }) => id === name); // prettier-ignore
const fieldNamed = (name: string) =>
  template?.blocks
    .flatMap((block) => (block.kind === 'form' ? block.fields : []))
    .find(({ id }) => id === name);

// The sheet has its rules in its file, and the picture its limits in its code.
test('the sheet refuses where the picture does not draw', () => {
  const most = (part: { accepts?: { most?: number } } | undefined) => part?.accepts?.most;
  for (const id of ['X', 'Y', 'Aim X', 'Aim Y']) expect(most(columnNamed(id)), id).toBe(BELIEVED.place);
  for (const id of ['cameraX', 'cameraY', 'cameraAimX', 'cameraAimY', 'subjectX', 'subjectY', 'surfaceX', 'surfaceY']) expect(most(fieldNamed(id)), id).toBe(BELIEVED.place); // prettier-ignore
  for (const id of ['Height', 'Aim height']) expect(most(columnNamed(id)), id).toBe(BELIEVED.height);
  for (const id of ['tableHeight', 'cameraHeight', 'cameraAimHeight', 'subjectHeight', 'surfaceHeight']) expect(most(fieldNamed(id)), id).toBe(BELIEVED.height); // prettier-ignore
  for (const id of ['Width', 'Tall']) expect(most(columnNamed(id)), id).toBe(BELIEVED.size);
  for (const id of ['surfaceWidth', 'surfaceDepth']) expect(most(fieldNamed(id)), id).toBe(BELIEVED.size);
  expect(most(columnNamed('Most'))).toBe(SHOWN.setting);
  const formulas = ['Place lacks', 'Light lacks'].map((id) => columnNamed(id)?.formula ?? '');
  for (const [axis, limit] of [
    ['X', BELIEVED.place],
    ['Y', BELIEVED.place],
    ['Height', BELIEVED.height],
    ['Aim X', BELIEVED.place],
    ['Aim Y', BELIEVED.place],
    ['Aim height', BELIEVED.height],
    ['Width', BELIEVED.size],
    ['Tall', BELIEVED.size],
  ] as const)
    // prettier-ignore
    expect(formulas[0]).toContain(`ABS(N([@${axis}]))>${limit}`);
  expect(formulas[1]).toContain(`N([@Reads])>${SHOWN.reading}`);
});

test('Shot record has its set drawn, with nothing that cannot be read', () => {
  const read = readSet(record());
  expect(read?.unread).toEqual([]);
  const { lights, camera, datumHeight } = read?.setUp ?? { lights: [] };
  expect(lights.map(({ name }) => name)).toEqual(['key, Alder 600', 'fill, Birch 1200', 'rim, Hazel 400', 'accent, Hazel 400', 'background, Cedar 2400']); // prettier-ignore
  expect(lights[0]).toMatchObject({ at: place(0.03, 0.25, 1.4), aim: place(0.6, 0.35, 0.85), setting: '1/2', reading: 'f/16 +0.5' }); // prettier-ignore
  expect(camera?.at).toEqual(place(0.6, -0.22, 1.05));
  expect(datumHeight).toBe(0.75);
  expect(read?.setUp).toMatchObject({ subject: place(0.6, 0.35, 0.85), datum: { name: 'front left corner of the slate' }, meter: { iso: 100 } }); // prettier-ignore
  expect(read?.setUp.surface).toEqual({ at: place(0.6, 0.35, 0.85), width: 0.2, height: 0.15, tilt: place(50, 0, -15) }); // prettier-ignore
  // by tape to the centimetre: √(0.57² + 0.1² + 0.55²) = 0.798, √(1.25² + 0.52² + 0.35²) = 1.398, √(0.5² + 0.63² + 0.75²) = 1.100, √(0.6² + 0.38² + 0.55²) = 0.898
  expect(lights.map(({ distance }) => distance)).toEqual([0.8, 1.4, 1.1, 0.9, undefined]);
  // a draw of 150 mm: 53.4 mm · 0.6041 m / 150 mm = 0.2151 m, at √(0.57² + 0.2²) = 0.6041 m along the axis
  const said = setImage(record(), 350, ON_PAPER)?.said ?? '';
  expect(said).toContain('The picture takes in 0.22 m × 0.16 m, 0.60 m before the lens.');
  expect(said).not.toContain('One of them is wrong');
  // The tile's middle turns the way from the lens, (0, −0.944, 0.331), about its normal (−0.198, −0.740, 0.643) into
  // (−0.361, −0.405, 0.840), which meets the plane of the key's front 0.30 m beside and 0.28 m above its middle: within 0.75 × 1 m.
  expect(said).toMatch(/1 key, Alder 600: [^.]*(?:\d\.\d[^.]*)*makes a highlight in the surface/);
  expect(said).toMatch(/2 fill, Birch 1200: .*makes no highlight in the surface.*3 rim/);
});

let asLaid: string | undefined;
/** What is said of the demo as it is. */
const plain = (): string => (asLaid ??= setImage(record(), 350, ON_PAPER)?.said ?? '');

// What the sheet itself says of each stands in tests/sheets/shot-record.test.ts.
test.each<[string, Readonly<Record<string, TemplateValue>>, Readonly<Record<string, TemplateValue>>]>([
  ['2 lights are called fill', {}, { Light: 'fill' }],
  ['The datum has no name', { datum: null }, {}],
  ['key, Alder 600 lies 0.20 m below the floor', {}, { Height: -0.2 }],
  ['key, Alder 600 is aimed at its own place', {}, { 'Aim X': 0.03, 'Aim Y': 0.25, 'Aim height': 1.4 }],
  ['The front of key, Alder 600 has no width', {}, { Width: 0 }],
  ['The front of key, Alder 600 would be 15 m wide', {}, { Width: 15 }],
  [
    'The lens lies in the plane of the surface',
    { surfaceHeight: 1.05, surfaceTiltX: null, surfaceTurn: null },
    {},
  ],
  ['The lens is behind the polished side', { surfaceTiltX: -50 }, {}],
  ['key, Alder 600 would be 15 m away', {}, { X: 15 }],
  ['key, Alder 600: 0.90 m was typed, and the places are 0.80 m apart', {}, { Distance: 0.9 }],
  ['The power of key, Alder 600 would be 46026', {}, { Shows: 46026 }],
  ['Readings are at ISO 400.', { iso: 400 }, {}],
  ['The readings have no ISO', { iso: null }, {}],
  ['Of the subject x, y or height is missing', { subjectY: null }, {}],
])('its picture says “%s”', (says, typed, light) => {
  expect(setImage(record(typed, light), 350, ON_PAPER)?.said).toContain(says);
  expect(plain()).not.toContain(says);
});
