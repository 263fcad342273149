import type { Grid } from '../grid/grid';
import { paperOf } from './paper';
import './print.css';

/** What the browser prints is the sheet in view, with its charts, and not the page around it. */
export function printSheets(grid: Grid): void {
  let laid: HTMLElement | undefined;
  const clear = (): void => {
    laid?.remove();
    laid = undefined;
  };
  addEventListener('beforeprint', () => {
    clear();
    const paper = paperOf(grid);
    if (!paper) return;
    laid = paper.element;
    document.body.append(laid);
    paper.draw();
  });
  addEventListener('afterprint', clear);
}
