import { inserted } from '../../pane/sentences';
import { type LaidInExcel, NOT_KNOWN_YET } from './lay';

const LISTED = 3;
const LONGEST_SHOWN = 80;
const short = (text: string): string =>
  text.length > LONGEST_SHOWN ? `${text.slice(0, LONGEST_SHOWN)}…` : text;

/** The cells that are not as planned, the first few of them with what they hold and should hold. */
export function differenceText(differences: LaidInExcel['differences']): string[] {
  if (differences.length === 0) return [];
  const listed = differences
    .slice(0, LISTED)
    .map(({ cell, holds, wanted }) => `${cell} holds ${short(holds)} where ${short(wanted)} was expected`);
  const rest = differences.length - listed.length;
  return [
    `Not as planned: ${listed.join('; ')}${rest > 0 ? ` and ${rest} more` : ''}. Take the sheet back, delete the sheet, or mend those cells by hand.`,
  ];
}

export function laidText(laid: LaidInExcel, demo: boolean): string {
  const { sheet, unknownFunctions, differences, said } = laid;
  const start = unknownFunctions ? undefined : laid.start;
  return [
    inserted(sheet, { demo: demo && laid.start !== undefined, start }),
    ...(unknownFunctions ? [NOT_KNOWN_YET] : []),
    ...said,
    ...differenceText(differences),
  ].join(' ');
}
