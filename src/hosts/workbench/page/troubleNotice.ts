import type { Saving } from '../state/saving';
import type { Trouble } from '../worker/workerWatch';
import { type Notice, standingNotice } from './notice';

/** Of the calculation, or of the grid, which has gone out of the page. */
type Told = Trouble | 'gone';

const WHAT: Readonly<Record<Told, string>> = {
  'not loaded': 'The part of this page that calculates could not be loaded, so formulas get no answers.',
  silent: 'The calculation has stopped, so answers no longer follow what you type.',
  gone: 'The sheet cannot be shown any more: something in this page has failed.',
};
const HELP = 'Your entries are not lost: store them and load the page anew.';

async function loadAnew(saving: Saving, notice: Notice): Promise<void> {
  if (await saving.now()) location.reload();
  else
    notice.say(
      'Your entries cannot be stored here, so the page was not loaded anew. Save them as .xlsx first.',
    );
}

/** Says that nothing is calculated, or shown, any more, until it is again. */
export function troubleNotice(saving: Saving): (trouble: Told | undefined) => void {
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
