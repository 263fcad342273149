import type { BrowserContextOptions } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import { browser } from './browser';
import { Hand } from './hand';
import { Workbench } from './workbench';

let sheet: Workbench;
let hand: Hand;

/** A visitor's page on a screen that is touched. */
async function onGlass(width: number, height: number, more: BrowserContextOptions = {}): Promise<void> {
  const of = await (
    await browser()
  ).newContext({ viewport: { width, height }, hasTouch: true, locale: 'en-US', ...more });
  sheet = await Workbench.open({ of });
  hand = await Hand.on(sheet.page);
}

afterEach(async () => {
  const { complaints } = sheet;
  await sheet.close();
  expect(complaints).toEqual({ errors: [], outside: [] });
});

const selected = () => sheet.page.evaluate(() => window.sweeptable.selected());
const placeOf = (a1: string) => sheet.page.evaluate((at) => window.sweeptable.place(at), a1);
const roomOf = (a1: string) => sheet.page.evaluate((at) => window.sweeptable.room(at), a1);
const button = (name: string) => sheet.page.getByRole('button', { name, exact: true });
/** The box in which a cell is written into. */
const written = () =>
  sheet.page.locator('#grid .univer-absolute.univer-z-10.univer-flex').evaluate((box) => {
    const { top, bottom } = box.getBoundingClientRect();
    return { top, bottom, opacity: getComputedStyle(box).opacity };
  });
const chart = () => sheet.page.locator('.charts .chart').first();
/** Swipes the sheet up by so much and no more, which a sheet cannot say by itself. */
async function scrollDown(by: number): Promise<void> {
  for (let left = by; left > 0; left -= 400)
    await hand.swipe({ x: 200, y: 800 }, { x: 200, y: 800 - Math.min(400, left) }, { rests: true });
}

/** By the lists and the corner of Heads, as a new job lays it. */
async function choosesAndFills(): Promise<void> {
  const { page } = sheet;
  await expect.poll(async () => (await sheet.texts('F45'))[0]).toBe('stops');
  const list = page.locator('[data-u-comp="sheets-dropdown-list"]');
  const entries = list.locator('.univer-cursor-pointer');
  // a finger beside the arrow, which is at the right end of the cell
  await hand.tap(await placeOf('E45'));
  await list.waitFor();
  await page.keyboard.press('Escape');
  await list.waitFor({ state: 'hidden' });
  await expect.poll(selected).toBe('E45');
  await hand.tap(await placeOf('E45'));
  await list.waitFor();
  // elsewhere, where the next cell has no list
  await hand.tap(await placeOf('B44'));
  await list.waitFor({ state: 'hidden' });
  const scale = await placeOf('F45');
  await hand.tap(scale);
  await expect.poll(selected).toBe('F45');
  expect(await list.isVisible()).toBe(false);
  await hand.tap(scale);
  await list.waitFor();
  const heights = await entries.evaluateAll((all) => all.map((each) => each.getBoundingClientRect().height));
  expect(heights.length).toBeGreaterThan(1);
  expect(heights.filter((height) => height < 44)).toEqual([]);
  await entries.filter({ hasText: 'percent' }).tap();
  await sheet.shows('F45', 'percent');

  const [most, room] = [await placeOf('C45'), await roomOf('C45')];
  const corner = { x: most.x + room.width / 2, y: most.y + room.height / 2 };
  await hand.tap(most);
  await expect.poll(selected).toBe('C45');
  const hint = page.locator('.touch-hint');
  await hand.swipe(corner, { x: corner.x, y: corner.y + 30 }, { rests: true });
  await expect.poll(() => hint.textContent()).toBe('To fill cells, hold the corner first, then drag');
  expect(await sheet.values('C45', 'C46', 'C47')).toEqual([1200, 2400, 400]);
  const scrolled = (await placeOf('C45')).y - most.y;
  await hand.hold({ x: corner.x, y: corner.y + scrolled }, { x: corner.x, y: (await placeOf('C47')).y });
  await expect.poll(selected).toBe('C45:C47');
  await expect.poll(() => sheet.values('C45', 'C46', 'C47')).toEqual([1200, 1200, 1200]);
  for (const before of ['percent', 'stops']) {
    await button('Undo').tap();
    await expect.poll(() => sheet.values('C46', 'F45')).toEqual([2400, before]);
  }
}

describe('by touch alone', () => {
  it('leads at 820 px from a new job over lists, a fill and readings to a printed set card', async () => {
    await onGlass(820, 1180);
    const { page } = sheet;
    await button('New job').tap();
    await expect.poll(() => sheet.sheets()).toContain('Set card');
    await choosesAndFills();
    await button('Sheets and functions').tap();
    await expect.poll(() => sheet.pane.isVisible()).toBe(false);

    const tab = (name: string) => page.getByRole('tab', { name, exact: true });
    await tab('Pops plan').tap();
    await expect.poll(() => page.evaluate(() => window.sweeptable.inView())).toBe('Pops plan');
    const before = await sheet.texts('B11');
    const write = async (a1: string, text: string, shown: string): Promise<void> => {
      await scrollDown((await placeOf(a1)).y - 500);
      const place = await placeOf(a1);
      for (let taps = 0; taps < 2; taps++) await hand.tap(place);
      await expect.poll(selected).toBe(a1);
      await page.keyboard.press('Backspace');
      await page.keyboard.press('Backspace');
      await page.keyboard.insertText(text);
      await page.keyboard.press('Enter');
      await expect.poll(async () => (await sheet.texts(a1))[0]).toBe(shown);
    };
    const readings = () => sheet.texts('B16', 'C16');
    const metered = await readings();
    await write('D65', '22', 'f/22');
    await expect.poll(readings).not.toEqual(metered);
    const first = await readings();
    await write('E65', '2', '2');
    await expect.poll(readings).not.toEqual(first);
    await expect.poll(() => sheet.texts('B11')).not.toEqual(before);
    const [light = '', dial = ''] = await sheet.texts('A16', 'B16');
    expect(light).toMatch(/^key: /);

    await tab('Set card').tap();
    await expect.poll(() => page.evaluate(() => window.sweeptable.inView())).toBe('Set card');
    await page.evaluate(() => {
      window.print = () => {
        dispatchEvent(new Event('beforeprint'));
        document.title = document.querySelector<HTMLElement>('.paper')?.innerText ?? '';
        dispatchEvent(new Event('afterprint'));
      };
    });
    await button('Print').tap();
    await expect.poll(() => page.title()).toContain(dial);
    expect(await page.title()).toContain(light);
  });

  it('scrolls a sheet on, until it is touched, it ends, or nothing is to move by itself', async () => {
    await onGlass(820, 1180);
    await scrollDown(1000);
    const [from, to] = [
      { x: 30, y: 700 },
      { x: 30, y: 620 },
    ];
    // a chart stands as far up as the sheet is scrolled, while it is in sight
    const up = async () => (await chart().boundingBox())?.y ?? NaN;
    const rests = async (): Promise<number> => {
      let last = NaN;
      await expect
        .poll(
          async () => {
            const [before, now] = [last, await up()];
            last = now;
            return now - before;
          },
          { interval: 60 },
        )
        .toBe(0);
      return last;
    };
    const start = await up();
    await hand.swipe(from, to, { rests: true });
    const slow = start - (await rests());
    expect(slow).toBeGreaterThan(75);
    expect(slow).toBeLessThan(85);
    // 80 px in 8 steps of 16 ms: 0.6 px a millisecond, so that it goes some 325 · 0.6 px on
    await hand.swipe(from, to);
    const quick = start - slow - (await rests());
    expect(quick).toBeGreaterThan(80 + 100);
    expect(quick).toBeLessThan(80 + 325 * 0.7);
    await hand.swipe(to, from);
    await hand.hold(from);
    const stopped = await up();
    await sheet.page.waitForTimeout(200);
    expect(await up()).toBe(stopped);
    await sheet.page.keyboard.press('Escape');

    await sheet.page.emulateMedia({ reducedMotion: 'reduce' });
    const still = await up();
    await hand.swipe(from, to);
    const moved = still - (await rests());
    expect(moved).toBeGreaterThan(75);
    expect(moved).toBeLessThan(85);
  });

  it('leaves a chart where it is where a swipe begins on it, and moves one that is held', async () => {
    await onGlass(820, 1180);
    await scrollDown(1200);
    const before = await chart().boundingBox();
    if (!before) throw new Error('The chart is not in sight.');
    const middle = { x: before.x + 100, y: before.y + 100 };
    await hand.swipe(middle, { x: middle.x, y: middle.y - 60 }, { rests: true });
    const after = await chart().boundingBox();
    expect(after?.y).toBeCloseTo(before.y - 60, -0.5);
    const told = sheet.page.locator('.charts [role=status]');
    expect(await told.textContent()).toBe('');
    await hand.hold({ x: middle.x, y: middle.y - 60 }, { x: middle.x, y: middle.y + 60 });
    await expect.poll(() => told.textContent()).toMatch(/^From /);
  });

  it('chooses rows and columns by their headings, opens the menu of what is held, and presses what lies over the cells', async () => {
    await onGlass(820, 1180);
    const place = await placeOf('B9');
    await hand.tap({ x: 20, y: place.y });
    await expect.poll(selected).toBe('9:9');
    await hand.hold({ x: 20, y: place.y }, { x: 20, y: (await placeOf('B12')).y });
    await expect.poll(selected).toBe('9:12');
    await hand.hold(place);
    const menu = sheet.page.getByText('Paste only');
    await menu.waitFor();
    await hand.tap(await placeOf('B6'));
    await menu.waitFor({ state: 'hidden' });
    await expect.poll(selected).toBe('B6');

    await scrollDown(700);
    const add = sheet.page.getByRole('button', { name: /^Add a row to / }).first();
    const tables = await sheet.tables();
    await add.tap();
    await expect.poll(() => sheet.tables()).not.toEqual(tables);
  });
});

describe('what is touched', () => {
  /** What is smaller than a finger, by its name. */
  const small = () =>
    sheet.page.evaluate(() =>
      [
        ...document.querySelectorAll<HTMLElement>(
          '.bar button, #pane button, #pane input, #pane summary, #notice button, .dialog button, .at-foot button, #grid footer [role=tab]',
        ),
      ]
        .filter((each) => each.checkVisibility() && !each.closest('.away'))
        .map((each) => ({ words: each.textContent, box: each.getBoundingClientRect() }))
        .filter(({ box }) => box.height < 44 || box.width < 24)
        .map(({ words, box }) => `${words}: ${box.width} × ${box.height}`),
    );

  it('is 44 px tall', async () => {
    await onGlass(820, 1180);
    await scrollDown(700);
    expect(await small()).toEqual([]);
    for (const name of ['Functions', 'Explain', 'Balance', 'Set']) {
      await sheet.pane.getByRole('tab', { name, exact: true }).tap();
      expect(await small(), name).toEqual([]);
    }
    await button('Start over').tap();
    await sheet.dialog.waitFor();
    expect(await small()).toEqual([]);
  });

  it.each([820, 400, 350])('is so among the tools of the grid as well, at %i px', async (width) => {
    await onGlass(width, 1180);
    if (width < 800) await button('Sheets and functions').tap();
    /** Which tools a finger misses that lies half of 44 px beside their middle. */
    const missed = (which: string) =>
      sheet.page.evaluate((all) => {
        const half = 21;
        const misses = (tool: Element): boolean => {
          const { left, right, top, bottom } = tool.getBoundingClientRect();
          const [x, y] = [(left + right) / 2, (top + bottom) / 2];
          return [
            [-half, 0],
            [half, 0],
            [0, -half],
            [0, half],
          ].some(([across = 0, down = 0]) => {
            const found = document.elementFromPoint(x + across, y + down);
            return !found || !(tool.contains(found) || found.contains(tool));
          });
        };
        const tools = [...document.querySelectorAll(all)].filter(
          (each) => each.checkVisibility() && each.getBoundingClientRect().left >= 0,
        );
        if (tools.length === 0) throw new Error(`Nothing is ${all}.`);
        return tools
          .filter(misses)
          .map((tool) => tool.getAttribute('aria-label') ?? tool.getAttribute('data-u-command'));
      }, which);
    const TOOLS = [
      '#grid [role=toolbar] [data-u-command]',
      '#grid [aria-label="More"]',
      '#grid [data-u-comp="formula-bar"] [aria-label="Names"]',
      '#grid footer button',
    ].join(', ');
    expect(await missed(TOOLS)).toEqual([]);
    await button('More').tap();
    const more = '[data-slot="popover-content"]';
    expect(await missed(`${more} [data-u-command]`)).toEqual([]);
    await sheet.page.keyboard.press('Escape');
    // while it fades it takes what is touched
    await sheet.page.locator(more).waitFor({ state: 'detached' });
    await hand.hold(await placeOf('A6'));
    await sheet.page.getByText('Paste only').waitFor();
    await expect.poll(() => missed('.univer-popup button')).toEqual([]);
  });
});

describe('with no room beside the sheet', () => {
  it('at 400 px the pane lies over it, leaves after an insert and says what was done, and the cell can be read, with the sum of several', async () => {
    await onGlass(400, 800);
    const { page } = sheet;
    expect((await sheet.pane.boundingBox())?.width).toBe(400);
    await sheet.pane.getByRole('button', { name: /^Insert with the demo job\W+Heads$/ }).tap();
    await expect.poll(() => sheet.pane.isVisible()).toBe(false);
    await expect.poll(() => sheet.notice.innerText()).toContain('is inserted');
    expect(await sheet.notice.innerText()).toContain('Undo takes');
    const tab = page.getByRole('tab', { name: 'Heads', exact: true });
    const names = page.locator('[data-u-comp="slide-tab-bar"]');
    await expect
      .poll(async () => {
        const [one, all] = [await tab.boundingBox(), await names.boundingBox()];
        return one && all ? one.x >= all.x && one.x + one.width <= all.x + all.width + 1 : false;
      })
      .toBe(true);
    await sheet.goTo('A13');
    const edge = async (a1: string, side: 1 | -1): Promise<number> =>
      (await placeOf(a1)).y + (side * (await roomOf(a1)).height) / 2;
    // below the rows that stay, all of it
    await expect.poll(() => edge('A13', -1)).toBeGreaterThan((await edge('A2', 1)) - 1);
    await sheet.goTo('C44');
    await hand.hold(await placeOf('C44'), await placeOf('C46'));
    await expect
      .poll(() => page.locator('#grid footer').innerText())
      .toMatch(/Sum: 4 200 Ws\s+Average: 1 400 Ws/);
    await hand.hold(await placeOf('B45'));
    await page.getByText('Clear', { exact: true }).tap();
    const opened = page.locator('[data-u-context-menu-submenu]');
    await expect
      .poll(async () => {
        const box = await opened.boundingBox();
        return box !== null && box.x >= 0 && box.x + box.width <= 400;
      })
      .toBe(true);
    // longer than the grid waits for a pointer that has gone
    await page.waitForTimeout(800);
    await page.getByText('Copy as', { exact: true }).tap();
    await expect.poll(() => opened.allInnerTexts()).toEqual([expect.stringMatching(/Formulas alone/)]);
    await page.waitForTimeout(800);
    await page.getByText('Clear', { exact: true }).tap();
    await page.getByText('What they hold', { exact: true }).tap();
    await expect.poll(() => sheet.texts('B45')).toEqual(['']);
    await opened.waitFor({ state: 'hidden' });
    await page.keyboard.press('Control+z');
    await expect.poll(() => sheet.texts('B45')).toEqual(['1']);
    await button('Take back').tap();
    await expect.poll(() => sheet.sheets()).toEqual(['Pops build']);

    await hand.tap(await placeOf('B6'));
    await expect.poll(selected).toBe('B6');
    const bar = await page.locator('[data-u-comp="formula-bar"] canvas').boundingBox();
    expect(bar?.width).toBeGreaterThan(150);
    // where the keyboard goes it can be seen
    await page.keyboard.press('Control+F6');
    await page.keyboard.press('Control+F6');
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.textContent))
      .toBe('Sheets and functions');
    await page.keyboard.press('Enter');
    await expect.poll(() => sheet.pane.isVisible()).toBe(true);
    await sheet.pane.getByRole('tab', { name: 'Sheets' }).focus();
    await page.keyboard.press('Escape');
    await expect.poll(() => sheet.pane.isVisible()).toBe(false);
  });

  it('means at 820 px the cells that a note lies over, and writes the note that is opened to be written', async () => {
    await onGlass(820, 1180);
    const { page } = sheet;
    const note = page.locator('[data-u-comp="note-textarea"]');
    const shown = async (a1: string) => {
      await hand.tap(await placeOf(a1));
      await expect.poll(selected).toBe(a1);
      await note.waitFor();
      return note.inputValue();
    };
    const before = await shown('B5');
    const { x, y, width, height } = (await note.boundingBox()) ?? { x: NaN, y: NaN, width: NaN, height: NaN };
    await hand.tap({ x: x + width / 2, y: y + height / 2 });
    await expect.poll(selected).not.toBe('B5');
    await page.keyboard.type('9');
    await page.keyboard.press('Enter');
    expect(await shown('B5')).toBe(before);

    await hand.hold(await placeOf('B5'));
    await page.getByText('Write the note', { exact: true }).tap();
    await expect.poll(() => note.evaluate((field) => document.activeElement === field)).toBe(true);
    await page.keyboard.press('Control+End');
    await page.keyboard.type(' Ask Ada.');
    expect(await note.inputValue()).toBe(`${before} Ask Ada.`);
  });

  it('at 400 px says why it refuses where that can be read, and keeps the cell that is written into above the keyboard', async () => {
    await onGlass(400, 800);
    const { page } = sheet;
    await button('Sheets and functions').tap();
    const write = async (a1: string, text: string): Promise<void> => {
      await hand.tap(await placeOf(a1));
      await expect.poll(selected).toBe(a1);
      await hand.tap(await placeOf(a1));
      await page.keyboard.press('Control+a');
      await page.keyboard.insertText(text);
    };
    await write('B7', '-3');
    await page.keyboard.press('Enter');
    await sheet.refusal.waitFor();
    await expect
      .poll(async () => {
        const box = await sheet.refusal.boundingBox();
        return box !== null && box.x >= 0 && box.x + box.width <= 400;
      })
      .toBe(true);
    await page.getByRole('button', { name: 'Back to 120 mm' }).tap();
    await sheet.refusal.waitFor({ state: 'detached' });
    await sheet.shows('B7', 120);

    // the keyboard on the glass takes the lower half of the page
    await write('B17', '45');
    await page.setViewportSize({ width: 400, height: 520 });
    await expect.poll(async () => (await written()).bottom).toBeLessThan(520 - 48);
    // and the box goes along with its cell, or away with it
    const { top } = await written();
    await hand.swipe({ x: 150, y: 440 }, { x: 150, y: 400 }, { rests: true });
    await expect.poll(async () => (await written()).top).toBeLessThan(top - 30);
    const onwards = async (): Promise<string> => {
      await hand.swipe({ x: 150, y: 460 }, { x: 150, y: 260 }, { rests: true });
      return (await written()).opacity;
    };
    await expect.poll(onwards).toBe('0');
    await page.keyboard.press('Enter');
    await sheet.shows('B17', 45);
  });

  it('at 350 px begins with an input beside its label, under a bar of two lines, and shows the name of the sheet in view', async () => {
    await onGlass(350, 700);
    const { page } = sheet;
    const lines = await page
      .locator('.bar button')
      .evaluateAll((all) => new Set(all.map((each) => each.getBoundingClientRect().top)).size);
    expect(lines).toBe(2);
    expect(await page.evaluate(() => scrollY)).toBe(0);
    await expect.poll(() => button('New job').boundingBox()).not.toBeNull();
    await button('Sheets and functions').tap();
    await expect.poll(selected).toBe('B5');
    const [canvas, label, input] = [
      await page.locator('canvas[id^="univer-sheet-main-canvas"]').boundingBox(),
      await placeOf('A5'),
      await placeOf('B5'),
    ];
    expect(label.x).toBeGreaterThan(canvas?.x ?? NaN);
    expect(input.x).toBeGreaterThan(label.x);
    expect(input.x).toBeLessThan((canvas?.x ?? NaN) + (canvas?.width ?? NaN));

    await button('Sheets and functions').tap();
    await button('New job').tap();
    await expect.poll(() => page.evaluate(() => window.sweeptable.inView())).toBe('Heads');
    const isShown = (name: string) =>
      page.getByRole('tab', { name, exact: true }).evaluate((tab) => {
        const { left, right, top, bottom } = tab.getBoundingClientRect();
        const at = (x: number) => document.elementFromPoint(x, (top + bottom) / 2);
        return [at(left + 2), at(right - 2)].every((found) => found !== null && tab.contains(found));
      });
    await expect.poll(() => isShown('Heads')).toBe(true);
    // a finger draws the names along, wherever it lies, without choosing one, and chooses by a tap
    const all = await page.locator('[data-u-comp="slide-tab-bar"]').boundingBox();
    const drawn = async (name: string): Promise<void> => {
      const on = await page.getByRole('tab', { name, exact: true }).boundingBox();
      const from = { x: (on?.x ?? NaN) + 15, y: (all?.y ?? NaN) + 22 };
      await hand.swipe(from, { x: from.x - 90, y: from.y }, { rests: true });
    };
    const leftOf = async (name: string) =>
      (await page.getByRole('tab', { name, exact: true }).boundingBox())?.x ?? NaN;
    const before = await leftOf('Set card');
    await drawn('Heads');
    await expect.poll(() => leftOf('Set card')).toBeLessThan(before - 40);
    await drawn('Pops plan');
    await expect.poll(() => isShown('Set card')).toBe(true);
    expect(await page.evaluate(() => window.sweeptable.inView())).toBe('Heads');
    await page.getByRole('tab', { name: 'Set card', exact: true }).tap();
    await expect.poll(() => page.evaluate(() => window.sweeptable.inView())).toBe('Set card');
    // and carries the chosen one once that is held
    const [card, plan] = [await leftOf('Set card'), await leftOf('Pops plan')];
    const y = (all?.y ?? NaN) + 22;
    await hand.hold({ x: card + 20, y }, { x: plan + 10, y });
    await expect.poll(() => sheet.sheets()).toEqual(['Pops build', 'Heads', 'Set card', 'Pops plan']);
  });

  it.each([
    [820, 1180],
    [700, 450],
    [400, 800],
    [320, 256],
  ])('at %i by %i px no part lies over another, and a sheet’s name can be read', async (width, height) => {
    await onGlass(width, height);
    const pane = button('Sheets and functions');
    if (width < 800) await pane.tap();
    const boxes = await sheet.page.evaluate(() =>
      ['.bar', '#grid header', '[data-u-comp="formula-bar"]', '#grid section', '#grid footer']
        .flatMap((part) => [...document.querySelectorAll(part)].slice(0, 1))
        .map((part) => part.getBoundingClientRect())
        .map(({ left, right, top, bottom }) => ({ left, right, top, bottom })),
    );
    expect(boxes.every(({ left, right }) => left >= 0 && right <= width)).toBe(true);
    const tab = sheet.page.getByRole('tab', { name: 'Pops build' });
    await tab.scrollIntoViewIfNeeded();
    // the name's own room, uncut
    const seen = await tab.locator('span').evaluate((name) => {
      const { left, right, top, bottom } = name.getBoundingClientRect();
      const at = (x: number) => document.elementFromPoint(x, (top + bottom) / 2);
      return [at(left + 1), at(right - 1)].every(
        (found) => found !== null && name.parentElement?.contains(found),
      );
    });
    expect(seen).toBe(true);
  });
});
