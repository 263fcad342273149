import type { CustomData, IRowData, Nullable } from '@univerjs/core';

/** Lower, the grid's lists and larger letters touch the lines. */
export const LEAST_ROW = 24;
const LINES_APART = 4;

/** Pixels of a row as many points high as spreadsheet files count them. */
export const rowPixels = (points: number): number =>
  Math.max(LEAST_ROW, Math.round((points * 4) / 3) + LINES_APART);

const KEY = 'sweeptable made';
interface Made {
  readonly pixels: number;
  readonly points: number;
}

/** What the words of a row need: pixels on this screen, and points on paper, where lines are as high as anywhere. */
export interface Needed {
  readonly pixels: number;
  readonly points: number;
}

/** A row as the grid stores it that is made so many points high. Where its words need more here, and here alone, it knows that. */
export function tallRow(points: number, needed?: Needed): Partial<IRowData> {
  const own = rowPixels(points);
  if (!needed || needed.pixels <= own) return { h: own };
  const made: Made = { pixels: needed.pixels, points };
  return {
    h: needed.pixels,
    ...(needed.points <= points ? { custom: { [KEY]: made } satisfies CustomData } : {}),
  };
}

/** Points that a row is high in a file and on paper; nothing where its height is not known. */
export function madePoints(row: Nullable<Partial<IRowData>>): number | undefined {
  if (row?.h === undefined) return undefined;
  const made: Made | undefined = row.custom?.[KEY];
  // somebody may have made it higher or lower since
  return made?.pixels === row.h ? made.points : pointsOf(row.h);
}

export const pointsOf = (pixels: number): number => ((pixels - LINES_APART) * 3) / 4;
