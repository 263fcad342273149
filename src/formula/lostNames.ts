import { NAMESPACE, rowOf } from '../catalogue';

/** A workbook or a sheet before a name: 'C:\add-ins\[old.xlam]'!, [2]!, old.xlam! */
const PLACE = String.raw`(?:'(?:[^']|'')*'|\[[^[\]]*\][\p{L}\p{N}_.]*|[\p{L}\p{N}_.]+)!`;
/** What is no name: texts, quoted sheets, and columns of tables, where ' keeps a bracket from counting. */
const COLUMN = String.raw`(?:'.|[^[\]'])*`;
const OTHER = String.raw`"(?:[^"]|"")*"|'(?:[^']|'')*'|\[${COLUMN}(?:\[${COLUMN}\]${COLUMN})*\]`;
const NAME = String.raw`(?<![\p{L}\p{N}_.])(${PLACE})?(_xldudf_${NAMESPACE}_|${NAMESPACE}\.)([A-Z0-9]+)(?=\()`;
const PIECES = new RegExp(`${NAME}|${OTHER}`, 'giu');

/**
 * A formula with our functions under the names that they are known by, or undefined where none is lost.
 *
 * Where Excel opens a workbook without the add-in, it keeps a function as `_xldudf_SWEEP_STOPDIFF`, at times with the place in
 * front that it believes the function to come from, and does not always find back.
 */
export function withNamesMended(formula: string): string | undefined {
  if (!formula.startsWith('=')) return undefined;
  const mended = formula.replace(
    PIECES,
    (piece, place: string | undefined, lead: string | undefined, id: string) => {
      if (lead === undefined || !rowOf(id.toUpperCase())) return piece;
      const isOurs = place === undefined && lead.endsWith('.');
      return isOurs ? piece : `${NAMESPACE}.${id.toUpperCase()}`;
    },
  );
  return mended === formula ? undefined : mended;
}
