import type { ISheetDataValidationRule } from '@univerjs/core';
import {
  ConditionalFormattingRuleModel,
  type IConditionFormattingRule,
} from '@univerjs/preset-sheets-conditional-formatting';
import { DataValidationModel } from '@univerjs/preset-sheets-data-validation';
import type { Grid } from './grid';
import { inside, unitId } from './inside';

export const inputRules = (grid: Grid, sheetId: string): readonly ISheetDataValidationRule[] =>
  inside(grid).get(DataValidationModel).getRules(unitId(grid), sheetId);

export const conditions = (grid: Grid, sheetId: string): readonly IConditionFormattingRule[] =>
  inside(grid).get(ConditionalFormattingRuleModel).getSubunitRules(unitId(grid), sheetId) ?? [];
