import type { BrowserContext, Locator, Page } from 'playwright-core';
import { expect, inject } from 'vitest';
import { browser } from './browser';

/** What a page must never do, as it happens. */
export interface Complaints {
  readonly errors: string[];
  readonly outside: string[];
}

/** Within the strip of row numbers, in pixels of the page. */
const ROW_HEADINGS = 20;

/** What every window of the tests is like, unless it is made taller. */
const WINDOW = { viewport: { width: 1560, height: 820 }, locale: 'en-US' };

/** A visitor whose tabs share what the browser keeps. */
export const visitor = async (): Promise<BrowserContext> => (await browser()).newContext(WINDOW);

/** A new visitor's workbench, with the keyboard and mouse of a person. */
export class Workbench {
  readonly page: Page;
  readonly complaints: Complaints;
  #besideMiddle = 4;

  private constructor(page: Page, complaints: Complaints) {
    this.page = page;
    this.complaints = complaints;
  }

  /**
   * In a new visitor's window, or in a tab of a visitor; `before` is done to the page before it loads. At the address of the
   * built workbench, or of one that was built elsewhere.
   */
  static async open({
    before,
    of,
    url = inject('workbench'),
  }: {
    before?: (page: Page) => Promise<unknown>;
    of?: BrowserContext;
    url?: string;
  } = {}): Promise<Workbench> {
    const page = await (of ?? (await visitor())).newPage();
    await before?.(page);
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
    const workbench = new Workbench(page, complaints);
    await workbench.loaded();
    return workbench;
  }

  /** Waits for the first answers, and for the pane beside them. */
  async loaded(): Promise<void> {
    await this.page.waitForFunction(() => document.documentElement.dataset['pane'] === 'true');
  }

  /**
   * A new workbook in the page that is open, and the pane as a newcomer finds it. It presses the buttons for it within the
   * page, as the many tests that begin so are not about them.
   */
  async startOver(): Promise<void> {
    await this.page.evaluate(async () => {
      const press = (buttons: string, name: string): void => {
        const button = [...document.querySelectorAll<HTMLElement>(buttons)].find(
          (each) => each.textContent === name,
        );
        if (!button) throw new Error(`There is no button "${name}".`);
        button.click();
      };
      press('nav button', 'Start over');
      press('dialog[open] button', 'Start over');
      const isDone = () => document.querySelector('#notice')?.textContent.includes('This is a new workbook.');
      while (!isDone()) await new Promise(requestAnimationFrame);
      for (const close of document.querySelectorAll<HTMLElement>('[aria-label="Close this message"]'))
        if (close.checkVisibility()) close.click();
      press('[role=tab]', 'Sheets');
    });
    try {
      await this.page.waitForFunction(() => window.sweeptable.cell('B20').value === 5);
    } catch (cause) {
      const found = await this.page.evaluate(() => ({
        cells: ['A20', 'B19', 'B20', 'B21'].map((at) => window.sweeptable.cell(at)),
        sheets: window.sweeptable.sheets(),
        said: document.querySelector('#notice')?.textContent,
        visible: document.visibilityState,
      }));
      throw new Error(`The new workbook has no answers: ${JSON.stringify(found)}`, { cause });
    }
  }

  /** Makes the window as tall as a test needs to have all of its cells in sight. */
  async stretch(height: number = WINDOW.viewport.height): Promise<void> {
    await this.page.setViewportSize({ ...WINDOW.viewport, height });
    // the grid follows a moment later
    await this.page.waitForFunction(() =>
      [...document.querySelectorAll('#grid canvas')].some(
        (canvas) => Math.abs(innerHeight - canvas.getBoundingClientRect().bottom) < 100,
      ),
    );
  }

  /** Closes the window with all its tabs. */
  async close(): Promise<void> {
    await this.page.context().close();
  }

  async reload(): Promise<void> {
    await this.page.reload();
    await this.loaded();
  }

  get pane(): Locator {
    return this.page.locator('#pane');
  }

  /** The status line below the bar. */
  get notice(): Locator {
    return this.page.locator('#notice [role=status]');
  }

  /** The lines above it, for what holds until it changes. */
  get standing(): Locator {
    return this.page.locator('#standing');
  }

  get dialog(): Locator {
    return this.page.locator('dialog[open]');
  }

  async command(name: string): Promise<void> {
    await this.page.getByRole('navigation').getByRole('button', { name }).click();
  }

  /** Inserts a template from the pane, as its card says. */
  async insert(template: string, { filled = true } = {}): Promise<void> {
    await this.pane.getByRole('tab', { name: 'Sheets' }).click();
    const label = filled ? 'Insert with the demo job' : 'Insert empty';
    await this.pane.getByRole('button', { name: new RegExp(`^${label}\\W+${template}$`) }).click();
    await expect.poll(() => this.pane.locator('.pane > .status').innerText()).toContain('is inserted');
  }

  /** Chooses a sheet by its tab below the grid. */
  async sheet(name: string): Promise<void> {
    await this.page.locator('#grid').getByText(name, { exact: true }).last().click();
    await expect.poll(() => this.page.evaluate(() => window.sweeptable.inView())).toBe(name);
  }

  /** Words that are seen: those of a menu before, which is going, may still be there. */
  seen(words: string, { exact = true } = {}): Locator {
    return this.page.getByText(words, { exact }).filter({ visible: true });
  }

  async openRowMenu(row: number): Promise<void> {
    const { y } = await this.page.evaluate((at) => window.sweeptable.place(at), `A${row}`);
    await this.page.mouse.click(ROW_HEADINGS, y);
    await this.page.mouse.click(ROW_HEADINGS, y, { button: 'right' });
  }

  /** Chooses an entry of the menu on a row's heading. */
  async rowMenu(row: number, entry: string): Promise<void> {
    await this.openRowMenu(row);
    const text = this.seen(entry, { exact: false }).first();
    // Its number has a field of its own: a person clicks beside it.
    await text
      .locator('xpath=ancestor::*[contains(@class, "univer-cursor-pointer")][1]')
      .click({ position: { x: 40, y: 14 } });
  }

  /** What stands beside a cell whose rule refuses what was put in. */
  get refusal(): Locator {
    return this.page.locator('.tip[role=alert]');
  }

  /** Waits for the reason why what was typed is not taken, and gives the cell its former value back. */
  async told(reason: string): Promise<void> {
    const said = this.refusal.filter({ hasText: reason });
    await said.waitFor();
    await this.page.keyboard.press('Escape');
    await said.waitFor({ state: 'detached' });
  }

  /** Takes the last step back, from a cell of the grid. */
  async undo(from: string): Promise<void> {
    await this.click(from);
    await this.page.keyboard.press('Control+z');
  }

  sheets() {
    return this.page.evaluate(() => window.sweeptable.sheets());
  }

  tables() {
    return this.page.evaluate(() => window.sweeptable.tables());
  }

  async texts(...cells: string[]) {
    return this.page.evaluate((all) => all.map((a1) => window.sweeptable.cell(a1).text), cells);
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
    await this.#chose(a1);
  }

  /** A cell that is merged with others is chosen with them. */
  async #chose(a1: string): Promise<void> {
    const selected = () => this.page.evaluate(() => window.sweeptable.selected());
    await expect.poll(selected).toMatch(new RegExp(`^${a1}(:|$)`));
  }

  /** Chooses a cell by its name, wherever the sheet is scrolled to. */
  async goTo(a1: string): Promise<void> {
    const name = this.page.locator('#grid input').first();
    await name.fill(a1);
    await name.press('Enter');
    await this.#chose(a1);
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
    await this.#typeLine(text);
  }

  /**
   * The first key opens the cell, and the rest comes at once, as from somebody who dictates: each key more would draw the
   * grid anew. The suggestions are drawn before the line is left.
   */
  async #typeLine(text: string): Promise<void> {
    await this.page.keyboard.type(text.slice(0, 1));
    await this.page.keyboard.insertText(text.slice(1));
    await this.page.evaluate(
      () => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))),
    );
    await this.page.keyboard.press('Enter');
  }

  /** Pastes at a cell what another program has put on the clipboard as plain text. */
  async paste(a1: string, text: string): Promise<void> {
    await this.page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    await this.page.evaluate((words) => navigator.clipboard.writeText(words), text);
    await this.click(a1);
    await this.page.keyboard.press('Control+v');
  }

  /** Copies cells of the grid, from one corner to the other. */
  async copy(from: string, to: string): Promise<void> {
    await this.page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    await this.click(from);
    const { x, y } = await this.page.evaluate((at) => window.sweeptable.place(at), to);
    await this.page.keyboard.down('Shift');
    await this.page.mouse.click(x, y);
    await this.page.keyboard.up('Shift');
    await expect.poll(() => this.page.evaluate(() => window.sweeptable.selected())).toBe(`${from}:${to}`);
    await this.page.evaluate(() => navigator.clipboard.writeText(''));
    await this.page.keyboard.press('Control+c');
    await expect.poll(() => this.page.evaluate(() => navigator.clipboard.readText())).not.toBe('');
  }

  /** Types formulas one below the other, each once the grid has gone on to its cell. */
  async enterDown(first: string, texts: readonly string[]): Promise<void> {
    const [, column = '', row = ''] = /^([A-Z]+)(\d+)$/.exec(first) ?? [];
    await this.click(first);
    for (const [i, text] of texts.entries()) {
      await this.#typeLine(text);
      await expect
        .poll(() => this.page.evaluate(() => window.sweeptable.selected()))
        .toBe(`${column}${Number(row) + i + 1}`);
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
