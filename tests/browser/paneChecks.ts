import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { AxeResults, RunOptions } from 'axe-core';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../src/catalogue';

import type { Size } from './ownPage';

declare global {
  interface Window {
    axe: { run(within: string, options: RunOptions): Promise<AxeResults> };
  }
}

/** Opens a pane for one test, which must end without a complaint. */
export type OnPane = (use: (page: Page) => Promise<void>, size?: Size) => Promise<void>;

const NARROW: Size = { width: 320, height: 640 };

export const tab = (page: Page, name: string) => page.getByRole('tab', { name });
export const status = (page: Page) => page.locator('.status [role=status]');
export const summaryOf = (page: Page, id: string) =>
  page.locator('summary', { has: page.getByRole('heading', { name: id, exact: true }) });
const functionsShown = (page: Page) => page.locator('.functions h3').allTextContents();

/** Opens everything in the view that can be opened. */
export async function openAll(page: Page): Promise<void> {
  await page.evaluate(() => {
    for (const details of document.querySelectorAll('details')) details.open = true;
  });
  const view = page.locator('[role=tabpanel]:visible');
  if ((await view.locator('.functions').count()) > 0)
    await expect.poll(() => view.locator('.entry').count()).toBe(CATALOGUE.length);
}

/** Elements that leave the pane's width, or whose text leaves them. */
export const stickingOut = (): string[] => {
  const scroller = document.querySelector('.pane-scroll');
  const edge = scroller ? scroller.getBoundingClientRect().left + scroller.clientWidth : 0;
  return [...document.querySelectorAll<HTMLElement>('html, .pane *')]
    .filter((e) => e.checkVisibility() && !e.closest('.heard, svg'))
    .filter((e) => {
      const within = e.closest('.pane-scroll > *') !== null;
      const { right } = e.getBoundingClientRect();
      return right > (within ? edge : innerWidth) || (e.clientWidth > 0 && e.scrollWidth > e.clientWidth);
    })
    .map((e) => e.outerHTML.slice(0, 100));
};

/** Colours in which a page is seen. */
export const LOOKS = {
  light: { colorScheme: 'light', forcedColors: 'none' },
  dark: { colorScheme: 'dark', forcedColors: 'none' },
  forced: { colorScheme: 'dark', forcedColors: 'active' },
} as const;
export type Look = keyof typeof LOOKS;

/** The rule that colours may break. */
export const CONTRAST = ['color-contrast'];

/** The rules of accessibility that a page or a part of it breaks, each with the first element that does; all rules, or `only` these. */
export async function axeFaults(
  page: Page,
  within = 'html',
  only?: string[],
): Promise<(string | undefined)[][]> {
  if (await page.evaluate(() => window.axe === undefined)) {
    const axe = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
    await page.evaluate(await readFile(axe, 'utf8'));
  }
  return page.evaluate(
    async ([part, rules]) => {
      const { violations } = await window.axe.run(part, {
        resultTypes: ['violations'],
        ...(rules && { runOnly: rules }),
      });
      return violations.map(({ id, nodes }) => [id, nodes[0]?.html]);
    },
    [within, only] as const,
  );
}

/** Opens the pane for one test, which is done to each view of it with everything open. */
const eachView =
  (views: readonly string[], on: OnPane, prepare: (page: Page) => Promise<void>) =>
  (use: (page: Page, name: string) => Promise<void>, size?: Size) =>
    on(async (page) => {
      await prepare(page);
      for (const name of views) {
        await tab(page, name).click();
        await openAll(page);
        await use(page, name);
      }
    }, size);

/** That everybody can read the pane, in these colours. */
export function checkPaneAccess(
  looks: readonly Look[],
  views: readonly string[],
  on: OnPane,
  prepare: (page: Page) => Promise<void> = async () => {},
): void {
  const onEach = eachView(views, on, prepare);

  describe('the pane', () => {
    it.each(looks)('passes the accessibility rules in %s colours', (look) =>
      onEach(async (page, name) => {
        await page.emulateMedia(LOOKS[look]);
        expect(await axeFaults(page), name).toEqual([]);
      }),
    );
  });
}

/** What holds for the pane wherever it stands: beside a spreadsheet of the test's, and as built for Excel. */
export function checkPane(
  views: readonly string[],
  on: OnPane,
  prepare: (page: Page) => Promise<void> = async () => {},
): void {
  const onEach = eachView(views, on, prepare);

  describe('the pane', () => {
    it('shows all functions by family, and finds one by a word of the trade', () =>
      on(async (page) => {
        await tab(page, 'Functions').click();
        expect(await functionsShown(page)).toEqual(CATALOGUE.map(({ id }) => id));
        const field = page.getByLabel('Find a function');
        const count = page.locator('.panel:visible [role=status]');
        await field.fill('BELLows');
        expect((await functionsShown(page))[0]).toBe('BELLOWSLOSS');
        expect(await count.innerText()).toMatch(/^\d+ functions have “BELLows”\.$/);
        await field.fill('neutral density');
        expect(await functionsShown(page)).toEqual(['FILTERLOSS']);
        expect(await count.innerText()).toBe('1 function has “neutral density”.');
        await field.fill('helicopter');
        expect(await functionsShown(page)).toEqual([]);
        expect(await count.innerText()).toMatch(/^No function has “helicopter”/);
      }));

    it.each([320, 350])('needs no sideways scrolling at %i px with everything open', (width) =>
      onEach(async (page, name) => expect(await page.evaluate(stickingOut), name).toEqual([]), {
        ...NARROW,
        width,
      }),
    );

    it('keeps the top right corner clear and no text small', () =>
      onEach(async (page, name) => {
        const corner = await page.evaluate(() =>
          [...document.querySelectorAll('.pane button, .pane p, .pane h2')]
            .map((e) => e.getBoundingClientRect())
            .some((r) => r.width > 0 && r.right > innerWidth - 34 && r.top < 32 && r.bottom > 0),
        );
        expect(corner, name).toBe(false);
        const smallest = await page.evaluate(() =>
          Math.min(
            ...[...document.querySelectorAll('.pane *')].map((e) => parseFloat(getComputedStyle(e).fontSize)),
          ),
        );
        expect(smallest, name).toBeGreaterThanOrEqual(12);
      }, NARROW));

    it('shows its first line and its cautions to newcomers, and has the cautions in reach ever after', () =>
      on(async (page) => {
        const line = page.getByText('New here?');
        const charge = page.getByText('keeps a dangerous charge');
        expect(await line.isVisible()).toBe(true);
        expect(await charge.isVisible()).toBe(true);
        await page.getByRole('button', { name: 'Close this hint' }).click();
        expect(await line.count()).toBe(0);
        await page.reload();
        await tab(page, 'Sheets').waitFor();
        expect(await line.count()).toBe(0);
        expect(await charge.isVisible()).toBe(false);
        await tab(page, 'Explain').click();
        await page.locator('summary', { hasText: 'Take care' }).click();
        expect(await charge.isVisible()).toBe(true);
      }));
  });
}
