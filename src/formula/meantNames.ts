import { CATALOGUE, NAMESPACE } from '../catalogue';
import { functionName } from '../catalogue/words';
import { functionsIn } from './calls';
import { lex } from './lex';
import { nearest } from './nearestNames';

/** Fewer letters stand for too many functions to guess one. */
const LEAST = 4;
const OUR_NAMES: ReadonlySet<string> = new Set(CATALOGUE.map(functionName));

/** What our names begin with, however somebody has it in mind. */
const BEGINS = new RegExp(`^${NAMESPACE}[._]?`);

/** What may be said of any formula that shows #NAME?: its own names may be known, and those of a cell that it reads not. */
const UNKNOWN = `This formula, or a cell that it reads, has a name that is not known here. Our functions begin with ${NAMESPACE} and a dot; the pane lists them.`;

/** Ours that a name is the end or the beginning of; with what ours begin with, those that it is like. */
function meantBy(name: string): readonly string[] {
  const part = name.replace(BEGINS, '');
  const whole = CATALOGUE.filter(({ id }) => id === part);
  if (whole.length > 0) return whole.map(functionName);
  if (part.length < LEAST) return [];
  const begun = CATALOGUE.filter(({ id }) => id.startsWith(part)).map(functionName);
  return begun.length > 0 || part === name ? begun : nearest(part, [...OUR_NAMES]);
}

/**
 * Says of a formula that shows #NAME? which of our functions may be meant, or what our names are like. STOPDIFF(8,11) is typed
 * without what they begin with, popsfort is unfinished, and STPODIFF a slip.
 */
export function sayMeant(formula: string): string {
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
  return UNKNOWN;
}
