/** Slate, paper and one glaze. Contrast of ink on fill is 7:1 or better, except for remarks (4.5:1). */
export const PALETTE = {
  slate: '#22303c',
  slateSoft: '#4a5a68',
  paper: '#fbf8f1',
  cream: '#fdf3d8',
  stone: '#e4e1d8',
  glaze: '#084b4f',
  glazePale: '#e0efee',
  /** The beginning of a scale of colours that ends with paper: darker in print and grey as well. */
  glazeMid: '#88cfc7',
  clay: '#7d2410',
  clayPale: '#fbe3dc',
} as const;

/** Grey on black, for a page on a phone: a white one would light a dark set. */
export const NIGHT = { paper: '#000000', ink: '#c8c8c8' } as const;

export const FONT = 'Arial';
/** Points of plain letters. */
export const USUAL_SIZE = 10;
