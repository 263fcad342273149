import { BooleanNumber } from '@univerjs/core';
import { FunctionType, type IFunctionInfo } from '@univerjs/engine-formula';
import { CATALOGUE } from '../catalogue';
import { PLAIN_FUNCTIONS, type PlainFamily } from '../catalogue/plain';
import type { Arg, Example, ExampleCell } from '../catalogue/types';
import { argumentHelp, cellText, functionName } from '../catalogue/words';

/** Our functions and the plain ones that we explain, for the autocompletion and argument help of the grid. */
export const descriptions = (): IFunctionInfo[] => [...ourDescriptions(), ...plainDescriptions()];

const truth = (is: boolean): BooleanNumber => (is ? BooleanNumber.TRUE : BooleanNumber.FALSE);

const ourDescriptions = (): IFunctionInfo[] =>
  CATALOGUE.map((row) => ({
    functionName: functionName(row),
    functionType: FunctionType.User,
    abstract: row.gives,
    description: [row.gives, row.formula, row.notes, row.caution].filter(Boolean).join(' '),
    functionParameter: (row.args as readonly Arg[]).map((arg, i) => ({
      name: arg.name,
      detail: argumentHelp(arg),
      example: exampleOf(row.examples, i),
      require: truth(!arg.optional),
      repeat: BooleanNumber.FALSE,
    })),
  }));

/** What the first example that gives this argument types for it. */
function exampleOf(examples: readonly Example[], index: number): string {
  const cell = examples.map(({ cells }) => cells[index]).find((each) => each !== undefined && each !== null);
  return cell === undefined ? '' : cellText(cell as ExampleCell);
}

/** Under which heading the grid lists a family. */
const HEADINGS: Readonly<Record<PlainFamily, FunctionType>> = {
  arithmetic: FunctionType.Math,
  rounding: FunctionType.Math,
  conditions: FunctionType.Logical,
  countsAndSums: FunctionType.Statistical,
  statistics: FunctionType.Statistical,
  text: FunctionType.Text,
  dates: FunctionType.Date,
  lookUp: FunctionType.Lookup,
  lists: FunctionType.Array,
  money: FunctionType.Financial,
};

const plainDescriptions = (): IFunctionInfo[] =>
  PLAIN_FUNCTIONS.map(({ name, family, gives, args }) => ({
    functionName: name,
    functionType: HEADINGS[family],
    abstract: gives,
    description: gives,
    functionParameter: args.map((arg) => ({
      name: arg.name,
      detail: arg.about,
      example: arg.example,
      require: truth(!arg.optional),
      repeat: truth(arg.repeats),
    })),
  }));
