import type { Saving } from '../state/saving';
import type { Trouble } from '../worker/workerWatch';
import { type Notice, standingNotice } from './notice';

const WHAT: Readonly<Record<Trouble, string>> = {
  'not loaded': 'The part of this page that calculates could not be loaded, so formulas get no answers.',
  silent: 'The calculation has stopped, so answers no longer follow what you type.',
};
const HELP = 'Your entries are not lost: store them and load the page anew.';

async function loadAnew(saving: Saving, notice: Notice): Promise<void> {
  if (await saving.now()) location.reload();
  else
    notice.say(
      'Your entries cannot be stored here, so the page was not loaded anew. Save them as .xlsx first.',
    );
}

/** Says that nothing is calculated any more, until it is again. */
export function troubleNotice(saving: Saving): (trouble: Trouble | undefined) => void {
  const notice = standingNotice();
  return (trouble) => {
    if (!trouble) notice.clear();
    else
      notice.say(`${WHAT[trouble]} ${HELP}`, {
        label: 'Store and load anew',
        run: () => void loadAnew(saving, notice),
      });
  };
}
