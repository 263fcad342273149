import { functionList } from './functionList';
import { followOfficeTheme } from './theme';

const OUTSIDE = 'This page works inside Excel. Here you can read the list; open it from Excel to calculate.';
const NO_LIBRARY =
  'Excel’s part of this page did not load. Check the connection, then close and open the pane.';

const element = (id: string): HTMLElement => {
  const found = document.getElementById(id);
  if (!found) throw new Error(`The page has no "${id}".`);
  return found;
};

element('families').append(...functionList());

if (typeof Office === 'undefined') element('where').textContent = NO_LIBRARY;
else
  void Office.onReady(({ host }) => {
    if (host === Office.HostType.Excel) followOfficeTheme();
    else element('where').textContent = OUTSIDE;
  });
