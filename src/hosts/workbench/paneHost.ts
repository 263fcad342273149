import type { Done, Outcome, PaneHost } from '../../pane/host';
import { cellHolds, formulaIn, notAFormula } from '../../pane/sentences';
import type { Grid } from './grid/grid';
import { takeKeyboard } from './grid/keyboard';
import type { KnownFailures } from './cell/knownFailures';
import { joinsHere, linkHere } from './links/linkHere';
import { SelectedCellReader } from './cell/selectedCell';
import { clientFile, printClientPage } from './sheets/clientFile';
import {
  copyValues,
  insertSheet,
  insertTemplate,
  layMade,
  newEstimate,
  newJob,
  readInView,
} from './sheets/newSheets';
import { putPicture } from './pictures/putPicture';
import { sheetAsRead } from './pictures/readSheet';
import { readBlock, writeCells } from './tables/tableCells';
import { onNewWorkbook } from './grid/changes';
import { watchCell } from './cell/watchCell';

/**
 * What the pane may ask of the embedded grid. Names are not lost here: a file's are mended as it is opened. Nothing has to be
 * calculated anew either, because the functions are there before the first formula.
 *
 * @param tell - told what was done that stands in the grid.
 */
export function paneHost(grid: Grid, failures: KnownFailures, tell: (done: Done) => void): PaneHost {
  const shown = (outcome: Outcome): Outcome => shownIn(grid, outcome, tell);
  return {
    insertSheet: async (id, filled) => shown(await insertSheet(grid, id, filled)),
    newJob: async () => shown(await newJob(grid)),
    putFormula: (formula) => Promise.resolve(shown(putFormula(grid, formula))),
    copyValues: () => Promise.resolve(shown(copyValues(grid))),
    findJoins: () => Promise.resolve({ joins: joinsHere(grid) }),
    link: (way) => Promise.resolve(shown(linkHere(grid, way))),
    newEstimate: async () => shown(await newEstimate(grid)),
    prepareClientPage: () => clientFile(grid),
    printClientPage: () => printClientPage(grid),
    watchCell: watchCell(grid, failures),
    tables: {
      readBlock: () => Promise.resolve(readBlock(grid)),
      look: (references) => {
        const reader = new SelectedCellReader(grid, failures);
        return Promise.resolve(references.map((reference) => reader.values(reference)));
      },
      writeCells: (block, writes) => Promise.resolve(writeCells(grid, block, writes)),
      laySheet: (template) => Promise.resolve(shown(insertTemplate(grid, template, true))),
    },
    sheets: {
      read: (isWanted) => Promise.resolve(readInView(grid, isWanted)),
      lay: (template) => Promise.resolve(shown(layMade(grid, template))),
    },
    pictures: {
      readSheet: () => {
        const sheet = grid.api.getActiveWorkbook()?.getActiveSheet();
        return Promise.resolve(sheet ? sheetAsRead(sheet) : { refused: 'No sheet is in view.' });
      },
      putPicture: (picture) => Promise.resolve(shown(putPicture(grid, picture))),
    },
    watchWorkbook: (changed) => onNewWorkbook(grid, changed),
    help: 'help.html',
  };
}

/**
 * What was done stands in the grid: the keys that follow are meant for it. On the button that was pressed, the first of them
 * would press it again.
 */
function shownIn(grid: Grid, outcome: Outcome, tell: (done: Done) => void): Outcome {
  if (!('done' in outcome)) return outcome;
  tell(outcome);
  takeKeyboard(grid);
  return outcome;
}

function putFormula({ api }: Grid, formula: string): Outcome {
  const workbook = api.getActiveWorkbook();
  const range = workbook?.getActiveRange();
  if (!workbook || !range)
    return { refused: 'Choose the cell that the formula shall go to, then try again.' };
  const refused = notAFormula(formula);
  if (refused) return refused;
  const cell = workbook.getActiveSheet().getRange(range.getRow(), range.getColumn());
  const held = cell.getCellData();
  const at = cell.getA1Notation();
  if ((held?.v ?? '') !== '' || held?.f || held?.si) return cellHolds(at);
  cell.setValue({ f: formula });
  return { done: formulaIn(at) };
}
