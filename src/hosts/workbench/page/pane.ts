import '../../../pane/pane.css';

/**
 * What is fetched once the grid has answered: the pane beside the sheet, the charts on it, what its tables offer, find, print, what keeps
 * looked-up values, and what is said of the chosen cell.
 */
export { mountPane } from '../../../pane/pane';
export { offerFind } from '../find/findBar';
export { printAllSheets, printSheets } from '../print/onPaper';
export { sayChosen } from '../cell/sayChosen';
export { showCharts } from '../charts/onSheet/overlay';
export { keepLookedUp } from '../links/keepLookedUp';
export { offerTableActions } from '../tables/tableActions';
