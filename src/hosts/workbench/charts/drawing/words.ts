/** Letters of a chart at the usual zoom, in pixels. */
const FONT_SIZE = 12;
const MOST_LETTERS = 16;

/** The font at a zoom, as canvases name it: the chart library reads whole pixels only. */
export const fontAt = (zoom: number, ratio = 1): string =>
  `${Math.max(1, Math.round(FONT_SIZE * zoom)) * ratio}px "Segoe UI", system-ui, sans-serif`;

export const shortName = (name: string | number): string => {
  const text = String(name);
  return text.length > MOST_LETTERS ? `${text.slice(0, MOST_LETTERS - 1)}…` : text;
};

const measure = document.createElement('canvas').getContext('2d');

/** The width of a text, in pixels. */
export function textWidth(text: string, zoom: number): number {
  if (!measure) return 0;
  measure.font = fontAt(zoom);
  return Math.ceil(measure.measureText(text).width);
}

export const widest = (texts: readonly string[], zoom: number): number =>
  texts.reduce((most, text) => Math.max(most, textWidth(text, zoom)), 0);
