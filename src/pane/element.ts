/** What is written into the tag. `true` for an attribute that stands without a value. */
export type ElementAttributes = Readonly<Record<string, string | number | true>>;
type Child = Node | string;

const SVG = 'http://www.w3.org/2000/svg';

function fill<E extends Element>(made: E, attributes: ElementAttributes, children: readonly Child[]): E {
  for (const [name, value] of Object.entries(attributes))
    made.setAttribute(name, value === true ? '' : String(value));
  made.append(...children);
  return made;
}

/** An element with its attributes and children. Texts stay texts: nothing here is read as markup. */
export const h = <K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: ElementAttributes = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[K] => fill(document.createElement(tag), attributes, children);

/** The same for a drawing. */
export const svg = <K extends keyof SVGElementTagNameMap>(
  tag: K,
  attributes: ElementAttributes = {},
  ...children: readonly Child[]
): SVGElementTagNameMap[K] => fill(document.createElementNS(SVG, tag), attributes, children);

/** Words for those who hear the page and cannot see what they belong to. */
export const heard = (text: string): HTMLElement => h('span', { class: 'heard' }, text);

/** A small button that takes something away; its name says what. */
export const closeButton = (name: string): HTMLButtonElement =>
  h(
    'button',
    { type: 'button', class: 'close', 'aria-label': name },
    h('span', { 'aria-hidden': 'true' }, '×'),
  );
