import { chartsView } from '../../../pane/chartsView';
import type { PaneHost } from '../../../pane/host';
import { mountPane } from '../../../pane/pane';
import '../../../pane/pane.css';

/** The pane with all that a workbench has, charts included. */
export const fillPane = (root: HTMLElement, host: PaneHost): void => {
  mountPane(root, host, chartsView);
};
