/*
 * What became of a wish: one sentence for one event, in every host alike. What only one spreadsheet does or needs, such as
 * its undo, the host says behind it.
 */

import type { Lacking } from '../sheets/links/waiting';

type Refused = { readonly refused: string };
const refused = (sentence: string): Refused => ({ refused: sentence });

/** How the workbook is after a wish that failed. */
export const UNTOUCHED = 'The workbook is as it was.';
export const halfMade = (name: string): string =>
  `A half-made sheet “${name}” may be left in the workbook: delete it.`;

/** @param what - as in: sheet “Plan” */
export const halfMadeByTwo = (what: string): string =>
  `A half-made ${what} is left in the workbook, as somebody has written on it: look at it before you delete it.`;

/** What a spreadsheet says that refuses without a reason for people. */
export const refusedBy = (spreadsheet: string, reason: string): string =>
  reason === ''
    ? `${spreadsheet} refused, and does not say why.`
    : `${spreadsheet} refused, and only says “${reason}”.`;

/** A wish that failed: what happened, how the workbook is now, what to do. */
export const failed = (happened: string, kept: string, todo: string): string => `${happened} ${kept} ${todo}`;

export interface Inserted {
  /** Whether it came with the demo job. */
  readonly demo: boolean;
  /** Address of the first cell to type in; none where nothing is to be typed in now. */
  readonly start: string | undefined;
}

export const inserted = (name: string, { demo, start }: Inserted): string =>
  `“${name}” is inserted${demo ? ' with the demo job' : ''}.${start === undefined ? '' : ` Start in ${start}.`}`;

/** What to do with the sheets of a job: which to begin with, at which cell, and which follow. */
export const jobInserted = (first: string, at: string, others: readonly string[]): string => {
  const [next] = others;
  const then = next === undefined ? '' : `, then their names over those in “${next}”`;
  return `${[first, ...others].map((name) => `“${name}”`).join(', ')} are inserted with the demo job. First type your heads over those in “${first}”, from ${at} on${then}.`;
};
export const JOB_BACK = 'The sheets of the new job are taken away again.';
/** Behind why one of them stays, or is gone: perhaps all of them are. */
export const JOB_STAYS = 'What there is of the job stays as it is.';
/** What may be there of a job that came in only in part. */
export const leftOfJob = (names: readonly string[]): string =>
  `${names.map((name) => `“${name}”`).join(', ')} may be left in the workbook: look, and delete what you do not need.`;
/** Where the sheet to begin with is not in view. */
export const goTo = (name: string): string => `Go to “${name}” by its tab.`;

export const noSheet = (id: string): Refused =>
  refused(`There is no sheet called “${id}”. Nothing was changed.`);

export const copied = (name: string): string =>
  `“${name}” holds the values as they are now, without formulas. Looks, charts and print set-up came along.`;

export const copiedCard = (name: string): string =>
  `“${name}” holds what the card says now, without formulas: line by line for a phone, grey on black.`;

export const NOTHING_TO_COPY: Refused = refused(
  'The sheet in view is empty. Nothing was copied. Go to a sheet with something on it.',
);

/** Where a picture stands now, and why not at the cell that was selected. */
export const pictureStands = (sheet: string, cell: string, selected: string): string =>
  `The picture of the set stands on “${sheet}”, from ${cell} on.${cell === selected ? '' : ` From ${selected} on it would have covered what stands there.`}`;

/** Why a picture is put nowhere. */
export const notInView = (sheet: string): Refused =>
  refused(`“${sheet}” is not in view any more. Nothing was put anywhere.`);
export const pictureGone = (sheet: string): string => `The picture on “${sheet}” is taken away.`;

/** Why there is no further estimate. */
export const NO_ESTIMATE: Refused = refused(
  'No sheet of this workbook is an Estimate. Nothing was changed. Insert “Estimate” first.',
);
export const estimateFrom = (name: string): string =>
  `It has the prices, currencies and terms of “${name}”: type its shots and dates.`;

/** Why there is no record to go on from, or none to be laid. */
export const NO_RECORD: Refused = refused(
  'No sheet of this workbook is a Shot record. Nothing was changed. Insert “Shot record” first.',
);
export const labelsLost = (sheet: string, labels: readonly string[]): Refused =>
  refused(
    `“${sheet}” has no label ${labels.map((label) => `“${label}”`).join(', ')} any more, so that what stood there would be lost. Nothing was changed. Type it again, left of its value or above its column.`,
  );
export const errorsTyped = (sheet: string, cells: readonly string[]): Refused =>
  refused(
    `“${sheet}” holds an error in ${cells.slice(0, 5).join(', ')}${cells.length > 5 ? ` and ${cells.length - 5} more cells` : ''}, so that what stood there would be lost. Nothing was changed. Type it again.`,
  );
export const NO_LIGHTS: Refused = refused(
  'No sheet of this workbook has lights to record. Nothing was changed. Insert “Lights on set” or “Pops plan” first.',
);
export const recordFrom = (name: string, unmetered: number): string =>
  `It has the lights of “${name}” as they are now, without links: type where they stand.${
    unmetered > 0
      ? ` Nobody has metered ${unmetered} of them at the planned power: those readings are worked out. Meter them.`
      : ''
  }`;
const leftOut = (columns: readonly string[]): string =>
  columns.length === 0
    ? ''
    : ` Not in it: ${columns.map((name) => `“${name}”`).join(', ')}, which only this sheet has.`;
export const nextFrom = (name: string, own: readonly string[]): string =>
  `It has the set of “${name}” without its readings: meter each light.${leftOut(own)}`;
export const recordSaved = (file: string, own: readonly string[]): string =>
  `“${file}” goes to your downloads. It holds what was typed, and nothing else.${leftOut(own)}`;
export const recordRead = (file: string): string => `It has all that “${file}” holds.`;
export const NO_FILE: Refused = refused('No file was chosen. Nothing was changed.');
export const FILE_UNREAD: Refused = refused(
  'The browser could not read this file. Nothing was changed. Try again, or choose a copy of it.',
);
export const recordTooLarge = (megabytes: number): Refused =>
  refused(`This file has ${megabytes} MB, and a shot record less than one. Nothing was changed.`);

/** Why nothing was prepared for a client. */
export const NO_CLIENT_PAGE: Refused = refused(
  'No sheet of this workbook is one that clients read. Nothing was prepared. Insert “Client page” beside the Estimate.',
);
export const clientPageNotReady = (sheet: string, reason: string): Refused =>
  refused(`“${sheet}” is not ready: ${reason} Nothing was prepared.`);
export const LOOK_IT_OVER =
  'It holds that page alone, as values and without pictures: a logo has its place at the top right. Look it over before you send it.';

export const takenAway = (name: string): string => `“${name}” is taken away again.`;

const LEFT = 'so the sheet was left as it is. If you do not need it, delete it by its tab.';

/** Why a sheet that came in is not taken back. */
export const NOT_BACK = {
  gone: (name: string) => refused(`“${name}” is not in the workbook any more. Nothing was changed.`),
  changed: (name: string) => refused(`“${name}” has changed since it came in, ${LEFT}`),
  /** @param where - such as: B7 on “Plan” */
  usedIn: (where: string) => refused(`The formula in ${where} uses it, ${LEFT}`),
  named: (name: string) => refused(`The name “${name}” speaks of it, ${LEFT}`),
} as const;

export const formulaIn = (cell: string): string => `The formula is in ${cell}.`;

/** Refuses what would stay a text in a cell. */
export const notAFormula = (text: string): Refused | undefined =>
  /^=\s*\S/.test(text)
    ? undefined
    : refused(`“${text}” is no formula: a formula is = and something behind it. Nothing was changed.`);

export const cellHolds = (cell: string): Refused =>
  refused(`Cell ${cell} holds something, and it was left there. Select an empty cell.`);

export const NOTHING_TO_LINK =
  'No sheet holds anything of its own that another sheet here could tell it. A list that was pasted from another workbook is looked up once it stands in the table of a sheet Heads: insert Heads, and paste its rows there. Nothing was changed.';

export const joinsFound = (sheets: readonly string[]): string =>
  `${sheets.map((name) => `“${name}”`).join(', ')} could look something up elsewhere. Nothing is changed yet.`;

/** @param to - the sheet that it looks up in now; undefined where it holds its own now. */
export const linkedTo = (sheet: string, columns: readonly string[], to: string | undefined): string =>
  to === undefined
    ? `${columns.join(', ')} on “${sheet}” are typed now.`
    : `“${sheet}” looks up ${columns.join(', ')} in “${to}”.`;

export const unlinked = (sheet: string): string => `“${sheet}” holds what it held before.`;

/** @param column - such as: Most on “Pops plan” */
export const joinChanged = (column: string): Refused =>
  refused(`${column} has changed meanwhile, and nothing was written. Look for sheets to link again.`);

/** What became of sheets that looked up in one which was deleted. */
export const keptWithoutSheet = (gone: string, sheets: readonly string[]): string =>
  `“${gone}” is gone. ${sheets.map((name) => `“${name}”`).join(', ')} looked things up in it: what it said last stands there now as if typed.`;

/** For who has inserted a sheet in which others could look something up; nothing where there are none. */
export const couldLink = (sheets: readonly string[]): string[] =>
  sheets.length === 0
    ? []
    : [
        `${sheets.map((name) => `“${name}”`).join(', ')} could look things up in it: see Link sheets, below the list.`,
      ];
/** For who has inserted a sheet that finds less in a list than it would look up there. */
export const notLookedUp = (lacking: readonly Lacking[]): string[] =>
  lacking.map(
    ({ table, columns }) =>
      `Table ${table} has no column ${columns.join(', ')}: that is not looked up here. See what stands in its place.`,
  );
export const written = (area: string, sheet: string): string => `${area} on “${sheet}” is written.`;

/** Why nothing is written into a table. */
export const NOT_WRITTEN = {
  changed: (sheet: string) =>
    refused(`The table on “${sheet}” has changed since it was read. Nothing was changed. Read it again.`),
  gone: (sheet: string) => refused(`“${sheet}” is not in the workbook any more. Nothing was changed.`),
} as const;

/** Why what was written is not taken back. */
export const changedSince = (sheet: string): Refused =>
  refused(`Cells on “${sheet}” have changed since they were written, so they were left as they are.`);

export const NO_TABLE: Refused = refused(
  'There is no table where you are. Select a cell of the table, or all its cells, then try again.',
);
