import { type BookStyle, type Edge, LINES, SIDES } from '../book/book';
import { colourOf, themeColours } from './readColours';
import { child, children, isTrue, type XmlAttributes, type XmlNode } from './xml';

export interface Styles {
  /** By the number that a cell has. */
  readonly cells: readonly (BookStyle | undefined)[];
  /** By the number that a conditional format has. */
  readonly differences: readonly BookStyle[];
  /** A colour that an element names, as #rrggbb. */
  readonly colourOf: (attributes: XmlAttributes) => string | undefined;
}

/** What spreadsheets take: letters in points, steps of an indent. */
const LARGEST = 409;
const DEEPEST = 250;

/** Number formats that a file names by number only. */
const NUMBERED: Readonly<Record<number, string>> = {
  1: '0', 2: '0.00', 3: '#,##0', 4: '#,##0.00', 9: '0%', 10: '0.00%', 11: '0.00E+00', 12: '# ?/?', 13: '# ??/??', 14: 'm/d/yyyy', 15: 'd-mmm-yy', 16: 'd-mmm', 17: 'mmm-yy',
  18: 'h:mm AM/PM', 19: 'h:mm:ss AM/PM', 20: 'h:mm', 21: 'h:mm:ss', 22: 'm/d/yyyy h:mm', 37: '#,##0;(#,##0)', 38: '#,##0;[Red](#,##0)', 39: '#,##0.00;(#,##0.00)',
  40: '#,##0.00;[Red](#,##0.00)', 45: 'mm:ss', 46: '[h]:mm:ss', 47: 'mm:ss.0', 48: '##0.0E+0', 49: '@',
}; // prettier-ignore

export function readStyles(styles: XmlNode | undefined, theme: XmlNode | undefined): Styles {
  const colours = themeColours(theme);
  const list = (name: string, item: string): XmlNode[] => children(child(styles, name), item);
  const formats = new Map(
    list('numFmts', 'numFmt').map(({ attributes: a }) => [Number(a.numFmtId), a.formatCode]),
  );
  const fonts = list('fonts', 'font').map((font) => fontOf(font, colours));
  // The first font is the workbook's usual one: cells that have it look like any others of the program that shows them.
  const { font: _font, size: _size, ink: _ink, ...usual } = fonts[0] ?? {};
  fonts[0] = usual;
  const fills = list('fills', 'fill').map((fill) => fillOf(fill, colours));
  const borders = list('borders', 'border').map((border) => edgesOf(border, colours));
  const formatOf = (id: string | undefined): Pick<BookStyle, 'format'> => {
    const format = formats.get(Number(id)) ?? NUMBERED[Number(id)];
    return format === undefined || format === 'General' ? {} : { format };
  };
  return {
    cells: list('cellXfs', 'xf').map((xf) => {
      const { numFmtId, fontId, fillId, borderId } = xf.attributes;
      const style = {
        ...fonts[Number(fontId)],
        ...fills[Number(fillId)],
        ...borders[Number(borderId)],
        ...formatOf(numFmtId),
        ...alignmentOf(child(xf, 'alignment')),
      };
      return Object.keys(style).length > 0 ? style : undefined;
    }),
    colourOf: (attributes) => colourOf(attributes, colours),
    differences: list('dxfs', 'dxf').map((dxf) => ({
      ...fontOf(child(dxf, 'font'), colours),
      ...fillOf(child(dxf, 'fill'), colours, true),
      ...edgesOf(child(dxf, 'border'), colours),
    })),
  };
}

function fontOf(font: XmlNode | undefined, colours: readonly string[]): BookStyle {
  const value = (name: string): string | undefined => child(font, name)?.attributes.val;
  /** An element without a value says yes. */
  const has = (name: string): boolean => {
    const found = child(font, name);
    return found !== undefined && (found.attributes.val === undefined || isTrue(found.attributes.val));
  };
  const underline = child(font, 'u');
  const name = value('name');
  const size = Number(value('sz'));
  const ink = colourOf(child(font, 'color')?.attributes, colours);
  return {
    ...(name === undefined ? {} : { font: name }),
    ...(size > 0 ? { size: Math.min(size, LARGEST) } : {}),
    ...(has('b') ? { bold: true } : {}),
    ...(has('i') ? { italic: true } : {}),
    ...(underline && underline.attributes.val !== 'none' ? { underline: true } : {}),
    ...(has('strike') ? { strike: true } : {}),
    ...(ink === undefined ? {} : { ink }),
  };
}

/** A conditional format fills with the background of its pattern, a cell with the foreground. */
function fillOf(
  fill: XmlNode | undefined,
  colours: readonly string[],
  conditional = false,
): Pick<BookStyle, 'fill'> {
  const pattern = child(fill, 'patternFill');
  const kind = pattern?.attributes.patternType;
  if (!pattern || kind === 'none' || (kind === undefined && !conditional)) return {};
  const [front, back] = ['fgColor', 'bgColor'].map((name) =>
    colourOf(child(pattern, name)?.attributes, colours),
  );
  const colour = conditional ? (back ?? front) : front;
  return colour === undefined ? {} : { fill: colour };
}

function edgesOf(border: XmlNode | undefined, colours: readonly string[]): Pick<BookStyle, 'edges'> {
  const edges = SIDES.flatMap((side): [string, Edge][] => {
    const found = child(border, side);
    const style = found?.attributes.style;
    if (style === undefined || style === 'none') return [];
    const line = LINES.find((known) => known === style) ?? (style.startsWith('medium') ? 'medium' : 'dashed');
    return [[side, { line, ink: colourOf(child(found, 'color')?.attributes, colours) ?? '#000000' }]];
  });
  return edges.length > 0 ? { edges: Object.fromEntries(edges) } : {};
}

function alignmentOf(alignment: XmlNode | undefined): BookStyle {
  const { horizontal, vertical, wrapText, indent } = alignment?.attributes ?? {};
  return {
    ...(horizontal === 'left' || horizontal === 'center' || horizontal === 'right'
      ? { align: horizontal }
      : {}),
    ...(vertical === 'top' || vertical === 'bottom' ? { vertical } : {}),
    ...(vertical === 'center' ? { vertical: 'middle' } : {}),
    ...(isTrue(wrapText) ? { wrap: true } : {}),
    ...(Number(indent) > 0 ? { indent: Math.min(Number(indent), DEEPEST) } : {}),
  };
}
