import '../../../pane/pane.css';

/** What is fetched once the grid has answered: the pane beside the sheet, and the charts on it. */
export { mountPane } from '../../../pane/pane';
export { showCharts } from '../charts/onSheet/overlay';
