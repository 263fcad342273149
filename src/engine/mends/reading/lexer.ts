/**
 * The library reads formulas letter by letter, and many of them otherwise than spreadsheets do: it stumbles over a - in front
 * of a name or a text, a sign in front of a brace, ^ behind %, two signs in a row, a space or a comma between references, the
 * names of a LET within a LET and a LAMBDA among them; makes spaces of line breaks in texts; and writes what a name stands
 * for into the formula without brackets, so that with Fee for =1+2 the formula =Fee*2 gives 5. Here formulas are read by a
 * grammar of ours, and handed on as the pieces of which the library makes its tree. It has no public place for that.
 *
 * For @univerjs/engine-formula 0.25.1.
 */
import {
  type IDefinedNamesService,
  type IFormulaCurrentConfigService,
  Lexer,
  type LexerNode,
} from '@univerjs/engine-formula';
import { placeOf } from '../../../formula/sheetPlace';
import { Builder, unreadable } from './build';
import { readExpression, Unreadable } from './grammar';

interface Inside {
  readonly _definedNamesService: IDefinedNamesService;
  readonly _formulaCurrentConfigService: IFormulaCurrentConfigService;
}

/** What a name of the workbook stands for; one of another sheet only behind that sheet's name. */
function nameText({ _definedNamesService: names, _formulaCurrentConfigService: config }: Inside) {
  const unitId = config.getExecuteUnitId() ?? '';
  return (name: string, before: string): string | undefined => {
    const found = names.getValueByName(unitId, name);
    if (!found) return undefined;
    const { localSheetId: of, formulaOrRefString: text } = found;
    const isOfAll = before === '' || of === undefined || of === ALL_SHEETS;
    return isOfAll || placeOf(before).sheets[0] === config.getSheetName(unitId, of) ? text : undefined;
  };
}
const ALL_SHEETS = 'AllDefaultWorkbook';

/** The pieces of a formula; of one that cannot be read, those of a formula that says so. */
function pieces(formula: string, inside: Inside): LexerNode {
  try {
    return new Builder(nameText(inside)).root(readExpression(formula));
  } catch (reason) {
    if (reason instanceof Unreadable) return unreadable(reason);
    throw reason;
  }
}

Lexer.prototype.treeBuilder = function (formula) {
  return pieces(formula, this as unknown as Inside);
};
