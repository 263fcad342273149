import { h } from '../../../pane/element';
import { letterWithCtrl, takeKey } from '../grid/takeKey';
import { elementById } from './elementById';

export interface Command {
  readonly label: string;
  /** Said when the pointer rests on it. */
  readonly about: string;
  /** A letter that does so with Ctrl. */
  readonly key?: string;
  readonly run: () => Promise<void>;
}

/** Its buttons, in their order. */
const LABELS = [
  'Find',
  'Open .xlsx',
  'Save as .xlsx',
  'Print',
  'Print all',
  'Start over',
  'Sheets and functions',
  'Dark',
] as const;
type Label = (typeof LABELS)[number];
/** What comes only where there is something for it stands before these. */
const LAST: Label = 'Sheets and functions';

const place = (label: string): HTMLButtonElement | undefined =>
  [...elementById('commands').querySelectorAll('button')].find(({ textContent }) => textContent === label);

/**
 * The buttons stand there before they can be pressed: where the bar takes more lines with each that comes, the sheet below it
 * would move under the hand.
 */
export function placeBar(): void {
  elementById('commands').append(
    ...LABELS.map((label) => h('button', { type: 'button', disabled: true }, label)),
  );
}

/** A button of the bar, from now on to be pressed. */
export function barButton(label: Label, about: string): HTMLButtonElement {
  const button = place(label);
  if (!button) throw new Error(`The bar has no place for ${label}.`);
  button.title = about;
  button.disabled = false;
  return button;
}

function furtherButton(label: string, about: string): HTMLElement {
  const button = h('button', { type: 'button', title: about }, label);
  place(LAST)?.before(button);
  return button;
}

const isPlaced = (label: string): label is Label => LABELS.some((each) => each === label);

/** Takes away those that nothing will come for any more. */
export function clearBar(): void {
  for (const button of elementById('commands').querySelectorAll(':disabled')) button.remove();
}

/**
 * The commands of the bar, and their keys. One command runs at a time.
 *
 * @param settled - asked for what is being typed, before a key runs a command.
 */
export function fillBar(
  commands: readonly Command[],
  settled: () => Promise<unknown>,
  failed: (reason: unknown) => void,
): void {
  let busy = false;
  const byKey = new Map<string, HTMLElement>();
  for (const { label, about, key, run } of commands) {
    const button = isPlaced(label) ? barButton(label, about) : furtherButton(label, about);
    if (key !== undefined) {
      button.setAttribute('aria-keyshortcuts', `Control+${key.toUpperCase()}`);
      byKey.set(key, button);
    }
    button.addEventListener('click', () => {
      if (busy) return;
      busy = true;
      void run()
        .catch(failed)
        .finally(() => {
          busy = false;
        });
    });
  }
  const pressed = (event: KeyboardEvent) => byKey.get(letterWithCtrl(event) ?? '');
  takeKey(
    (event) => pressed(event) !== undefined,
    (event) => void settled().then(() => pressed(event)?.click()),
  );
}
