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

/** More names than these are no guess. */
const MOST = 3;
const OURS_ARE = `Our functions begin with ${NAMESPACE} and a dot; the pane lists them.`;
/** What may be said of any formula that shows #NAME?: its own names may be known, and those of a cell that it reads not. */
const UNKNOWN = `This formula, or a cell that it reads, has a name that is not known here. ${OURS_ARE}`;

/** Ours that a name is the end or the beginning of; with what ours begin with, those that it is like. */
function meantBy(name: string): readonly string[] {
  const part = name.replace(BEGINS, '');
  const afterDot = name.slice(name.lastIndexOf('.') + 1);
  const whole = CATALOGUE.filter(({ id }) => id === part || id === afterDot);
  if (whole.length > 0) return whole.map(functionName);
  if (part.length < LEAST) return [];
  const begun = CATALOGUE.filter(({ id }) => id.startsWith(part)).map(functionName);
  return begun.length > 0 || part === name ? begun : nearest(part, [...OUR_NAMES]);
}

const asked = (names: readonly string[]): string =>
  `Did you mean ${names.map((each) => `${each}(…)`).join(' or ')}?`;

function guess(names: readonly string[]): string {
  if (names.length <= MOST) return asked(names);
  const [first = ''] = names;
  return `${names.length} of our functions begin like that, ${first}(…) for one; the pane lists them.`;
}

/** Says of a function that is in no list what it may be a slip for. */
function sayUnlisted(name: string, listed: ReadonlySet<string>): string {
  const near = name.length < LEAST || BEGINS.test(name) ? [] : nearest(name, [...listed]);
  return `There is no ${name} here. ${near.length > 0 ? asked(near) : OURS_ARE}`;
}

/**
 * Says of a formula that shows #NAME? which function may be meant, or what our names are like. STOPDIFF(8,11) is typed
 * without what they begin with, popsfort is unfinished, and STPODIFF a slip.
 *
 * @param others - the functions that may be called besides ours, in capitals; none where they are not known
 */
export function sayMeant(formula: string, others: readonly string[] = []): string {
  const tokens = lex(formula);
  const listed = new Set(others);
  const names = tokens.flatMap((token) => (token.kind === 'name' ? [token.name.toUpperCase()] : []));
  const called = functionsIn(tokens);
  for (const name of [...called, ...names]) {
    if (listed.has(name) || (OUR_NAMES.has(name) && !names.includes(name))) continue;
    const meant = meantBy(name);
    if (meant.length === 0) continue;
    const typed = OUR_NAMES.has(name)
      ? `${name} needs its arguments in brackets`
      : `There is no ${name} here`;
    return `${typed}. ${guess(meant)}`;
  }
  const unlisted = called.find((name) => !listed.has(name) && !OUR_NAMES.has(name));
  return unlisted !== undefined && others.length > 0 ? sayUnlisted(unlisted, listed) : UNKNOWN;
}
