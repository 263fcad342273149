import { h } from '../../../pane/element';

type Button = readonly [value: string, label: string];

/** One of several things to choose from, with what can be done with it. */
export interface Choice {
  readonly words: string;
  readonly buttons: readonly Button[];
}

interface Content {
  readonly title: string;
  readonly text: string;
  readonly list?: readonly (string | Choice)[];
  /** What is filled in before a button is pressed. */
  readonly fields?: readonly HTMLElement[];
}

const item = (each: string | Choice): HTMLElement =>
  typeof each === 'string'
    ? h('li', {}, each)
    : h(
        'li',
        { class: 'choice' },
        h('span', {}, each.words),
        h(
          'form',
          { method: 'dialog' },
          ...each.buttons.map(([value, label]) =>
            h('button', { value, class: 'plain', 'aria-label': `${label}: ${each.words}` }, label),
          ),
        ),
      );

let count = 0;

/** Shows a dialog of our own and settles with the button that closed it; Escape counts as the first one. */
function open({ title, text, list, fields = [] }: Content, buttons: readonly Button[]): Promise<string> {
  const id = `dialog-${++count}`;
  const dialog = h(
    'dialog',
    { class: 'dialog', 'aria-labelledby': `${id}-title`, 'aria-describedby': `${id}-text` },
    h('h2', { id: `${id}-title` }, title),
    h('p', { id: `${id}-text` }, text),
    ...(list ? [h('ul', { tabindex: 0 }, ...list.map(item))] : []),
    h(
      'form',
      { method: 'dialog', class: 'dialog-buttons' },
      ...fields,
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

/** Asks before something is done, and for what it takes. */
export const ask = async (
  title: string,
  text: string,
  yes: string,
  fields: readonly HTMLElement[] = [],
): Promise<boolean> =>
  (await open({ title, text, fields }, [
    ['no', 'Cancel'],
    ['yes', yes],
  ])) === 'yes';

export const tell = async (title: string, text: string, list: readonly string[] = []): Promise<void> => {
  await open({ title, text, ...(list.length > 0 ? { list } : {}) }, [['ok', 'Close']]);
};

/** Lets a person do something with one of several things, and gives the value of what was pressed; nothing where it was closed. */
export async function pick(
  title: string,
  text: string,
  list: readonly Choice[],
): Promise<string | undefined> {
  const picked = await open({ title, text, list }, [['close', 'Close']]);
  return picked === 'close' ? undefined : picked;
}
