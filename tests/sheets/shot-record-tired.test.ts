import { expect, test } from 'vitest';
import { light, NO_CARD, record } from './record';

const near = (value: number) => expect.closeTo(value, 9);

test('lights may have numbers for names, and a space more makes no other name', async () => {
  const names = [1, 2, 'key', 'key ', ' '];
  const sheet = await record(names.map((name) => light('', { Light: name })), NO_CARD); // prettier-ignore
  expect(sheet.cell('lights')).toBe(5);
  expect(sheet.notes()).toEqual([
    'no change',
    'no change',
    'two lights have this name',
    'two lights have this name',
    'type a name for the light',
  ]);
});

test('a power that is typed for today is no difference that all share', async () => {
  // Three of five stand a stop lower, and read a stop less: they are what has changed, and meter and tubes have not.
  const lower = { 'Shows today': '1/4', Today: 8 };
  const sheet = await record(
    ['a', 'b', 'c', 'd', 'e'].map((name, i) => light(name, i < 3 ? lower : {})),
    NO_CARD,
  );
  expect(sheet.cell('common')).toEqual(near(0));
  expect(sheet.again('Differs')).toEqual([-1, -1, -1, 0, 0].map(near));
  expect(sheet.again('Turn by')).toEqual(['+1', '+1', '+1', '0', '0']);
  expect(sheet.again('Set to').slice(0, 3)).toEqual(['1/2', '1/2', '1/2']);
});

test('a head whose dial has no nearer setting is not told to turn', async () => {
  // A dial of whole stops: 0.4 is nearer to 0 than to 1, and above full power there is nothing.
  const sheet = await record(
    [
      light('a'),
      light('b'),
      light('c'),
      light('d', { Step: '1', 'Its tenths': 4 }),
      light('e', { Step: '1', Shows: '1/1', Today: 8, 'Its tenths': 6 }),
      light('f', { Step: '1', 'Its tenths': 6 }),
    ],
    NO_CARD,
  );
  expect(sheet.again('Turn by').slice(3)).toEqual(['0', '0', '−1']);
  expect(sheet.notes().slice(3)).toEqual([
    'no nearer setting: 0.4 brighter, place or aim?',
    'no nearer setting: 0.4 darker, place or aim?',
    'turn down: 0.6 brighter, place or aim?',
  ]);
});

test('the grey card has the light of all pops', async () => {
  // Four pops of f/11 and one of f/11, which is f/16 today: (4 + 2)/(4 + 1) = 1.2 on the card, and the meter says so too.
  const card = { cardThen: 6000, blackThen: 1000, cardToday: 7000, blackToday: 1000, pops: 4 };
  const sheet = await record([light('a'), light('b', { Pops: 1, Today: 16 })], card);
  expect(sheet.cell('meterOff')).toEqual(near(0));
  expect(sheet.again('Turn by')).toEqual(['0', '−1']);
  // Daylight is there once: (4 + 1·2)/(4 + 1) again.
  const day = light('day', { Shows: null, Most: null, Least: null, Step: null, Scale: null, Today: 16 });
  expect((await record([light('a'), day], card)).cell('meterOff')).toEqual(near(0));
});

test('a card as bright as its file can hold says nothing, and a draw below the focal length is asked about', async () => {
  const sheet = await record([light('a'), light('b'), light('c')], {
    cardThen: 16383,
    blackThen: 1024,
    cardToday: 16383,
    blackToday: 1024,
    draw: 15,
  });
  expect([sheet.beside('cardThen'), sheet.cell('cardSays')]).toEqual(['! clipped, it seems', '']);
  expect(sheet.beside('draw')).toBe('! below focal length?');
  expect((await record([light('a')], { draw: 15_000 })).beside('draw')).toBe('! in millimetres: 120');
});
