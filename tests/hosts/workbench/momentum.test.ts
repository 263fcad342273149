import { expect, it } from 'vitest';
import { movingOn } from '../../../src/hosts/workbench/touch/momentum';

/** How far and how long a sheet goes on in frames of so many milliseconds. */
function wayOf(speed: number, frame: number): { readonly way: number; readonly took: number } {
  let [now, way, took] = [{ x: 0, y: speed }, 0, 0];
  for (let moving = movingOn(now, frame); moving; moving = movingOn(now, frame)) {
    way += moving.by.y;
    took += frame;
    now = moving.speed;
  }
  return { way, took };
}

it('ends, and goes as far on a slow screen as on a fast one', () => {
  // v·T of exponential decay: 2 px/ms over 325 ms, less what 0.03 px/ms would still go
  const whole = 325 * (2 - 0.03);
  for (const frame of [4, 16, 33]) {
    const { way, took } = wayOf(-2, frame);
    expect(way).toBeLessThan(-whole);
    expect(way).toBeGreaterThan(-325 * 2);
    // T·ln(2/0.03)
    expect(took).toBeGreaterThanOrEqual(325 * Math.log(2 / 0.03));
    expect(took).toBeLessThan(325 * Math.log(2 / 0.03) + frame);
  }
});

it('does not begin from a standstill', () => {
  expect(movingOn({ x: 0.02, y: -0.02 }, 16)).toBeUndefined();
});
