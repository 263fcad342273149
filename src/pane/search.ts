import { NAMESPACE } from '../catalogue';
import { type AnyRow, type Arg, FAMILIES } from '../catalogue/types';

/** Where a word was found; the smaller, the better the function fits. */
const RANK = { nameStart: 0, name: 1, word: 2, gives: 3, anything: 4 } as const;
/** Short pieces are in the middle of many names by chance: ND in LIGHTSECOND. */
const SHORTEST_WITHIN_NAME = 3;

/** Small letters without accents, cut at everything that is neither letter nor figure. */
const pieces = (text: string): readonly string[] =>
  text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter(Boolean);

const argumentTexts = ({ name, about }: Arg): readonly string[] => [name, about];

/** The texts of a function that are searched, from the best place to the last. */
function places(row: AnyRow): readonly (readonly [number, readonly string[]])[] {
  const rest = [
    FAMILIES[row.family],
    ...(row.args as readonly Arg[]).flatMap(argumentTexts),
    row.formula,
    row.notes ?? '',
    row.caution ?? '',
    row.result.unit,
    row.result.title,
  ];
  return [
    [RANK.word, (row.words ?? []).flatMap(pieces)],
    [RANK.gives, pieces(row.gives)],
    [RANK.anything, rest.flatMap(pieces)],
  ];
}

function rank(row: AnyRow, wanted: string): number {
  const name = row.id.toLowerCase();
  if (name.startsWith(wanted)) return RANK.nameStart;
  if (wanted.length >= SHORTEST_WITHIN_NAME && name.includes(wanted)) return RANK.name;
  const found = places(row).find(([, words]) => words.some((word) => word.startsWith(wanted)));
  return found?.[0] ?? Infinity;
}

/**
 * The functions in which every word of the query begins a name or a word, the best first. A formula's start counts as
 * its name: =SWEEP.POPS( finds what begins with POPS. An empty query finds everything, in the catalogue's order.
 */
export function search(rows: readonly AnyRow[], query: string): readonly AnyRow[] {
  const typed = pieces(query);
  const wanted = typed[0] === NAMESPACE.toLowerCase() ? typed.slice(1) : typed;
  return rows
    .map((row) => ({ row, score: wanted.reduce((sum, word) => sum + rank(row, word), 0) }))
    .filter(({ score }) => score < Infinity)
    .sort((a, b) => a.score - b.score)
    .map(({ row }) => row);
}
