import { exampleWorkbook } from './example';
import { createGrid } from './grid';
import { KnownFailures } from './knownFailures';
import { firstAnswersShown } from './ready';
import { readout } from './readout';
import { onReport } from './reports';
import { offerEveryFunction } from './suggestions';
import { tellFailuresInTips } from './tip';
import './workbench.css';

const worker = new Worker(new URL('./worker.ts', import.meta.url));
const failures = new KnownFailures();
onReport(worker, (report) => failures.take(report));

const grid = createGrid('grid', worker);
grid.api.createWorkbook(exampleWorkbook());
tellFailuresInTips(grid, failures);
offerEveryFunction(grid);
window.sweeptable = readout(grid, failures);

void firstAnswersShown(grid.api).then(() => {
  document.documentElement.dataset['ready'] = 'true';
});
