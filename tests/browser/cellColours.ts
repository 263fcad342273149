import { contrast, luminance, type Rgb } from '../../src/hosts/workbench/grid/dark/nightColour';
import type { Workbench } from './workbench';

interface Drawn {
  /** How bright the ground of the cell is, from 0 to 1. */
  readonly ground: number;
  /** Of what stands out most in the cell, such as the middle of its letters. */
  readonly contrast: number;
}

/** How a cell is drawn around its middle: as the pixels of the grid's canvas have it. */
export async function drawn(sheet: Workbench, a1: string): Promise<Drawn> {
  const pixels = await sheet.page.evaluate((at) => {
    const { width } = window.sweeptable.room(at);
    const { x, y } = window.sweeptable.place(at);
    const canvas = [...document.querySelectorAll<HTMLCanvasElement>('#grid canvas')].sort(
      (a, b) => b.width * b.height - a.width * a.height,
    )[0];
    if (!canvas) throw new Error('There is no grid.');
    const place = canvas.getBoundingClientRect();
    const dots = canvas.width / place.width;
    const across = Math.max(4, width - 16);
    const part = [x - across / 2 - place.left, y - 7 - place.top, across, 14].map((px) =>
      Math.round(px * dots),
    );
    const [left = 0, top = 0, wide = 0, tall = 0] = part;
    // in a canvas of its own, as the grid's is made to be drawn on and not to be read
    const read = new OffscreenCanvas(wide, tall).getContext('2d', { willReadFrequently: true });
    // where nothing is drawn, the page shows through
    let behind: Element | null = canvas;
    while (behind && getComputedStyle(behind).backgroundColor === 'rgba(0, 0, 0, 0)')
      behind = behind.parentElement;
    if (read && behind) read.fillStyle = getComputedStyle(behind).backgroundColor;
    read?.fillRect(0, 0, wide, tall);
    read?.drawImage(canvas, left, top, wide, tall, 0, 0, wide, tall);
    return [...(read?.getImageData(0, 0, wide, tall).data ?? [])];
  }, a1);
  const counts = new Map<string, number>();
  for (let i = 0; i + 3 < pixels.length; i += 4) {
    const key = pixels.slice(i, i + 3).join(' ');
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  const colours = [...counts]
    .sort(([, a], [, b]) => b - a)
    .map(([key]) => key.split(' ').map(Number) as unknown as Rgb);
  const [ground] = colours;
  if (!ground) throw new Error(`${a1} is drawn nowhere.`);
  return {
    ground: luminance(ground),
    contrast: Math.max(...colours.map((colour) => contrast(colour, ground))),
  };
}
