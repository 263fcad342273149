import type { IMutationInfo, IRange, ISheetDataValidationRule } from '@univerjs/core';
import {
  type IConditionFormattingRule,
  SetConditionalRuleMutation,
} from '@univerjs/preset-sheets-conditional-formatting';
import { UpdateDataValidationMutation, UpdateRuleType } from '@univerjs/preset-sheets-data-validation';
import type { Grid } from '../grid/grid';
import { unitId } from '../grid/inside';
import { conditions, inputRules } from '../grid/rules';
import { asReadFrom, withFormulas } from './ruleFormulas';

/** The input rules and conditions of a sheet as they were before rows came in: what undo goes back to. */
export interface RulesBefore {
  readonly unitId: string;
  readonly sheetId: string;
  readonly inputs: ReadonlyMap<string, InputRule>;
  readonly conditions: ReadonlyMap<string, IConditionFormattingRule>;
}

/** What of an input rule new rows may change. */
interface InputRule {
  readonly ranges: readonly IRange[];
  readonly formula1: string | undefined;
  readonly formula2: string | undefined;
}
const inputRule = ({ ranges, formula1, formula2 }: ISheetDataValidationRule): InputRule =>
  structuredClone({ ranges, formula1, formula2 });

interface NewRows {
  readonly rows: { readonly first: number; readonly last: number };
  /** The row that they take after. */
  readonly model: number;
  readonly startColumn: number;
  readonly endColumn: number;
}

export const rulesOf = (grid: Grid, sheetId: string): RulesBefore => ({
  unitId: unitId(grid),
  sheetId,
  inputs: new Map(inputRules(grid, sheetId).map((rule) => [rule.uid, inputRule(rule)])),
  conditions: new Map(
    conditions(grid, sheetId).map((condition) => [condition.cfId, structuredClone(condition)]),
  ),
});

const covers = (range: IRange, row: number, { startColumn, endColumn }: NewRows): boolean =>
  range.startRow <= row &&
  row <= range.endRow &&
  range.startColumn >= startColumn &&
  range.endColumn <= endColumn;

/** Ranges that reach over the new rows as well; nothing if they do already, or have nothing to do with the table. */
function reaching(ranges: readonly IRange[], added: NewRows): IRange[] | undefined {
  const { rows, model } = added;
  if (!ranges.some((range) => covers(range, model, added))) return undefined;
  if (ranges.some((range) => covers(range, rows.first, added))) return undefined;
  return ranges.map((range) =>
    covers(range, model, added)
      ? {
          ...range,
          startRow: Math.min(range.startRow, rows.first),
          endRow: Math.max(range.endRow, rows.last),
        }
      : range,
  );
}

/** Spreads the input rules and conditions of a table's row over new rows beside it. */
export function widenRules(
  grid: Grid,
  before: RulesBefore,
  added: NewRows,
): { redos: IMutationInfo[]; undos: IMutationInfo[] } {
  const at = { unitId: before.unitId, subUnitId: before.sheetId };
  const redos: IMutationInfo[] = [];
  const undos: IMutationInfo[] = [];
  for (const rule of inputRules(grid, before.sheetId)) {
    const wider = reaching(rule.ranges, added);
    if (!wider) continue;
    const set = (payload: InputRule): IMutationInfo => ({
      id: UpdateDataValidationMutation.id,
      params: { ...at, ruleId: rule.uid, payload: { type: UpdateRuleType.ALL, payload } },
    });
    const present = inputRule(rule);
    redos.push(set({ ...withFormulas(present, asReadFrom(rule.ranges[0], wider[0])), ranges: wider }));
    undos.push(set(before.inputs.get(rule.uid) ?? present));
  }
  for (const condition of conditions(grid, before.sheetId)) {
    const wider = reaching(condition.ranges, added);
    if (!wider) continue;
    const set = (changed: IConditionFormattingRule): IMutationInfo => ({
      id: SetConditionalRuleMutation.id,
      params: { ...at, cfId: condition.cfId, rule: changed },
    });
    const rule = withFormulas(condition.rule, asReadFrom(condition.ranges[0], wider[0]));
    redos.push(set({ ...condition, rule, ranges: wider }));
    undos.push(set(before.conditions.get(condition.cfId) ?? condition));
  }
  return { redos, undos };
}
