import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { LiveChart } from '../../src/pane/host';
import { TEMPLATES } from '../../src/sheets/templates';
import { axeFaults, checkPane, checkPaneAccess, status, summaryOf, tab } from './paneChecks';
import { onPane, onPaneAfter } from './panePage';
import { COLUMNS, EMPTY, LINE, showEverything, VIEWS } from './paneContent';

type Series = LiveChart['series'][number];

checkPane(VIEWS, onPane, showEverything);
checkPaneAccess(['light'], VIEWS, onPane, showEverything);

describe('tabs', () => {
  it('are one stop for the keyboard, with arrows between them', () =>
    onPane(async (page) => {
      await page.keyboard.press('Tab');
      const chosen = () => page.evaluate(() => document.activeElement?.textContent);
      expect(await chosen()).toBe('Sheets');
      for (const [key, name] of [
        ['ArrowRight', 'Functions'],
        ['ArrowRight', 'Charts'],
        ['ArrowRight', 'Explain'],
        ['ArrowRight', 'Sheets'],
        ['ArrowLeft', 'Explain'],
        ['Home', 'Sheets'],
        ['End', 'Explain'],
      ] as const) {
        await page.keyboard.press(key);
        expect(await chosen()).toBe(name);
        expect(await tab(page, name).getAttribute('aria-selected')).toBe('true');
        expect(await page.getByRole('tabpanel').getAttribute('aria-labelledby')).toBe(
          `tab-${name.toLowerCase()}`,
        );
      }
      await page.keyboard.press('Home');
      await page.keyboard.press('Tab');
      expect(await chosen()).not.toMatch(/Functions|Charts|Explain/);
    }));

  it('keep the place of each view', () =>
    onPane(async (page) => {
      const scroller = page.locator('.pane-scroll');
      await tab(page, 'Functions').click();
      await scroller.evaluate((e) => e.scrollTo(0, 900));
      await tab(page, 'Sheets').click();
      expect(await scroller.evaluate((e) => e.scrollTop)).toBe(0);
      await tab(page, 'Functions').click();
      expect(await scroller.evaluate((e) => e.scrollTop)).toBe(900);
    }));
});

describe('sheets', () => {
  it('has every template with its question and its picture', () =>
    onPane(async (page) => {
      const cards = page.locator('.sheet');
      expect(await cards.locator('h2').allTextContents()).toEqual(TEMPLATES.map(({ name }) => name));
      expect(await cards.locator('p').allTextContents()).toEqual(TEMPLATES.map(({ answers }) => answers));
      for (const picture of await cards.locator('svg[aria-hidden=true]').all())
        expect(await picture.locator('rect').count()).toBeGreaterThan(20);
      expect(await cards.locator('svg').count()).toBe(TEMPLATES.length);
    }));

  it('asks the host once, however often it is pressed, and says what came of it', () =>
    onPane(async (page) => {
      const [first, second] = TEMPLATES;
      const filled = page.getByRole('button', { name: `Insert with the demo job ${first?.name}` });
      const empty = page.getByRole('button', { name: `Insert empty ${second?.name}` });
      await filled.focus();
      await page.keyboard.press('Enter');
      await page.keyboard.press('Enter');
      await empty.click({ force: true });
      expect(await empty.getAttribute('aria-disabled')).toBe('true');
      expect(await filled.getAttribute('aria-busy')).toBe('true');
      expect(await page.evaluate(() => window.fake.inserted)).toEqual([[first?.id, true]]);

      await page.evaluate(() => window.fake.answer({ done: 'The sheet is there.' }));
      await expect.poll(() => status(page).innerText()).toBe('The sheet is there.');
      expect(await filled.getAttribute('aria-busy')).toBe(null);
      expect(await page.evaluate(() => document.activeElement?.textContent)).toContain('Insert empty');

      await empty.click();
      expect(await status(page).innerText()).toBe('');
      expect(await page.evaluate(() => window.fake.inserted)).toEqual([
        [first?.id, true],
        [second?.id, false],
      ]);
    }));

  it('says a refusal, apart from success by a word', () =>
    onPane(async (page) => {
      await page.getByRole('button', { name: 'Insert empty' }).first().click();
      await page.evaluate(() => window.fake.answer({ refused: 'Leave the cell first.' }));
      await expect.poll(() => status(page).innerText()).toBe('Not done. Leave the cell first.');
      await page.getByRole('button', { name: 'Close this message' }).click();
      expect(await status(page).innerText()).toBe('');
    }));

  it('takes the next wish after a fault of the host, and hides no fault', () =>
    onPane(
      async (page) => {
        const button = page.getByRole('button', { name: 'Insert empty' }).first();
        await button.click();
        await page.evaluate(() => window.fake.fail());
        await expect.poll(() => status(page).innerText()).toMatch(/^Not done\. Something went wrong/);
        await button.click();
        expect(await page.evaluate(() => window.fake.inserted.length)).toBe(2);
      },
      undefined,
      { expected: ['a fault of the host'] },
    ));

  it('shows the list and the reason where nothing can be inserted', () =>
    onPane(
      async (page) => {
        await page.getByText('Open this page from Excel to insert sheets.').waitFor();
        expect(await page.locator('.sheet').count()).toBe(TEMPLATES.length);
        expect(await page.getByRole('button', { name: /Insert/ }).count()).toBe(0);
        expect(await page.getByRole('tab').allTextContents()).toEqual(['Sheets', 'Functions']);
      },
      undefined,
      { query: '?unable' },
    ));
});

describe('functions', () => {
  it('opens to all that the catalogue knows, and keeps it open while searching', () =>
    onPane(async (page) => {
      await tab(page, 'Functions').click();
      await summaryOf(page, 'POPSFORTARGET').focus();
      await page.keyboard.press('Enter');
      const entry = page.locator('details[open] .entry');
      const text = await entry.innerText();
      for (const piece of [
        'SWEEP.POPSFORTARGET(reading, target, [loss]',
        'Answer: pops.',
        'Unit: f-number. Range: above 0. Write: 11, f/11',
        'may be left out',
        'smallest whole n',
        'Take care',
        'darken the room',
        '=SWEEP.POPSFORTARGET(16,45,1)\ngives 16 pops',
        'Derived: light adds',
        'Published: NAVEDTRA',
        'Common practice, no source.',
      ])
        expect(text.replaceAll('\n\n', '\n')).toContain(piece);
      await page.getByLabel('Find a function').fill('pops');
      expect(await entry.isVisible()).toBe(true);
    }));

  it('puts an example into the selected cell', () =>
    onPane(async (page) => {
      await tab(page, 'Functions').click();
      await summaryOf(page, 'STOPDIFF').click();
      await page.getByRole('button', { name: 'Put into the selected cell =SWEEP.STOPDIFF(8,11)' }).click();
      expect(await page.evaluate(() => window.fake.put)).toEqual(['=SWEEP.STOPDIFF(8,11)']);
      await page.evaluate(() => window.fake.answer({ done: 'B2 holds the formula.' }));
      await expect.poll(() => status(page).innerText()).toBe('B2 holds the formula.');
      await tab(page, 'Charts').click();
      expect(await status(page).innerText()).toBe('');
    }));

  it('copies where there is no cell', () =>
    onPane(
      async (page) => {
        await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
        await tab(page, 'Functions').click();
        await summaryOf(page, 'STOPDIFF').click();
        await page.getByRole('button', { name: 'Copy =SWEEP.STOPDIFF(8,11)' }).click();
        await expect.poll(() => status(page).innerText()).toBe('Copied =SWEEP.STOPDIFF(8,11)');
        expect(await page.evaluate(() => navigator.clipboard.readText())).toBe('=SWEEP.STOPDIFF(8,11)');
      },
      undefined,
      { query: '?unable' },
    ));

  it('selects the formula where copying is not allowed', () =>
    onPane(
      async (page) => {
        await page.evaluate(() => Object.defineProperty(navigator, 'clipboard', { value: undefined }));
        await tab(page, 'Functions').click();
        await summaryOf(page, 'STOPDIFF').click();
        await page.getByRole('button', { name: 'Copy =SWEEP.STOPDIFF(8,11)' }).click();
        await expect.poll(() => status(page).innerText()).toMatch(/is selected/);
        expect(await page.evaluate(() => String(getSelection()))).toBe('=SWEEP.STOPDIFF(8,11)');
      },
      undefined,
      { query: '?unable' },
    ));
});

/** How many pixels of the first chart are painted. */
const painted = (page: Page) =>
  page.evaluate(() => {
    const canvas = document.querySelector('canvas');
    const data = canvas?.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height).data ?? [];
    let count = 0;
    for (let i = 3; i < data.length; i += 4) if (data[i] !== 0) count++;
    return count;
  });
/** Where words stand between the axis of the first chart and its title, from left to right, in pixels. */
const wordsBelow = (page: Page) =>
  page.evaluate(() => {
    const canvas = document.querySelector('canvas');
    if (!canvas) return [];
    const { width, height } = canvas;
    const [top, rows] = [height - 40 * devicePixelRatio, 16 * devicePixelRatio];
    const copy = new OffscreenCanvas(width, rows).getContext('2d', { willReadFrequently: true });
    copy?.drawImage(canvas, 0, -top);
    const data = copy?.getImageData(0, 0, width, rows).data ?? [];
    const found: [number, number][] = [];
    for (let x = 0; x < width; x++) {
      if (!Array.from({ length: rows }, (_, y) => data[(y * width + x) * 4 + 3]).some(Boolean)) continue;
      const last = found.at(-1);
      // Within a name lies a space, between two names more.
      if (last && x - last[1] < 7 * devicePixelRatio) last[1] = x;
      else found.push([x, x]);
    }
    return found.map(([from, to]) => [from / devicePixelRatio, to / devicePixelRatio] as const);
  });
const picture = (page: Page) => page.evaluate(() => document.querySelector('canvas')?.toDataURL() ?? '');

describe('charts', () => {
  it('draws what it is told, again when told again, and only while it is seen', () =>
    onPane(async (page) => {
      expect(await page.evaluate(() => window.fake.watched)).toBe(false);
      await tab(page, 'Charts').click();
      await page.getByText('The sheet in view has no chart.').waitFor();
      expect(await page.evaluate(() => window.fake.watched)).toBe(true);

      await page.evaluate((charts) => window.fake.charts(charts), [LINE, COLUMNS]);
      expect(await page.locator('.chart h2').allTextContents()).toEqual([LINE.title, COLUMNS.title]);
      expect(await page.locator('.chart canvas').count()).toBe(2);
      await expect.poll(() => painted(page)).toBeGreaterThan(500);
      const before = await picture(page);

      await page.locator('.chart summary').first().click();
      const numbers = page.locator('.chart table').first();
      expect(await numbers.locator('tr').first().locator('th').allTextContents()).toEqual(['pops', 'At the film', 'Wanted']); // prettier-ignore
      expect(await numbers.locator('tr').nth(2).locator('th,td').allTextContents()).toEqual(['2', 'f/11.3', 'f/32.0']); // prettier-ignore
      expect(await numbers.locator('tr').nth(6).locator('th,td').allTextContents()).toEqual(['32', '–', 'f/32.0']); // prettier-ignore

      const steeper = { ...LINE, series: [{ ...LINE.series[0], values: [1, 2, 4, 8, 16, 64] }] };
      await page.evaluate((chart) => window.fake.charts([chart]), steeper as LiveChart);
      await expect.poll(() => picture(page)).not.toBe(before);
      expect(await page.locator('.chart canvas').count()).toBe(1);
      expect(await numbers.locator('td').last().innerText()).toBe('f/64.0');

      await tab(page, 'Sheets').click();
      expect(await page.evaluate(() => window.fake.watched)).toBe(false);
    }));

  it('draws a constant line and a marked point, and tells the point among the numbers', () =>
    onPane(async (page) => {
      const [film, wanted] = LINE.series as [Series, Series];
      const plain = { ...LINE, series: [film, { ...wanted, role: 'limit' as const }] };
      const now = { name: 'Now', x: [6], values: [19.6], format: '"f/"0.0', role: 'point' as const };
      await page.evaluate((charts) => window.fake.charts(charts), [plain]);
      await tab(page, 'Charts').click();
      await expect.poll(() => painted(page)).toBeGreaterThan(500);
      const before = await picture(page);
      await page.evaluate((charts) => window.fake.charts(charts), [{ ...plain, series: [...plain.series, now], note: 'Reads B6.' }]); // prettier-ignore
      await expect.poll(() => picture(page)).not.toBe(before);
      expect(await page.locator('.chart .keys li').allInnerTexts()).toEqual(['At the film', 'Wanted', 'Now']);
      expect(await page.locator('.chart .ink.diamond').count()).toBe(1);
      await page.getByText('Reads B6.').waitFor();
      await page.locator('.chart summary').click();
      const last = page.locator('.chart tbody tr').last().locator('th,td');
      expect(await last.allTextContents()).toEqual(['6', '–', '–', 'f/19.6']);
    }));

  it.each([
    ['whole, the last one too', ['Alder 600', 'Birch 1200', 'Hazel 400']],
    [
      'apart, though some are left out',
      ['Alder', 'Birch', 'Hazel', 'Rowan', 'Elder'].map((name) => `${name} with a grid`),
    ],
  ] as const)('writes names along a line %s', (_what, x) =>
    onPane(async (page) => {
      const chart: LiveChart = {
        ...LINE,
        kind: 'line',
        x,
        series: [{ name: 'Reading', format: '0', values: x.map((_, i) => i + 8) }],
      };
      await page.evaluate((told) => window.fake.charts([told]), chart);
      await tab(page, 'Charts').click();
      await expect.poll(async () => (await wordsBelow(page)).length).toBeGreaterThan(1);
      const words = await wordsBelow(page);
      const width = await page.locator('canvas').evaluate((canvas) => canvas.clientWidth);
      expect(words.at(-1)?.[1]).toBeLessThan(width - 1);
      // Sixteen letters of this size, as wide as letters are.
      for (const [from, to] of words) expect(to - from).toBeLessThan(16 * 8);
    }),
  );

  it('says so where there are no numbers yet', () =>
    onPane(async (page) => {
      await page.evaluate((chart) => window.fake.charts([chart]), EMPTY);
      await tab(page, 'Charts').click();
      await page.getByText('No numbers yet').waitFor();
      expect(await page.locator('canvas').count()).toBe(0);
    }));

  it('follows the width of the pane and the colours of the page', () =>
    onPane(async (page) => {
      await page.evaluate((charts) => window.fake.charts(charts), [COLUMNS]);
      await tab(page, 'Charts').click();
      const canvas = page.locator('canvas');
      const width = () => canvas.evaluate((e) => e.clientWidth);
      const before = await width();
      await page.setViewportSize({ width: 500, height: 640 });
      await expect.poll(width).toBe(before + 150);
      let last = await picture(page);
      await page.emulateMedia({ colorScheme: 'dark' });
      await expect.poll(() => picture(page)).not.toBe(last);
      last = await picture(page);
      await page.evaluate(() => (document.documentElement.dataset['theme'] = 'light'));
      await expect.poll(() => picture(page)).not.toBe(last);
      last = await picture(page);
      await page.emulateMedia({ forcedColors: 'active' });
      await expect.poll(() => picture(page)).not.toBe(last);
    }));
});

describe('the look', () => {
  it('shows where the keyboard is, on everything it reaches', () =>
    onPane(async (page) => {
      await page.evaluate((charts) => window.fake.charts(charts), [LINE]);
      const reached = new Set<string>();
      for (const name of VIEWS) {
        await tab(page, name).focus();
        await page.keyboard.press(name === 'Sheets' ? 'Home' : 'ArrowRight');
        for (let i = 0; i < 8; i++) {
          const seen = await page.evaluate(() => {
            const element = document.activeElement as HTMLElement;
            const { outlineStyle, outlineWidth } = getComputedStyle(element);
            return { tag: element.tagName, drawn: outlineStyle !== 'none' && outlineWidth !== '0px' };
          });
          if (seen.tag !== 'BODY') expect(seen).toEqual({ tag: seen.tag, drawn: true });
          reached.add(seen.tag);
          await page.keyboard.press('Tab');
        }
        await page.keyboard.press('Escape');
      }
      expect([...reached]).toEqual(expect.arrayContaining(['BUTTON', 'INPUT', 'SUMMARY']));
    }));

  it('passes the accessibility rules while a wish is under way and when it is refused', () =>
    onPane(async (page) => {
      await page.getByRole('button', { name: 'Insert empty' }).first().click();
      expect(await axeFaults(page)).toEqual([]);
      await page.evaluate(() => window.fake.answer({ refused: 'Leave the cell first.' }));
      await status(page).getByText('Not done.').waitFor();
      expect(await axeFaults(page)).toEqual([]);
    }));
});

describe('the first line for newcomers', () => {
  it('does not fail where the page may keep nothing', () =>
    onPaneAfter(
      (page) =>
        page.addInitScript(() => {
          Object.defineProperty(window, 'localStorage', {
            get: () => {
              throw new DOMException('denied', 'SecurityError');
            },
          });
        }),
      (page) => page.getByText('New here?').waitFor(),
    ));
});

it('draws a chart where the browser calls its language by no proper name', () =>
  onPaneAfter(
    (page) =>
      page.addInitScript(() =>
        Object.defineProperty(Navigator.prototype, 'language', {
          get: () => 'en-US@posix',
          configurable: true,
        }),
      ),
    async (page) => {
      await page.evaluate((charts) => window.fake.charts(charts), [LINE]);
      await tab(page, 'Charts').click();
      await expect.poll(() => painted(page)).toBeGreaterThan(500);
    },
  ));

it('leaves nothing behind when it is taken away', () =>
  onPane(async (page) => {
    await tab(page, 'Charts').click();
    await page.evaluate(() => window.fake.dispose());
    expect(await page.locator('#pane > *').count()).toBe(0);
    expect(await page.evaluate(() => window.fake.watched)).toBe(false);
  }));
