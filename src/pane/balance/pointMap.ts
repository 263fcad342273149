import { svg } from '../element';
import type { PointLine } from './said';

const WIDTH = 240;
const HEIGHT = 160;
const EDGE = 20;
const RADIUS = 11;

type Placed = PointLine & { readonly place: NonNullable<PointLine['place']>; readonly number: number };

const placed = (points: readonly PointLine[]): Placed[] =>
  points.flatMap((point, i) => (point.place ? [{ ...point, place: point.place, number: i + 1 }] : []));

const said = ({ number, name, miss, isOff }: Placed): string =>
  `${number} ${name}: ${isOff ? miss : miss === '' ? 'ignored' : 'as wanted'}`;

/** Where the points lie, each by its number in the table: a disc where it reads what is wanted, a triangle where it is off. */
export function pointMap(points: readonly PointLine[]): SVGElement[] {
  const all = placed(points);
  if (all.length < 2) return [];
  const span = (of: (point: Placed) => number): readonly [least: number, width: number] => {
    const list = all.map(of);
    return [Math.min(...list), Math.max(...list) - Math.min(...list)];
  };
  const [left, wide] = span(({ place }) => place.across);
  const [bottom, high] = span(({ place }) => place.up);
  const scale = Math.min((WIDTH - 2 * EDGE) / (wide || 1), (HEIGHT - 2 * EDGE) / (high || 1));
  const height = high === 0 ? 2 * EDGE : high * scale + 2 * EDGE;
  const at = ({ place }: Placed): readonly [x: number, y: number] => [
    wide === 0 ? WIDTH / 2 : EDGE + (place.across - left) * scale,
    height - EDGE - (place.up - bottom) * scale,
  ];
  return [
    svg(
      'svg',
      {
        viewBox: `0 0 ${WIDTH} ${height}`,
        role: 'img',
        class: 'point-map',
        'aria-label': `Where the points lie. ${all.map(said).join('; ')}`,
      },
      ...all.map((point) => svg('g', {}, mark(point, at(point)), number(point, at(point)))),
    ),
  ];
}

function mark({ isOff, stops }: Placed, [x, y]: readonly [number, number]): SVGElement {
  if (!isOff) return svg('circle', { cx: x, cy: y, r: RADIUS, class: 'met' });
  const to = stops > 0 ? -1 : 1;
  const tip = (RADIUS + 5) * to;
  const foot = RADIUS * to;
  return svg('path', {
    d: `M${x} ${y + tip}L${x - RADIUS - 5} ${y - foot}H${x + RADIUS + 5}Z`,
    class: 'off',
  });
}

const number = ({ number: shown }: Placed, [x, y]: readonly [number, number]): SVGElement =>
  svg('text', { x, y: y + 4, 'text-anchor': 'middle' }, String(shown));
