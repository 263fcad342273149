import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { CATALOGUE, NAMESPACE } from '../../src/catalogue';
import { type Site, site, Workbench } from './workbench';

let place: Site;
let sheet: Workbench;

beforeAll(async () => {
  place = await site();
});
afterAll(() => place?.close());
beforeEach(async () => {
  sheet = await Workbench.open(place);
});
afterEach(async () => {
  expect(sheet.complaints).toEqual({ errors: [], outside: [] });
  await sheet.page.close();
});

describe('the example that a newcomer meets', () => {
  it('has answers before anything is touched', async () => {
    // Worked by hand: f/16, f/11 and f/8 give light as 4, 2 and 1 (marks stand for powers of √2), together 7/4 of f/16.
    const [key, second, third, all, toSecond, power] = await sheet.values(
      'D6',
      'D7',
      'D8',
      'C9',
      'E7',
      'G17',
    );
    expect(key).toBeCloseTo(4 / 7, 9);
    expect(second).toBeCloseTo(2 / 7, 9);
    expect(third).toBeCloseTo(1 / 7, 9);
    expect(all).toBeCloseTo(16 * Math.sqrt(7 / 4), 9);
    expect(toSecond).toBeCloseTo(-1, 9);
    expect(power).toBeCloseTo(784, 9); // 400 Ws · (2.1 / 1.5)²
    // (45.25 · 150/120 / 21.17)² = 7.14, and a twentieth of a stop less is 6.9: seven pops.
    await sheet.shows('G13', 7);
  });

  it('shows every number in full, and one refusal only', async () => {
    const cells = Array.from({ length: 21 }, (_, row) =>
      'ABCDEFGH'.split('').map((column) => `${column}${row + 1}`),
    ).flat();
    const texts = await sheet.page.evaluate(
      (all) => all.map((a1) => [a1, window.sweeptable.cell(a1).text] as const),
      cells,
    );
    expect(texts.filter(([, text]) => text.startsWith('#'))).toEqual([['G18', '#N/A']]);
    expect(Object.fromEntries(texts)).toMatchObject({
      C6: 'f/16',
      C9: 'f/21.2',
      D6: '57%',
      E7: '-1.0 stops',
      G13: '7 pops',
      G17: '784 Ws',
    });
  });

  it('says why in the tip over the refused cell', async () => {
    await sheet.hover('G18');
    const tip = sheet.page.locator('.tip');
    await tip.waitFor();
    expect(await tip.innerText()).toMatch(/1\.6 stops? more than the head gives/);
    expect(await tip.locator('xpath=../..').innerText()).toContain('#N/A SWEEP.POWERFORDISTANCE');
    expect(
      await tip.evaluate(
        (e) => e.scrollWidth <= e.clientWidth && e.getBoundingClientRect().right <= innerWidth,
      ),
    ).toBe(true);
  });
});

describe('typing a formula', () => {
  it('offers our functions, explains the argument in hand, and answers', async () => {
    const { keyboard } = sheet.page;
    await sheet.click('B21');
    await keyboard.type('=SWEEP.POPSF');
    const offered = sheet.page.locator('li', { hasText: 'SWEEP.POPSFORTARGET' });
    await offered.waitFor();
    await keyboard.press('Enter');

    const help = sheet.page.locator('[data-u-comp="rect-popup"]', { hasText: 'SWEEP.POPSFORTARGET(' });
    const inHand = help.locator('.univer-my-2:has(> .univer-text-primary-500)');
    await expect.poll(() => inHand.innerText()).toMatch(/^reading\s/);
    await keyboard.type('16,');
    await expect.poll(() => inHand.innerText()).toMatch(/^target\s+Required\./);
    await keyboard.type('45,1)');
    await keyboard.press('Enter');
    await sheet.shows('B21', 16);
    expect((await sheet.cell('B21')).formula).toBe('=SWEEP.POPSFORTARGET(16,45,1)');
  });

  it('lists every function after the dot', async () => {
    await sheet.click('B21');
    await sheet.page.keyboard.type('=SWEEP.');
    const offered = sheet.page.locator('[data-u-comp="sheets-formula-editor"] li');
    await offered.first().waitFor();
    const names = await offered.locator('> span:first-child').allInnerTexts();
    expect(names).toEqual(CATALOGUE.map(({ id }) => `${NAMESPACE}.${id}`));
    await sheet.page.keyboard.press('Escape');
  });

  it('takes names in small letters', async () => {
    await sheet.enter('B21', '=sweep.stopdiff(8,16)');
    await sheet.showsNear('B21', 2);
  });

  it('reads text as a meter or a shutter shows it', async () => {
    await sheet.enterDown('J2', [
      '=SWEEP.STOPDIFF("f/8","f/11")',
      '=SWEEP.STOPDIFF("1/125","1/60","time")',
      '=SWEEP.STOPTEXT(12.55)',
    ]);
    await sheet.showsNear('J2', 1);
    await sheet.showsNear('J3', 1);
    await sheet.shows('J4', 'f/11 +0.3');
  });
});

describe('mistakes', () => {
  it('are explained in the tip, and undo takes them back', async () => {
    await sheet.enter('C7', 'eleven');
    await sheet.refuses('E7', '#VALUE!', /eleven/);
    await sheet.hover('E7');
    await expect.poll(() => sheet.page.locator('.tip').innerText()).toMatch(/eleven/);

    await sheet.click('A3');
    await sheet.page.keyboard.press('Control+z');
    await sheet.shows('C7', 11);
    await sheet.showsNear('E7', -1);
    expect((await sheet.cell('E7')).message).toBeUndefined();
  });

  it('in the number of arguments have a sentence', async () => {
    await sheet.enterDown('J2', [
      '=SWEEP.STOPDIFF(8)',
      '=SWEEP.STOPDIFF(8,11,"aperture",4)',
      '=SWEEP.STOPDIFF()',
    ]);
    await sheet.refuses('J2', '#VALUE!', /to/);
    await sheet.refuses('J3', '#VALUE!', /2 or 3 values, not 4/);
    await sheet.refuses('J4', '#VALUE!', /from/);
  });

  it('leave the sentence behind when the cell is typed over', async () => {
    await sheet.enter('J2', '=SWEEP.STOPDIFF(8,"x")');
    await sheet.refuses('J2', '#VALUE!', /x/);
    await sheet.enter('J2', '=1/0');
    await sheet.shows('J2', '#DIV/0!');
    expect((await sheet.cell('J2')).message).toBeUndefined();
    await sheet.enter('J2', '=SWEEP.STOPDIFF(8,11)');
    await sheet.showsNear('J2', 1);
  });

  it('of a fraction that became a date, or a ratio that became a time of day, are named', async () => {
    await sheet.enterDown('J2', ['1/4', '3:1']);
    await sheet.enterDown('K2', ['=SWEEP.EXPOSUREVALUE(8,J2)', '=SWEEP.MAGNIFICATIONLOSS(J3)']);
    await sheet.refuses('K2', '#VALUE!', /looks like a date/);
    await sheet.refuses('K3', '#VALUE!', /looks like a clock time/);
  });

  it('are none where a shutter time is no date', async () => {
    await sheet.enterDown('J2', ['1/60', '1/45']);
    await sheet.enterDown('K2', ['=SWEEP.EXPOSUREVALUE(8,J2)', '=SWEEP.EXPOSUREVALUE(8,J3)']);
    // By definition: f/8 is 6, and the marks 1/60 and 1/45 stand for 2^-6 s and 2^-5.5 s.
    await sheet.showsNear('K2', 12);
    await sheet.showsNear('K3', 11.5);
  });
});

describe('a column of readings', () => {
  it('spills against one target, and follows an edit', async () => {
    await sheet.enter('J2', '=SWEEP.POPSFORTARGET(C6:C8,45)');
    // f/16, f/11 and f/8 lie 3, 4 and 5 stops under f/45; a twentieth of a stop is let go, so 2^2.95, 2^3.95, 2^4.95.
    await sheet.shows('J2', 8);
    expect(await sheet.values('J2', 'J3', 'J4')).toEqual([8, 16, 31]);
    await sheet.enter('C7', '22');
    await sheet.shows('J3', 4);
    expect(await sheet.values('J2', 'J3', 'J4')).toEqual([8, 4, 31]);
  });

  it('says #SPILL! rather than overwrite', async () => {
    await sheet.enter('J3', 'kept');
    await sheet.enter('J2', '=SWEEP.LIGHTSHARE(C6:C8)');
    await sheet.shows('J2', '#SPILL!');
    await sheet.shows('J3', 'kept');
  });
});
