import type { FWorksheet } from '@univerjs/sheets/facade';
import type { BookSheet } from '../../../book/book';
import type { Grid } from '../grid/grid';
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

/** Has the browser print all sheets, one after the other. */
export const printAllSheets = (grid: Grid): void =>
  printInstead(() => paperOf(grid, shownSheets(grid)), document.title);

/** What the browser prints are sheets with their charts, and not the page around them: the one in view, where nothing else was asked for. */
export function printSheets(grid: Grid): void {
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
