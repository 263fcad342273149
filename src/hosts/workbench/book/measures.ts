/** Lower, the grid's lists and larger letters touch the lines. */
export const LEAST_ROW = 24;
const LINES_APART = 4;

/** Pixels of a column as many characters wide, and of a row as many points high, as spreadsheet files count them. */
export const columnPixels = (characters: number): number => Math.round(characters * 7 + 5);
export const rowPixels = (points: number): number =>
  Math.max(LEAST_ROW, Math.round((points * 4) / 3) + LINES_APART);

export const charactersOf = (pixels: number): number => Math.round(((pixels - 5) / 7) * 100) / 100;
export const pointsOf = (pixels: number): number => ((pixels - LINES_APART) * 3) / 4;
