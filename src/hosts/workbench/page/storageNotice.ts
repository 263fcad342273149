import type { Told } from '../state/saving';
import { standingNotice } from './notice';

const isFull = (reason: unknown): boolean =>
  reason instanceof DOMException && reason.name === 'QuotaExceededError';

/** Says, once, that storing does not work, until it works again. */
export function storageNotice(): Told {
  const notice = standingNotice();
  let isTold = false;
  return {
    failed(reason) {
      if (isTold) return;
      isTold = true;
      notice.say(
        isFull(reason)
          ? 'The browser’s storage is full: you can work on, but your latest changes are gone when the page is closed. Save the workbook as .xlsx to keep them.'
          : 'The browser allows no storage here: you can work on, but the workbook is gone when the page is closed. Save it as .xlsx to keep it.',
      );
    },
    stored() {
      isTold = false;
      notice.clear();
    },
  };
}
