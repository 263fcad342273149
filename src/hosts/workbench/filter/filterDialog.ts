import { h } from '../../../pane/element';
import { ask } from '../page/dialog';
import './filterDialog.css';

/** Rows that can be filtered, and what each shows in each column. */
export interface Filterable {
  readonly name: string;
  readonly columns: readonly string[];
  /** The column that is offered first. */
  readonly first: number;
  /** What the rows show in a column, one text a row. */
  texts(column: number): readonly string[];
}

/** The rows that shall go out of view: those that show one of some texts in a column. Whatever else one shows, it stays. */
export interface Chosen {
  readonly column: number;
  readonly without: ReadonlySet<string>;
}

const BLANK = 'Nothing in the cell';
/** Texts that are listed at once; of a list longer than the other, a part can be asked for. */
const LISTED = 500;
const LONG = 12;

const { compare } = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });
/** In the order in which a person looks for them, and empty cells at the end. */
const inOrder = (a: string, b: string): number =>
  a === '' || b === '' ? Number(a === '') - Number(b === '') : compare(a, b);

/** The texts of a column, each with a box to tick. */
class TextList {
  readonly element = h('div', { class: 'texts' });
  readonly #boxes = h('div', { class: 'boxes', role: 'group', 'aria-label': 'Rows that stay in view show' });
  readonly #part = h('input', { type: 'search' });
  readonly #find = h('label', {}, 'List only', this.#part);
  readonly #onlyBlanks = this.#button('Only blanks', (text) => text === '');
  #texts: readonly string[] = [];
  readonly unticked = new Set<string>();

  constructor() {
    this.#part.addEventListener('input', () => this.#list());
    const buttons = h(
      'div',
      { class: 'ticks' },
      this.#button('All', () => true),
      this.#button('None', () => false),
      this.#onlyBlanks,
    );
    this.element.append(this.#find, buttons, this.#boxes);
  }

  show(texts: readonly string[]): void {
    this.#texts = [...new Set(texts)].sort(inOrder);
    this.unticked.clear();
    this.#part.value = '';
    this.#find.hidden = this.#texts.length <= LONG;
    this.#onlyBlanks.hidden = this.#texts.at(-1) !== '';
    this.#list();
  }

  /** Ticks some of the texts that are listed; those that are not keep what they have. */
  #button(label: string, isTicked: (text: string) => boolean): HTMLButtonElement {
    const button = h('button', { type: 'button', class: 'plain' }, label);
    button.addEventListener('click', () => {
      for (const text of this.#wanted())
        if (isTicked(text)) this.unticked.delete(text);
        else this.unticked.add(text);
      this.#list();
    });
    return button;
  }

  #wanted(): readonly string[] {
    const part = this.#part.value.toLowerCase();
    return this.#texts.filter((text) => text.toLowerCase().includes(part));
  }

  #list(): void {
    const wanted = this.#wanted();
    const more = wanted.length - LISTED;
    this.#boxes.replaceChildren(
      ...wanted.slice(0, LISTED).map((text) => this.#box(text)),
      ...(more > 0 ? [h('p', {}, `${more} more are not listed: type a part of one above.`)] : []),
      ...(wanted.length === 0 ? [h('p', {}, 'None has that in it.')] : []),
    );
  }

  #box(text: string): HTMLElement {
    const box = h('input', { type: 'checkbox', ...(this.unticked.has(text) ? {} : { checked: true }) });
    box.addEventListener('change', () => {
      if (box.checked) this.unticked.delete(text);
      else this.unticked.add(text);
    });
    return h('label', {}, box, text === '' ? h('i', {}, BLANK) : text);
  }
}

/** Asks which rows shall stay in view. */
export async function askWhich({ name, columns, first, texts }: Filterable): Promise<Chosen | undefined> {
  const column = h(
    'select',
    {},
    ...columns.map((words, i) =>
      h('option', { value: i, ...(i === first ? { selected: true } : {}) }, words),
    ),
  );
  const list = new TextList();
  const show = (): void => list.show(texts(Number(column.value)));
  column.addEventListener('change', show);
  show();
  const isWanted = await ask(
    `Filter ${name}`,
    'Rows whose text you untick are hidden, with all that stands beside them on the sheet; what is typed later stays in view. Formulas and charts go on counting them.',
    'Filter',
    [h('label', {}, 'Column ', column), list.element],
  );
  return isWanted ? { column: Number(column.value), without: list.unticked } : undefined;
}
