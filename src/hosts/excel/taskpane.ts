import { mountPane } from '../../pane/pane';
import { keepToOfficeTheme } from './officeTheme';
import { excelHost, HELP } from './paneHost';

const OUTSIDE = 'Open this page from Excel to insert sheets.';
const NO_LIBRARY =
  'Excel’s part of this page did not load. Check the connection, then close and open the pane.';

const root = document.getElementById('pane');
if (!root) throw new Error('The page has no place for the pane.');

if (typeof Office === 'undefined') mountPane(root, { missing: NO_LIBRARY, help: HELP });
else
  void Office.onReady(({ host }) => {
    const inExcel = host === Office.HostType.Excel;
    mountPane(root, inExcel ? excelHost(Excel) : { missing: OUTSIDE, help: HELP });
    if (inExcel) keepToOfficeTheme();
  });
