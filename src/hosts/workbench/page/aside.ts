import { type Aside, allAside, forgetAside } from '../state/memory';
import { replaceWorkbook } from '../state/session';
import type { Command } from './bar';
import { type Desk, replace } from './commands';
import { ask, pick, tell } from './dialog';
import { download } from '../../../pane/download';

const WHY = {
  newer: 'stored by a newer version of this page, which can open it',
  damaged: 'damaged: nothing of it can be opened',
  unopened: 'could not be opened',
} as const;

const time = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'medium' });

function words({ when, found }: Aside): string {
  const at = `Put aside ${time.format(when)}`;
  if (found.kind === 'unreadable') return `${at}: ${WHY[found.why]}`;
  if (found.kind === 'nothing') return `${at}: empty`;
  const { sheetOrder, sheets } = found.snapshot;
  return `${at}: ${sheetOrder.map((id) => sheets[id]?.name ?? '').join(', ')}`;
}

/** Its file holds all that is stored, as it is. */
const fileName = ({ when }: Aside): string =>
  `Sweeptable put aside ${when.toISOString().slice(0, 19).replaceAll(':', '.')}.json`;

const ACTIONS = {
  open: (desk: Desk, aside: Aside) => openAside(desk, aside),
  save: async (_: Desk, aside: Aside) =>
    download(JSON.stringify(aside.record), fileName(aside), 'application/json'),
  remove: async (_: Desk, aside: Aside) => {
    const yes = await ask('Remove it?', `${words(aside)}. It cannot be had back afterwards.`, 'Remove');
    if (yes) await forgetAside(aside.key);
  },
} as const;
type Action = keyof typeof ACTIONS;

async function openAside(desk: Desk, { key, found }: Aside): Promise<void> {
  if (found.kind !== 'workbook') return;
  const isOpen = await replace(
    desk,
    (grid) => replaceWorkbook(grid, found.snapshot),
    'The workbook that was put aside is open.',
  );
  // It stays where it was until it is stored as the open one.
  if (isOpen && (await desk.saving.now())) await forgetAside(key);
}

/** What the page could not open, and keeps until it is opened, or removed by hand. */
export async function showAside(desk: Desk): Promise<void> {
  const all = await allAside();
  if (all.length === 0) {
    await tell('Nothing is put aside', 'All that was put aside has been opened or removed.');
    return;
  }
  const choices = all.map((aside, i) => ({
    words: words(aside),
    buttons: [
      ...(aside.found.kind === 'workbook' ? ([[`open ${i}`, 'Open']] as const) : []),
      [`save ${i}`, 'Save as file'] as const,
      [`remove ${i}`, 'Remove'] as const,
    ],
  }));
  const picked = await pick(
    'Put aside',
    'Workbooks that this page could not open, as they were stored.',
    choices,
  );
  const [action, index] = picked?.split(' ') ?? [];
  const aside = all[Number(index)];
  if (aside) await ACTIONS[action as Action](desk, aside);
}

export const asideCommand = (desk: Desk): Command => ({
  label: 'Put aside',
  about: 'Workbooks of this browser that could not be opened, to be opened or saved',
  run: () => showAside(desk),
});
