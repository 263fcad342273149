/** A part of the page that its HTML holds. */
export function elementById(id: string): HTMLElement {
  const found = document.getElementById(id);
  if (!found) throw new Error(`The page has no "${id}".`);
  return found;
}
