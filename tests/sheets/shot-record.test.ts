import { describe, expect, test } from 'vitest';
import { drawn } from '../full';
import { demoLights, light, type Light, NO_CARD, record } from './record';

const near = (value: number) => expect.closeTo(value, 9);
/** Lights that read f/11 and so many tenths of a stop less or more today. */
const lightsAt = (...tenths: readonly number[]): Light[] =>
  tenths.map((each, i) =>
    light(`light ${i + 1}`, each < 0 ? { Today: 8, 'Its tenths': 10 + each } : { Today: 11, 'Its tenths': each }),
  ); // prettier-ignore

describe('the demo, five lights', () => {
  test('one is brighter than the rest, and what all share is the meter', async () => {
    const sheet = await record();
    expect(sheet.errors).toEqual([]);
    // Each two tenths down, the accent five up: in order −0.2 −0.2 −0.2 −0.2 +0.5, and the middle one is −0.2.
    expect(sheet.again('Differs')).toEqual([-0.2, -0.2, -0.2, 0.5, -0.2].map(near));
    expect(sheet.cell('common')).toEqual(near(-0.2));
    expect(sheet.again('Its own')).toEqual([0, 0, 0, 0.7, 0].map((own) => expect.closeTo(own, 9)));
    // 12.5 % is three stops below full, and 2^(−3.7) is 7.7 %.
    expect([sheet.again('Set to')[3], sheet.again('Turn by')[3]]).toEqual(['7.7 %', '−0.7']);
    expect(sheet.notes()).toEqual([
      'no change', 'no change', 'no change', 'turn down: 0.7 brighter, place or aim?', 'no change',
    ]); // prettier-ignore
    // The card has log2(12636/11376) = 0.151 more, and of the lights on it the meter 0.2 less than they have.
    expect(sheet.cell('cardSays')).toBe('0.2 brighter: the meter reads 0.2 stop less than the card');
    expect(sheet.beside('common')).toBe('! all 0.2 darker: see the meter first');
    expect(sheet.cell('judged')).toBe('the meter: its ISO, its dome, its battery');
    expect(sheet.cell('brings')).toBe('to one common difference; as it was if no more than 2 changed');
  });
  test('each power stands in Ws beside what the head shows', async () => {
    const sheet = await record();
    // 600/2; 1200 × 2^(8.5 − 10); 400/4; 400/8; as typed
    expect(sheet.column('AsLit', 'In Ws').slice(0, 5)).toEqual([300, 424.264068712, 100, 50, 600].map(near));
    expect(sheet.column('AsLit', 'Stands at')[4]).toBe('-0.6, 1.35, 1');
  });
  test('what a light is stands on the page in one line, what counts most first, and says where it goes on', async () => {
    const long = light('long', {
      Modifier: 'deep umbrella', Grid: '30°', Width: 0.75, Tall: 1, Gel: 'half orange', Kelvin: 3800,
      Head: 'Alder 600', Serial: 'A17', Metered: 'front edge of the bowl', Meter: 'flat',
    }); // prettier-ignore
    const sheet = await record([long, ...demoLights.slice(1)]);
    const first = (name: string) => sheet.column('AsLit', name).slice(0, 3);
    expect(first('Front')).toEqual(['0.75 × 1 m deep umbr…', '1.2 × 1.2 m box', 'dish, grid 20°']);
    expect(first('Head')).toEqual(['A17 Alder 600', 'B04 Birch 1200', 'H21 Hazel 400']);
    expect(first('Gel')).toEqual(['3800 K, half…', '5500 K', '4300 K, straw']);
    expect(first('Metered')).toEqual(['flat, front ed…', 'dome, bowl', 'flat, bowl']);
  });
});

describe('what all lights share', () => {
  test('is the middle of three and more, and the mean of the two middle ones', async () => {
    expect((await record(lightsAt(3, -2, 1), NO_CARD)).cell('common')).toEqual(near(0.1));
    const four = await record(lightsAt(3, -2, 1, 4), NO_CARD);
    expect(four.cell('common')).toEqual(near(0.2));
    expect(four.again('Its own')).toEqual([0.1, -0.4, -0.1, 0.2].map(near));
    expect(four.notes()[0]).toBe('no change');
  });
  test('is not told of two lights without a grey card', async () => {
    const sheet = await record(lightsAt(3, 3), NO_CARD);
    expect([sheet.cell('common'), sheet.beside('common')]).toEqual([
      0, '! fewer than 3 lights and no grey card',
    ]); // prettier-ignore
    expect(sheet.cell('brings')).toBe('to today’s meter: what it reads otherwise cannot be told');
    expect(sheet.again('Turn by')).toEqual(['−0.3', '−0.3']);
  });
  test('is told of two lights by the card: what the meter reads and the card has not', async () => {
    // Both read 0.3 more. A card of (9000 − 1000)/(9000 − 1000) has no more light: it is the meter.
    const card = { cardThen: 9000, blackThen: 1000, cardToday: 9000, blackToday: 1000 };
    const meter = await record(lightsAt(3, 3), card);
    expect([meter.cell('common'), meter.notes()]).toEqual([near(0.3), ['no change', 'no change']]);
    // (10849.155 − 1000)/8000 = 2^0.3: the card has it as well, and both heads are turned down.
    const light2 = await record(lightsAt(3, 3), { ...card, cardToday: 1000 + 8000 * 2 ** 0.3 });
    expect([light2.cell('common'), light2.again('Turn by')]).toEqual([near(0), ['−0.3', '−0.3']]);
  });
  test('brings seven back as they were, where three have changed', async () => {
    const sheet = await record(lightsAt(0, 0, 5, -7, 0, 9, 0), NO_CARD);
    expect([sheet.cell('common'), sheet.cell('brings')]).toEqual([
      0, 'each light as it was, if no more than 3 changed',
    ]); // prettier-ignore
    expect(sheet.again('Turn by')).toEqual(['0', '0', '−0.5', '+0.7', '0', '−0.9', '0']);
  });
  test('leaves out light that no head gives, and a light that is not metered yet', async () => {
    const room = light('room', { Shows: null, Most: null, Least: null, Step: null, Scale: null, Today: 16 });
    const sheet = await record([...lightsAt(2, 2, 2), room, light('later', { Today: null, 'Its tenths': null })]); // prettier-ignore
    expect([sheet.cell('metered'), sheet.cell('common')]).toEqual([3, near(0.2)]);
    expect(sheet.notes().slice(3)).toEqual(['0.8 stop brighter: no head to turn', 'not metered today']);
  });
});

describe('what is out of reach', () => {
  test('says by how much, how many pops would do, and where to stand', async () => {
    const place = { X: 0, Y: 0, Height: 1.2, 'Aim X': 0, 'Aim Y': 0, 'Aim height': 0 };
    const dark: Light = { Shows: '1/1', Today: 5.6, 'Its tenths': 7 };
    const sheet = await record([...lightsAt(0, 0, 0), light('rim', { ...dark, ...place }), light('edge', dark)], { ...NO_CARD, pops: 2 }); // prettier-ignore
    // From f/5.6 and 7 tenths (5.7) to f/11 (7) are 1.3 stops: 2 × 2^(1.3 − 0.05) = 4.757 pops, and 1.2 × 2^(−0.65) = 0.765 m.
    expect(sheet.notes()[3]).toBe('1.3 stops short: 5 pops or at 0.76 m');
    expect([sheet.again('Set to')[3], sheet.notes()[4]]).toEqual([
      '1/1',
      '1.3 stops short: 5 pops or 0.64 × as far',
    ]);
  });
  test('a wide front comes nearer than a small one', async () => {
    const place = { X: 0, Y: 0, Height: 1.2, 'Aim X': 0, 'Aim Y': 0, 'Aim height': 0, Width: 1, Tall: 1 };
    const dark: Light = { Shows: '1/1', Today: 8, 'Its tenths': 2 };
    const sheet = await record([
      ...lightsAt(0, 0, 0, 0),
      light('box', { ...dark, ...place }),
      light('taped', { ...dark, Width: 1, Distance: 1.2 }),
      light('anywhere', { ...dark, Width: 1 }),
    ], NO_CARD); // prettier-ignore
    // d² + 0.5² shrinks by 2^(−0.8): √(1.69 × 0.574349 − 0.25) = 0.8491 m, whether it has a place or was taped.
    expect(sheet.notes()[4]).toMatch(/ at 0\.85 m$/);
    expect(sheet.notes()[5]).toMatch(/ at 0\.85 m$/);
    // How much nearer a wide front must come depends on where it stands.
    expect(sheet.notes()[6]).toMatch(/ or nearer, by the meter$/);
  });
  test('a head at its least is moved away, and one of fixed power says that it is', async () => {
    const least = light('least', { Shows: '1/64', Today: 16, 'Its tenths': 3 });
    const fixed = light('fixed', { Shows: '1/1', Least: 600, Step: null, Today: 16, 'Its tenths': 0 });
    const sheet = await record([...lightsAt(0, 0, 0), least, fixed], NO_CARD);
    expect(sheet.notes().slice(3)).toEqual(['1.3 stops too strong: 1.57 × as far', '1 stop too strong: 1.41 × as far']); // prettier-ignore
  });
  test('a head that shows something else today is turned from there', async () => {
    const other = light('other', { 'Shows today': '1/4', Today: 11, 'Its tenths': 5 });
    const sheet = await record([...lightsAt(0, 0, 0), other], NO_CARD);
    // 150 Ws and half a stop less: 150 × 2^(−0.5) = 106.07, 2.5 under full
    expect([sheet.again('Set to')[3], sheet.again('Turn by')[3]]).toEqual(['1/4 −0.5', '−0.5']);
  });
});

describe('another ISO', () => {
  test('is counted where it is typed', async () => {
    // At ISO 200 a meter reads a stop more of the same light.
    const sheet = await record(lightsAt(0, 0, 0), { ...NO_CARD, isoToday: 50 });
    expect(sheet.again('Differs')).toEqual([1, 1, 1].map(near));
    expect((await record(lightsAt(0, 0, 0), { ...NO_CARD, isoToday: 'ISO 200' })).again('Differs')).toEqual(
      [-1, -1, -1].map(near),
    );
  });
  test.each([
    ['isoToday', null, '! type the meter’s ISO'],
    ['isoToday', 'fast', '! cannot be read'],
    ['iso', null, '! ISO then?'],
  ])('%s %s: %s', async (cell, value, says) => {
    const sheet = await record(demoLights, { [cell]: value });
    expect([sheet.beside('isoToday'), sheet.cell('common')]).toEqual([says, '']);
    expect(sheet.again('Set to').join('')).toBe('');
  });
});

describe('a row that cannot be right', () => {
  test.each(drawn<[string, Light, string]>([
    ['the same name', { Light: 'two' }, 'two lights have this name'],
    ['a reading that is gone', { Reading: null, Tenths: null }, 'type its reading, tenths beside it'],
    ['a height below the floor', { X: 0, Y: 0, Height: -1, 'Aim X': 0, 'Aim Y': 0, 'Aim height': 1 }, 'no height lies below the floor'],
    ['centimetres', { X: 120, Y: 30, Height: 140, 'Aim X': 0, 'Aim Y': 0, 'Aim height': 85 }, 'places are in metres: 120 cm is 1.2'],
    ['half a place', { X: 1, Y: 1 }, 'place: six numbers in metres, or none'],
    ['a place in words', { X: '120 cm', Y: 0, Height: 1, 'Aim X': 0, 'Aim Y': 0, 'Aim height': 1 }, 'place: six numbers in metres, or none'],
    ['an aim at itself', { X: 1, Y: 1, Height: 1, 'Aim X': 1, 'Aim Y': 1, 'Aim height': 1 }, 'it aims at its own place'],
    ['a front of no width', { Width: 0 }, 'Width and Tall: metres above 0, or none'],
    ['a front in centimetres', { Width: 90 }, 'places are in metres: 120 cm is 1.2'],
    ['a distance of nothing', { Distance: 0 }, 'Distance: metres above 0, or none'],
    ['a distance in centimetres', { Distance: 80 }, 'places are in metres: 120 cm is 1.2'],
    ['a reading of today without its stop', { Today: null, 'Its tenths': 3 }, 'today: full stop, tenths beside it'],
    ['a percent without its sign', { Scale: 'percent', Shows: 41 }, 'its power as it shows it, in range'],
    ['half a head', { Most: null }, 'type its most Ws, up to 10 000'],
    ['nothing of the subject', { 'At the subject': null }, 'does it reach the subject: yes or no'],
  ]))('%s', async (_, other, says) => {
    const sheet = await record([light('one', other), light('two'), light('three'), light('four')], NO_CARD);
    expect(sheet.notes()[0]).toBe(says);
    expect(['Differs', 'Its own', 'Set to', 'Turn by'].map((id) => sheet.again(id)[0])).toEqual(['', '', '', '']);
    expect(sheet.beside('common')).toBe('! row 1 is not ready: it does not count');
    expect(sheet.errors).toEqual([]);
  }); // prettier-ignore
  test('forty lights are calculated, and the page says that it shows twelve', async () => {
    const many = Array.from({ length: 40 }, (_, i) => light(`light ${i + 1}`));
    const sheet = await record([...many.slice(0, 39), light('light 40', { Today: 16 })], NO_CARD);
    expect(sheet.column('Record', 'Words')[39]).toBe('turn down: 1 brighter, place or aim?');
    expect(sheet.beside('lights')).toBe('! only 12 stand here');
  });
  test('the camera has a place or none, in metres, and looks somewhere', async () => {
    const beside = async (typed: Readonly<Record<string, number | null>>) =>
      (await record(demoLights, typed)).beside('cameraX');
    expect(await beside({ cameraY: null })).toBe('! six numbers or none');
    expect(await beside({ cameraY: -22 })).toBe('! metres: 1.2, not 120');
    expect(await beside({ cameraHeight: -1 })).toBe('! below the floor?');
    expect(await beside({ cameraAimX: 0.6, cameraAimY: -0.22, cameraAimHeight: 1.05 })).toBe('! it aims at itself'); // prettier-ignore
  });
  test('places have a datum with a name', async () => {
    expect((await record(demoLights, { datum: null })).beside('tableHeight')).toBe('! name the datum');
    const without = await record([light('a'), light('b'), light('c')], { ...NO_CARD, datum: null });
    expect(without.beside('tableHeight')).toBe('above the floor');
  });
});

describe('the subject, and a glossy surface', () => {
  const level = { surfaceTiltX: null, surfaceTiltY: null, surfaceTurn: null };
  const NO_SURFACE = { surfaceX: null, surfaceY: null, surfaceHeight: null, surfaceWidth: null, surfaceDepth: null, ...level }; // prettier-ignore
  test.each<[string, string, Readonly<Record<string, number | string | null>>]>([
    ['subjectX', '', {}],
    ['subjectX', '', { subjectX: null, subjectY: null, subjectHeight: null }],
    ['subjectX', '! three or none', { subjectHeight: null }],
    ['subjectX', '! three or none', { subjectY: '35 cm' }],
    ['subjectX', '! metres: 1.2', { subjectX: 60 }],
    ['subjectX', '! below floor?', { subjectHeight: -0.85 }],
    ['surfaceX', '', NO_SURFACE],
    ['surfaceX', '', level],
    ['surfaceX', '! five or none', { ...NO_SURFACE, surfaceWidth: 1 }],
    ['surfaceX', '! metres: 1.2', { surfaceDepth: 15 }],
    ['surfaceX', '! below floor?', { surfaceHeight: -0.85 }],
    ['surfaceX', '! size above 0', { surfaceWidth: 0 }],
    ['surfaceX', '! degrees: 15', { surfaceTiltX: '50 deg' }],
    ['surfaceX', '! degrees: 15', { surfaceTurn: 3600 }],
    // The lens is 1.05 m high, and so is the plane of what lies level there.
    ['surfaceX', '! lens in plane', { ...level, surfaceHeight: 1.05 }],
    ['surfaceX', '! lens behind', { ...level, surfaceHeight: 1.06 }],
  ])('%s says “%s” of %o', async (cell, says, typed) => {
    const sheet = await record(demoLights, typed);
    expect(sheet.beside(cell)).toBe(says);
    expect(sheet.errors).toEqual([]);
  });
  // From the tile at 0.6, 0.35, 0.85 the lens stands at (0, −0.57, 0.2).
  test.each([
    [0, 0, 0, 0.2],
    [90, 0, 0, 0.57],
    [-90, 0, 0, -0.57],
    // (sin 30°, 0, cos 30°) · (0, −0.57, 0.2) = 0.2 × 0.8660254
    [0, 30, 0, 0.17320508],
    // upright and turned by a quarter: its polish looks along x
    [90, 0, 90, 0],
    // (−0.198, −0.740, 0.643) · (0, −0.57, 0.2) = 0.4218 + 0.1286
    [50, 0, -15, 0.5503],
  ])(
    'tilted by %d° and %d° and turned by %d° the lens is %d m before its polish',
    async (x, y, turn, before) => {
      const sheet = await record(demoLights, { surfaceTiltX: x, surfaceTiltY: y, surfaceTurn: turn });
      expect(sheet.cell('lensBefore')).toBeCloseTo(before, 4);
    },
  );
});
