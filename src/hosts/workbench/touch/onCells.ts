import type { Area } from '../../../formula/area';
import type { Grid } from '../grid/grid';
import { listOf, openList, opensList } from '../grid/choosing';
import { isWriting, takeKeyboard } from '../grid/keyboard';
import { type Heading, type Seen, type SheetView, sheetView } from '../grid/sheetView';
import type { Spot } from './fingers';
import { hideLetters, showLetters } from './letters';
import { tellOfPointer } from './pointer';
import type { Surface } from './surface';

/** So far from the edges of its cell a touch counts: on them lie handles that a finger does not mean, in pixels. */
const EDGE = 8;

/** So near the corner of what is chosen a finger means the handle there that fills, and so near its arrow the list of a cell, in pixels. */
const NEAR = 22;

/** Between both ends, away from them; in the middle where there is no room. */
const inside = (at: number, from: number, to: number): number =>
  to - from < 2 * EDGE ? (from + to) / 2 : Math.min(to - EDGE, Math.max(from + EDGE, at));

interface Sides {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** What is seen of a piece. */
const cut = ({ x, y, width, height, cutLeft, cutTop, cutRight, cutBottom }: Seen): Sides => ({
  left: x + cutLeft,
  right: x + width - cutRight,
  top: y + cutTop,
  bottom: y + height - cutBottom,
});

/** Whether a place lies on it; or beside it or above, on the heading of its row or column. */
const isWithin = ({ left, right, top, bottom }: Sides, x: number, y: number, of?: Heading['of']): boolean =>
  (of === 'row' || (left <= x && x <= right)) && (of === 'column' || (top <= y && y <= bottom));

const isSame = (a: Area, b: Area): boolean =>
  a.row === b.row && a.column === b.column && a.rows === b.rows && a.columns === b.columns;
const holds = (outer: Area, inner: Area): boolean =>
  outer.row <= inner.row &&
  outer.column <= inner.column &&
  inner.row + inner.rows <= outer.row + outer.rows &&
  inner.column + inner.columns <= outer.column + outer.columns;

/** Fingers on cells and headings: each does what the mouse would, at a place where it cannot miss. */
export class OnCells implements Surface {
  readonly #grid: Grid;
  readonly #canvas: Element;
  readonly #pointer: number;
  #held: Spot = { x: 0, y: 0 };
  #isDragging = false;
  /** Where the handle is that a finger holds. */
  #handle: Spot | undefined;

  constructor(grid: Grid, canvas: Element, pointer: number) {
    this.#grid = grid;
    this.#canvas = canvas;
    this.#pointer = pointer;
  }

  get hint(): string {
    return `Drag to ${this.#handle ? 'fill' : 'choose'} cells, or lift for the menu`;
  }

  /** To fill at once would write over cells where somebody only scrolls on from the cell that was chosen last. */
  swiped(from: Spot): string | undefined {
    if (isWriting(this.#grid) || !this.#handleNear(from)) return undefined;
    return 'To fill cells, hold the corner first, then drag';
  }

  tap(at: Spot): void {
    const grid = this.#grid;
    const cell = this.#cellAt(at);
    const chosen = this.#chosen();
    const isAgain = cell !== undefined && chosen !== undefined && isSame(cell, chosen) && !isWriting(grid);
    hideLetters();
    const hasList = opensList(grid, () => this.#press(this.#meant(this.#onArrow(at) ?? at)));
    // in a formula that is being written, it has put the name of the cell there
    if (isWriting(grid)) return showLetters();
    takeKeyboard(grid);
    if (!isAgain || hasList || openList(grid, cell)) return;
    showLetters();
    grid.api.getActiveWorkbook()?.startEditing();
  }

  hold(at: Spot): void {
    this.#isDragging = false;
    this.#handle = isWriting(this.#grid) ? undefined : this.#handleNear(at);
    this.#held = this.#headingAt(at) ? at : this.#meant(at);
    if (isWriting(this.#grid) || this.#handle) return;
    const cell = this.#cellAt(at);
    const chosen = this.#chosen();
    if (cell && !(chosen && holds(chosen, cell))) this.#press(this.#held);
  }

  drag(to: Spot): void {
    if (!this.#isDragging) {
      this.#isDragging = true;
      this.#letGoOfHeading();
      const from = this.#handle ?? this.#held;
      this.#tell('pointermove', from);
      this.#tell('pointerdown', from);
    }
    this.#tell('pointermove', to);
  }

  drop(at: Spot, hasMoved: boolean): void {
    if (hasMoved) this.#tell('pointerup', at);
    else if (!isWriting(this.#grid)) this.#openMenu();
    if (!isWriting(this.#grid)) takeKeyboard(this.#grid);
  }

  giveUp(): void {
    if (this.#isDragging) this.#tell('pointerup', this.#held);
  }

  #openMenu(): void {
    const at = this.#headingAt(this.#held) ? this.#meant(this.#held) : this.#held;
    if (this.#headingAt(at)) this.#press(at);
    tellOfPointer(this.#canvas, 'pointerdown', at, this.#pointer, 'menu');
    tellOfPointer(this.#canvas, 'pointerup', at, this.#pointer, 'menu');
  }

  /** The handle at the corner of what is chosen, where a finger lies on it. */
  #handleNear(at: Spot): Spot | undefined {
    const over = this.#over(at);
    const chosen = this.#chosen();
    if (!over || !chosen) return undefined;
    const last = over.view.pieces(chosen).at(-1);
    if (!last || last.cutRight > 0 || last.cutBottom > 0) return undefined;
    const { right, bottom } = cut(last);
    const handle = { x: at.x - over.x + right, y: at.y - over.y + bottom };
    return Math.hypot(handle.x - at.x, handle.y - at.y) <= NEAR ? handle : undefined;
  }

  /** Where the arrow of a cell would be that has a list, at the right end of it, where a finger lies near that. */
  #onArrow(at: Spot): Spot | undefined {
    const over = this.#over(at);
    const cell = over?.view.cellAt(over.x, over.y);
    const seen = over && cell && over.view.seen(cell);
    if (!over || !cell || seen?.cutRight !== 0 || !listOf(this.#grid, cell)) return undefined;
    const right = at.x - over.x + cut(seen).right;
    return right - at.x <= EDGE + NEAR ? { x: right - EDGE, y: at.y } : undefined;
  }

  /** A heading that is chosen already would be carried away with its cells. */
  #letGoOfHeading(): void {
    const heading = this.#headingAt(this.#held);
    if (!heading) return;
    this.#grid.api.getActiveWorkbook()?.getActiveSheet().getRange(heading.row, heading.column).activate();
  }

  #press(at: Spot): void {
    // What shows itself to a pointer that rests, such as a note, is shown to a finger too.
    this.#tell('pointermove', at);
    this.#tell('pointerdown', at);
    this.#tell('pointerup', at);
  }

  #tell(kind: 'pointerdown' | 'pointermove' | 'pointerup', at: Spot): void {
    tellOfPointer(this.#canvas, kind, at, this.#pointer);
  }

  #over({ x, y }: Spot): { readonly view: SheetView; readonly x: number; readonly y: number } | undefined {
    const view = sheetView(this.#grid);
    const { left, top } = this.#canvas.getBoundingClientRect();
    return view && { view, x: x - left, y: y - top };
  }

  #cellAt(at: Spot): Area | undefined {
    const over = this.#over(at);
    return over?.view.cellAt(over.x, over.y);
  }

  #headingAt(at: Spot) {
    const over = this.#over(at);
    return over?.view.headingAt(over.x, over.y);
  }

  /** The cells that are chosen; nothing where they are several areas. */
  #chosen(): Area | undefined {
    const ranges = this.#grid.api.getActiveWorkbook()?.getActiveSheet().getSelection()?.getActiveRangeList();
    const [range] = ranges ?? [];
    if (!range || ranges?.length !== 1) return undefined;
    return {
      row: range.getRow(),
      column: range.getColumn(),
      rows: range.getHeight(),
      columns: range.getWidth(),
    };
  }

  /** Where the mouse would be that means what lies under a finger. */
  #meant(at: Spot): Spot {
    const over = this.#over(at);
    if (!over) return at;
    const { view, x, y } = over;
    const heading = view.headingAt(x, y);
    const area = heading ? { ...heading, rows: 1, columns: 1 } : view.cellAt(x, y);
    const seen =
      area &&
      view
        .pieces(area)
        .map(cut)
        .find((piece) => isWithin(piece, x, y, heading?.of));
    if (!seen) return at;
    const [left, top] = [at.x - x, at.y - y];
    return {
      x: heading?.of === 'row' ? at.x : left + inside(x, seen.left, seen.right),
      y: heading?.of === 'column' ? at.y : top + inside(y, seen.top, seen.bottom),
    };
  }
}
