import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';
import { LEGIBLE } from '../../src/hosts/workbench/grid/dark/nightColour';
import { browser } from './browser';
import { drawn } from './cellColours';
import { Hand } from './hand';
import { Workbench } from './workbench';

export interface Screen {
  readonly width: number;
  readonly height: number;
  readonly touched: boolean;
  readonly look: 'light' | 'dark';
}

/** Between the middle of a cell that is in sight and the edge of the cells, in pixels: a drag nearer to it scrolls. */
const INSET = { left: 60, right: 90, top: 150, bottom: 80 };
/** Until the names of the sheets lie still, in milliseconds. */
const LIES_STILL = 200;
/** More moves than lead from one end of a sheet to the other. */
const MOST_MOVES = 20;

/** How far a number lies outside. */
const beyond = (at: number, from: number, to: number): number =>
  at < from ? at - from : at > to ? at - to : 0;
const within = (by: number, most: number): number => Math.max(-most, Math.min(most, by));

/** Notes in the page whether the cells move from the time they are drawn until all that stands around them is there. */
function watchCells(): void {
  const look = (): void => {
    const { dataset } = document.documentElement;
    const isAll = dataset['pane'] === 'true';
    const cells = document.querySelector('#grid canvas');
    const top = cells && String(document.querySelector('#grid')?.getBoundingClientRect().top);
    if (top) {
      if (top !== (dataset['top'] ??= top)) dataset['moved'] = `from ${dataset['top']} to ${top}`;
    }
    if (!isAll) requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}

/** Somebody at a screen for the first time, who uses what there is: a mouse with keys, or fingers with the letters on the glass. */
export class Person {
  readonly sheet: Workbench;
  readonly #hand: Hand | undefined;

  private constructor(sheet: Workbench, hand: Hand | undefined) {
    this.sheet = sheet;
    this.#hand = hand;
  }

  static async at({ width, height, touched, look }: Screen): Promise<Person> {
    const of = await (
      await browser()
    ).newContext({ viewport: { width, height }, hasTouch: touched, locale: 'en-US', colorScheme: look });
    const sheet = await Workbench.open({ of, before: (page) => page.addInitScript(watchCells) });
    return new Person(sheet, touched ? await Hand.on(sheet.page) : undefined);
  }

  /** How far the cells have moved while the page came in. */
  moved(): Promise<string> {
    return this.page.evaluate(() => document.documentElement.dataset['moved'] ?? 'nowhere');
  }

  get page(): Page {
    return this.sheet.page;
  }

  button(name: string | RegExp): Locator {
    return this.page.getByRole('button', { name, exact: true }).filter({ visible: true });
  }

  /** Presses what is in sight; what is not is looked for as anybody would, by scrolling what it stands in. */
  async press(what: Locator): Promise<void> {
    await what.scrollIntoViewIfNeeded();
    await this.sees(what);
    await (this.#hand ? what.tap() : what.click());
  }

  /** That something stands on the screen, whole, with nothing over it. */
  async sees(what: Locator): Promise<void> {
    await what.waitFor();
    const covered = () =>
      what.evaluate((element) => {
        const { left, right, top, bottom } = element.getBoundingClientRect();
        const isOnScreen = left > -1 && top > -1 && right < innerWidth + 1 && bottom < innerHeight + 1;
        const found = document.elementFromPoint((left + right) / 2, (top + bottom) / 2);
        if (isOnScreen && found && element.contains(found)) return '';
        return `${element.textContent} at ${[left, top, right, bottom].map(Math.round).join(', ')} of ${innerWidth} × ${innerHeight}, below ${found?.outerHTML.slice(0, 80)}`;
      });
    await expect.poll(covered).toBe('');
  }

  /** That a cell stands on the screen and what is in it can be read. */
  async reads(...cells: readonly string[]): Promise<void> {
    for (const a1 of cells) {
      // the last of the rows that stay lies above whatever is scrolled
      const isOpen = () =>
        this.page.evaluate((at) => {
          const { x, y } = window.sweeptable.place(at);
          return document.elementFromPoint(x, y)?.matches('#grid canvas') ?? false;
        }, a1);
      // oxlint-disable-next-line no-await-in-loop -- one cell after the other
      await expect.poll(isOpen, { message: a1 }).toBe(true);
      // oxlint-disable-next-line no-await-in-loop -- as above
      await expect
        .poll(async () => (await drawn(this.sheet, a1)).contrast, { message: a1 })
        .toBeGreaterThanOrEqual(LEGIBLE);
    }
  }

  /** Scrolls a cell into sight, and gives its place there. */
  async #bring(a1: string): Promise<{ x: number; y: number }> {
    for (let moves = 0; moves < MOST_MOVES; moves++) {
      // oxlint-disable-next-line no-await-in-loop -- one move after the other
      const [at, room] = await this.page.evaluate((cell) => {
        const cells = document.querySelector('canvas[id^="univer-sheet-main-canvas"]');
        return [window.sweeptable.place(cell), cells?.getBoundingClientRect().toJSON() as DOMRect] as const;
      }, a1);
      const x = within(beyond(at.x, room.left + INSET.left, room.right - INSET.right), room.width / 2 - 40);
      const y = within(beyond(at.y, room.top + INSET.top, room.bottom - INSET.bottom), room.height / 3);
      if (x === 0 && y === 0) return at;
      const middle = { x: room.left + room.width / 2, y: room.top + room.height / 2 };
      if (this.#hand)
        // oxlint-disable-next-line no-await-in-loop -- as above
        await this.#hand.swipe(
          { x: middle.x + x / 2, y: middle.y + y / 2 },
          { x: middle.x - x / 2, y: middle.y - y / 2 },
          { rests: true },
        );
      else {
        // oxlint-disable-next-line no-await-in-loop -- as above
        await this.page.mouse.move(middle.x, middle.y);
        // oxlint-disable-next-line no-await-in-loop -- as above
        await this.page.mouse.wheel(x, y);
      }
      // oxlint-disable-next-line no-await-in-loop -- as above
      await this.page.waitForTimeout(80);
    }
    throw new Error(`${a1} cannot be scrolled to.`);
  }

  async choose(a1: string): Promise<void> {
    const at = await this.#bring(a1);
    await (this.#hand ? this.#hand.tap(at) : this.page.mouse.click(at.x, at.y));
    // or the cells that it is one with
    await this.#chosen(new RegExp(`^${a1}(?::|$)`));
  }

  async #chosen(area: RegExp): Promise<void> {
    await expect.poll(() => this.page.evaluate(() => window.sweeptable.selected())).toMatch(area);
  }

  /** Chooses cells by a drag, or by a hold and a drag. */
  async chooseFromTo(from: string, to: string): Promise<void> {
    const start = await this.#bring(from);
    const end = await this.page.evaluate((at) => window.sweeptable.place(at), to);
    if (this.#hand) await this.#hand.hold(start, end);
    else {
      await this.page.mouse.move(start.x, start.y);
      await this.page.mouse.down();
      await this.page.mouse.move(end.x, end.y, { steps: 4 });
      await this.page.mouse.up();
    }
    await this.#chosen(new RegExp(`^${from}:${to}$`));
  }

  /** Types in place of what a cell holds, and goes on by Enter. */
  async type(a1: string, text: string): Promise<void> {
    await this.choose(a1);
    if (this.#hand) {
      await this.#hand.tap(await this.#bring(a1));
      await this.page.keyboard.press('Control+a');
      await this.page.keyboard.insertText(text);
    } else await this.page.keyboard.type(text);
    await this.page.keyboard.press('Enter');
  }

  async goesTo(name: string): Promise<void> {
    // names are drawn along where something comes in beside them
    await this.page.waitForTimeout(LIES_STILL);
    await this.press(this.page.getByRole('tab', { name, exact: true }));
    await expect.poll(() => this.page.evaluate(() => window.sweeptable.inView())).toBe(name);
  }

  /** Where the pane lies over the cells, it is opened and closed. */
  async pane(open: boolean): Promise<void> {
    const way = this.button('Sheets and functions');
    if ((await way.getAttribute('aria-expanded')) === String(open)) return;
    await this.press(way);
    await expect.poll(() => this.sheet.pane.isVisible()).toBe(open);
  }

  async leave(): Promise<void> {
    const { complaints } = this.sheet;
    await this.sheet.close();
    expect(complaints).toEqual({ errors: [], outside: [] });
  }
}
