import type { BookStyle, Edge, Part } from '../book/book';
import { FONT, PALETTE } from '../book/palette';
import { type Look, THEME, WARNED } from './theme';

const all = (edge: Edge): BookStyle['edges'] => ({ top: edge, right: edge, bottom: edge, left: edge });
const EDGES: Readonly<Record<NonNullable<Look['edge']>, (ink: string) => BookStyle['edges']>> = {
  dotted: () => all({ line: 'dotted', ink: PALETTE.slateSoft }),
  below: (ink) => ({ bottom: { line: 'thin', ink } }),
  thick: (ink) => ({ bottom: { line: 'thick', ink } }),
};

/** Words that may stand right of a number: they keep a step away from it. */
const INDENTED: ReadonlySet<Part> = new Set([
  'input',
  'choice',
  'held',
  'result',
  'heading',
  'remark',
  'warning',
]);

/** How a cell differs from others of its part. */
export interface Shape {
  readonly align?: 'left' | 'right';
  readonly wrap?: boolean;
  readonly format?: string;
  /** Points, where these are not those of its part. */
  readonly size?: number;
}

/** The one place where a part of a sheet becomes the style of a cell. */
export function styleOf(
  part: Part,
  { align = 'left', wrap = false, format = 'General', size = THEME[part].size }: Shape = {},
): BookStyle {
  const { ink, fill, bold, italic, edge } = THEME[part];
  const edges = edge && EDGES[edge](ink);
  return {
    font: FONT,
    size,
    ink,
    ...(fill ? { fill } : {}),
    ...(bold ? { bold } : {}),
    ...(italic ? { italic } : {}),
    ...(edges ? { edges } : {}),
    ...(format === 'General' ? {} : { format }),
    align,
    vertical: 'middle',
    ...(wrap ? { wrap } : {}),
    ...(align === 'left' && INDENTED.has(part) ? { indent: 1 } : {}),
  };
}

/** A cell whose warning holds: only what sets it apart. */
export const WARNED_STYLE: BookStyle = {
  ink: WARNED.ink,
  bold: true,
  ...(WARNED.fill ? { fill: WARNED.fill } : {}),
};
