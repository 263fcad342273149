import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { contrast, LEGIBLE, luminance, type Rgb } from '../../src/hosts/workbench/grid/dark/nightColour';
import { oneOf } from '../full';
import { drawn } from './cellColours';
import { Person, type Screen } from './person';

const SIZES = [
  { width: 1400, height: 820, touched: false },
  { width: 820, height: 1180, touched: true },
  { width: 400, height: 800, touched: true },
] as const;
const LOOKS = ['light', 'dark'] as const;
/** Each size in one of them, and in the other in another run. */
const SCREENS: readonly Screen[] = SIZES.map((size, i) => ({
  ...size,
  look: LOOKS[(i + oneOf(LOOKS.length)) % LOOKS.length] ?? 'light',
}));

/** In milliseconds, so that a busy computer tells of all the steps. */
const LONG = 180_000;

const DARK = 0.1;
const LIGHT = 0.7;
/** Pixels between a cell and what is told of it that an eye takes in at once. */
const BESIDE = 150;

const rgb = (css: string): Rgb => (css.match(/[\d.]+/g) ?? []).slice(0, 3).map(Number) as unknown as Rgb;

/** That the cells and what stands around them are in these colours. */
async function isIn({ sheet }: Person, look: Screen['look']): Promise<void> {
  const isRight = (ground: number) => (look === 'dark' ? ground < DARK : ground > LIGHT);
  await expect.poll(async () => isRight((await drawn(sheet, 'A1')).ground)).toBe(true);
  const bar = await sheet.page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  expect(isRight(luminance(rgb(bar)))).toBe(true);
}

/** A page that a link of the pane opens beside this one, which stays as it is. */
async function opens(person: Person, name: string): Promise<Page> {
  const coming = person.page.context().waitForEvent('page');
  await person.press(person.sheet.pane.getByRole('link', { name, exact: true }));
  const page = await coming;
  await page.waitForLoadState();
  return page;
}

const care = ({ sheet }: Person) => sheet.pane.getByText('keeps a dangerous charge');
const careLine = ({ sheet }: Person) => sheet.pane.locator('summary', { hasText: 'Take care' });
const sums = ({ page }: Person) => page.locator('#grid footer').innerText();

/** What somebody does who has never been here, in this order. */
const STEPS: Readonly<Record<string, (person: Person, screen: Screen) => Promise<void>>> = {
  async 'sees one offer, and what can hurt somebody, and nothing moves meanwhile'(person, { look }) {
    expect(await person.moved()).toBe('nowhere');
    await isIn(person, look);
    await person.sees(person.button('New job'));
    await person.sees(care(person));
  },
  async 'gets three sheets, and sees where to begin, below its heading'(person) {
    const { sheet, page } = person;
    await person.press(person.button('New job'));
    await expect.poll(() => sheet.sheets()).toEqual(['Pops build', 'Heads', 'Pops plan', 'Set card']);
    await expect.poll(() => page.evaluate(() => window.sweeptable.selected())).toBe('A44');
    await person.sees(page.getByRole('tab', { name: 'Heads', exact: true }).locator('span').first());
    await person.reads('A43', 'A44');
    await person.type('A44', 'Slate 600');
    await expect.poll(() => sheet.texts('A44')).toEqual(['Slate 600']);
    await person.sees(page.locator('[data-u-comp="formula-bar"]'));
  },
  async 'reads why a value is not taken at its cell, which keeps what was typed'(person) {
    const { sheet, page } = person;
    await person.type('B44', '0');
    await sheet.refusal.filter({ hasText: 'a whole number from 1 to 99' }).waitFor();
    await person.sees(sheet.refusal);
    const at = await page.evaluate(() => window.sweeptable.place('B44'));
    const box = await sheet.refusal.boundingBox();
    if (!box) throw new Error('The reason is not in sight.');
    const far = (from: number, to: number, now: number) => Math.max(from - now, 0, now - to);
    expect(far(box.x, box.x + box.width, at.x)).toBeLessThan(BESIDE);
    expect(far(box.y, box.y + box.height, at.y)).toBeLessThan(BESIDE);
    // a figure behind what was typed, which is still there
    await page.keyboard.press('End');
    await page.keyboard.type('5');
    await page.keyboard.press('Enter');
    await sheet.refusal.waitFor({ state: 'detached' });
    await expect.poll(() => sheet.texts('B44')).toEqual(['5']);
    await person.type('B44', '0');
    await person.press(sheet.refusal.getByRole('button', { name: /^Back to 5/ }));
    await sheet.refusal.waitFor({ state: 'detached' });
    expect(await sheet.texts('B44')).toEqual(['5']);
  },
  async 'finds the cautions out of the way, and has them back'(person) {
    await person.pane(true);
    expect(await care(person).isVisible()).toBe(false);
    await person.press(careLine(person));
    await person.sees(care(person));
    await person.press(careLine(person));
  },
  async 'opens help, support, privacy and licences, and comes back'(person) {
    for (const [name, words] of [
      ['Help', 'In the workbench'],
      ['Support', 'What to try first'],
      ['Privacy', 'What leaves the page'],
      ['Licences', 'MIT License'],
    ] as const) {
      // oxlint-disable-next-line no-await-in-loop -- one page after the other
      const beside = await opens(person, name);
      // oxlint-disable-next-line no-await-in-loop -- as above
      await beside.getByText(words).first().waitFor();
      // oxlint-disable-next-line no-await-in-loop -- as above
      await beside.close();
    }
  },
  async 'finds a function by the beginning of its name, in the pane and in a cell'(
    person,
    { width, touched },
  ) {
    const { sheet, page } = person;
    await person.press(sheet.pane.getByRole('tab', { name: 'Functions', exact: true }));
    await sheet.pane
      .getByRole('tabpanel')
      .filter({ visible: true })
      .locator('input')
      .first()
      .fill('popsfort');
    await person.sees(sheet.pane.getByRole('heading', { name: 'POPSFORTARGET', exact: true }));
    await person.press(sheet.pane.getByRole('tab', { name: 'Sheets', exact: true }));
    if (width < 800) await person.pane(false);
    await person.choose('A51');
    if (touched) await person.choose('A51');
    await page.keyboard.type('=popsfort');
    const offered = page.locator('[data-u-comp="sheets-formula-editor"] li').first();
    await expect.poll(() => offered.innerText()).toContain('SWEEP.POPSFORTARGET');
    await person.sees(offered);
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
  },
  async 'names the head of a light anew, types its reading, and the plan follows'(person) {
    const { sheet } = person;
    await person.goesTo('Pops plan');
    await expect.poll(() => sheet.texts('L65', 'B16')).toEqual(['unknown', '']);
    await person.type('A65', 'Slate 600');
    await expect.poll(() => sheet.texts('L65', 'A16')).toEqual(['', 'key: Slate 600']);
    await expect.poll(() => sheet.texts('B16')).not.toEqual(['']);
    const before = await sheet.texts('B16', 'D16');
    await person.type('D65', '11');
    await person.type('E65', '5');
    await expect.poll(() => sheet.texts('D65', 'E65')).toEqual(['f/11', '5']);
    await expect.poll(() => sheet.texts('B16', 'D16')).not.toEqual(before);
    await expect.poll(() => sheet.texts('B16')).not.toEqual(['']);
  },
  async 'has seconds added up below the cells, and no f-numbers'(person) {
    await person.chooseFromTo('D65', 'D67');
    await expect.poll(() => sums(person)).toContain('Numbers');
    expect(await sums(person)).not.toContain('Sum');
    await person.goesTo('Heads');
    await person.chooseFromTo('H44', 'H46');
    await expect.poll(() => sums(person)).toMatch(/Sum\D+2\.7/);
  },
  async 'goes on to the card, which has the plan'(person) {
    const { sheet } = person;
    await person.goesTo('Pops plan');
    const plan = await sheet.texts('A16', 'B16');
    expect(plan).not.toContain('');
    await person.goesTo('Set card');
    await person.reads('A1');
    await person.type('B5', 'Blue jug, 1');
    await expect.poll(() => sheet.texts('B5', 'A21', 'B21')).toEqual(['Blue jug, 1', ...plan]);
  },
  async 'puts it on paper, which is white'(person) {
    const { sheet, page } = person;
    const card = await sheet.texts('B5', 'A21', 'B21');
    await page.evaluate(() => {
      window.print = () => void document.documentElement.setAttribute('data-asked', 'yes');
    });
    await person.press(person.button('Print'));
    await expect.poll(() => page.locator('html').getAttribute('data-asked')).toBe('yes');
    await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
    await page.emulateMedia({ media: 'print' });
    const printed = await page.locator('.paper .cell', { hasText: /\S/ }).evaluateAll((all) =>
      all.map((cell) => {
        let behind: Element | null = cell;
        while (behind && getComputedStyle(behind).backgroundColor === 'rgba(0, 0, 0, 0)')
          behind = behind.parentElement;
        return {
          text: cell.textContent,
          ink: getComputedStyle(cell).color,
          ground: behind ? getComputedStyle(behind).backgroundColor : 'rgb(255, 255, 255)',
        };
      }),
    );
    await page.emulateMedia({ media: null });
    await page.evaluate(() => dispatchEvent(new Event('afterprint')));
    expect(printed.map(({ text }) => text)).toEqual(expect.arrayContaining(card));
    for (const { text, ink, ground } of printed) {
      expect(luminance(rgb(ground)), text).toBeGreaterThan(LIGHT);
      expect(contrast(rgb(ink), rgb(ground)), text).toBeGreaterThan(LEGIBLE);
    }
  },
  async 'has it in the other colours, and back'(person, { look }) {
    await person.press(person.button('Dark'));
    await isIn(person, look === 'dark' ? 'light' : 'dark');
    await person.reads('A5', 'B5');
    await person.press(person.button('Dark'));
    await isIn(person, look);
    await person.reads('A5', 'B5');
  },
};

describe.each(SCREENS)('at $width by $height px in the $look, touched: $touched', (screen) => {
  it(
    'somebody who is here for the first time gets to a card on paper',
    async () => {
      const person = await Person.at(screen);
      // where one thing goes wrong, a person goes on: all of it is told
      const wrong: string[] = [];
      for (const [step, does] of Object.entries(STEPS))
        // oxlint-disable-next-line no-await-in-loop -- one step after the other
        await does(person, screen).catch((fault: unknown) => wrong.push(`${step}: ${String(fault)}`));
      expect(wrong).toEqual([]);
      await person.leave();
    },
    LONG,
  );
});
