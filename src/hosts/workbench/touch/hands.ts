import { CANVAS } from '../grid/cellPlace';
import type { Grid } from '../grid/grid';
import { scrollBy, zoomTo } from '../grid/scroll';
import { sheetView } from '../grid/sheetView';
import { Fingers, type Meant, type Span, type Spot } from './fingers';
import { letMoveOn } from './momentum';
import { OnCells } from './onCells';
import { OnChart } from './onChart';
import { letNamesBeDrawn } from './onTabs';
import { showLetters } from './letters';
import { Ring } from './ring';
import type { Surface } from './surface';

/** What else of the page fingers scroll, with what a touch means there. */
const CHART = '.charts .chart, .charts .corner';
const BUTTON = '.at-foot button';

/** A button is pressed by the browser; only a swipe that begins on it scrolls. */
const ON_BUTTON: Surface = {
  hint: undefined,
  tap() {},
  hold() {},
  drag() {},
  drop() {},
  giveUp() {},
};

const stillness = matchMedia('(prefers-reduced-motion: reduce)');

/** Lets fingers scroll, choose, write and zoom. A mouse and a pen are left to the grid. */
class Hands implements Meant {
  readonly #grid: Grid;
  readonly #ring = new Ring();
  readonly #fingers = new Fingers(this, (wait, run) => {
    const waiting = setTimeout(run, wait);
    return () => clearTimeout(waiting);
  });
  #surface: Surface = ON_BUTTON;
  #stop: () => void = () => {};
  /** Where the finger lay down that may swipe; nothing once it does. */
  #begun: Spot | undefined;
  /** What two fingers hold, as it was when they began and as it was last. */
  #pinched: { readonly from: Span; readonly zoom: number; last: Span } | undefined;

  constructor(grid: Grid) {
    this.#grid = grid;
  }

  start(): void {
    const listen = (kinds: readonly string[], heard: (event: PointerEvent) => void): void => {
      for (const kind of kinds)
        addEventListener(
          kind,
          (event) => {
            if (event instanceof PointerEvent && event.isTrusted) heard(event);
          },
          { capture: true },
        );
    };
    listen(['pointerdown'], (event) => this.#down(event));
    listen(['pointermove', 'pointerup', 'pointercancel'], (event) => this.#goOn(event));
    // The grid takes a finger that is lifted for a mouse that goes away, and would close what the finger has opened.
    listen(['pointerover', 'pointerenter', 'pointerout', 'pointerleave'], (event) => {
      if (event.pointerType === 'touch' && isOn(event, CANVAS)) event.stopImmediatePropagation();
    });
    // A browser has a menu of its own for a finger that holds.
    listen(['contextmenu'], (event) => {
      if (event.pointerType !== 'touch' || !isOn(event, `${CANVAS}, ${CHART}`)) return;
      event.preventDefault();
      event.stopImmediatePropagation();
    });
    addEventListener('wheel', () => this.#stop(), { capture: true, passive: true });
    addEventListener('keydown', () => this.#stop(), { capture: true });
  }

  #down(event: PointerEvent): void {
    this.#stop();
    if (event.pointerType !== 'touch') return showLetters();
    const target = event.target instanceof Element ? event.target : undefined;
    const surface = target && this.#surfaceOf(target, event.pointerId);
    if (!surface) return;
    if (surface !== ON_BUTTON) {
      event.stopImmediatePropagation();
      // else the browser would take the keyboard from the cells
      event.preventDefault();
    }
    if (!this.#fingers.isBusy) {
      this.#surface = surface;
      this.#begun = spotOf(event);
    }
    this.#fingers.down(event.pointerId, spotOf(event), event.timeStamp);
  }

  #surfaceOf(target: Element, pointer: number): Surface | undefined {
    if (target.matches(CANVAS)) return new OnCells(this.#grid, target, pointer);
    const handle = target.closest(CHART);
    if (handle) return new OnChart(handle, pointer);
    return target.closest(BUTTON) ? ON_BUTTON : undefined;
  }

  #goOn(event: PointerEvent): void {
    const { pointerId, timeStamp, type } = event;
    if (!this.#fingers.has(pointerId)) return;
    if (this.#surface !== ON_BUTTON) event.stopImmediatePropagation();
    if (type === 'pointermove') this.#fingers.move(pointerId, spotOf(event), timeStamp);
    else if (type === 'pointerup') this.#fingers.up(pointerId, spotOf(event), timeStamp);
    else this.#fingers.cancel(pointerId);
  }

  down(): void {
    this.#stop();
  }

  tap(at: Spot): void {
    this.#surface.tap(at);
  }

  swipe({ x, y }: Spot): void {
    const hint = this.#begun && this.#surface.swiped?.(this.#begun);
    this.#begun = undefined;
    if (hint !== undefined) this.#ring.say(hint);
    scrollBy(this.#grid, -x, -y);
  }

  fling(speed: Spot): void {
    if (stillness.matches) return;
    this.#stop = letMoveOn(speed, ({ x, y }) => scrollBy(this.#grid, -x, -y));
  }

  hold(at: Spot): void {
    this.#surface.hold(at);
    const { hint } = this.#surface;
    if (hint !== undefined) this.#ring.show(at, hint);
  }

  drag(to: Spot): void {
    this.#ring.follow(to);
    this.#surface.drag(to);
  }

  drop(at: Spot, hasMoved: boolean): void {
    this.#ring.away();
    this.#surface.drop(at, hasMoved);
  }

  giveUp(): void {
    this.#ring.away();
    this.#surface.giveUp();
  }

  /** What lies between both fingers stays there. */
  pinch(from: Span, to: Span): void {
    const before = sheetView(this.#grid);
    if (!before) return;
    if (this.#pinched?.from !== from) this.#pinched = { from, zoom: before.zoom, last: from };
    const { zoom, last } = this.#pinched;
    zoomTo(this.#grid, (zoom * to.apart) / from.apart);
    const now = sheetView(this.#grid)?.zoom ?? before.zoom;
    const { left, top } = before.canvas.getBoundingClientRect();
    const kept = (was: number, is: number, edge: number): number =>
      ((was - edge) * now) / before.zoom - (is - edge);
    scrollBy(this.#grid, kept(last.x, to.x, left), kept(last.y, to.y, top));
    this.#pinched.last = to;
  }
}

const isOn = ({ target }: Event, selector: string): boolean =>
  target instanceof Element && target.closest(selector) !== null;
const spotOf = ({ clientX: x, clientY: y }: PointerEvent): Spot => ({ x, y });

/** From now on the grid can be used by touch. */
export function letHandsIn(grid: Grid): void {
  new Hands(grid).start();
  letNamesBeDrawn();
}
