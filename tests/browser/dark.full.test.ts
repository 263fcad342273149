import type { Locator, Page, Route } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { contrast, LEGIBLE, luminance, type Rgb } from '../../src/hosts/workbench/grid/dark/nightColour';
import { visitor, Workbench } from './workbench';
import { drawn } from './cellColours';
import { eachItsWorkbook } from './onePage';
import { axeFaults, CONTRAST, LOOKS } from './paneChecks';

declare global {
  interface Window {
    /** What the page was drawn on, from its first frame on. */
    grounds: ReadonlySet<string>;
  }
}

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

const DARK = 0.1;
const LIGHT = 0.7;
const BOTH = ['light', 'dark'] as const;
/** What the edge of a field needs. Source: WCAG 2.2, success criterion 1.4.11. */
const SEEN = 3;
const rgbOf = (colour: string): Rgb => (colour.match(/\d+/g) ?? []).slice(0, 3).map(Number) as unknown as Rgb;

/** Letters of each of these cells against the ground they are drawn on; a unit test has the colours of all cells of all sheets. */
async function readable(...cells: readonly string[]): Promise<void> {
  for (const a1 of cells)
    await expect
      .poll(async () => (await drawn(sheet, a1)).contrast, { message: a1 })
      .toBeGreaterThanOrEqual(LEGIBLE);
}

describe.each(BOTH)('in the %s', (look) => {
  it('cells that warn, and those of a map, can be read', async () => {
    await sheet.page.emulateMedia(LOOKS[look]);
    await sheet.insert('Copy evenness');
    // a title, an input, a remark; the least and the most of the map; a verdict that warns, and its words
    await readable('A1', 'B7', 'D7', 'E5', 'F7', 'J10', 'B17', 'D17');
    await sheet.insert('Mains plan');
    await readable('B17', 'D17', 'F17', 'H17');
    await sheet.insert('Fleet compare');
    await readable('B6', 'D6', 'C26', 'I26', 'A20');
  });

  it('what the grid opens over the cells can be read', async () => {
    const { page } = sheet;
    await page.emulateMedia(LOOKS[look]);
    const grid = page.locator('#grid');
    const tab = grid.getByText('Pops build', { exact: true }).last();
    const opened: readonly (readonly [what: string, open: () => Promise<void>, seen: string])[] = [
      [
        'the menu of a cell',
        async () => {
          const { x, y } = await page.evaluate(() => window.sweeptable.place('E9'));
          await page.mouse.click(x, y, { button: 'right' });
        },
        'Keep in view',
      ],
      ['the menu of a sheet', () => tab.click({ button: 'right' }), 'Copy this sheet'],
      ['the formats', () => grid.getByText('Shown as').first().click(), 'Watt-seconds'],
      [
        'a table that cannot be made',
        async () => {
          await sheet.click('F6');
          await grid.locator('[data-u-command="sheet.operation.open-table-selector"]').first().click();
        },
        'A table has headings and one row at least',
      ],
      ['the list of sheets', () => grid.locator('footer [data-u-comp]').nth(1).click(), 'Pops build'],
    ];
    for (const [what, open, seen] of opened) {
      await open();
      await page.getByText(seen, { exact: true }).last().hover();
      // colours are taken little by little
      await expect.poll(() => axeFaults(page, 'html', CONTRAST), { message: what }).toEqual([]);
      await page.keyboard.press('Escape');
    }
    await sheet.click('F9');
    await page.keyboard.type('=SWEEP.POPSFOR');
    await page.getByText('Fewest pops that reach').waitFor();
    await expect.poll(() => axeFaults(page, 'html', CONTRAST), { message: 'suggestions' }).toEqual([]);
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
  });

  it('shows the edges of the fields in a menu, under the pointer too', async () => {
    const { page } = sheet;
    await page.emulateMedia(LOOKS[look]);
    await sheet.openRowMenu(9);
    const words = sheet.seen('rows above', { exact: false }).first();
    const entry = page.locator('button', { has: words });
    const colour = (of: Locator, property: 'backgroundColor' | 'borderTopColor') =>
      of.evaluate((element, named) => getComputedStyle(element)[named], property).then(rgbOf);
    const field = entry.locator('input');
    const isSeenOn = async (ground: Rgb) =>
      expect(contrast(await colour(field, 'borderTopColor'), ground)).toBeGreaterThanOrEqual(SEEN);
    await isSeenOn(await colour(field, 'backgroundColor'));
    await isSeenOn(await colour(page.locator('.univer-popup .univer-min-w-52').first(), 'backgroundColor'));
    await words.hover();
    // colours are taken little by little
    await entry.evaluate((button) => Promise.all(button.getAnimations().map(({ finished }) => finished)));
    expect(await entry.evaluate((button) => getComputedStyle(button).backgroundColor)).not.toBe(
      'rgba(0, 0, 0, 0)',
    );
    await isSeenOn(await colour(entry, 'backgroundColor'));
    await page.keyboard.press('Escape');
  });

  it('a button that can be pressed looks otherwise than one that cannot', async () => {
    await sheet.page.emulateMedia(LOOKS[look]);
    await sheet.click('F9');
    const colour = (command: string) =>
      sheet.page
        .locator(`#grid [data-u-command="${command}"]`)
        .first()
        .evaluate((button) => getComputedStyle(button).color);
    const [bold, note, undo] = [
      await colour('sheet.command.set-range-bold'),
      await colour('sweeptable-note'),
      await colour('univer.command.undo'),
    ];
    expect(bold).toBe(note);
    expect(bold).not.toBe(undo);
  });

  it('the question whether a sheet is to go can be read', async () => {
    const { page } = sheet;
    await page.emulateMedia(LOOKS[look]);
    await sheet.insert('Mains plan');
    await page.locator('#grid').getByText('Mains plan', { exact: true }).last().click({ button: 'right' });
    await sheet.seen('Delete').click();
    const words = page.getByText('Ctrl+Z brings it back');
    await words.waitFor();
    // its buttons take their colours little by little
    await expect.poll(() => axeFaults(page, '[role=dialog]', CONTRAST)).toEqual([]);
    await page.getByRole('button', { name: 'Cancel' }).click();
    await words.waitFor({ state: 'detached' });
  });
});

describe('in forced colours', () => {
  it('marks the entry under the pointer in the menu of a row', async () => {
    const { page } = sheet;
    await page.emulateMedia(LOOKS.forced);
    await sheet.openRowMenu(9);
    const entry = page.locator('.univer-popup button', { has: sheet.seen('Hide these rows') });
    const edge = () => entry.evaluate((button) => getComputedStyle(button).outlineStyle);
    await page.mouse.move(0, 0);
    expect(await edge()).toBe('none');
    await entry.hover();
    await expect.poll(edge).toBe('solid');
    await page.keyboard.press('Escape');
  });

  it('marks one entry at a time in a menu of the bar', async () => {
    const { page } = sheet;
    await page.emulateMedia(LOOKS.forced);
    await page.locator('#grid').getByText('Shown as').first().click();
    const marked = () =>
      page
        .locator('[role="menu"]')
        .filter({ visible: true })
        .locator('[role^="menuitem"]')
        .evaluateAll((entries) =>
          entries
            .filter((entry) => getComputedStyle(entry).outlineStyle !== 'none')
            .map((entry) => entry.textContent),
        );
    await sheet.seen('Watt-seconds').hover();
    await expect.poll(marked).toEqual(['Watt-seconds']);
    await sheet.seen('Metres').hover();
    await expect.poll(marked).toEqual(['Metres']);
    await page.keyboard.press('Escape');
  });

  it('draws one box around the name of a sheet', async () => {
    const { page } = sheet;
    await page.emulateMedia(LOOKS.forced);
    const boxes = await page
      .locator('#grid [data-u-comp="slide-tab-item"]')
      .first()
      .locator('*')
      .evaluateAll(
        (within) =>
          within.filter((element) => {
            const { borderTopStyle, outlineStyle } = getComputedStyle(element);
            return borderTopStyle !== 'none' || outlineStyle !== 'none';
          }).length,
      );
    expect(boxes).toBe(1);
  });
});

/** How bright an element is drawn behind its words. */
const ground = (page: Page, selector: string) =>
  page
    .locator(selector)
    .first()
    .evaluate((element) => getComputedStyle(element).backgroundColor.match(/\d+/g)?.slice(0, 3).map(Number))
    .then((rgb) => luminance(rgb as unknown as Rgb));

it('is light on paper, charts too, whatever the page is', async () => {
  const { page } = sheet;
  await page.emulateMedia(LOOKS.dark);
  await expect.poll(async () => (await drawn(sheet, 'B6')).ground).toBeLessThan(DARK);
  await page.evaluate(() => void dispatchEvent(new Event('beforeprint')));
  await page.emulateMedia({ ...LOOKS.dark, media: 'print' });
  expect(await ground(page, '.paper .chart')).toBeGreaterThan(LIGHT);
  // an input of the sheet: cream
  expect(
    await page
      .locator('.paper .cell', { hasText: 'f/45' })
      .first()
      .evaluate((cell) => getComputedStyle(cell).backgroundColor),
  ).toBe('rgb(253, 243, 216)');
  await page.emulateMedia({ media: null });
  await page.evaluate(() => void dispatchEvent(new Event('afterprint')));
});

describe('a choice against the system', () => {
  const press = (tab: Workbench) => tab.command('Dark');
  const isDark = (tab: Workbench) =>
    expect.poll(async () => (await drawn(tab, 'B6')).ground, { timeout: 30_000 }).toBeLessThan(DARK);
  const isLight = (tab: Workbench) =>
    expect.poll(async () => (await drawn(tab, 'B6')).ground, { timeout: 30_000 }).toBeGreaterThan(LIGHT);

  it('is kept when the page is loaded anew, until it is undone', async () => {
    const context = await visitor();
    const tab = await Workbench.open({ of: context, before: (page) => page.emulateMedia(LOOKS.dark) });
    await isDark(tab);
    await press(tab);
    await isLight(tab);
    await tab.reload();
    await isLight(tab);
    // undone, it follows the system again, also after the next load
    await press(tab);
    await isDark(tab);
    await tab.reload();
    await isDark(tab);
    await tab.page.emulateMedia(LOOKS.light);
    await isLight(tab);
    await press(tab);
    await isDark(tab);
    await tab.reload();
    await isDark(tab);
    expect(tab.complaints).toEqual({ errors: [], outside: [] });
    await tab.close();
  });

  it('is there before anything is drawn, however long the script takes', async () => {
    const context = await visitor();
    const tab = await Workbench.open({ of: context, before: (page) => page.emulateMedia(LOOKS.light) });
    const { page } = tab;
    await press(tab);
    await isDark(tab);
    const asked = new Promise<Route>((come) => void page.route(/\/workbench\.js$/, come));
    // frames come once what the page waits for is there, and not before
    await page.addInitScript(() => {
      const grounds = new Set<string>();
      window.grounds = grounds;
      const look = (): void => {
        grounds.add(getComputedStyle(document.body).backgroundColor);
        requestAnimationFrame(look);
      };
      requestAnimationFrame(look);
    });
    await page.reload({ waitUntil: 'commit' });
    await page.waitForFunction(() => performance.getEntriesByType('paint').length > 0);
    expect(await page.evaluate(() => typeof window.sweeptable)).toBe('undefined');
    expect(await ground(page, 'body')).toBeLessThan(DARK);
    await (await asked).continue();
    await tab.loaded();
    await isDark(tab);
    expect(await page.evaluate(() => [...window.grounds])).toEqual([
      await page.evaluate(() => getComputedStyle(document.body).backgroundColor),
    ]);
    expect(tab.complaints).toEqual({ errors: [], outside: [] });
    await tab.close();
  });

  it('holds for the pages of help as well, but not for their paper', async () => {
    const context = await visitor();
    const tab = await Workbench.open({ of: context, before: (page) => page.emulateMedia(LOOKS.light) });
    await press(tab);
    await isDark(tab);
    const [help] = await Promise.all([
      context.waitForEvent('page'),
      tab.pane.getByRole('link', { name: 'Help' }).click(),
    ]);
    await help.emulateMedia(LOOKS.light);
    await expect.poll(() => ground(help, 'html')).toBeLessThan(DARK);
    await help.getByRole('link', { name: 'Privacy' }).first().click();
    await help.getByRole('heading', { name: 'Sweeptable privacy' }).waitFor();
    await expect.poll(() => ground(help, 'html')).toBeLessThan(DARK);
    await help.emulateMedia({ ...LOOKS.light, media: 'print' });
    await expect.poll(() => ground(help, 'html')).toBeGreaterThan(LIGHT);
    expect(tab.complaints).toEqual({ errors: [], outside: [] });
    await tab.close();
  });
});

it.each(['help.html', 'support.html', 'privacy.html', 'licences.txt'])(
  '%s is as the system is',
  async (name) => {
    const page = await (await visitor()).newPage();
    for (const [look, isDark] of [
      ['dark', true],
      ['light', false],
    ] as const) {
      await page.emulateMedia(LOOKS[look]);
      await page.goto(new URL(name, inject('workbench')).href);
      // what a browser draws where nothing is said, as for a text, is seen in a picture alone
      const [corner] = [await page.screenshot({ clip: { x: 2, y: 2, width: 1, height: 1 } })];
      const shade = await page.evaluate(
        async (bytes) => {
          const image = await createImageBitmap(new Blob([Uint8Array.from(bytes)]));
          const context = new OffscreenCanvas(1, 1).getContext('2d');
          context?.drawImage(image, 0, 0);
          return [...(context?.getImageData(0, 0, 1, 1).data ?? [])].slice(0, 3);
        },
        [...corner],
      );
      expect(luminance(shade as unknown as Rgb) < DARK, look).toBe(isDark);
    }
    await page.context().close();
  },
);
