import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { PANE, type Size } from './ownPage';
import { axeFaults, stickingOut } from './paneChecks';
import { BROKEN, CELLS, NESTED, REFUSED, type Selected, SIMPLE } from './paneContent';
import { onPane } from './panePage';

/** The view for one test, with a cell selected; it must end without a complaint. */
const on = (cell: Selected | undefined, use: (page: Page) => Promise<void>, size?: Size): Promise<void> =>
  onPane(async (page) => {
    await select(page, cell);
    await page.getByRole('tab', { name: 'Explain' }).click();
    await use(page);
  }, size);

const view = (page: Page) => page.locator('#panel-explain');
const spoken = (page: Page) => view(page).getByRole('status');
const select = (page: Page, cell?: Selected) =>
  page.evaluate((selected) => window.fake.select(selected), cell);

describe('a selected cell is explained', () => {
  it('by its function, what was read, the formula with the numbers, and the answer', () =>
    on(SIMPLE, async (page) => {
      await view(page).getByRole('heading', { name: 'B7 shows 1' }).waitFor();
      const step = view(page).getByRole('region', { name: 'STOPDIFF' });
      const text = (await step.innerText()).replace(/\n+/g, '\n');
      for (const piece of [
        'Stops from one value up to another.',
        'from\n8',
        'the mark f/8',
        'to\n11',
        'the mark f/11, 11.31',
        'scale “aperture”, as nothing is given',
        'Formula\napertures: 2 · log2(to / from)',
        '2 · log2(11.31 / 8)',
        'Answer\n1 stop',
      ])
        expect(text).toContain(piece);
      expect(await view(page).locator('code').first().innerText()).toBe(SIMPLE.formula);
      await step.locator('summary').click();
      expect(await step.innerText()).toContain('Published: F-number');
    }));

  it('from the inside out, with what the spreadsheet has to work out', () =>
    on(NESTED, async (page) => {
      expect(await view(page).locator('h3').allTextContents()).toEqual(['1. FNUMBER', '2. LIGHTSUM']);
      await view(page).getByText('IF stands around this').waitFor();
      const sum = view(page).getByRole('region', { name: '2. LIGHTSUM' });
      const readings = await sum.locator('dd').allTextContents();
      expect(readings).toEqual([
        '8 read as the mark f/8',
        'f/11 read as the mark f/11, 11.31',
        'blank read as nothing is given',
        'and 2 more',
        '12.5533 read as f/11 +0.3, 12.55',
      ]);
      expect(await sum.locator('dt code').allTextContents()).toEqual([
        'Lights[Reading]',
        'SWEEP.FNUMBER(B2,3)',
      ]);
    }));

  it('with its refusal and what to do, and what is not known', () =>
    on(REFUSED, async (page) => {
      const text = await view(page).innerText();
      for (const piece of [
        'abc not read: reading: "abc" cannot be read as an f-number. Write 11',
        'write f/8 2/3',
        'MAX(D1:D3) is calculated by the spreadsheet.',
        'The answer cannot be worked out here',
        'D4 shows #VALUE!',
      ])
        expect(text).toContain(piece);
      await select(page, BROKEN);
      await view(page).getByText('#VALUE! from: "a text').waitFor();
    }));

  it('and says so where there is nothing to explain', () =>
    on(undefined, async (page) => {
      await view(page).getByText('Select one cell').waitFor();
      await select(page, { address: 'A1', formula: '', shown: '' });
      await view(page).getByRole('heading', { name: 'A1 shows nothing' }).waitFor();
      await view(page).getByText('no formula in this cell').waitFor();
      await select(page, { address: 'A2', formula: '=SUM(1,2)', shown: '3' });
      await view(page).getByText('has no function of Sweeptable').waitFor();
      await select(page, undefined);
      await view(page).getByText('Select one cell').waitFor();
    }));

  it('as text, never as markup', () =>
    on({ address: 'A1', formula: '=SWEEP.STOPDIFF("<b>8</b>",11)', shown: '<i>x</i>' }, async (page) => {
      expect(await view(page).locator('b, i').count()).toBe(0);
      expect(await view(page).innerText()).toContain('<b>8</b>');
    }));
});

describe('the view follows the sheet', () => {
  it('speaks once for each cell, and keeps what is open while its numbers change', () =>
    on(SIMPLE, async (page) => {
      expect(await spoken(page).textContent()).toBe('B7 shows 1');
      const summary = view(page).locator('summary');
      await summary.focus();
      await page.keyboard.press('Enter');
      await select(page, { ...SIMPLE, shown: '1.00' });
      await view(page).getByRole('heading', { name: 'B7 shows 1.00' }).waitFor();
      expect(await spoken(page).textContent()).toBe('B7 shows 1');
      expect(await view(page).locator('details[open]').count()).toBe(1);
      expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('SUMMARY');
      await select(page, NESTED);
      expect(await spoken(page).textContent()).toBe('C9 shows 33.4303');
      expect(await view(page).locator('details[open]').count()).toBe(0);
    }));

  it('only while it is seen', () =>
    on(SIMPLE, async (page) => {
      const watched = () => page.evaluate(() => window.fake.cellWatched);
      expect(await watched()).toBe(true);
      await page.getByRole('tab', { name: 'Sheets' }).click();
      expect(await watched()).toBe(false);
      await page.getByRole('tab', { name: 'Explain' }).click();
      expect(await watched()).toBe(true);
      await page.evaluate(() => window.fake.dispose());
      expect(await watched()).toBe(false);
    }));

  it('and is left out where the host tells no cell', () =>
    onPane(
      async (page) => expect(await page.getByRole('tab').allTextContents()).toEqual(['Sheets', 'Functions']),
      undefined,
      { query: '?unable' },
    ));
});

describe('the look', () => {
  it.each([320, 350])('needs no sideways scrolling at %i px, whatever the formula', (width) =>
    on(
      undefined,
      async (page) => {
        for (const cell of CELLS) {
          await select(page, cell);
          for (const details of await view(page).locator('summary').all()) await details.click();
          expect(await page.evaluate(stickingOut), cell.address).toEqual([]);
        }
        const last = await page.getByRole('tab', { name: 'Explain' }).boundingBox();
        // Office lays its menu over the top right corner.
        expect((last?.x ?? 0) + (last?.width ?? 0)).toBeLessThanOrEqual(width - 34);
      },
      { ...PANE, width },
    ),
  );

  it('passes the accessibility rules in light colours', () =>
    on(NESTED, async (page) => {
      for (const details of await view(page).locator('summary').all()) await details.click();
      expect(await axeFaults(page)).toEqual([]);
    }));

  it('shows where the keyboard is', () =>
    on(NESTED, async (page) => {
      await page.getByRole('tab', { name: 'Explain' }).focus();
      const reached: string[] = [];
      for (let i = 0; i < 4; i++) {
        await page.keyboard.press('Tab');
        const seen = await page.evaluate(() => {
          const element = document.activeElement as HTMLElement;
          const { outlineStyle, outlineWidth } = getComputedStyle(element);
          return { tag: element.tagName, drawn: outlineStyle !== 'none' && outlineWidth !== '0px' };
        });
        if (seen.tag !== 'BODY') expect(seen).toEqual({ tag: seen.tag, drawn: true });
        reached.push(seen.tag);
      }
      // the cautions' below the view is the last of them
      expect(reached.filter((tag) => tag === 'SUMMARY')).toHaveLength(3);
    }));
});
