import type { Outcome } from './host';

/** Copies the text of an element; where the page may not, selects it so that a person can. */
export async function copyText(element: HTMLElement): Promise<Outcome> {
  const text = element.textContent ?? '';
  if (await isCopied(text)) return { done: `Copied ${text}` };
  getSelection()?.selectAllChildren(element);
  return { done: 'The formula is selected: press Ctrl+C, or ⌘C on a Mac.' };
}

/** Browsers refuse without saying why: the page is not in front, or has no right to the clipboard. */
async function isCopied(text: string): Promise<boolean> {
  const clipboard = navigator.clipboard as Clipboard | undefined;
  if (!clipboard) return false;
  return clipboard.writeText(text).then(
    () => true,
    () => false,
  );
}
