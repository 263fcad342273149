/** Between two lines of a hatch, in pixels. */
const APART = 5;

/** What tells the bars of a chart apart in grey: full, empty, and two ways to be hatched. */
export const BAR_FILLS = ['full', 'empty', 'rising', 'falling'] as const;
export type BarFill = (typeof BAR_FILLS)[number];

export const barFillOf = (index: number): BarFill => BAR_FILLS[index % BAR_FILLS.length] as BarFill;

/** What the bars of the series at a place are filled with. Each has an edge of its ink. */
export function barFill(index: number, ink: string, zoom: number): string | CanvasPattern {
  const kind = barFillOf(index);
  if (kind === 'full') return ink;
  if (kind === 'empty') return 'transparent';
  const size = Math.max(2, Math.round(APART * zoom * devicePixelRatio));
  const tile = Object.assign(document.createElement('canvas'), { width: size, height: size });
  const ctx = tile.getContext('2d');
  if (!ctx) return ink;
  ctx.strokeStyle = ink;
  ctx.lineWidth = Math.max(1, size / 4);
  // From corner to corner, and once more on both sides, so that the lines meet those of the next tile.
  const [from, to] = kind === 'rising' ? [size, 0] : [0, size];
  for (const shift of [-size, 0, size]) {
    ctx.moveTo(shift, from);
    ctx.lineTo(shift + size, to);
  }
  ctx.stroke();
  return ctx.createPattern(tile, 'repeat') ?? ink;
}
