import { DataValidationErrorStyle, DataValidationType, type ISheetDataValidationRule } from '@univerjs/core';
import {
  ConditionalFormattingRuleModel,
  type IConditionFormattingRule,
} from '@univerjs/preset-sheets-conditional-formatting';
import {
  DataValidationModel,
  DataValidatorRegistryService,
  type ListValidator,
} from '@univerjs/preset-sheets-data-validation';
import type { Grid } from './grid';
import { inside, unitId } from './inside';

export const inputRules = (grid: Grid, sheetId: string): readonly ISheetDataValidationRule[] =>
  inside(grid).get(DataValidationModel).getRules(unitId(grid), sheetId);

export const conditions = (grid: Grid, sheetId: string): readonly IConditionFormattingRule[] =>
  inside(grid).get(ConditionalFormattingRuleModel).getSubunitRules(unitId(grid), sheetId) ?? [];

/** What a rule takes that takes an entry of its list and nothing else; undefined for any other. */
export function entriesOf(
  grid: Grid,
  sheetId: string,
  rule: ISheetDataValidationRule,
): readonly string[] | undefined {
  if (rule.type !== DataValidationType.LIST || rule.errorStyle !== DataValidationErrorStyle.STOP)
    return undefined;
  const validator = inside(grid).get(DataValidatorRegistryService).getValidatorItem(rule.type);
  return (validator as ListValidator).getList(rule, unitId(grid), sheetId);
}
