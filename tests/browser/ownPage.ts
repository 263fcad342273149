import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { browser } from './browser';

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** The size of the pane beside a spreadsheet. */
export const PANE: Size = { width: 350, height: 640 };

type Use = (page: Page) => Promise<void>;

/** A visitor's page. What it must never do gathers in `complaints`, as it happens. */
export class OwnPage {
  readonly page: Page;
  readonly complaints: string[] = [];

  private constructor(page: Page) {
    this.page = page;
  }

  /** It may ask for what lies at `home`, and for `also`. */
  static async open(home: string, also?: string): Promise<OwnPage> {
    // Without a locale some browsers name theirs in a way that the chart library cannot read.
    const context = await (await browser()).newContext({ viewport: PANE, locale: 'en-US' });
    const page = await context.newPage();
    const own = new OwnPage(page);
    page.setDefaultTimeout(10_000);
    page.on('console', (message) => {
      if (message.type() === 'error' || message.type() === 'warning') own.complaints.push(message.text());
    });
    page.on('pageerror', (error) => own.complaints.push(error.message));
    page.on('request', (request) => {
      const url = request.url();
      if (!url.startsWith(home) && !url.startsWith('data:') && url !== also)
        own.complaints.push(`asked for ${url}`);
    });
    return own;
  }

  /** Loads it as a newcomer finds it. */
  async load(url: string, size: Size = PANE): Promise<void> {
    const { page } = this;
    await page.emulateMedia({ colorScheme: null, forcedColors: null });
    await page.setViewportSize(size);
    if (page.url() !== 'about:blank') await page.evaluate(() => localStorage.clear());
    await page.goto(url);
    await page.getByRole('tab', { name: 'Sheets' }).waitFor();
  }

  /** What it is used for must end with these complaints and no other, in whichever order they came. */
  async use(use: Use, expected: readonly unknown[] = []): Promise<void> {
    await use(this.page);
    const complaints = this.complaints.splice(0);
    expect(complaints).toEqual(expect.arrayContaining([...expected]));
    expect(complaints).toHaveLength(expected.length);
  }

  async close(): Promise<void> {
    await this.page.context().close();
  }
}

/** A page that tests take one after the other, each as a newcomer: to load it again takes half as long as to open another. */
export class KeptPage {
  readonly #open: () => Promise<OwnPage>;
  #kept: OwnPage | undefined;

  constructor(open: () => Promise<OwnPage>) {
    this.#open = open;
  }

  /** After a test that failed comes another page. */
  async use(load: (own: OwnPage) => Promise<void>, use: Use, expected?: readonly unknown[]): Promise<void> {
    const own = (this.#kept ??= await this.#open());
    try {
      await load(own);
      await own.use(use, expected);
    } catch (fault) {
      this.#kept = undefined;
      await own.close();
      throw fault;
    }
  }
}
