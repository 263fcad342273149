import { createRequire } from 'node:module';
import type { Browser, Page } from 'playwright-core';
import { expect } from 'vitest';
import { launch } from './launch';

const require = createRequire(import.meta.url);
const serve: (
  folder: string,
  port?: number,
) => Promise<{ url: string; close(): Promise<void> }> = require('../../src/build/serve.cjs');
const {
  DIST,
  buildIfNeeded,
}: { DIST: string; buildIfNeeded(): Promise<void> } = require('../../src/build/start.cjs');

/** What a page must never do, as it happens. */
export interface Complaints {
  readonly errors: string[];
  readonly outside: string[];
}

export interface Site {
  readonly url: string;
  readonly browser: Browser;
  close(): Promise<void>;
}

/** The built workbench, served, and a browser to open it in. */
export async function site(): Promise<Site> {
  await buildIfNeeded();
  const [server, browser] = await Promise.all([serve(DIST), launch()]);
  return {
    url: server.url,
    browser,
    async close() {
      await browser.close();
      await server.close();
    },
  };
}

/** A new visitor's workbench, with the keyboard and mouse of a person. */
export class Workbench {
  readonly page: Page;
  readonly complaints: Complaints;
  #besideMiddle = 4;

  private constructor(page: Page, complaints: Complaints) {
    this.page = page;
    this.complaints = complaints;
  }

  static async open({ url, browser }: Site): Promise<Workbench> {
    const page = await browser.newPage({ viewport: { width: 1400, height: 820 } });
    const complaints: Complaints = { errors: [], outside: [] };
    page.on('console', (message) => {
      if (message.type() === 'error' || message.type() === 'warning') complaints.errors.push(message.text());
    });
    page.on('pageerror', (error) => complaints.errors.push(error.message));
    page.context().on('request', (request) => {
      if (!request.url().startsWith(url) && !/^(data|blob):/.test(request.url()))
        complaints.outside.push(request.url());
    });
    await page.addInitScript(() => {
      document.addEventListener('securitypolicyviolation', (event) =>
        console.error(`Forbidden: ${event.violatedDirective}`),
      );
    });
    await page.goto(url);
    await page.waitForFunction(() => document.documentElement.dataset['ready'] === 'true');
    return new Workbench(page, complaints);
  }

  cell(a1: string) {
    return this.page.evaluate((at) => window.sweeptable.cell(at), a1);
  }

  async values(...cells: string[]) {
    return this.page.evaluate((all) => all.map((a1) => window.sweeptable.cell(a1).value), cells);
  }

  async click(a1: string): Promise<void> {
    const { x, y } = await this.page.evaluate((at) => window.sweeptable.place(at), a1);
    // Never twice on one spot: two quick clicks there would open the cell for editing.
    this.#besideMiddle = -this.#besideMiddle;
    await this.page.mouse.click(x + this.#besideMiddle, y);
    await expect.poll(() => this.page.evaluate(() => window.sweeptable.selected())).toBe(a1);
  }

  async hover(a1: string): Promise<void> {
    const { x, y } = await this.page.evaluate((at) => window.sweeptable.place(at), a1);
    // Coming from outside the cell: the grid hides a tip again when the pointer stirs within it.
    await this.page.mouse.move(x, y + 100);
    await this.page.mouse.move(x, y);
  }

  /** Types into a cell and leaves it downwards. */
  async enter(a1: string, text: string): Promise<void> {
    await this.click(a1);
    await this.page.keyboard.type(text);
    await this.page.keyboard.press('Enter');
  }

  /** Types formulas one below the other. */
  async enterDown(first: string, texts: readonly string[]): Promise<void> {
    await this.click(first);
    for (const text of texts) {
      await this.page.keyboard.type(text);
      await this.page.keyboard.press('Enter');
    }
  }

  async shows(a1: string, value: unknown): Promise<void> {
    await expect
      .poll(async () => (await this.cell(a1)).value, { message: a1, timeout: 10_000 })
      .toEqual(value);
  }

  async showsNear(a1: string, value: number): Promise<void> {
    await expect
      .poll(async () => (await this.cell(a1)).value, { message: a1, timeout: 10_000 })
      .toBeCloseTo(value, 9);
  }

  async refuses(a1: string, code: string, sentence: RegExp): Promise<void> {
    await this.shows(a1, code);
    await expect
      .poll(async () => (await this.cell(a1)).message, { message: a1, timeout: 10_000 })
      .toMatch(sentence);
  }
}
