/** Lower, the grid's lists and larger letters touch the lines. */
export const LEAST_ROW = 24;
const LINES_APART = 4;

/** Pixels of a row as many points high as spreadsheet files count them. */
export const rowPixels = (points: number): number =>
  Math.max(LEAST_ROW, Math.round((points * 4) / 3) + LINES_APART);

export const pointsOf = (pixels: number): number => ((pixels - LINES_APART) * 3) / 4;
