/** An element with its properties and children. Texts stay texts: nothing here is read as markup. */
export function create<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  properties: Partial<HTMLElementTagNameMap[K]>,
  ...children: (Node | string)[]
): HTMLElementTagNameMap[K] {
  const made = Object.assign(document.createElement(tag), properties);
  made.append(...children);
  return made;
}
