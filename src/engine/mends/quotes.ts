/**
 * Where a formula is moved or filled the library takes it to pieces and puts them together again. Of two quotation marks that
 * stand for one it loses the second, so that ="6"" dish" becomes ="6" dish", and of a line break in a text it makes a space.
 * Both are put out of its sight in the meantime.
 *
 * For @univerjs/engine-formula 0.25.1.
 */
import { LexerTreeBuilder } from '@univerjs/engine-formula';
import { lex, type Token } from '../../formula/lex';

/** Signs that Unicode keeps from ever being letters, each in the place of one. */
const STANDS_FOR = [
  ['"', '\uFDD0'],
  ['\n', '\uFDD1'],
  ['\r', '\uFDD2'],
] as const;

const hidden = (text: string): string =>
  `"${STANDS_FOR.reduce((inside, [sign, other]) => inside.replaceAll(sign, other), text.slice(1, -1))}"`;
/** Texts stand by themselves and in lists; a quotation mark may be in a sheet's name as well. */
const withHidden = ({ kind, raw }: Token): string =>
  kind === 'value' || kind === 'list' ? raw.replace(/"(?:[^"]|"")*"/g, hidden) : raw;
const shown = (text: string): string =>
  STANDS_FOR.reduce((inside, [sign, other]) => inside.replaceAll(other, sign), text);

const { sequenceNodesBuilder } = LexerTreeBuilder.prototype;
LexerTreeBuilder.prototype.sequenceNodesBuilder = function (formula) {
  if (!/""|"[^"]*[\n\r]/.test(formula)) return sequenceNodesBuilder.call(this, formula);
  const without = lex(formula).map(withHidden).join('');
  return sequenceNodesBuilder
    .call(this, without)
    ?.map((piece) => (typeof piece === 'string' ? shown(piece) : { ...piece, token: shown(piece.token) }));
};
