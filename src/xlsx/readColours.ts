import { type XmlAttributes, child, type XmlNode } from './xml';

/** The colours that a file may name by number: eight, twice, and the rest of the old palette. */
const FIRST = '000000 ffffff ff0000 00ff00 0000ff ffff00 ff00ff 00ffff';
const NUMBERED = [
  ...FIRST.split(' '),
  ...FIRST.split(' '),
  ...(
    '800000 008000 000080 808000 800080 008080 c0c0c0 808080 9999ff 993366 ffffcc ccffff 660066 ff8080 0066cc ccccff ' +
    '000080 ff00ff ffff00 00ffff 800080 800000 008080 0000ff 00ccff ccffff ccffcc ffff99 99ccff ff99cc cc99ff ffcc99 ' +
    '3366ff 33cccc 99cc00 ffcc00 ff9900 ff6600 666699 969696 003366 339966 003300 333300 993300 993366 333399 333333'
  ).split(' '),
];

/** Order in which cells count the colours of a theme: light before dark. */
const THEME_ORDER = ['lt1', 'dk1', 'lt2', 'dk2', 'accent1', 'accent2', 'accent3', 'accent4', 'accent5', 'accent6', 'hlink', 'folHlink']; // prettier-ignore
const USUAL_THEME = ['ffffff', '000000'];

export function themeColours(theme: XmlNode | undefined): readonly string[] {
  const scheme = child(child(theme, 'themeElements'), 'clrScheme');
  if (!scheme) return USUAL_THEME;
  return THEME_ORDER.map((name) => {
    const { val, lastClr } = child(scheme, name)?.children[0]?.attributes ?? {};
    return lastClr ?? val ?? '000000';
  });
}

/** A colour as #rrggbb; undefined where it is left to the program. */
export function colourOf(
  attributes: XmlAttributes | undefined,
  theme: readonly string[],
): string | undefined {
  if (!attributes || attributes.auto === '1') return undefined;
  const { rgb, theme: index, indexed, tint } = attributes;
  const hex = rgb?.slice(-6) ?? (index === undefined ? NUMBERED[Number(indexed)] : theme[Number(index)]);
  if (hex === undefined || !/^[\da-f]{6}$/i.test(hex)) return undefined;
  return `#${tinted(hex, Number(tint ?? 0)).toLowerCase()}`;
}

/** Lighter (up to 1) or darker (down to -1): near enough to the file format's way, which goes by luminance. */
function tinted(hex: string, tint: number): string {
  if (!(Math.abs(tint) <= 1) || tint === 0) return hex;
  return [0, 2, 4]
    .map((at) => {
      const part = Number.parseInt(hex.slice(at, at + 2), 16);
      const mixed = Math.round(tint < 0 ? part * (1 + tint) : part + (255 - part) * tint);
      return mixed.toString(16).padStart(2, '0');
    })
    .join('');
}
