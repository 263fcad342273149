import {
  BooleanNumber,
  BorderStyleTypes,
  HorizontalAlign,
  type IBorderData,
  type IStyleData,
  type Nullable,
  VerticalAlign,
  WrapStrategy,
} from '@univerjs/core';
import type { BookStyle, Edge, EdgeSide } from '../../../book/book';

const ALIGN = { left: HorizontalAlign.LEFT, center: HorizontalAlign.CENTER, right: HorizontalAlign.RIGHT };
const VERTICAL = { top: VerticalAlign.TOP, middle: VerticalAlign.MIDDLE, bottom: VerticalAlign.BOTTOM };
const SIDES = { top: 't', right: 'r', bottom: 'b', left: 'l' } as const;
const LINES: Readonly<Record<Edge['line'], BorderStyleTypes>> = {
  thin: BorderStyleTypes.THIN,
  medium: BorderStyleTypes.MEDIUM,
  thick: BorderStyleTypes.THICK,
  dotted: BorderStyleTypes.DOTTED,
  dashed: BorderStyleTypes.DASHED,
  double: BorderStyleTypes.DOUBLE,
  hair: BorderStyleTypes.HAIR,
};
/** Room right of a number, so that it never touches the next cell's text. Left of a text the grid would cut its end for it. */
const ROOM = 4;

const entries = <K extends string, V>(record: Readonly<Partial<Record<K, V>>>): [K, V][] =>
  Object.entries(record) as [K, V][];
const keyOf = <K extends string, V>(record: Readonly<Record<K, V>>, value: unknown): K | undefined =>
  entries<K, V>(record).find(([, v]) => v === value)?.[0];

/** A cell's style as the grid keeps it. */
export function gridStyle(style: BookStyle): IStyleData {
  const { font, size, bold, italic, underline, strike, ink, fill, edges, format, align, vertical, wrap } =
    style;
  const borders: IBorderData = Object.fromEntries(
    entries(edges ?? {}).map(([side, edge]) => [SIDES[side], { s: LINES[edge.line], cl: { rgb: edge.ink } }]),
  );
  return {
    ...(font === undefined ? {} : { ff: font }),
    ...(size === undefined ? {} : { fs: size }),
    ...(bold ? { bl: BooleanNumber.TRUE } : {}),
    ...(italic ? { it: BooleanNumber.TRUE } : {}),
    ...(underline ? { ul: { s: BooleanNumber.TRUE } } : {}),
    ...(strike ? { st: { s: BooleanNumber.TRUE } } : {}),
    ...(ink === undefined ? {} : { cl: { rgb: ink } }),
    ...(fill === undefined ? {} : { bg: { rgb: fill } }),
    ...(edges ? { bd: borders } : {}),
    ...(format === undefined ? {} : { n: { pattern: format } }),
    ...(align === undefined ? {} : { ht: ALIGN[align] }),
    ...(align === 'right' ? { pd: { r: ROOM } } : {}),
    // The grid draws its lists in the middle of a cell: so does everything else, where nothing is said.
    vt: VERTICAL[vertical ?? 'middle'],
    ...(wrap ? { tb: WrapStrategy.WRAP } : {}),
  };
}

/** The same back again. What a file has no place for is left out. */
export function bookStyle(style: Nullable<IStyleData>): BookStyle {
  if (!style) return {};
  const edges: Partial<Record<EdgeSide, Edge>> = {};
  for (const [side, short] of entries(SIDES)) {
    const line = style.bd?.[short];
    if (!line) continue;
    edges[side] = { line: keyOf(LINES, line.s) ?? 'thin', ink: hex(line.cl?.rgb) ?? '#000000' };
  }
  const [align, vertical] = [keyOf(ALIGN, style.ht), keyOf(VERTICAL, style.vt)];
  const [ink, fill] = [hex(style.cl?.rgb), hex(style.bg?.rgb)];
  const format = style.n?.pattern;
  return {
    ...(style.ff ? { font: style.ff } : {}),
    ...(style.fs ? { size: style.fs } : {}),
    ...(style.bl ? { bold: true } : {}),
    ...(style.it ? { italic: true } : {}),
    ...(style.ul?.s ? { underline: true } : {}),
    ...(style.st?.s ? { strike: true } : {}),
    ...(ink ? { ink } : {}),
    ...(fill ? { fill } : {}),
    ...(Object.keys(edges).length > 0 ? { edges } : {}),
    ...(format && format !== 'General' ? { format } : {}),
    ...(align ? { align } : {}),
    ...(vertical ? { vertical } : {}),
    ...(style.tb === WrapStrategy.WRAP ? { wrap: true } : {}),
  };
}

/** A colour as #rrggbb: the grid's own pickers write rgb(1,2,3). */
function hex(colour: Nullable<string>): string | undefined {
  if (!colour) return undefined;
  if (/^#[\da-f]{6}$/i.test(colour)) return colour.toLowerCase();
  if (/^#[\da-f]{3}$/i.test(colour)) return colour.toLowerCase().replace(/[\da-f]/g, '$&$&');
  const parts = /^rgba?\(\s*(\d+)\D+(\d+)\D+(\d+)/.exec(colour)?.slice(1);
  return parts && `#${parts.map((part) => Number(part).toString(16).padStart(2, '0')).join('')}`;
}
