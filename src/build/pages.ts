import { helpPage } from './helpPage';
import type { Beside, PageName } from './page';
import { privacyPage } from './privacyPage';
import { supportPage } from './supportPage';

/** The pages of words that stand beside the pane. */
export const pages = (beside: Beside, contact?: string): Readonly<Record<PageName, string>> => ({
  'help.html': helpPage(beside),
  'support.html': supportPage(beside, contact),
  'privacy.html': privacyPage(beside),
});
