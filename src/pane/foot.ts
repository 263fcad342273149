import { h } from './element';

/** They stand beside the help. */
const OTHERS = [
  ['Support', 'support.html'],
  ['Privacy', 'privacy.html'],
  ['Licences', 'licences.txt'],
] as const;

/** In a window of its own: the pane may have none to come back from. */
const link = ([label, address]: readonly [string, string]): HTMLElement =>
  h('a', { href: address, target: '_blank', rel: 'noopener' }, label);

/**
 * What is in reach from every view: what can hurt somebody, and the pages of words.
 * @param help - the address of the help; nothing where there are no such pages.
 */
export const foot = (help: string | undefined, cautions: HTMLElement): HTMLElement =>
  h(
    'footer',
    { class: 'pane-foot' },
    cautions,
    ...(help === undefined
      ? []
      : [h('nav', { 'aria-label': 'About' }, ...([['Help', help], ...OTHERS] as const).map(link))]),
  );
