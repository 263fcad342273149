import { existsSync, writeFileSync } from 'node:fs';
import type { BookName } from '../../book/book';
import { fixedAddress } from '../../formula/address';
import { planAlone } from '../../sheets/makePlan';
import type { SheetName } from '../../sheets/plan';
import { hasPlaces } from '../../set/readSet';
import { inLines } from '../../set/sheetAsRead';
import { TEMPLATES } from '../../sheets/templates';
import { withValues } from '../../book/cells';
import { writeXlsx } from '../../xlsx/write';
import { nearest } from '../../formula/nearestNames';
import { either } from './sentences';
import { sheetValues } from './sheetValues';
import type { Terminal } from './terminal';

const USAGE = `Makes a sheet as an .xlsx file, with calculated values in it.

  npm run sheet -- pops-build out.xlsx             with the demo job in its inputs
  npm run sheet -- pops-build out.xlsx --empty     with empty inputs
  npm run sheet -- pops-build out.xlsx --letter   for paper of the size Letter
  npm run sheet -- pops-build out.xlsx --force     also where there is such a file already
  npm run sheet -- --list                          lists the sheets
`;
/**
 * A sheet has the picture of its set once somebody puts it there. One in pixels, in a file that is still to be typed into, would
 * be wrong with the first place that is typed.
 */
const NO_PICTURE =
  'The picture of the set is not in it: in a file it would not follow what is typed there. The pane draws it, under “Set”.';
const OPTIONS = ['--empty', '--force', '--letter', '--list'];

/** @returns the exit code: 0, 1 where the sheet could not be made, 2 where the command was not understood. */
export async function sheet(args: readonly string[], terminal: Terminal): Promise<number> {
  const options = args.filter((arg) => arg.startsWith('--'));
  const [name, path, ...more] = args.filter((arg) => !arg.startsWith('--'));
  const unknown = options.find((option) => !OPTIONS.includes(option));
  if (unknown) {
    terminal.complain(`There is no option ${unknown}; there are --empty, --force, --letter and --list.`);
    return 2;
  }
  if (options.includes('--list')) {
    terminal.say(list());
    return 0;
  }
  if (name === undefined || path === undefined || more.length > 0) {
    terminal.complain(USAGE);
    return 2;
  }
  const template = TEMPLATES.find(({ id }) => id === name.toLowerCase());
  if (!template) {
    terminal.complain(noSheet(name));
    return 1;
  }
  if (!path.toLowerCase().endsWith('.xlsx')) {
    terminal.complain(`The file must end in .xlsx, and ${path} does not.`);
    return 1;
  }
  if (existsSync(path) && !options.includes('--force')) {
    terminal.complain(`There is a file ${path} already: nothing was written. --force writes over it.`);
    return 1;
  }
  const filled = !options.includes('--empty');
  const { sheet: planned, start, names } = planAlone(template, filled);
  const made = withValues(planned, await sheetValues(planned));
  const book = { sheets: [{ ...made, names: names.map(inFile(made.name)) }], names: [] };
  const file = await writeXlsx(book, options.includes('--letter') ? 'Letter' : 'A4');
  try {
    writeFileSync(path, file);
  } catch (reason) {
    terminal.complain(`The file could not be written. ${(reason as Error).message}`);
    return 1;
  }
  const formulas = made.cells.filter(({ formula }) => formula !== undefined).length;
  const inputs = filled ? ' with the demo job in its inputs' : ' with empty inputs';
  terminal.say(
    `Wrote ${path}: the sheet "${made.name}"${start ? inputs : ''}, ${formulas} formulas with their values.`,
  );
  if (hasPlaces(inLines(made))) terminal.say(NO_PICTURE);
  return 0;
}

/** What a name of a form stands for, as a file says it. */
const inFile =
  (of: string) =>
  ({ name, ...at }: SheetName): BookName => ({
    name,
    formula: `='${of.replaceAll("'", "''")}'!${fixedAddress(at)}`,
  });

function noSheet(name: string): string {
  const near = nearest(
    name.toUpperCase(),
    TEMPLATES.map(({ id }) => id.toUpperCase()),
  ).map((id) => id.toLowerCase());
  const hint = near.length > 0 ? ` Did you mean ${either(near)}?` : '';
  return `There is no sheet ${name}.${hint} The sheets are:\n${list()}`;
}

function list(): string {
  const width = Math.max(...TEMPLATES.map(({ id }) => id.length));
  return TEMPLATES.map(({ id, answers }) => `  ${id.padEnd(width)}  ${answers}`).join('\n');
}
