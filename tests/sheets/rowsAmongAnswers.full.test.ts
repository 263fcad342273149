import { describe, expect, test } from 'vitest';
import { editedSheet } from './editedSheet';

/** Tables whose rows say what rows of another table have: a row of these answers by the number under Row. */
const ANSWERS = [
  ['heads', 'Glance'],
  ['pops-plan', 'Dial'],
  ['lights-on-set', 'Turn'],
  ['heads', 'Durations'],
  ['freeze-check', 'Manuals'],
  ['estimate', 'Taxes'],
  ['estimate', 'Lines'],
  ['estimate', 'Rates'],
  ['fleet-compare', 'Ranking'],
  ['mains-plan', 'SwitchOn'],
  ['pops-plan', 'PopSteps'],
  ['shot-record', 'AsLit'],
  ['pops-build', 'Tally'],
  ['set-card', 'Card'],
  ['flash-trace', 'Levels'],
  ['copy-evenness', 'Chance'],
] as const;

describe('a row more among the answers', () => {
  test.each(ANSWERS)('of %s, in %s, shows nothing and takes nothing away', async (id, name) => {
    const sheet = await editedSheet(id);
    const before = sheet.everything();
    const row = sheet.topOf(name) + 2;
    sheet.insertRow(row);
    sheet.fillFromAbove(name, 2);
    await sheet.calculate();
    const after = sheet.everything();
    const [own] = after.splice(row, 1);
    const { left, right } = sheet.columnsOf(name);
    expect(own?.slice(left, right).filter((value) => value !== '' && value !== null && value !== 0)).toEqual([]); // prettier-ignore
    expect(after).toEqual(before.slice(0, after.length));
    sheet.dispose();
  });

  test('a number typed under Row in it has it answer', async () => {
    const sheet = await editedSheet('heads');
    const names = sheet.column('Glance', 'Head', 5);
    sheet.insertRow(sheet.topOf('Glance') + 2);
    sheet.fillFromAbove('Glance', 2);
    sheet.put('Glance', 'Row', 2, { v: 4, f: null });
    await sheet.calculate();
    expect(sheet.column('Glance', 'Head', 6)).toEqual([names[0], names[1], names[3], names[2], names[3], names[4]]); // prettier-ignore
    sheet.dispose();
  });
});

describe('a row that is taken out from among the answers is missed', () => {
  const TOLD = [
    ['heads', 'Glance', 'whole', 'row 2 is missing below: type 2 under Row'],
    ['pops-plan', 'Dial', 'pops', 'row 2 is missing below: type 2 under Row'],
    ['lights-on-set', 'Turn', 'togetherThen', 'row 2 is missing below: type 2 under Row'],
    ['heads', 'Durations', 'whole', 'row 2 is missing below: type 2 under Row'],
    ['estimate', 'Lines', 'linesTold', 'all are counted; row 2 is missing below: type it under Row'],
    ['estimate', 'Taxes', 'linesTold', 'all are counted; a rate is missing below: type 1, 2 … under Row'],
    ['fleet-compare', 'Ranking', 'works', 'place 2 is missing below: type it under Row'],
    ['shot-record', 'AsLit', 'lights', 'row 2 is missing'],
    ['shot-record', 'Again', 'lights', 'row 2 is missing'],
    ['pops-build', 'Tally', 'pops', 'not all of them have a ring below'],
  ] as const;
  test.each(TOLD)('%s, %s', async (id, name, field, words) => {
    const sheet = await editedSheet(id);
    const row = sheet.topOf(name) + (id === 'pops-build' ? 0 : 1);
    sheet.deleteRow(row);
    await sheet.calculate();
    expect(sheet.beside(field, sheet.rowOf(field) > row ? -1 : 0)).toBe(`! ${words}`);
    sheet.dispose();
  });

  test.each([
    ['freeze-check', 'Manuals', 'Durations as typed', /^\(row 2 is missing: type it under Row\) t0\.1, Ws: /],
    ['mains-plan', 'SwitchOn', 'What to do', /^row 2 is missing: type it under Row; /],
  ] as const)('%s, %s, in the list itself', async (id, name, column, words) => {
    const sheet = await editedSheet(id);
    sheet.deleteRow(sheet.topOf(name) + 1);
    await sheet.calculate();
    expect(sheet.column(name, column, 2)[1]).toMatch(words);
    sheet.dispose();
  }); // prettier-ignore
});

describe('answers of several tables', () => {
  test('go by the lens setting, not by its place: a row that is gone from one of them moves none', async () => {
    const sheet = await editedSheet('depth-options');
    const answers = () => ['stack', 'stackFrames', 'stackBlur'].map((field) => sheet.cell(field));
    const before = answers();
    expect(before[0]).toBe(4);
    sheet.insertRow(sheet.topOf('Numbers'));
    await sheet.calculate();
    expect(answers()).toEqual(before);
    sheet.dispose();
    // without the row of f/4 among the stacks the next one is chosen, with its own frames
    const without = await editedSheet('depth-options');
    without.deleteRow(without.topOf('Stacks'));
    await without.calculate();
    const [setting, frames] = ['Lens setting', 'Frames'].map((name) => without.column('Stacks', name, 1)[0]);
    expect(['stack', 'stackFrames'].map((field) => without.cell(field))).toEqual([setting, frames]);
    without.dispose();
  });

  test('say so where a row of what they go by is gone, and never that nothing does the job', async () => {
    const sheet = await editedSheet('depth-options');
    sheet.deleteRow(sheet.topOf('Numbers') + 1);
    await sheet.calculate();
    expect([sheet.cell('stack'), sheet.cell('best')]).toEqual(['#N/A', '#N/A']);
    sheet.dispose();
  });

  test('a step that is gone from the order is missed', async () => {
    const sheet = await editedSheet('pops-plan');
    sheet.deleteRow(sheet.topOf('Order'));
    await sheet.calculate();
    expect(sheet.beside('pops')).toBe('! a step is missing in the order below');
    sheet.dispose();
  });

  test('a row more at the top of what a sheet looks up leaves its answers', async () => {
    const sheet = await editedSheet('estimate');
    const toPay = sheet.cell('toPay');
    sheet.insertRow(sheet.topOf('FromPlan'));
    await sheet.calculate();
    expect(sheet.cell('toPay')).toBe(toPay);
    sheet.dispose();
  });
});
