import type { Command } from './bar';

const HELP = 'help.html';

/** F1 opens the help, beside the page, which keeps its cells and what is being typed. */
export function helpByKey(): void {
  addEventListener(
    'keydown',
    (event) => {
      if (event.key !== 'F1' || event.ctrlKey || event.altKey || event.metaKey || event.shiftKey) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      open(HELP, '_blank', 'noopener');
    },
    { capture: true },
  );
}

/** For who has no key for it. The browser asks for the printer, or makes a PDF of it. */
export const printSheet: Command = {
  label: 'Print',
  about: 'The sheet in view, on paper or as a PDF. Ctrl+P does so too',
  run: () => Promise.resolve(print()),
};
