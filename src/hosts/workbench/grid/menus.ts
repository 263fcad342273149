import {
  AddRangeProtectionFromSheetBarCommand,
  ChangeSheetProtectionFromSheetBarCommand,
  DeleteWorksheetProtectionFormSheetBarCommand,
  IMenuManagerService,
  type IUniverSheetsCorePresetConfig,
  ViewSheetPermissionFromSheetBarCommand,
} from '@univerjs/preset-sheets-core';
import type { Grid } from './grid';
import { inside } from './inside';

/** The kinds of functions in which the grid would sort its own; ours stand in the pane, and all come as they are typed. */
const FUNCTION_KINDS = [
  'common',
  'financial',
  'logical',
  'text',
  'date',
  'lookup',
  'math',
  'statistical',
  'engineering',
  'information',
  'database',
].map((kind) => `formula-ui.operation.insert-function.${kind}`);

/**
 * What the grid would offer and nobody needs on a set: typefaces and sizes of letters, which the sheets have settled; formats of
 * accounts, for which there are ours (shownAs.ts); and protection, which a file would not keep.
 */
const NOT_OFFERED = [
  'sheet.command.set-once-format-painter',
  'sheet.command.clear-selection-all',
  'sheet.command.set-range-font-family',
  'sheet.command.set-range-fontsize',
  'sheet.command.set-range-font-increase',
  'sheet.command.set-range-font-decrease',
  'sheet.command.set-range-stroke',
  'sheet.command.set-text-rotation',
  'sheet.command.set-vertical-text-align',
  'sheet.command.add-range-protection-from-toolbar',
  'sheet.contextMenu.permission',
  AddRangeProtectionFromSheetBarCommand.id,
  DeleteWorksheetProtectionFormSheetBarCommand.id,
  ChangeSheetProtectionFromSheetBarCommand.id,
  ViewSheetPermissionFromSheetBarCommand.id,
  'sheet.command.set-range-italic',
  'sheet.command.set-range-underline',
  'sheet.command.set-range-strickthrough',
  'sheet.command.add-worksheet-merge',
  'sheet.operation.open.numfmt.panel',
  'sheet.command.numfmt.set.percent',
  'sheet.command.numfmt.set.currency',
  'sheet.toolbar.text-to-number',
  'base-ui.operation.toggle-shortcut-panel',
  ...FUNCTION_KINDS,
];

export const OFFERED: NonNullable<IUniverSheetsCorePresetConfig['menu']> = Object.fromEntries(
  NOT_OFFERED.map((id) => [id, { hidden: true }]),
);

/** What takes something away. */
const LAST = [
  'sheet.menu.delete',
  'sheet.command.remove-row-confirm',
  'sheet.command.remove-col-confirm',
  'sheet.command.remove-sheet-confirm',
] as const;
/** Behind all that the grid counts. */
const AT_THE_END = 99;

/** Has what takes something away come last in each menu. Call it once the grid's parts have made their menus. */
export function dangerousLast(grid: Grid): void {
  inside(grid)
    .get(IMenuManagerService)
    .mergeMenu(Object.fromEntries(LAST.map((id) => [id, { order: AT_THE_END }])));
}
