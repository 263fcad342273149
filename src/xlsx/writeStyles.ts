import type { Style } from '@cj-tech-master/excelts';
import { type BookStyle, SIDES } from '../book/book';

export const argb = (colour: string): { argb: string } => ({ argb: `FF${colour.slice(1).toUpperCase()}` });

function fileFont({ font, size, bold, italic, underline, strike, ink }: BookStyle): Style['font'] {
  return {
    ...(font === undefined ? {} : { name: font }),
    ...(size === undefined ? {} : { size }),
    ...(bold ? { bold } : {}),
    ...(italic ? { italic } : {}),
    ...(underline ? { underline } : {}),
    ...(strike ? { strike } : {}),
    ...(ink === undefined ? {} : { color: argb(ink) }),
  };
}

const fileBorder = (edges: NonNullable<BookStyle['edges']>): Style['border'] =>
  Object.fromEntries(
    SIDES.flatMap((side) => {
      const edge = edges[side];
      return edge ? [[side, { style: edge.line, color: argb(edge.ink) }]] : [];
    }),
  );

export function fileStyle(style: BookStyle): Partial<Style> {
  const { fill, edges, format, align, vertical, wrap, indent } = style;
  return {
    font: fileFont(style),
    ...(fill === undefined ? {} : { fill: { type: 'pattern', pattern: 'solid', fgColor: argb(fill) } }),
    ...(edges === undefined ? {} : { border: fileBorder(edges) }),
    ...(format === undefined ? {} : { numFmt: format }),
    alignment: {
      ...(align === undefined ? {} : { horizontal: align }),
      ...(vertical === undefined ? {} : { vertical }),
      ...(wrap ? { wrapText: wrap } : {}),
      ...(indent === undefined ? {} : { indent }),
    },
  };
}

/** What a conditional format changes: it fills with the other colour of a pattern. */
export function differenceOf(look: BookStyle): Partial<Style> {
  const { fill, edges, format } = look;
  return {
    font: fileFont(look),
    ...(fill === undefined ? {} : { fill: { type: 'pattern', pattern: 'solid', bgColor: argb(fill) } }),
    ...(edges === undefined ? {} : { border: fileBorder(edges) }),
    ...(format === undefined ? {} : { numFmt: format }),
  };
}
