import type { Spot } from './fingers';

/** How long it takes a sheet to lose most of its speed, in milliseconds. */
const FADES = 325;
/** Slower than this it stands, in pixels a millisecond. */
const STANDS = 0.03;

/** A sheet that still moves: its speed, and how far it goes in the time of a frame. */
export interface Moving {
  readonly speed: Spot;
  readonly by: Spot;
}

/** How a sheet moves on for so many milliseconds that had this speed; nothing once it stands. */
export function movingOn(speed: Spot, time: number): Moving | undefined {
  if (Math.hypot(speed.x, speed.y) < STANDS) return undefined;
  const left = Math.exp(-time / FADES);
  const way = FADES * (1 - left);
  return {
    speed: { x: speed.x * left, y: speed.y * left },
    by: { x: speed.x * way, y: speed.y * way },
  };
}

/**
 * Lets something move on, frame by frame, until it stands or can go no further.
 *
 * @param move - moves it by so many pixels, and gives whether it went.
 * @returns what stops it at once.
 */
export function letMoveOn(speed: Spot, move: (by: Spot) => boolean): () => void {
  let now = speed;
  let frame = 0;
  let before: number | undefined;
  const go = (time: number): void => {
    const moving = movingOn(now, before === undefined ? 0 : time - before);
    const hasGone = before === undefined || (moving !== undefined && move(moving.by));
    before = time;
    if (!moving || !hasGone) return;
    now = moving.speed;
    frame = requestAnimationFrame(go);
  };
  frame = requestAnimationFrame(go);
  return () => cancelAnimationFrame(frame);
}
