/** A place on the page, in pixels. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** What two fingers hold: the place between them, and how far they are apart. */
export interface Span extends Spot {
  readonly apart: number;
}

/** What fingers may mean. */
export interface Meant {
  /** One lies down, or another joins it: what still moves shall stop. */
  down(): void;
  tap(at: Spot): void;
  /** One moves, by so much since it was last told of. */
  swipe(by: Spot): void;
  /** It is lifted while it moves, at so many pixels in a millisecond. */
  fling(speed: Spot): void;
  /** One has lain still for a while. */
  hold(at: Spot): void;
  /** It moves after that. */
  drag(to: Spot): void;
  /** It is lifted after that; whether it has moved in between. */
  drop(at: Spot, hasMoved: boolean): void;
  /** What began with `hold` is taken back. */
  giveUp(): void;
  /** Two are drawn apart or together; `from` is what they held at first. */
  pinch(from: Span, to: Span): void;
}

/** Waits so many milliseconds before it does something; gives back how to leave it. */
export type Later = (wait: number, run: () => void) => () => void;

/** A finger that lies still moves as little as this, in pixels. */
const STILL = 8;
/** How long it lies still until it holds, in milliseconds. */
export const HOLD = 500;
/** The speed of a swipe is that of its end: so long back, and not where the finger has rested so long, in milliseconds. */
const MEASURED = 100;
const RESTED = 60;
/** A swipe that goes so much further in one direction than in the other goes in that one alone. */
const STRAIGHT = 2;

interface Sample extends Spot {
  readonly time: number;
}

type Phase = 'none' | 'pressed' | 'swiping' | 'holding' | 'dragging' | 'pinching' | 'spent';

const far = (a: Spot, b: Spot): number => Math.hypot(a.x - b.x, a.y - b.y);

/** Tells what fingers mean from where they lie. It knows no page: places come in, meanings go out. */
export class Fingers {
  readonly #meant: Meant;
  readonly #later: Later;
  readonly #at = new Map<number, Spot>();
  /** The one that lay down first: alone it means something, except where two pinch. */
  #first = 0;
  #phase: Phase = 'none';
  #start: Spot = { x: 0, y: 0 };
  #from: Span = { x: 0, y: 0, apart: 1 };
  #samples: Sample[] = [];
  #axis: Spot = { x: 1, y: 1 };
  #leaveHold: () => void = () => {};

  constructor(meant: Meant, later: Later) {
    this.#meant = meant;
    this.#later = later;
  }

  /** Whether any lies on the page. */
  get isBusy(): boolean {
    return this.#at.size > 0;
  }

  /** Whether this one does. */
  has(id: number): boolean {
    return this.#at.has(id);
  }

  down(id: number, at: Spot, time: number): void {
    this.#at.set(id, at);
    if (this.#at.size === 1) {
      this.#phase = 'pressed';
      this.#first = id;
      this.#start = at;
      this.#samples = [{ ...at, time }];
      this.#leaveHold = this.#later(HOLD, () => {
        this.#phase = 'holding';
        this.#meant.hold(at);
      });
      this.#meant.down();
    } else if (this.#at.size === 2 && (this.#phase === 'pressed' || this.#phase === 'swiping')) {
      this.#leaveHold();
      this.#phase = 'pinching';
      this.#from = this.#span();
      this.#meant.down();
    }
  }

  move(id: number, at: Spot, time: number): void {
    if (!this.#at.has(id)) return;
    this.#at.set(id, at);
    if (this.#phase !== 'pinching' && id !== this.#first) return;
    switch (this.#phase) {
      case 'pressed':
        if (far(at, this.#start) < STILL) return;
        this.#leaveHold();
        this.#phase = 'swiping';
        this.#axis = axisOf({ x: at.x - this.#start.x, y: at.y - this.#start.y });
        this.#swipeTo(at, time);
        return;
      case 'swiping':
        this.#swipeTo(at, time);
        return;
      case 'holding':
        if (far(at, this.#start) < STILL) return;
        this.#phase = 'dragging';
        this.#meant.drag(at);
        return;
      case 'dragging':
        this.#meant.drag(at);
        return;
      case 'pinching':
        this.#meant.pinch(this.#from, this.#span());
    }
  }

  up(id: number, at: Spot, time: number): void {
    const phase = this.#lifted(id);
    if (phase === 'pressed') this.#meant.tap(this.#start);
    else if (phase === 'swiping') this.#meant.fling(this.#speed(time));
    else if (phase === 'holding' || phase === 'dragging') this.#meant.drop(at, phase === 'dragging');
  }

  /** The browser, or another program, has taken a finger away. */
  cancel(id: number): void {
    const phase = this.#lifted(id);
    if (phase === 'holding' || phase === 'dragging') this.#meant.giveUp();
  }

  /** What ends with this finger. What two have begun is not gone on with by the one that is left. */
  #lifted(id: number): Phase {
    if (!this.#at.delete(id) || (this.#phase !== 'pinching' && id !== this.#first)) return 'none';
    const phase = this.#phase;
    this.#phase = this.#at.size > 0 ? 'spent' : 'none';
    this.#leaveHold();
    return phase;
  }

  #swipeTo(at: Spot, time: number): void {
    const before = this.#samples.at(-1) ?? this.#start;
    this.#samples = [...this.#samples.filter((sample) => time - sample.time <= MEASURED), { ...at, time }];
    this.#meant.swipe({ x: (at.x - before.x) * this.#axis.x, y: (at.y - before.y) * this.#axis.y });
  }

  #speed(time: number): Spot {
    const [first, last] = [this.#samples[0], this.#samples.at(-1)];
    if (!first || !last || last.time === first.time || time - last.time > RESTED) return { x: 0, y: 0 };
    const took = last.time - first.time;
    return {
      x: ((last.x - first.x) / took) * this.#axis.x,
      y: ((last.y - first.y) / took) * this.#axis.y,
    };
  }

  #span(): Span {
    const [a = this.#start, b = this.#start] = this.#at.values();
    return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, apart: Math.max(1, far(a, b)) };
  }
}

/** Both directions, or only the one that a swipe keeps to. */
function axisOf({ x, y }: Spot): Spot {
  if (Math.abs(x) > STRAIGHT * Math.abs(y)) return { x: 1, y: 0 };
  return Math.abs(y) > STRAIGHT * Math.abs(x) ? { x: 0, y: 1 } : { x: 1, y: 1 };
}
