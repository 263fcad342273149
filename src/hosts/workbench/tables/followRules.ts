import type { IMutationInfo, ISheetDataValidationRule } from '@univerjs/core';
import {
  DeleteConditionalRuleMutation,
  AddConditionalRuleMutation,
  type IConditionFormattingRule,
  SetConditionalRuleMutation,
} from '@univerjs/preset-sheets-conditional-formatting';
import { UpdateDataValidationMutation, UpdateRuleType } from '@univerjs/preset-sheets-data-validation';
import { type Effect, effectOf } from '../grid/effects';
import type { Grid } from '../grid/grid';
import { interceptors, unitId } from '../grid/inside';
import { conditions, inputRules } from '../grid/rules';
import { joined, type Mutations, NOTHING } from './newTableRows';
import { ruledAfter, withFormulas } from './ruleFormulas';

/** Spelt alike, parts in the same order. */
const isSame = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

function condition(at: object, rule: IConditionFormattingRule, isHere: boolean, effect: Effect): Mutations {
  const { cfId } = rule;
  const set = (changed: IConditionFormattingRule): IMutationInfo => ({
    id: SetConditionalRuleMutation.id,
    params: { ...at, cfId, rule: changed },
  });
  const before = structuredClone(rule);
  const ruled = ruledAfter(rule.ranges, isHere, effect);
  if (!ruled)
    return {
      redos: [{ id: DeleteConditionalRuleMutation.id, params: { ...at, cfId } }],
      undos: [{ id: AddConditionalRuleMutation.id, params: { ...at, rule: before } }],
    };
  const next = { ...before, ranges: [...ruled.ranges], rule: withFormulas(before.rule, ruled.reads) };
  return isSame(next, before) ? NOTHING : { redos: [set(next)], undos: [set(before)] };
}

/** The grid itself takes away a rule whose cells are gone, and moves the cells of the others, by one row too few or too many. */
function input(at: object, rule: ISheetDataValidationRule, isHere: boolean, effect: Effect): Mutations {
  const ruled = ruledAfter(rule.ranges, isHere, effect);
  if (!ruled) return NOTHING;
  const { uid, ranges, formula1, formula2 } = structuredClone(rule);
  const was = { ranges, formula1, formula2 };
  const now = { ...withFormulas({ formula1, formula2 }, ruled.reads), ranges: ruled.ranges };
  const isMoved = isHere && !isSame(ranges.flatMap(effect.byGrid), ranges);
  if (!isMoved && isSame({ ...was, ...now }, was)) return NOTHING;
  const set = (payload: unknown): IMutationInfo => ({
    id: UpdateDataValidationMutation.id,
    params: { ...at, ruleId: uid, payload: { type: UpdateRuleType.ALL, payload } },
  });
  return { redos: [set(now)], undos: [set(was)] };
}

/** Conditions and input rules of all sheets follow what comes in, goes away and moves, by their cells and in their formulas. */
export function followRules(grid: Grid): void {
  interceptors(grid).interceptCommand({
    // after the grid, which moves the cells of input rules
    priority: -1,
    getMutations(command) {
      const effect = effectOf(grid, command);
      const sheets = effect ? (grid.api.getActiveWorkbook()?.getSheets() ?? []) : [];
      if (!effect) return NOTHING;
      return joined(
        sheets.flatMap((sheet) => {
          const subUnitId = sheet.getSheetId();
          const at = { unitId: unitId(grid), subUnitId };
          const isHere = subUnitId === effect.sheetId;
          return [
            ...conditions(grid, subUnitId).map((rule) => condition(at, rule, isHere, effect)),
            ...inputRules(grid, subUnitId).map((rule) => input(at, rule, isHere, effect)),
          ];
        }),
      );
    },
  });
}
