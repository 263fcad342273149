import type { BookSheet } from '../../../book/book';
import type { Grid } from '../grid/grid';
import { type Paper, paperAlone, paperOf } from './paper';
import './print.css';

/** What is printed in place of the sheet in view, and what the page is called until then. */
let asked: { readonly paper: Paper; readonly title: string } | undefined;

/** What the browser prints is the sheet in view, with its charts, and not the page around it. */
export function printSheets(grid: Grid): void {
  let laid: HTMLElement | undefined;
  const clear = (): void => {
    laid?.remove();
    laid = undefined;
  };
  addEventListener('beforeprint', () => {
    clear();
    const paper = asked?.paper ?? paperOf(grid);
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
export function printAlone(sheet: BookSheet, name: string): void {
  asked = { paper: paperAlone(sheet), title: asked?.title ?? document.title };
  document.title = name;
  print();
}
