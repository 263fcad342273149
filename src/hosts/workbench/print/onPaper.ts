import type { FWorksheet } from '@univerjs/sheets/facade';
import type { BookSheet } from '../../../book/book';
import { h } from '../../../pane/element';
import type { Grid } from '../grid/grid';
import { choose } from '../page/dialog';
import { elementById } from '../page/elementById';
import { type Paper, paperAlone, paperOf } from './paper';
import './print.css';

/** What is printed in place of the sheet in view, and what the page is called until then. */
let asked: { readonly paper: () => Paper; readonly title: string } | undefined;

/** Has the browser print something else than the sheet in view, once. */
function printInstead(paper: () => Paper, name: string): void {
  asked = { paper, title: asked?.title ?? document.title };
  document.title = name;
  print();
}

/** The sheets that a person sees the tabs of. */
const shownSheets = (grid: Grid): readonly FWorksheet[] =>
  grid.api
    .getActiveWorkbook()
    ?.getSheets()
    .filter((sheet) => !sheet.isSheetHidden()) ?? [];

/** Offers in the bar to print the sheet in view, or all. */
function offerPrint(grid: Grid): void {
  const button = h('button', { type: 'button', title: 'Print this sheet or all of them: Ctrl+P' }, 'Print');
  button.addEventListener('click', () => void whatToPrint(grid));
  elementById('commands').prepend(button);
}

async function whatToPrint(grid: Grid): Promise<void> {
  const sheets = shownSheets(grid);
  const what = await choose('Print', 'On A4 or Letter, or into a PDF: your browser asks which.', [
    ['none', 'Cancel'],
    ...(sheets.length > 1 ? [['all', `All ${sheets.length} sheets`] as const] : []),
    ['one', 'This sheet'],
  ]);
  if (what === 'one') print();
  if (what === 'all') printInstead(() => paperOf(grid, shownSheets(grid)), document.title);
}

/** What the browser prints are sheets with their charts, and not the page around them: the one in view, where nothing else was asked for. */
export function printSheets(grid: Grid): void {
  offerPrint(grid);
  let laid: HTMLElement | undefined;
  const clear = (): void => {
    laid?.remove();
    laid = undefined;
  };
  addEventListener('beforeprint', () => {
    clear();
    const sheet = grid.api.getActiveWorkbook()?.getActiveSheet();
    const paper = asked?.paper() ?? (sheet && paperOf(grid, [sheet]));
    if (!paper) return;
    laid = paper.element;
    document.body.append(laid);
    paper.draw();
  });
  addEventListener('afterprint', () => {
    clear();
    if (asked) document.title = asked.title;
    asked = undefined;
  });
}

/**
 * Has the browser print this sheet alone, in place of the one in view.
 *
 * @param name - what a browser proposes for the name of a file, and writes into it as its title.
 */
export const printAlone = (sheet: BookSheet, name: string): void =>
  printInstead(() => paperAlone(sheet), name);
