import { gridRange } from '../../../engine/gridRange';
import { address } from '../../../formula/address';
import { closeButton, h } from '../../../pane/element';
import { brokenRules, sayBroken } from '../grid/brokenRules';
import type { Grid } from '../grid/grid';
import { isWriting, restKeysWithin, takeKeyboard } from '../grid/keyboard';
import { revealSelected } from '../grid/reveal';
import { letterWithCtrl, takeKey } from '../grid/takeKey';
import { barButton } from '../page/bar';
import { elementById } from '../page/elementById';
import { type Left, replaceIn } from './replace';
import { type Found, type Match, search, type Wanted } from './search';
import './findBar.css';
import { undoKey } from '../grid/undoKey';

const WHY: Readonly<Record<Left, string>> = {
  answer: 'what a formula answers',
  format: 'what a number format writes',
  looks: 'words with looks of their own within a cell',
  formula: 'what would become a formula',
  heading: 'the heading of a table, which would be empty or like another of it',
};

/** What rules refuse of what stands now in the place of other words; empty where they allow all of it. */
async function brokenBy(grid: Grid, matches: readonly Match[]): Promise<string> {
  const sheets = [...new Set(matches.map(({ sheetId }) => sheetId))];
  const broken = await Promise.all(
    sheets.map(async (sheetId) => {
      const areas = matches
        .filter((match) => match.sheetId === sheetId)
        .map(({ row, column }) => gridRange({ row, column, rows: 1, columns: 1 }));
      return brokenRules(grid, sheetId, areas);
    }),
  );
  const [first, ...more] = broken.flat();
  return first ? ` Not allowed in ${address(first)}: ${sayBroken([first, ...more])}` : '';
}

const cells = (count: number): string => (count === 1 ? '1 cell' : `${count} cells`);

const check = (label: string): readonly [HTMLElement, HTMLInputElement] => {
  const box = h('input', { type: 'checkbox' });
  return [h('label', {}, box, label), box];
};

/** The line above the grid in which a person looks for something, and puts other words in its place. */
class FindBar {
  readonly #grid: Grid;
  readonly #text = h('input', { type: 'text', 'aria-label': 'Find' });
  readonly #by = h('input', { type: 'text', 'aria-label': 'Replace by' });
  readonly #said = h('p', { role: 'status' });
  readonly #case = check('Match case');
  readonly #whole = check('Whole cell');
  readonly #everywhere = check('All sheets');
  readonly #element: HTMLElement;

  constructor(grid: Grid) {
    this.#grid = grid;
    const close = closeButton('Close find and replace');
    close.addEventListener('click', () => this.#close());
    const boxes = [this.#case, this.#whole, this.#everywhere].map(([label]) => label);
    this.#element = h(
      'search',
      { class: 'find', 'aria-label': 'Find and replace', hidden: true },
      h('label', {}, 'Find', this.#text),
      this.#button('Previous', () => this.#step(-1)),
      this.#button('Next', () => this.#step(1)),
      h('label', {}, 'Replace by', this.#by),
      this.#button('Replace', () => this.#replaceOne()),
      this.#button('Replace all', () => this.#replaceAll()),
      ...boxes,
      this.#said,
      close,
    );
    restKeysWithin(grid, this.#element);
    this.#element.addEventListener('keydown', (event) => this.#press(event));
    this.#element.addEventListener('input', () => this.#say(''));
    elementById('grid').before(this.#element);
  }

  /** Opens it, ready to be typed into. */
  open(isForReplacing: boolean): void {
    this.#element.hidden = false;
    const field = isForReplacing && this.#text.value !== '' ? this.#by : this.#text;
    field.focus();
    field.select();
  }

  #close(): void {
    this.#element.hidden = true;
    this.#say('');
    takeKeyboard(this.#grid);
  }

  #button(label: string, run: () => void): HTMLElement {
    const button = h('button', { type: 'button', class: 'plain' }, label);
    button.addEventListener('click', run);
    return button;
  }

  #press(event: KeyboardEvent): void {
    // The grid listens for keys everywhere: those of this line are its own.
    if (!event.ctrlKey) event.stopPropagation();
    if (event.key === 'Escape') this.#close();
    if (event.key !== 'Enter' || !(event.target instanceof HTMLInputElement)) return;
    event.preventDefault();
    if (event.target === this.#by) this.#replaceOne();
    else this.#step(event.shiftKey ? -1 : 1);
  }

  #say(words: string): void {
    this.#said.textContent = words;
  }

  get #wanted(): Wanted {
    const [isCaseMinded, isWhole, isEverywhere] = [this.#case, this.#whole, this.#everywhere].map(
      ([, box]) => box.checked,
    ) as [boolean, boolean, boolean];
    return { text: this.#text.value, isCaseMinded, isWhole, isEverywhere };
  }

  /** The sheet in view and the chosen cell in it, as a place among all that is found. */
  #order({ sheetId, row, column }: Pick<Match, 'sheetId' | 'row' | 'column'>): readonly number[] {
    const sheets = this.#grid.api.getActiveWorkbook()?.getSheets() ?? [];
    return [sheets.findIndex((sheet) => sheet.getSheetId() === sheetId), row, column];
  }

  get #here(): readonly number[] {
    const workbook = this.#grid.api.getActiveWorkbook();
    const cell = workbook?.getActiveCell();
    return this.#order({
      sheetId: workbook?.getActiveSheet().getSheetId() ?? '',
      row: cell?.getRow() ?? 0,
      column: cell?.getColumn() ?? 0,
    });
  }

  #compared(match: Match): number {
    const here = this.#here;
    return (
      this.#order(match)
        .map((at, i) => at - (here[i] ?? 0))
        .find((difference) => difference !== 0) ?? 0
    );
  }

  #step(way: 1 | -1): void {
    const { matches, hidden } = search(this.#grid, this.#wanted);
    const ahead = matches.filter((match) => this.#compared(match) * way > 0);
    const next = way > 0 ? (ahead[0] ?? matches[0]) : (ahead.at(-1) ?? matches.at(-1));
    if (next) this.#choose(next);
    this.#tell({ matches, hidden }, next);
  }

  #tell({ matches, hidden }: Found, at: Match | undefined): void {
    const { text, isEverywhere } = this.#wanted;
    const beside =
      hidden > 0 ? ` ${cells(hidden)} out of sight ${hidden === 1 ? 'has' : 'have'} it too.` : '';
    if (text === '') this.#say('Type what you look for.');
    else if (!at) this.#say(`${isEverywhere ? 'No sheet has it.' : 'It is nowhere on this sheet.'}${beside}`);
    else {
      const where = `${address(at)}${isEverywhere ? ` of “${at.sheetName}”` : ''}`;
      this.#say(`${matches.indexOf(at) + 1} of ${matches.length}: ${where}.${beside}`);
    }
  }

  #choose({ sheetId, row, column }: Match): void {
    const workbook = this.#grid.api.getActiveWorkbook();
    const sheet = workbook?.getSheetBySheetId(sheetId);
    if (!workbook || !sheet) return;
    const field = document.activeElement;
    if (workbook.getActiveSheet().getSheetId() !== sheetId) workbook.setActiveSheet(sheet);
    sheet.getRange(row, column).activate();
    revealSelected(this.#grid);
    // What is chosen takes the keyboard: it stays where the person types.
    if (field instanceof HTMLElement) field.focus();
  }

  #replaceOne(): void {
    const { matches } = search(this.#grid, this.#wanted);
    const at = matches.find((match) => this.#compared(match) === 0);
    if (!at) {
      this.#step(1);
      return;
    }
    const { at: written, left } = replaceIn(this.#grid, [at], this.#wanted, this.#by.value);
    const [why] = left;
    this.#step(1);
    if (why) this.#say(`${address(at)} was left as it is: it is ${WHY[why]}. ${this.#said.textContent}`);
    this.#tellBroken(written);
  }

  /** What comes into a cell against its rule stays there, marked, as by a paste, and is told. */
  #tellBroken(written: readonly Match[]): void {
    void brokenBy(this.#grid, written).then((words) => {
      if (words !== '') this.#say(`${this.#said.textContent}${words}`);
    });
  }

  #replaceAll(): void {
    const { matches, hidden } = search(this.#grid, this.#wanted);
    if (matches.length === 0) {
      this.#tell({ matches, hidden }, undefined);
      return;
    }
    const { at, left } = replaceIn(this.#grid, matches, this.#wanted, this.#by.value);
    const reasons = [...new Set(left)].map((why) => WHY[why]).join(', ');
    this.#say(
      `Replaced in ${cells(at.length)}.` +
        (left.length > 0 ? ` Left as it is in ${cells(left.length)}: ${reasons}.` : '') +
        (hidden > 0 ? ` Left in ${cells(hidden)} out of sight.` : '') +
        (at.length > 0 ? ` ${undoKey()} in the sheet takes that back.` : ''),
    );
    this.#tellBroken(at);
  }
}

/** A button of the bar, and Ctrl+F, find in the sheet, and Ctrl+H replaces. The pane keeps the browser's own find, and so does a cell that is written. */
export function offerFind(grid: Grid): void {
  const bar = new FindBar(grid);
  barButton('Find', 'Find and replace in the sheet: Ctrl+F, Ctrl+H').addEventListener('click', () =>
    bar.open(false),
  );
  const isElsewhere = (): boolean => elementById('pane').contains(document.activeElement) || isWriting(grid);
  takeKey(
    (event) => ['f', 'h'].includes(letterWithCtrl(event) ?? '') && !isElsewhere(),
    ({ key }) => bar.open(key.toLowerCase() === 'h'),
  );
}
