import { failed, halfMade, refusedBy, UNTOUCHED } from '../../../pane/sentences';

/**
 * Why a sheet could not be laid, and what the workbook is like now.
 *
 * @param sheets - names of the sheets that are there after the failure; the sheet's own was not among them before.
 */
export function layRefusal(reason: unknown, name: string, sheets: readonly string[]): string {
  const why = refusedBy('The grid', reason instanceof Error ? reason.message : String(reason));
  const kept = sheets.includes(name) ? halfMade(name) : UNTOUCHED;
  return failed(why, kept, 'Reload the page and try again.');
}
