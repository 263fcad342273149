import { beforeEach, describe, expect, it } from 'vitest';
import { Fingers, type Meant, type Span, type Spot } from '../../../src/hosts/workbench/touch/fingers';

let meant: unknown[][];
let fingers: Fingers;
/** What waits for a finger to lie still long enough. */
let waiting: Set<() => void>;

beforeEach(() => {
  meant = [];
  waiting = new Set();
  const listener: Meant = {
    down: () => {},
    tap: (at) => meant.push(['tap', at]),
    swipe: (by) => meant.push(['swipe', by]),
    fling: (speed) => meant.push(['fling', speed]),
    hold: (at) => meant.push(['hold', at]),
    drag: (to) => meant.push(['drag', to]),
    drop: (at, hasMoved) => meant.push(['drop', at, hasMoved]),
    giveUp: () => meant.push(['giveUp']),
    pinch: (from, to) => meant.push(['pinch', from, to]),
  };
  fingers = new Fingers(listener, (_, run) => {
    waiting.add(run);
    return () => waiting.delete(run);
  });
});

const wait = (): void => {
  for (const run of waiting) run();
};
const at = (x: number, y: number): Spot => ({ x, y });

describe('one finger', () => {
  it('taps where it lay down, though it trembles', () => {
    fingers.down(7, at(100, 100), 0);
    fingers.move(7, at(104, 103), 30);
    fingers.up(7, at(104, 103), 60);
    expect(meant).toEqual([['tap', at(100, 100)]]);
    expect(waiting.size).toBe(0);
  });

  it('swipes as far as it goes, and flings at the speed of its end', () => {
    fingers.down(1, at(100, 500), 0);
    // 40 px in 20 ms, twice: 2 px a millisecond
    fingers.move(1, at(100, 460), 20);
    fingers.move(1, at(100, 420), 40);
    fingers.up(1, at(100, 420), 45);
    expect(meant).toEqual([
      ['swipe', at(0, -40)],
      ['swipe', at(0, -40)],
      ['fling', at(0, -2)],
    ]);
  });

  it('leaves the sheet where it is after a rest', () => {
    fingers.down(1, at(100, 500), 0);
    fingers.move(1, at(100, 400), 50);
    fingers.up(1, at(100, 400), 200);
    expect(meant.at(-1)).toEqual(['fling', at(0, 0)]);
  });

  it('keeps to the direction that it clearly takes, and else goes in both', () => {
    fingers.down(1, at(0, 0), 0);
    fingers.move(1, at(4, 30), 10);
    fingers.move(1, at(20, 60), 20);
    expect(meant.map(([, by]) => by)).toEqual([at(0, 30), at(0, 30)]);
    meant = [];
    fingers.up(1, at(20, 60), 30);
    fingers.down(1, at(0, 0), 100);
    fingers.move(1, at(20, 30), 110);
    expect(meant.at(-1)).toEqual(['swipe', at(20, 30)]);
  });

  it('holds what it lies on, and drags from there', () => {
    fingers.down(1, at(50, 50), 0);
    wait();
    fingers.move(1, at(52, 50), 600);
    fingers.move(1, at(90, 50), 620);
    fingers.up(1, at(95, 50), 640);
    expect(meant).toEqual([
      ['hold', at(50, 50)],
      ['drag', at(90, 50)],
      ['drop', at(95, 50), true],
    ]);
  });

  it('lets go of what it only held', () => {
    fingers.down(1, at(50, 50), 0);
    wait();
    fingers.up(1, at(51, 50), 700);
    expect(meant.at(-1)).toEqual(['drop', at(51, 50), false]);
  });

  it('means nothing that the browser takes away', () => {
    fingers.down(1, at(50, 50), 0);
    fingers.cancel(1);
    expect(meant).toEqual([]);
    expect(waiting.size).toBe(0);
    fingers.down(1, at(50, 50), 0);
    wait();
    fingers.cancel(1);
    expect(meant.at(-1)).toEqual(['giveUp']);
    expect(fingers.isBusy).toBe(false);
  });
});

describe('two fingers', () => {
  it('pinch by how far they are apart, about the place between them', () => {
    fingers.down(1, at(100, 100), 0);
    fingers.down(2, at(100, 200), 10);
    expect(waiting.size).toBe(0);
    fingers.move(2, at(100, 300), 30);
    const spans = meant.map(([, from, to]) => [from, to] as [Span, Span]);
    expect(spans).toEqual([
      [
        { x: 100, y: 150, apart: 100 },
        { x: 100, y: 200, apart: 200 },
      ],
    ]);
  });

  it('end together: the one that stays does not begin to scroll, nor tap', () => {
    fingers.down(1, at(100, 100), 0);
    fingers.down(2, at(100, 200), 10);
    fingers.move(2, at(100, 300), 30);
    meant = [];
    fingers.up(2, at(100, 300), 40);
    fingers.move(1, at(300, 100), 60);
    fingers.up(1, at(300, 100), 70);
    expect(meant).toEqual([]);
    fingers.down(1, at(10, 10), 200);
    fingers.up(1, at(10, 10), 220);
    expect(meant).toEqual([['tap', at(10, 10)]]);
  });

  it('do not pinch where one has something in hand', () => {
    fingers.down(1, at(100, 100), 0);
    wait();
    fingers.down(2, at(100, 200), 700);
    fingers.move(2, at(100, 300), 720);
    fingers.up(2, at(100, 300), 730);
    fingers.move(1, at(150, 100), 740);
    fingers.up(1, at(150, 100), 760);
    expect(meant).toEqual([
      ['hold', at(100, 100)],
      ['drag', at(150, 100)],
      ['drop', at(150, 100), true],
    ]);
  });
});
