import '../../../pane/pane.css';

/** What is fetched once the grid has answered: the pane beside the sheet, the charts on it, and what its tables offer. */
export { mountPane } from '../../../pane/pane';
export { showCharts } from '../charts/onSheet/overlay';
export { offerTableActions } from '../tables/tableActions';
