import { expect, test } from 'vitest';
import { light, NO_CARD, record } from '../sheets/record';
import { type Expected, JOBS, rowsOf } from './job';

/** What the job has worked out by hand, for the question that begins so. */
function worked(asks: string): number[] {
  const step = JOBS.get('10-re-light')?.steps.find((each) => each.asks.startsWith(asks));
  if (!step) throw new Error(`The job does not ask ${asks}`);
  return rowsOf(step.expect as Exclude<Expected, { error: string } | { contains: string }>)
    .flat()
    .map(Number);
}

const near = (values: readonly number[]) => values.map((value) => expect.closeTo(value, 6));

test('Shot record says of the four lights what the job works out', async () => {
  const lights = [
    light('key', { Shows: '1/8 +0.7', Reading: 16, Tenths: 3, Today: 16, 'Its tenths': 1 }),
    light('fill', { Shows: '7.3', Most: 1200, Least: 18.75, Step: '1/3', Scale: 'stops', Top: '10', Reading: 8, Tenths: 5, Today: 8, 'Its tenths': 3 }),
    light('rim', { Reading: 11, Tenths: 0, Today: 8, 'Its tenths': 7 }),
    light('background', { Shows: '1/4', Reading: 11, Tenths: 6, Today: 16, 'Its tenths': 0, 'At the subject': 'no' }),
  ]; // prettier-ignore
  const card = { cardThen: 6912, blackThen: 512, cardToday: 5632, blackToday: 512 };
  const sheet = await record(lights, card);
  expect(sheet.again('Differs')).toEqual(near(worked('How far is each light')));
  expect([sheet.cell('common')]).toEqual(near(worked('What do they have in common')));
  expect([sheet.again('Its own')[3]]).toEqual(near(worked('What is left of the background')));
  expect([sheet.cell('card')]).toEqual(near(worked('The grey card in raw')));
  const ws = sheet.column('AsLit', 'In Ws');
  expect([ws[0]]).toEqual([expect.closeTo(worked('The record says the Alder')[0] ?? NaN, 3)]);
  expect([ws[1]]).toEqual([expect.closeTo(worked('The Birch shows 7.3')[0] ?? NaN, 3)]);
  // Its own 0.6 of a stop, from a quarter: two stops and six tenths under full.
  expect([sheet.again('Turn by')[3], sheet.again('Set to')[3]]).toEqual(['−0.6', '1/4 −0.6']);
  expect(sheet.notes().slice(0, 3)).toEqual(['no change', 'no change', 'no change']);
});

test('… and of the rim that cannot', async () => {
  const same = ['key', 'fill', 'background'].map((name) => light(name));
  const place = { X: 0, Y: 0, Height: 1.2, 'Aim X': 0, 'Aim Y': 0, 'Aim height': 0 };
  const rim = light('rim', { Shows: '1/1', Reading: 11, Today: 5.6, 'Its tenths': 5, ...place });
  const sheet = await record([...same, rim], NO_CARD);
  const [pops, metres] = [worked('Then how many pops')[0], worked('Or how near')[0]?.toFixed(2)];
  expect(sheet.notes()[3]).toBe(`1.5 stops short: ${pops} pops or at ${metres} m`);
});
