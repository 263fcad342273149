/** A file that is not opened at all, with the sentence for the person who chose it. */
export class UnreadableFile extends Error {}

export const NO_WORKBOOK = 'This file is no workbook: choose a file that ends in .xlsx.';
export const OLD_OR_LOCKED =
  'This file is locked with a password, or in the old .xls format: save it as an unlocked .xlsx file, and open that.';
export const DAMAGED =
  'This file is damaged: some of it is missing or unreadable, so nothing of it was opened.';
export const TOO_LARGE = (what: string): string => `This file is too large to open here: ${what}.`;
