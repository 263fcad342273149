import { helpPage } from './helpPage';
import type { PageName } from './page';
import { privacyPage } from './privacyPage';
import { supportPage } from './supportPage';

/** The pages of words that stand beside the pane and the workbench. */
export const pages = (contact?: string): Readonly<Record<PageName, string>> => ({
  'help.html': helpPage(),
  'support.html': supportPage(contact),
  'privacy.html': privacyPage(),
});
