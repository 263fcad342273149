import type { CDPSession, Page } from 'playwright-core';

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Longer than a finger has to lie still until it holds. */
const HELD = 600;

/** A hand on the glass of a page: what it does reaches the page as touches of a person would, each at a time that it says. */
export class Hand {
  readonly #page: Page;
  readonly #session: CDPSession;
  /** In seconds. A busy computer must not make a slow swipe of a quick one. */
  #clock = Date.now() / 1000;

  private constructor(page: Page, session: CDPSession) {
    this.#page = page;
    this.#session = session;
  }

  static async on(page: Page): Promise<Hand> {
    return new Hand(page, await page.context().newCDPSession(page));
  }

  /** Fingers lie down, move or leave, so many milliseconds after what was last. */
  async #touch(
    type: 'touchStart' | 'touchMove' | 'touchEnd',
    spots: readonly Spot[],
    after = 16,
  ): Promise<void> {
    const then = this.#clock + after / 1000;
    const now = Date.now() / 1000;
    this.#clock = type === 'touchStart' ? Math.max(then, now) : then;
    // nor before its time: a browser takes no tap that is still to come
    if (this.#clock > now) await this.#page.waitForTimeout((this.#clock - now) * 1000);
    await this.#session.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: spots.map(({ x, y }, id) => ({ x, y, id })),
      timestamp: this.#clock,
    });
  }

  async tap(at: Spot): Promise<void> {
    await this.#touch('touchStart', [at], 400);
    await this.#touch('touchEnd', []);
  }

  /** Moves over the glass in even steps; lifts the finger at once, or after a rest. */
  async swipe(from: Spot, to: Spot, { rests = false, steps = 8 } = {}): Promise<void> {
    await this.#touch('touchStart', [from], 400);
    for (const at of between(from, to, steps)) await this.#touch('touchMove', [at]);
    await this.#touch('touchEnd', [], rests ? 300 : 8);
  }

  /** Lies still until it holds, moves along the spots, and lets go. */
  async hold(from: Spot, ...along: readonly Spot[]): Promise<void> {
    await this.#touch('touchStart', [from], 400);
    await this.#page.waitForTimeout(HELD);
    let last = from;
    for (const to of along) {
      for (const at of between(last, to, 4)) await this.#touch('touchMove', [at]);
      last = to;
    }
    await this.#touch('touchEnd', []);
  }

  /** Two fingers about a spot, so far apart at first and in the end. */
  async pinch({ x, y }: Spot, apart: number, then: number): Promise<void> {
    const spots = (far: number): Spot[] => [
      { x, y: y - far / 2 },
      { x, y: y + far / 2 },
    ];
    await this.#touch('touchStart', spots(apart).slice(0, 1), 400);
    await this.#touch('touchStart', spots(apart));
    for (let i = 1; i <= 6; i++) await this.#touch('touchMove', spots(apart + ((then - apart) * i) / 6));
    await this.#touch('touchEnd', []);
  }

  async close(): Promise<void> {
    await this.#session.detach();
  }
}

const between = (from: Spot, to: Spot, steps: number): Spot[] =>
  Array.from({ length: steps }, (_, i) => ({
    x: from.x + ((to.x - from.x) * (i + 1)) / steps,
    y: from.y + ((to.y - from.y) * (i + 1)) / steps,
  }));
