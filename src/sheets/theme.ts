import { PALETTE } from '../book/palette';
import type { Part, PlanCell } from './plan';

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

const BODY = 10;

export const THEME: Readonly<Record<Part, Look>> = {
  title: { ink: PALETTE.slate, bold: true, size: 14 },
  lead: { ink: PALETTE.slateSoft, size: BODY },
  section: { ink: PALETTE.glaze, bold: true, size: 11, edge: 'below' },
  heading: { ink: PALETTE.slate, fill: PALETTE.stone, bold: true, size: BODY, edge: 'below' },
  label: { ink: PALETTE.slate, size: BODY },
  input: { ink: PALETTE.slate, fill: PALETTE.cream, size: BODY, edge: 'dotted' },
  choice: { ink: PALETTE.slate, fill: PALETTE.cream, size: BODY, edge: 'dotted' },
  held: { ink: PALETTE.slate, size: BODY },
  result: { ink: PALETTE.slate, size: BODY },
  answer: { ink: PALETTE.glaze, fill: PALETTE.glazePale, bold: true, size: 13, edge: 'thick' },
  remark: { ink: PALETTE.slateSoft, italic: true, size: 9 },
  warning: { ink: PALETTE.slateSoft, italic: true, size: 9 },
  caution: { ink: PALETTE.slateSoft, italic: true, size: 9 },
};

/** Words that may stand right of a number. */
const INDENTED: ReadonlySet<Part> = new Set([
  'input',
  'choice',
  'held',
  'result',
  'heading',
  'remark',
  'warning',
]);
/** Whether the text of a cell stands a step away from the number at its left. */
export const isIndented = ({ part, align }: PlanCell): boolean => align === 'left' && INDENTED.has(part);

/** Of a cell whose warning holds. */
export const WARNED: Look = { ink: PALETTE.clay, fill: PALETTE.clayPale, bold: true, size: BODY };
