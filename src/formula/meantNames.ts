import { CATALOGUE } from '../catalogue';
import { functionName } from '../catalogue/words';
import { functionsIn } from './calls';
import { lex } from './lex';
import { isOurs, OURS } from './names';

/** Fewer letters stand for too many functions to guess one. */
const LEAST = 4;
const OUR_NAMES: ReadonlySet<string> = new Set(CATALOGUE.map(functionName));

/** Ours that a name is the end or the beginning of; nothing where these are none or many. */
function meantBy(name: string): readonly string[] {
  const part = isOurs(name) ? name.slice(OURS.length) : name;
  const whole = CATALOGUE.filter(({ id }) => id === part);
  if (whole.length > 0) return whole.map(functionName);
  return part.length < LEAST ? [] : CATALOGUE.filter(({ id }) => id.startsWith(part)).map(functionName);
}

/**
 * Says of a formula with a name that nobody knows which of our functions may be meant; undefined where none is.
 * STOPDIFF(8,11) is typed without what our names begin with, popsfort is unfinished.
 */
export function sayMeant(formula: string): string | undefined {
  const tokens = lex(formula);
  const names = tokens.flatMap((token) => (token.kind === 'name' ? [token.name.toUpperCase()] : []));
  for (const name of [...functionsIn(tokens), ...names]) {
    if (OUR_NAMES.has(name) && !names.includes(name)) continue;
    const meant = meantBy(name);
    if (meant.length === 0) continue;
    const typed = OUR_NAMES.has(name)
      ? `${name} needs its arguments in brackets`
      : `There is no ${name} here`;
    return `${typed}. Did you mean ${meant.map((each) => `${each}(…)`).join(' or ')}?`;
  }
  return undefined;
}
