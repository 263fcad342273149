import { DEFAULT_STYLES, LocaleType, mergeLocales, type Univer } from '@univerjs/core';
import type { FUniver } from '@univerjs/core/facade';
import { UniverSheetsConditionalFormattingPreset } from '@univerjs/preset-sheets-conditional-formatting';
import conditionalFormattingWords from '@univerjs/preset-sheets-conditional-formatting/locales/en-US';
import { CalculationMode, UniverSheetsCorePreset } from '@univerjs/preset-sheets-core';
import coreWords from '@univerjs/preset-sheets-core/locales/en-US';
import { UniverSheetsDataValidationPreset } from '@univerjs/preset-sheets-data-validation';
import dataValidationWords from '@univerjs/preset-sheets-data-validation/locales/en-US';
import { UniverSheetsNotePreset } from '@univerjs/preset-sheets-note';
import noteWords from '@univerjs/preset-sheets-note/locales/en-US';
import tableWords from '@univerjs/preset-sheets-table/locales/en-US';
import '@univerjs/sheets-table/facade';
import '@univerjs/preset-sheets-core/lib/index.css';
import '@univerjs/preset-sheets-data-validation/lib/index.css';
import '@univerjs/preset-sheets-conditional-formatting/lib/index.css';
import '@univerjs/preset-sheets-note/lib/index.css';
import '@univerjs/preset-sheets-table/lib/index.css';
import { USUAL_SIZE } from '../../../book/palette';
import { createUniver } from '../../../engine/create';
import { descriptions } from '../../../engine/descriptions';
import { executors } from '../../../engine/functions';
import { mendEdits } from '../../../engine/mends/edits';
import '../../../engine/patches';
import { stopFollowing } from './effects';
import { GRID_THEME } from './gridTheme';
import { OFFERED } from './menus';
import { showSelectedText } from './selectedText';
import { PLAIN_TABLES } from './tableLook';
import { inOurWords } from './words';

export interface Grid {
  readonly univer: Univer;
  readonly api: FUniver;
}

/** What the grid says, with what its own words leave out: what it says while it calculates much. */
const words = mergeLocales(
  coreWords,
  dataValidationWords,
  conditionalFormattingWords,
  noteWords,
  tableWords,
  {
    'sheets-formula': {
      progress: {
        analyzing: 'Reading formulas',
        calculating: 'Calculating',
        'array-analysis': 'Reading lists',
        'array-calculation': 'Calculating lists',
        done: 'Calculated',
      },
    },
  },
);

/** The grid in its container. Formulas run in the worker; the page only has to know their names and descriptions. */
export function createGrid(container: string, worker: Worker): Grid {
  stopFollowing();
  showSelectedText();
  // what has no size of its own, such as the line in which a cell is written, is as large as the cells
  DEFAULT_STYLES.fs = USUAL_SIZE;
  const grid = createUniver(
    { locale: LocaleType.EN_US, locales: { [LocaleType.EN_US]: inOurWords(words) }, theme: GRID_THEME },
    [
      UniverSheetsCorePreset({
        container,
        ribbonType: 'simple',
        menu: OFFERED,
        workerURL: worker,
        formula: {
          function: executors(),
          description: descriptions(),
          initialFormulaComputing: CalculationMode.FORCED,
        },
        // A fraction or f/11 kept as text is no mistake here, so nothing marks it as one.
        sheets: { disableForceStringMark: true, disableForceStringAlert: true },
        disableTextFormatMark: true,
        disableTextFormatAlert: true,
        footer: { menus: false },
      }),
      UniverSheetsDataValidationPreset({ showEditOnDropdown: false, showSearchOnDropdown: false }),
      UniverSheetsConditionalFormattingPreset(),
      UniverSheetsNotePreset(),
      PLAIN_TABLES,
    ],
  );
  mendEdits(grid.univer);
  return grid;
}
