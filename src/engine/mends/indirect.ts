/**
 * INDIRECT in 0.25.1 makes a reference of every text that has a colon, of "H1:" one without an end, and the whole calculation
 * hangs on it; and one to a sheet that is not there holds nothing. Microsoft's help: a text that is no reference gives #REF!.
 * What is one our grammar knows.
 */
import { BaseReferenceObject, type BaseValueObject, ErrorType } from '@univerjs/engine-formula';
import { lex } from '../../formula/lex';
import { toNumber, toText } from './coerce';
import { failed, isError, type Mended, native, single } from './nativeFunction';

const REFERENCES: readonly string[] = ['cells', 'lines', 'columns', 'name'];

function isReference(text: string): boolean {
  const [token, more] = lex(text.trim());
  return token !== undefined && more === undefined && REFERENCES.includes(token.kind) && !text.includes('#');
}

/** R1C1 and R[1]C[-2]:R5C1, the other spelling that the second argument asks for. */
const IN_NUMBERS =
  /^(?:.*!)?R(?:\d+|\[-?\d+\])?C(?:\d+|\[-?\d+\])?(?::R(?:\d+|\[-?\d+\])?C(?:\d+|\[-?\d+\])?)?$/i;

type Found = BaseValueObject | BaseReferenceObject;
const Native = native('INDIRECT') as unknown as new (name: string) => InstanceType<
  ReturnType<typeof native>
> & {
  _setDefault(found: BaseReferenceObject): Found;
};

/** @param lookFrom - the sheet that a text without one means in a formula on a sheet, both by their ids */
export const indirect = (lookFrom: (sheetId: string) => string): Mended => [
  class extends Native {
    override needsSheetsInfo = true;

    override calculate(...values: BaseValueObject[]) {
      const [text, spelling] = values.map(single);
      if (!text || text.isError() || text.isArray()) return super.calculate(...values);
      const inLetters = spelling ? toNumber(spelling) : 1;
      if (isError(inLetters)) return inLetters;
      const typed = toText(text);
      const isOne = inLetters === 0 ? IN_NUMBERS.test(typed.trim()) : isReference(typed);
      return isOne ? super.calculate(...values) : failed(ErrorType.REF);
    }

    override _setDefault(found: BaseReferenceObject): Found {
      const set = super._setDefault(found);
      if (!(set instanceof BaseReferenceObject)) return set;
      const sheet = set.getForcedSheetName();
      const { sheetNameMap } = this.getSheetsInfo();
      if (sheet !== '' && !Object.values(sheetNameMap).includes(sheet)) return failed(ErrorType.REF);
      set.setDefaultSheetId(lookFrom(this.subUnitId ?? ''));
      return set;
    }
  },
  'INDIRECT',
];

export const INDIRECT: readonly Mended[] = [indirect((sheetId) => sheetId)];
