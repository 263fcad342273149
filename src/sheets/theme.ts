import type { Part } from '../book/book';
import { PALETTE, USUAL_SIZE } from '../book/palette';

/** How a part of a sheet looks: told apart by edge, weight and slant as well as by colour, so that print and grey do too. */
export interface Look {
  readonly ink: string;
  readonly fill?: string;
  readonly bold?: true;
  readonly italic?: true;
  /** Points. */
  readonly size: number;
  /** Dotted all round for what is typed in; a line below for headings; a thick line below for the answer. */
  readonly edge?: 'dotted' | 'below' | 'thick';
}

export const THEME: Readonly<Record<Part, Look>> = {
  title: { ink: PALETTE.slate, bold: true, size: 14 },
  lead: { ink: PALETTE.slateSoft, size: USUAL_SIZE },
  section: { ink: PALETTE.glaze, bold: true, size: 11, edge: 'below' },
  heading: { ink: PALETTE.slate, fill: PALETTE.stone, bold: true, size: USUAL_SIZE, edge: 'below' },
  label: { ink: PALETTE.slate, size: USUAL_SIZE },
  input: { ink: PALETTE.slate, fill: PALETTE.cream, size: USUAL_SIZE, edge: 'dotted' },
  choice: { ink: PALETTE.slate, fill: PALETTE.cream, size: USUAL_SIZE, edge: 'dotted' },
  held: { ink: PALETTE.slate, size: USUAL_SIZE },
  result: { ink: PALETTE.slate, size: USUAL_SIZE },
  answer: { ink: PALETTE.glaze, fill: PALETTE.glazePale, bold: true, size: 13, edge: 'thick' },
  remark: { ink: PALETTE.slateSoft, italic: true, size: 9 },
  slot: { ink: PALETTE.slateSoft, italic: true, size: 9, edge: 'dotted' },
  warning: { ink: PALETTE.slateSoft, italic: true, size: 9 },
  caution: { ink: PALETTE.slateSoft, italic: true, size: 9 },
};

/** The look of a cell whose warning holds; bold beside its colours, for those who do not tell these apart. */
export const WARNED: Look = { ink: PALETTE.clay, fill: PALETTE.clayPale, bold: true, size: USUAL_SIZE };
