import type { Line, LineStyle, SetPicture, Shape, Spot } from './shapes';

/** What a picture is drawn with: one ink on one paper, so that it prints in black and white as it is. */
export interface Inks {
  readonly ink: string;
  readonly paper: string;
}
export const ON_PAPER: Inks = { ink: '#000000', paper: '#ffffff' };

const FONT = 'Arial, Helvetica, sans-serif';

/** Strength and dashes of each line, in pixels. */
const LOOKS: Readonly<Record<LineStyle, readonly [width: number, dashes?: string]>> = {
  frame: [0.75],
  front: [2.5],
  arrow: [1.25],
  aim: [0.75, '5 4'],
  field: [1.25, '10 3 2 3'],
  fieldWidth: [1.25],
  axis: [0.5, '14 4'],
  sensor: [3],
  surface: [1.5],
  image: [1.25, '1.5 3'],
  highlight: [2],
  hatch: [0.75],
  ray: [0.75, '1.5 4'],
  leader: [0.6],
  level: [0.5],
  mark: [1.75],
  scale: [1.5],
};

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
/** What no XML may hold: most control characters, two that are none, and halves of pairs. */
function isUnheard(letter: string): boolean {
  const code = letter.codePointAt(0) ?? 0;
  const isControl = code < 0x20 && code !== 9 && code !== 10 && code !== 13;
  return isControl || code === 0xfffe || code === 0xffff || (code >= 0xd800 && code <= 0xdfff);
}

/** A text as XML may hold it. */
export const escaped = (text: string): string =>
  [...text].map((letter) => (isUnheard(letter) ? '\ufffd' : (ENTITIES[letter] ?? letter))).join('');

const number = (value: number): string => String(Math.round(value * 100) / 100);
const spotText = ([x, y]: Spot): string => `${number(x)} ${number(y)}`;

function lineText({ style, spots, isClosed }: Line, { ink }: Inks): string {
  const [width, dashes] = LOOKS[style];
  const path = `M${spots.map(spotText).join('L')}${isClosed ? 'Z' : ''}`;
  return `<path d="${path}" fill="none" stroke="${ink}" stroke-width="${width}"${dashes ? ` stroke-dasharray="${dashes}"` : ''}/>`;
}

function shapeText(shape: Shape, inks: Inks): string {
  switch (shape.kind) {
    case 'line':
      return lineText(shape, inks);
    case 'dot':
      return `<circle cx="${number(shape.at[0])}" cy="${number(shape.at[1])}" r="${shape.radius}" fill="${shape.isFilled ? inks.ink : inks.paper}" stroke="${inks.ink}"/>`;
    case 'blank': {
      const { x, y, width, height } = shape.box;
      return `<rect x="${number(x)}" y="${number(y)}" width="${number(width)}" height="${number(height)}" fill="${inks.paper}" fill-opacity="0.85"/>`;
    }
    case 'words':
      return `<text x="${number(shape.at[0])}" y="${number(shape.at[1])}" font-size="${shape.size}"${shape.isBold ? ' font-weight="bold"' : ''} fill="${inks.ink}" xml:space="preserve">${escaped(shape.text)}</text>`;
  }
}

/** A picture as an SVG file of its own, with the text that says the same. */
export function svgText(picture: SetPicture, said: string, inks: Inks = ON_PAPER): string {
  const { width, height, shapes } = picture;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${number(width)}" height="${number(height)}" viewBox="0 0 ${number(width)} ${number(height)}" role="img" font-family="${FONT}">`,
    '<title>The picture of the set</title>',
    `<desc>${escaped(said)}</desc>`,
    `<rect width="100%" height="100%" fill="${inks.paper}"/>`,
    ...shapes.map((shape) => shapeText(shape, inks)),
    '</svg>',
  ].join('\n');
}
