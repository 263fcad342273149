/** A row that prints, and how tall it is. */
export interface Line {
  readonly row: number;
  readonly height: number;
}

/** Rows of one page, and whether the rows that are printed on every page stand above them once more. */
export interface PageOfRows {
  readonly lines: readonly Line[];
  readonly isTitled: boolean;
}

export interface Paper {
  /** Of a page, in the same unit as the rows. */
  readonly height: number;
  readonly titles: readonly Line[];
  /** Rows that begin a page. */
  readonly breaks: readonly number[];
  /** Rows that stay together where a page holds them, such as those under a chart. */
  readonly blocks: readonly { readonly row: number; readonly rows: number }[];
  /** Whether anything stands in a row: a page of empty rows is none. */
  readonly isFilled: (row: number) => boolean;
}

const sum = (lines: readonly Line[]): number => lines.reduce((all, { height }) => all + height, 0);

/** The rows of a sheet on as few pages as they fit on. A row that is taller than a page has one for itself, and is cut there. */
export function pagesOf(
  rows: readonly Line[],
  { height, titles, breaks, blocks, isFilled }: Paper,
): readonly PageOfRows[] {
  const pages: { lines: Line[]; isTitled: boolean }[] = [];
  const lastTitle = titles.at(-1)?.row ?? -1;
  let left = 0;
  const begin = (row: number): void => {
    const isTitled = row > lastTitle && titles.length > 0;
    pages.push({ lines: [], isTitled });
    left = height - (isTitled ? sum(titles) : 0);
  };
  let before = -1;
  for (const [i, line] of rows.entries()) {
    // what is said of a row that is hidden holds for the next one
    const isHere = (row: number): boolean => before < row && row <= line.row;
    const ends = blocks.filter(({ row }) => isHere(row)).map(({ row, rows: of }) => row + of);
    const end = Math.max(...ends);
    const under = ends.length > 0 ? rows.slice(i).filter(({ row }) => row < end) : [];
    const together = Math.max(line.height, sum(under));
    const isTooTall = line.height > left || (together > left && together <= height);
    const page = pages.at(-1);
    if (!page || (page.lines.length > 0 && (breaks.some(isHere) || isTooTall))) begin(line.row);
    pages.at(-1)?.lines.push(line);
    left -= line.height;
    before = line.row;
  }
  return pages.filter(({ lines }) => lines.some(({ row }) => isFilled(row)));
}
