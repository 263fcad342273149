import type { Objection } from '../../../engine/sort/sortRows';
import { areaOfGridRange } from '../../../engine/gridRange';
import { areasIn } from '../../../engine/sort/formulas';
import type { Area } from '../../../formula/area';
import { areaText } from '../../../formula/areaText';
import { isPartOf } from '../../../formula/followEdit';
import { isMeantOf } from '../../../formula/sheetPlace';
import type { ChartCells } from '../../../book/chart';
import { keptCharts, keptWith } from '../book/keptWithSheet';
import { tableShapes } from '../charts/tableShapes';
import type { Grid } from '../grid/grid';
import { conditions, inputRules } from '../grid/rules';
import { formulasIn } from '../tables/ruleFormulas';

const UNCHANGED = 'Nothing was changed.';

/** Whether an area has columns that the block has not. */
const isBeside = (area: Area, block: Area): boolean =>
  area.column < block.column || area.column + area.columns > block.column + block.columns;

/** A warning or input rule is for all of its cells at once: one that reads some of the rows cannot go with them. */
export const ruleAgainst =
  (grid: Grid): Objection =>
  ({ range, subUnitId }, sheetName) => {
    const block = areaOfGridRange(range);
    for (const sheet of grid.api.getActiveWorkbook()?.getSheets() ?? []) {
      const id = sheet.getSheetId();
      const isHere = id === subUnitId;
      const isMeant = isMeantOf(sheetName, isHere);
      for (const rule of [...conditions(grid, id), ...inputRules(grid, id)]) {
        const areas = rule.ranges.map(areaOfGridRange);
        const [first] = areas;
        const torn = isHere && areas.find((area) => isPartOf(area, block) && isBeside(area, block));
        if (torn)
          return `A warning or input rule on ${areaText(torn)} is for cells of these rows and for others beside them. ${UNCHANGED}`;
        const isOwnRow = ({ row, rows }: Area): boolean => isHere && rows === 1 && row === first?.row;
        const read = formulasIn(rule)
          .flatMap((formula) => areasIn(formula, isMeant))
          .find(([, area]) => isPartOf(area, block) && !isOwnRow(area));
        if (read && first)
          return `A warning or input rule on ${areaText(first)}${isHere ? '' : ` of “${sheet.getSheetName()}”`} reads a part of these rows: ${read[0]}. ${UNCHANGED}`;
      }
    }
    return undefined;
  };

/** A chart draws the rows in their order; one that draws some of them would draw others. */
export const chartAgainst =
  (grid: Grid): Objection =>
  ({ range, subUnitId }) => {
    const sheet = grid.api.getActiveWorkbook()?.getSheetBySheetId(subUnitId);
    if (!sheet) return undefined;
    const block = areaOfGridRange(range);
    const isOfSome = (from: ChartCells | undefined): boolean =>
      from !== undefined && 'cells' in from && isPartOf(from.cells, block);
    const chart = keptCharts(keptWith(sheet.getSheet().getConfig()), tableShapes(sheet)).find(
      ({ x, series }) => isOfSome(x) || series.some((each) => isOfSome(each.x) || isOfSome(each.values)),
    );
    return chart && `The chart “${chart.title}” draws a part of these rows. ${UNCHANGED}`;
  };
