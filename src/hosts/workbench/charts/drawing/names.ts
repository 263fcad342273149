import type uPlot from 'uplot';
import type { LiveChart } from '../liveChart';
import type { Inks } from './axes';
import { nearestIn, placeNames } from './placeNames';
import { fontAt, textWidth } from './words';

/** From the middle of a point to its name. */
const GAP = 6;
/** Height of a name's line. */
const LINE = 14;
/** Letters of a name; longer ones are cut. */
const MOST_LETTERS = 24;
/** A name farther from its point than so many gaps is joined to it by a line. */
const JOINED = 1.5;

/** Writes the name of each point beside it, once where points of one name stand in one place. */
export function writeNames(
  plot: uPlot,
  { names = [], x, series }: LiveChart,
  inks: Inks,
  zoom: number,
): void {
  const ratio = devicePixelRatio;
  const { ctx, bbox } = plot;
  const written = new Set<string>();
  const named = names.flatMap((name, i) => {
    const [at, value] = [x[i], series[0]?.values[i]];
    const point = JSON.stringify([name, at, value]);
    if (name === '' || typeof at !== 'number' || value == null || written.has(point)) return [];
    written.add(point);
    const text = name.length > MOST_LETTERS ? `${name.slice(0, MOST_LETTERS - 1)}…` : name;
    const size = { width: textWidth(text, zoom) * ratio, height: LINE * zoom * ratio };
    return [{ text, x: plot.valToPos(at, 'x', true), y: plot.valToPos(value, 'y', true), ...size }];
  });
  const within = { x: bbox.left, y: bbox.top, width: bbox.width, height: bbox.height };
  const gap = GAP * zoom * ratio;
  ctx.save();
  ctx.fillStyle = inks.text;
  ctx.strokeStyle = inks.lines;
  ctx.lineWidth = zoom * ratio;
  ctx.font = fontAt(zoom, ratio);
  ctx.textBaseline = 'middle';
  ctx.textAlign = 'left';
  for (const [i, place] of placeNames(named, within, gap).entries()) {
    const point = named[i];
    if (!place || !point) continue;
    const end = nearestIn(place, point);
    if (Math.hypot(end.x - point.x, end.y - point.y) > JOINED * gap) {
      ctx.beginPath();
      ctx.moveTo(point.x, point.y);
      ctx.lineTo(end.x, end.y);
      ctx.stroke();
    }
    ctx.fillText(point.text, place.x, place.y + place.height / 2);
  }
  ctx.restore();
}
