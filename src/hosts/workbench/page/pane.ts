import '../../../pane/pane.css';

export { mountPane } from '../../../pane/pane';
