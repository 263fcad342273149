/** Red, green and blue from 0 to 255. */
export type Rgb = readonly [red: number, green: number, blue: number];

/** What a dark page has in the place of white: the colour of the page around the cells. */
export const NIGHT_PAPER: Rgb = [0x1b, 0x24, 0x2c];
/** The brightest letters: white ones would glare. */
const BRIGHTEST = 0.85;
/** Fills that are no brighter than this are left dark, with their own letters on them. */
const DARK_FILL = 0.18;
/** What letters need on their fill: WCAG 2.2, success criterion 1.4.3. */
export const LEGIBLE = 4.5;

const linear = (channel: number): number => {
  const share = channel / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
};
const channel = (light: number): number => {
  const held = Math.min(1, Math.max(0, light));
  return Math.round(255 * (held <= 0.0031308 ? 12.92 * held : 1.055 * held ** (1 / 2.4) - 0.055));
};

/** Relative luminance of sRGB, from 0 to 1. Source: WCAG 2.2. */
export const luminance = ([red, green, blue]: Rgb): number =>
  0.2126 * linear(red) + 0.7152 * linear(green) + 0.0722 * linear(blue);

/** Contrast of two colours, from 1 to 21. Source: WCAG 2.2. */
export function contrast(one: Rgb, other: Rgb): number {
  const [a, b] = [luminance(one) + 0.05, luminance(other) + 0.05];
  return a > b ? a / b : b / a;
}

/** Hue and colourfulness, apart from lightness. Source: Ottosson, A perceptual color space for image processing (Oklab), 2020. */
function hueOf(rgb: Rgb): readonly [a: number, b: number] {
  const [red, green, blue] = [linear(rgb[0]), linear(rgb[1]), linear(rgb[2])];
  const long = Math.cbrt(0.4122214708 * red + 0.5363325363 * green + 0.0514459929 * blue);
  const medium = Math.cbrt(0.2119034982 * red + 0.6806995451 * green + 0.1073969566 * blue);
  const short = Math.cbrt(0.0883024619 * red + 0.2817188376 * green + 0.6299787005 * blue);
  return [
    1.9779984951 * long - 2.428592205 * medium + 0.4505937099 * short,
    0.0259040371 * long + 0.7827717662 * medium - 0.808675766 * short,
  ];
}

/** The colour of a lightness and a hue, as near as a screen comes to it. Same source. */
function colourOf(lightness: number, [a, b]: readonly [number, number]): Rgb {
  const long = (lightness + 0.3963377774 * a + 0.2158037573 * b) ** 3;
  const medium = (lightness - 0.1055613458 * a - 0.0638541728 * b) ** 3;
  const short = (lightness - 0.0894841775 * a - 1.291485548 * b) ** 3;
  return [
    channel(4.0767416621 * long - 3.3077115913 * medium + 0.2309699292 * short),
    channel(-1.2684380046 * long + 2.6097574011 * medium - 0.3413193965 * short),
    channel(-0.0041960863 * long - 0.7034186147 * medium + 1.707614701 * short),
  ];
}

const PAPER_HUE = hueOf(NIGHT_PAPER);
/** Colourfulness below which a colour passes for grey, and takes on the hue of the dark page. */
const GREY = 0.03;
const HALVINGS = 16;

/**
 * What a dark page shows for a colour of a light one: as far from the dark page, by contrast, as the other is from white, and
 * of the same hue. White becomes the page, dark letters become bright ones.
 */
export function nightColour(rgb: Rgb): Rgb {
  const wanted = Math.min(
    BRIGHTEST,
    (1.05 * (luminance(NIGHT_PAPER) + 0.05)) / (luminance(rgb) + 0.05) - 0.05,
  );
  const hue = hueOf(rgb);
  const tint = wanted < DARK_FILL ? Math.max(0, 1 - Math.hypot(...hue) / GREY) : 0;
  const tinted = [hue[0] + tint * PAPER_HUE[0], hue[1] + tint * PAPER_HUE[1]] as const;
  let [low, high] = [0, 1];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (luminance(colourOf(middle, tinted)) < wanted) low = middle;
    else high = middle;
  }
  return colourOf(high, tinted);
}

/** Strong colours such as the mark of a note: seen on either page, they stay. */
const STRONG = 0.1;

/** The same for a line or a mark of the grid's own, of which there is more to see than of a fill. */
export const nightMark = (rgb: Rgb): Rgb =>
  Math.hypot(...hueOf(rgb)) > STRONG && contrast(rgb, NIGHT_PAPER) >= LEGIBLE ? rgb : nightColour(rgb);

export interface Pair {
  readonly ink: Rgb;
  readonly fill: Rgb;
}

/**
 * Letters and what they stand on, for a dark page. A dark fill stays as it is; so does a pair that would be hard to read
 * otherwise, such as black letters on a grey in the middle.
 */
export function nightPair({ ink, fill }: Pair): Pair {
  if (luminance(fill) <= DARK_FILL) return { ink, fill };
  const night = { ink: nightColour(ink), fill: nightColour(fill) };
  const [before, after] = [contrast(ink, fill), contrast(night.ink, night.fill)];
  return after >= LEGIBLE || after >= before ? night : { ink, fill };
}
