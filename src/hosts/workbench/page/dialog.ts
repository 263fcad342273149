import { h } from '../../../pane/element';

interface Content {
  readonly title: string;
  readonly text: string;
  readonly list?: readonly string[];
}

let count = 0;

/** Shows a dialog of our own and settles with the button that closed it; Escape counts as the first one. */
function open(
  { title, text, list }: Content,
  buttons: readonly (readonly [value: string, label: string])[],
): Promise<string> {
  const id = `dialog-${++count}`;
  const dialog = h(
    'dialog',
    { class: 'dialog', 'aria-labelledby': `${id}-title`, 'aria-describedby': `${id}-text` },
    h('h2', { id: `${id}-title` }, title),
    h('p', { id: `${id}-text` }, text),
    ...(list ? [h('ul', { tabindex: 0 }, ...list.map((each) => h('li', {}, each)))] : []),
    h(
      'form',
      { method: 'dialog', class: 'dialog-buttons' },
      ...buttons.map(([value, label], i) =>
        h('button', { value, class: i === buttons.length - 1 ? 'strong' : 'plain' }, label),
      ),
    ),
  );
  return new Promise((resolve) => {
    dialog.addEventListener('close', () => {
      dialog.remove();
      resolve(dialog.returnValue || (buttons[0]?.[0] ?? ''));
    });
    // The grid listens for keys everywhere: those of a dialog are the dialog's.
    dialog.addEventListener('keydown', (event) => event.stopPropagation());
    document.body.append(dialog);
    dialog.showModal();
  });
}

/** Asks before something is done that takes the place of work. */
export const ask = async (title: string, text: string, yes: string): Promise<boolean> =>
  (await open({ title, text }, [
    ['no', 'Cancel'],
    ['yes', yes],
  ])) === 'yes';

export const tell = async (title: string, text: string, list: readonly string[] = []): Promise<void> => {
  await open({ title, text, ...(list.length > 0 ? { list } : {}) }, [['ok', 'Close']]);
};
