import { CommandType } from '@univerjs/core';
import {
  IMenuManagerService,
  MenuItemType,
  RibbonPosition,
  RibbonStartGroup,
} from '@univerjs/preset-sheets-core';
import { Q } from '../../../catalogue/quantities';
import type { Grid } from './grid';
import { commands, inside } from './inside';

/** How the numbers of chosen cells may be shown: what they are of, as a studio says it. */
const QUANTITIES: readonly (readonly [label: string, quantity: keyof typeof Q])[] = [
  ['f-number', 'aperture'],
  ['Stops', 'stops'],
  ['Seconds', 'wait'],
  ['Watt-seconds', 'energy'],
  ['Metres', 'distance'],
  ['Millimetres', 'lensLength'],
  ['Kelvin', 'kelvin'],
  ['Per cent', 'share'],
  ['Ratio, to 1', 'ratio'],
];
/** What has no unit. */
const PLAIN: readonly (readonly [label: string, format: string])[] = [
  ['Plain number', 'General'],
  ['As typed', '@'],
];

const MENU = 'sweeptable-shown-as';
const NOTE = 'sweeptable-note';
/** Before those of the grid in that part, which go out of sight first where there is little room. */
const [FIRST, SECOND] = [-2, -1];

/** An entry of a menu that does something of ours. */
function entry(grid: Grid, id: string, title: string, run: () => void) {
  commands(grid).registerCommand({
    id,
    type: CommandType.COMMAND,
    handler: () => {
      run();
      return true;
    },
  });
  return { menuItemFactory: () => ({ id, type: MenuItemType.BUTTON, title }) };
}

/** Offers above the cells to show numbers as what they are of, and to write a note. */
export function offerShownAs(grid: Grid): void {
  const showAs = (format: string): void => {
    const sheet = grid.api.getActiveWorkbook()?.getActiveSheet();
    for (const range of sheet?.getSelection()?.getActiveRangeList() ?? []) range.setNumberFormat(format);
  };
  const formats = [
    ...QUANTITIES.map(([label, quantity]) => [label, Q[quantity].shown.result] as const),
    ...PLAIN,
  ];
  const entries = formats.map(([label, format], order) => {
    const id = `${MENU}-${order}`;
    return [id, { order, ...entry(grid, id, label, () => showAs(format)) }] as const;
  });
  const menu = {
    order: FIRST,
    menuItemFactory: () => ({
      id: MENU,
      type: MenuItemType.SUBITEMS,
      title: 'Shown as',
      tooltip: 'What the numbers of these cells are of',
    }),
    ...Object.fromEntries(entries),
  };
  const note = {
    order: SECOND,
    menuItemFactory: () => ({
      id: NOTE,
      commandId: 'sheet.operation.add-note-popup',
      type: MenuItemType.BUTTON,
      title: 'Note',
      tooltip: 'A note on this cell',
    }),
  };
  inside(grid)
    .get(IMenuManagerService)
    .mergeMenu({
      [RibbonPosition.START]: { [RibbonStartGroup.LAYOUT]: { [MENU]: menu, [NOTE]: note } },
    });
}
