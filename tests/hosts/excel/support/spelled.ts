import { rowOf } from '../../../../src/catalogue';
import { lex, type Token } from '../../../../src/formula/lex';
import { blockAt, overlap } from './a1';
import type { Sheet } from './sheet';
import type { Ways } from './ways';

const IN_ROW = /^\[#This Row\],\[([^[\]]*)\]$/;
const PLAIN = /^[\p{L}\p{N}_]+$/u;

/** Before a function that gives a list an @ would leave the first value: Excel puts none before a formula that is written as a list's. */
const givesOne = (name: string): boolean =>
  name.startsWith('SWEEP.') && rowOf(name.slice('SWEEP.'.length))?.answers === 'one';

const own = (column: string): string => (PLAIN.test(column) ? `@${column}` : `@[${column}]`);

function spelledToken(token: Token, table: string | undefined, at: boolean): string {
  if (token.kind === 'columns') {
    const column = IN_ROW.exec(token.inside)?.[1];
    if (column === undefined) return token.raw;
    const isOwn = token.table?.toLowerCase() === table?.toLowerCase();
    return `${isOwn ? '' : (token.table ?? '')}[${own(column)}]`;
  }
  if (token.kind === 'call')
    return (
      (at && givesOne(token.name) ? '@' : '') +
      (token.raw.includes('_xl') ? token.raw : token.raw.toUpperCase())
    );
  if (token.kind === 'value' && typeof token.value === 'number' && /e/i.test(token.raw))
    return token.value.toLocaleString('en', { useGrouping: false, maximumFractionDigits: 20 });
  return token.raw;
}

/** A formula as Excel gives it back from a cell. */
export function spelled(formula: string, sheet: Sheet, at: string, spelling: Ways['spelling']): string {
  if (spelling === 'as written') return formula;
  const table = sheet.tables.find((one) => overlap(one.block, blockAt(at)));
  return lex(formula)
    .map((token) => spelledToken(token, table?.name, spelling === 'at'))
    .join('');
}
