/** Sentences on what was not kept, each once and in the order it was met. */
export class LeftOut {
  private readonly said = new Set<string>();

  say(sentence: string): void {
    this.said.add(sentence);
  }
  get sentences(): string[] {
    return [...this.said];
  }
}

/** Parts of a file that are left alone, by the beginning of their names. */
const PARTS: readonly (readonly [RegExp, string])[] = [
  [/vbaproject|^xl\/macrosheets\/|^xl\/dialogsheets\//, 'Macros are left out: nothing of this file runs.'],
  [/^xl\/media\//, 'Pictures are left out: put that of a set on its sheet anew, by the view Set.'],
  [/^xl\/pivot(tables|cache)\//, 'Pivot tables are left out; their last figures stay as plain cells.'],
  [/^xl\/slicers\/|^xl\/timelines\//, 'Buttons that filter tables are left out.'],
  [/^xl\/externallinks\//, 'Links to other files are left out; what they last gave stays as plain values.'],
  [
    /^xl\/(connections\.xml|querytables\/|model\/)/,
    'Connections to outside data are left out; the last figures stay.',
  ],
  [/^xl\/chartsheets\//, 'Sheets that are a single chart are left out.'],
  [/^xl\/threadedcomments\//, 'Comment threads are left out; plain notes stay.'],
  [/^xl\/(embeddings|activex|ctrlprops)\//, 'Embedded files and form controls are left out.'],
  [/^_xmlsignatures\//, 'The digital signature is left out: it holds for the file as it was.'],
];

export function sayParts(names: readonly string[], leftOut: LeftOut): void {
  for (const [pattern, sentence] of PARTS)
    if (names.some((name) => pattern.test(name.toLowerCase()))) leftOut.say(sentence);
}

export const TOO_LONG = 'Formulas longer than a cell can hold are left out; what they last gave stays.';
export const PRINTED =
  'Areas to print are left out where a sheet has several, or a formula finds them; all of the sheet is printed.';
export const HIDDEN_COLUMNS = 'Hidden columns are shown.';
export const HIDDEN_BELOW = 'Hidden rows below the last cell are shown.';
export const PROTECTION = 'Protection is left out: every cell can be changed.';

/** Elements of a sheet that are left alone, by name. A file may name its elements as it likes. */
const ELEMENTS: Readonly<Record<string, string>> = {
  autoFilter: 'Filters of a sheet are left out; the rows that they hid are shown.',
  hyperlink: 'Links in cells are left out; their words stay.',
  sparkline: 'Charts within single cells are left out.',
  scenario: 'Scenarios are left out.',
};
export const elementLeftOut = (name: string): string | undefined =>
  Object.hasOwn(ELEMENTS, name) ? ELEMENTS[name] : undefined;
