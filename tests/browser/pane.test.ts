import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { byUse } from '../../src/sheets/byUse';
import ANSWERS from '../../src/sheets/answersInList.json';
import type { Lines } from '../../src/sheets/inList';
import { TEMPLATES } from '../../src/sheets/templates';
import { axeFaults, checkPane, checkPaneAccess, status, summaryOf, tab } from './paneChecks';
import { PANE } from './ownPage';
import { onPane, onPaneAfter } from './panePage';
import { showEverything, VIEWS } from './paneContent';

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
      expect(await chosen()).not.toMatch(/Functions|Explain/);
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
  it('has every template with its question, by use', () =>
    onPane(async (page) => {
      const entries = page.locator('.sheets li');
      const all = byUse(TEMPLATES);
      expect(await entries.locator('h2').allTextContents()).toEqual(all.map(({ name }) => name));
      expect(await entries.locator('p').allTextContents()).toEqual(all.map(({ answers }) => answers));
    }));

  it('shows some answers of each, whole and in letters that can be read', () =>
    onPane(async (page) => {
      const tables = page.locator('.sheets table');
      const answers: Readonly<Record<string, Lines>> = ANSWERS;
      expect(
        await tables.evaluateAll((all) =>
          (all as HTMLTableElement[]).map(({ rows }) =>
            [...rows].map(({ cells }) => [...cells].map(({ textContent }) => textContent)),
          ),
        ),
      ).toEqual(byUse(TEMPLATES).map(({ id }) => answers[id]));
      const [smallest, furthest] = await tables.evaluateAll((all) => [
        Math.min(...all.map((table) => parseFloat(getComputedStyle(table).fontSize))),
        Math.max(...all.map((table) => table.getBoundingClientRect().right)),
      ]);
      expect(smallest).toBeGreaterThanOrEqual(12);
      expect(furthest).toBeLessThan(PANE.width);
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
        expect(await page.locator('.sheets li').count()).toBe(TEMPLATES.length);
        expect(await page.getByRole('button', { name: /Insert/ }).count()).toBe(0);
        expect(await page.getByRole('tab').allTextContents()).toEqual(['Sheets', 'Functions']);
      },
      undefined,
      { query: '?unable' },
    ));
});

describe('the cautions', () => {
  const charge = (page: Page) => page.getByText('keeps a dangerous charge');
  const summary = (page: Page) => page.locator('summary', { hasText: 'Take care' });
  const insert = async (page: Page): Promise<void> => {
    await page.getByRole('button', { name: 'New job' }).click();
    await page.evaluate(() => window.fake.answer({ done: 'Three sheets are inserted.' }));
    await expect.poll(() => status(page).innerText()).toBe('Three sheets are inserted.');
  };

  it.each([350, 400])(
    'leave their room to the work at %i px once they were seen, and stay in reach',
    (width) =>
      onPane(
        async (page) => {
          await charge(page).waitFor();
          await insert(page);
          expect(await charge(page).isVisible()).toBe(false);
          expect(await summary(page).innerText()).toBe('Take care: charge, heat, flashes, wiring');
          expect((await summary(page).boundingBox())?.height).toBeLessThan(40);
          await summary(page).click();
          await insert(page);
          expect(await charge(page).isVisible(), 'opened by hand').toBe(true);
        },
        { width, height: 640 },
      ),
  );

  it('stay where they were never in sight', () =>
    onPaneAfter(
      (page) =>
        page.addInitScript(() => {
          window.IntersectionObserver = class extends IntersectionObserver {
            override observe(): void {}
          };
        }),
      async (page) => {
        await insert(page);
        expect(await charge(page).isVisible()).toBe(true);
        await page.reload();
        await tab(page, 'Sheets').waitFor();
        expect(await charge(page).isVisible()).toBe(true);
      },
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
      await tab(page, 'Explain').click();
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

describe('the look', () => {
  it('shows where the keyboard is, on everything it reaches', () =>
    onPane(async (page) => {
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

it('leaves nothing behind when it is taken away', () =>
  onPane(async (page) => {
    await tab(page, 'Explain').click();
    expect(await page.evaluate(() => window.fake.cellWatched)).toBe(true);
    await page.evaluate(() => window.fake.dispose());
    expect(await page.locator('#pane > *').count()).toBe(0);
    expect(await page.evaluate(() => window.fake.cellWatched)).toBe(false);
  }));
