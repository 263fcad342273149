import { describe, expect, test } from 'vitest';
import { cellError } from '../../src/formula/errors';
import { readPlace } from '../../src/set/readLength';
import { hasPlaces, readSet } from '../../src/set/readSet';
import type { SheetAsRead } from '../../src/set/sheetAsRead';
import { place } from './drawnSets';

const HEADINGS = ['Light', 'Shows', 'Reading', 'Tenths', 'Today', 'X', 'Y', 'Height', 'Aim X', 'Aim Y', 'Aim height', 'Width', 'Tall', 'Head']; // prettier-ignore
const KEY = ['key', '1/2', 16, 5, 16, '3 cm', 0.25, 1.4, 0.6, 0.35, 0.85, 0.75, 1, 'Alder 600'];
const FORM = [
  ['Shot record'],
  ['Datum', 'front left corner of the slate', '', '', 'Bellows draw', 150],
  ['Its height', 0.75, '', '', 'Rise', 8],
  ['Camera x', 0.6, '', '', 'Shift', -2],
  ['Camera y', '−22 cm', 'away: minus is near'],
  ['Camera height', 1.05],
  ['It aims at x', 0.6],
  ['… at y', 0.35],
  ['… at height', 0.85],
  ['Sensor width', 53.4],
  ['Sensor height', 40],
];
const sheet = (rows: readonly (readonly unknown[])[], form: readonly (readonly unknown[])[] = FORM): SheetAsRead => ({
  name: 'Shot record',
  cells: [...form, HEADINGS, ...rows],
  tables: [{ row: form.length, column: 0, rows: rows.length + 1, columns: HEADINGS.length }],
}); // prettier-ignore

/** A table with all columns of a record, some headed otherwise; right of them the same reading, worked out. */
function headed(other: Readonly<Record<string, string>>) {
  const row = [...KEY, '1.2', 'yes', 19.03];
  const headings = [...HEADINGS, 'Distance', 'At the subject', 'Reads'].map((name) => other[name] ?? name);
  const table = { row: FORM.length, column: 0, rows: 2, columns: headings.length };
  return readSet({ name: 'Shot record', cells: [...FORM, headings, row], tables: [table] });
}

describe('headings that were typed over', () => {
  test('all there, nothing is said', () => expect(headed({})?.unread).toEqual([]));
  test('the column that is lost is named, and none is read in its place without a word', () => {
    expect(headed({ Light: 'Lamp' })?.unread).toEqual(['No column of lights is headed “Light” any more: what stands there is not read.']); // prettier-ignore
    const { unread, setUp } = headed({ Reading: 'At first' }) ?? {};
    expect(unread).toEqual(['No column of lights is headed “Reading” any more: what stands there is not read.']); // prettier-ignore
    // f/16 and 0.5: 16 × 2^(0.5/2) = 19.03, with its tenths in it
    expect(setUp?.lights[0]?.reading).toBe('f/19.03');
    expect(headed({ 'Aim X': 'Aims' })?.unread).toEqual(['No column of lights is headed “Aim x” any more: what stands there is not read.']); // prettier-ignore
  });
  test('one that stands twice is told', () => {
    const { unread, setUp } = headed({ Today: 'Height' }) ?? {};
    expect(unread).toEqual(['Two columns of lights are headed “Height”: the one further left is read.']);
    expect(setUp?.lights[0]?.at?.z).toBe(16);
  });
});

test('of a sheet that is not read to its end the picture says so', () => {
  const unread = 'Only 2000 rows are read.';
  expect(readSet({ ...sheet([KEY]), unread })?.unread).toEqual([unread]);
});

describe('a sheet with places is read', () => {
  test('movements in the unit that is typed with them, and in millimetres without one', () => {
    const moved = (rise: unknown, shift: unknown) =>
      readSet(sheet([KEY], FORM.map((row) => row.map((cell, i) => (row[i - 1] === 'Rise' ? rise : row[i - 1] === 'Shift' ? shift : cell)))))?.setUp.camera?.optics; // prettier-ignore
    expect(moved('0.8 cm', '−0.5 cm')).toMatchObject({ rise: 0.008, shift: -0.005 });
    expect(moved('8 mm', '-2')).toMatchObject({ rise: 0.008, shift: -0.002 });
    expect(moved('0 mm', '')).toMatchObject({ rise: 0, shift: 0 });
  });
  test('lights, with what they are set to and read', () => {
    const read = readSet(sheet([KEY]));
    expect(read?.unread).toEqual([]);
    expect(read?.setUp.lights).toEqual([
      {
        name: 'key, Alder 600',
        own: 'key',
        at: place(0.03, 0.25, 1.4),
        aim: place(0.6, 0.35, 0.85),
        width: 0.75,
        height: 1,
        setting: '1/2',
        reading: 'f/16 +0.5',
        distance: undefined,
      },
    ]);
  });
  test('the camera, its sensor and movements, and the datum', () => {
    const { camera, datumHeight, subject, surface } = readSet(sheet([KEY]))?.setUp ?? {};
    expect(camera?.at).toEqual(place(0.6, -0.22, 1.05));
    expect(camera?.aim).toEqual(place(0.6, 0.35, 0.85));
    expect(camera?.optics?.draw).toBeCloseTo(0.15, 12);
    expect(camera?.optics?.sensorWidth).toBeCloseTo(0.0534, 12);
    expect([camera?.optics?.rise, camera?.optics?.shift]).toEqual([0.008, -0.002]);
    expect([datumHeight, subject, surface]).toEqual([0.75, undefined, undefined]);
  });
  test('of two labels alike the one further left counts: what is typed stands there', () => {
    const form = FORM.map((line, i) => (i === 0 ? [...line, '', '', '', '', 'Its height', 'above 0'] : line));
    expect(readSet(sheet([KEY], form))?.setUp.datumHeight).toBe(0.75);
  });
  test('a subject and a surface, where they are written down', () => {
    const more = [
      ['Subject x', 0.5], ['Subject y', 0.4], ['Subject height', 0.8],
      ['Surface x', 0], ['Surface y', '0 cm'], ['Surface height', '75 cm'], ['Surface width', 1.2], ['Surface depth', '80 cm'], ['Surface tilt x', '15°'],
    ]; // prettier-ignore
    const { subject, surface } = readSet(sheet([KEY], [...FORM, ...more]))?.setUp ?? {};
    expect(subject).toEqual(place(0.5, 0.4, 0.8));
    expect(surface).toEqual({ at: place(0, 0, 0.75), width: 1.2, height: 0.8, tilt: place(15, 0, 0) });
  });
  test('a light without a place has none, and is not at the datum', () => {
    const [x, y, z] = [5, 6, 7];
    for (const missing of [x, y, z]) {
      const row = KEY.map((cell, i) => (i === missing ? '' : cell));
      expect(readSet(sheet([row]))?.setUp.lights[0]?.at).toBeUndefined();
    }
    const none = KEY.map((cell, i) => (i === x || i === y || i === z ? null : cell));
    expect(readSet(sheet([none]))?.setUp.lights[0]?.at).toBeUndefined();
    const atDatum = KEY.map((cell, i) => (i === x || i === y || i === z ? 0 : cell));
    expect(readSet(sheet([atDatum]))?.setUp.lights[0]?.at).toEqual(place(0, 0, 0));
  });
  test('rows that wait to be filled are no lights', () =>
    expect(readSet(sheet([KEY, KEY.map(() => '')]))?.setUp.lights).toHaveLength(1));
  test('what cannot be read is said, and nothing is made of it', () => {
    const row = KEY.map((cell, i) => (i === 5 ? 'left' : i === 11 ? cellError('#N/A', '') : cell));
    const read = readSet(sheet([row]));
    expect(read?.setUp.lights[0]?.at).toBeUndefined();
    expect(read?.unread).toHaveLength(2);
    expect(read?.unread[0]).toMatch(/^x of key, Alder 600: “?"?left/);
    expect(read?.unread[1]).toBe('The width of key, Alder 600 holds the error #N/A.');
  });
  test('an error in a name, a power or a reading is said, and no word of it is written', () => {
    const row = KEY.map((cell, i) =>
      i === 0 || i === 1 || i === 2 || i === 3 ? cellError('#VALUE!') : cell,
    );
    const { setUp, unread } = readSet(sheet([row])) ?? {};
    expect(setUp?.lights[0]).toMatchObject({ name: 'Alder 600', setting: '', reading: '' });
    expect(unread).toEqual(['The name', 'The power', 'The reading', 'A tenth'].map((what) => `${what} of Alder 600 holds the error #VALUE!.`)); // prettier-ignore
    // without a head nothing is left to call it by: heading in row 12
    const nameless = KEY.map((cell, i) => (i === 0 ? cellError('#REF!') : i === 13 ? '' : cell));
    expect(readSet(sheet([nameless]))?.unread).toEqual([
      'The name of the light in row 13 holds the error #REF!.',
    ]);
  });
  // 1 January 2026 has the number 46023 where days are counted from 1900.
  test('a power or a reading that has become a date is said, and not written', () => {
    const read = (cell: number, value: unknown) => {
      const { setUp, unread } = readSet(sheet([KEY.map((each, i) => (i === cell ? value : each))])) ?? {};
      return [setUp?.lights[0]?.setting, setUp?.lights[0]?.reading, unread];
    };
    expect(read(1, 46026)).toEqual(['', 'f/16 +0.5', [expect.stringMatching(/^The power of key, Alder 600 would be 46026: a spreadsheet has made a date of it/)]]); // prettier-ignore
    expect(read(2, 46178)).toEqual(['1/2', '', [expect.stringMatching(/^The reading of key, Alder 600 would be f\/46178: a spreadsheet has made a date/)]]); // prettier-ignore
    expect(read(2, 560)).toEqual(['1/2', '', [expect.stringMatching(/would be f\/560: type its full stop/)]]);
    expect(read(1, 2400)).toEqual(['2400', 'f/16 +0.5', []]);
    expect(read(1, -3)).toEqual(['-3', 'f/16 +0.5', []]);
    expect(read(2, 128)).toEqual(['1/2', 'f/128 +0.5', []]);
    expect(read(2, 12.553345566348014)).toEqual(['1/2', 'f/12.55 +0.5', []]);
  });
  test('tenths that no meter shows are said, and no reading is made of them', () => {
    const read = (reading: unknown, tenths: unknown) => {
      const row = KEY.map((each, i) => (i === 2 ? reading : i === 3 ? tenths : each));
      const { setUp, unread } = readSet(sheet([row])) ?? {};
      return [setUp?.lights[0]?.reading, ...(unread ?? [])];
    };
    const refused = [
      '',
      expect.stringMatching(/^The reading of key, Alder 600 would be .*: type its full stop/),
    ];
    for (const tenths of [10, 0.3, -3, 'x', '3 4']) expect(read(16, tenths), String(tenths)).toEqual(refused);
    expect(read('f/8+0.3', 3)).toEqual(refused);
    expect([read('f/8', '3'), read('8', 9), read('f/8+0.3', 0), read('f/8+0.3', ''), read('', 3)]).toEqual([
      ['f/8 +0.3'],
      ['f/8 +0.9'],
      ['f/8+0.3'],
      ['f/8+0.3'],
      [''],
    ]);
  });
  test('what is typed beside a label is no label, whatever it says', () => {
    const typed = FORM.map((row) => (row[0] === 'Datum' ? ['Datum', 'Shift (5 mm to the left)', '', '', ...row.slice(4)] : row)); // prettier-ignore
    const { camera, datum } = readSet(sheet([KEY], [['Shot', 'Camera x, 3', 7], ...typed]))?.setUp ?? {};
    expect([camera?.optics?.shift, camera?.at.x]).toEqual([-0.002, 0.6]);
    expect(datum).toEqual({ name: 'Shift (5 mm to the left)' });
  });
  test('the datum and the ISO of the readings, where there are cells for them', () => {
    const around = (...more: readonly unknown[][]) => readSet(sheet([KEY], [...FORM, ...more]));
    expect(around()?.setUp).toMatchObject({ datum: { name: 'front left corner of the slate' } });
    expect(around()?.setUp.meter).toBeUndefined();
    expect(around(['ISO', 200])?.setUp.meter).toEqual({ iso: 200 });
    expect(around(['ISO', 'ISO 400'], ['ISO today', 50])?.setUp.meter).toEqual({ iso: 400 });
    expect(around(['ISO', ''])?.setUp.meter).toEqual({ iso: undefined });
    expect(around(['ISO', 'fast'])?.unread).toEqual([expect.stringContaining('fast')]);
    const noDatum = FORM.map((row) => (row[0] === 'Datum' ? ['Datum', ''] : row));
    expect(readSet(sheet([KEY], noDatum))?.setUp.datum).toEqual({ name: '' });
  });
  test('a place that is typed in part is said', () => {
    const unread = (...more: readonly unknown[][]) => readSet(sheet([KEY], [...FORM, ...more]))?.unread;
    expect(unread(['Subject x', 0.5], ['Subject y', 0.4])).toEqual(['Of the subject x, y or height is missing: type all three.']); // prettier-ignore
    expect(unread(['Surface x', 0.5], ['Surface width', 1])).toEqual(['Of the surface x, y or height is missing: type all three.']); // prettier-ignore
    expect(unread(['Surface x', ''], ['Surface width', 1])).toEqual(['The surface has no place, so that it is not drawn: type its x, y and height.']); // prettier-ignore
    expect(unread(['Subject x', ''], ['Surface x', ''], ['Surface turned', ''])).toEqual([]);
    const half = FORM.map((row) => (row[0] === '… at y' ? ['… at y', ''] : row));
    expect(readSet(sheet([KEY], half))?.unread).toEqual(['Of the camera’s aim x, y or height is missing: type all three.']); // prettier-ignore
  });
  test('a surface is turned last, by what either label says', () => {
    const where = [['Surface x', 0], ['Surface y', 0], ['Surface height', 1], ['Surface width', 1], ['Surface depth', 1]]; // prettier-ignore
    for (const label of ['Surface turned', 'Surface tilt height'])
      expect(readSet(sheet([KEY], [...FORM, ...where, [label, '−20°']]))?.setUp.surface?.tilt).toEqual(place(0, 0, -20)); // prettier-ignore
    expect(readSet(sheet([KEY], [...FORM, ...where, ['Surface turned', '12,5']]))?.setUp.surface?.tilt).toEqual(place(0, 0, 12.5)); // prettier-ignore
  });
  test('a sheet without places is none', () => {
    const plain = {
      name: 'Lights',
      cells: [['Head', 'Reading']],
      tables: [{ row: 0, column: 0, rows: 1, columns: 2 }],
    };
    expect(hasPlaces(plain)).toBe(false);
    expect(readSet(plain)).toBeUndefined();
    expect(readSet({ name: 'x', cells: [], tables: [] })).toBeUndefined();
  });
});

test.each([
  [0.4, 0.4],
  [-0.4, -0.4],
  ['-40 cm', -0.4],
  ['−0.4', -0.4],
  ['0', 0],
  [0, 0],
  ['0 ft', 0],
  ['-0,0 in', 0],
  ['0"', 0],
  ['', undefined],
  [null, undefined],
  [180, 180],
])('%j is the place %j', (cell, wanted) => {
  const read = readPlace(cell, 'x');
  if (typeof wanted === 'number') expect(read).toBeCloseTo(wanted, 12);
  else expect(read).toBe(wanted);
});
