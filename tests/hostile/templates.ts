import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { MOST_COLUMNS, MOST_ROWS } from '../../src/formula/areaText';
import { makePlan } from '../../src/sheets/makePlan';
import { drawnCharts } from '../../src/book/chart';
import type { Area } from '../../src/formula/area';
import type { BookSheet } from '../../src/book/book';
import type { Template } from '../../src/sheets/template';
import { text as hostileText } from './cells';
import { Draws, seedFor } from './draws';
import { HANGS, type Report, stopwatch } from './report';

const { FOLDER, readTemplate } = createRequire(import.meta.url)('../../src/build/templates.cjs') as {
  FOLDER: string;
  readTemplate: ReadTemplate;
};
/** Throws an error with a line for each fault. */
export type ReadTemplate = (file: string, text: string) => Template;
export type MakePlan = typeof makePlan;

type Json = null | boolean | number | string | Json[] | { [name: string]: Json };
type Place = readonly (string | number)[];

const files = readdirSync(FOLDER)
  .filter((file) => file.endsWith('.json') && file !== 'schema.json')
  .sort()
  .map((file): readonly [string, string] => [file, readFileSync(join(FOLDER, file), 'utf8')]);

/** The place of every value of a template. */
function places(value: Json, at: Place = []): Place[] {
  if (typeof value !== 'object' || value === null) return [at];
  const inside = Array.isArray(value) ? [...value.entries()] : Object.entries(value);
  return [at, ...inside.flatMap(([name, inner]) => places(inner, [...at, name]))];
}
const valueAt = (root: Json, at: Place): Json =>
  at.reduce<Json>((value, name) => (value as Record<string | number, Json>)[name] as Json, root);

const OTHERS: readonly Json[] = [null, true, -1, 0, 0.5, 1e308, 1e21, 9_999_999, '', 'x', [], [[]], [null], {}, { kind: 'form' }, { '__proto__x': 1 }]; // prettier-ignore
const SIGNS = ['{', '}', '[', ']', '(', ')', '"', ',', ';', ':', '=', '+', '@', '#', '!', '|', '\n', '\u2028', '\ud800', '\0', '{1;2}', '[@', 'SWEEP.', '1e999', 'A1', 'constructor']; // prettier-ignore

/** Ids, names of functions and addresses that another place of the template has. */
const pieces = (text: string): string[] => text.match(/[A-Za-z][\w.]*|\d+|[^\w\s]/g) ?? [''];

function otherText(draws: Draws, text: string, all: readonly string[]): string {
  const cut = draws.whole(0, text.length);
  const way = draws.share();
  if (way < 0.2) return text.slice(0, cut) + draws.pick(SIGNS) + text.slice(cut);
  if (way < 0.35) return text.slice(0, cut) + text.slice(cut + draws.whole(1, 3));
  if (way < 0.7) return text.replace(draws.pick(pieces(text)), () => draws.pick(pieces(draws.pick(all))));
  if (way < 0.85) return draws.pick(all);
  if (way < 0.9) return text.repeat(draws.whole(2, 40));
  return hostileText(draws);
}

/** One value of a template changed, taken out, doubled, or replaced by another one's. */
function damage(draws: Draws, template: Json): Json {
  const all = places(template).filter((at) => at.length > 0);
  const texts = all.map((at) => valueAt(template, at)).filter((value) => typeof value === 'string');
  const at = draws.pick(all);
  const [parent, name] = [valueAt(template, at.slice(0, -1)), at.at(-1) as string | number];
  const value = valueAt(template, at);
  const put = (other: Json): void => void ((parent as Record<string | number, Json>)[name] = other);
  const way = draws.share();
  if (typeof value === 'string' && way < 0.6) put(otherText(draws, value, texts));
  else if (typeof value === 'number' && way < 0.5)
    put(draws.pick([value + 1, -value, value * 1e6, value / 3, 0]));
  else if (way < 0.75) {
    if (Array.isArray(parent)) parent.splice(name as number, 1);
    else delete (parent as Record<string, Json>)[name];
  } else if (way < 0.85 && Array.isArray(parent))
    parent.splice(draws.whole(0, parent.length), 0, ...draws.times(draws.pick([1, 1, 60]), () => structuredClone(value)));
  else if (way < 0.93) put(structuredClone(valueAt(template, draws.pick(all))));
  else put(structuredClone(draws.pick(OTHERS)));
  return template;
} // prettier-ignore

/** A template's text with random damage: among its values, or among its letters. */
function damaged(draws: Draws): { readonly file: string; readonly text: string } {
  const [file, whole] = draws.pick(files);
  if (draws.isSo(0.05)) return { file, text: whole.slice(0, draws.whole(0, whole.length)) };
  let template = JSON.parse(whole) as Json;
  for (let times = draws.pick([1, 1, 1, 2, 4]); times > 0; times--) template = damage(draws, template);
  return { file, text: JSON.stringify(template) };
}

const isCount = (x: number, most: number): boolean => Number.isInteger(x) && x >= 0 && x <= most;
const areaFault = ({ row, column, rows, columns }: Area): boolean =>
  !isCount(row, MOST_ROWS) || !isCount(column, MOST_COLUMNS) || rows < 1 || columns < 1 ||
  !isCount(row + rows, MOST_ROWS) || !isCount(column + columns, MOST_COLUMNS); // prettier-ignore

/** What no host can lay of a plan. */
export function planFault(plan: BookSheet): string | undefined {
  const areas = [...plan.merges, ...plan.tables.map(({ area }) => area), ...[...plan.rules, ...plan.conditions].flatMap((x) => x.areas)];
  const charts = drawnCharts(plan).flatMap(({ x, place, series }) => [x, place, ...series.flatMap((s) => [s.x, s.values])]);
  const outside = [...areas, ...charts, ...(plan.page.area ? [plan.page.area] : [])].find(areaFault);
  if (outside) return `an area off the sheet: ${JSON.stringify(outside)}`;
  const taken = new Set<string>();
  for (const { row, column, formula, value } of plan.cells) {
    if (areaFault({ row, column, rows: 1, columns: 1 })) return `a cell off the sheet: ${row}, ${column}`;
    if (taken.has(`${row},${column}`)) return `two cells in one place: ${row}, ${column}`;
    taken.add(`${row},${column}`);
    if (formula !== undefined && !/^=./s.test(formula)) return `a formula that is none: ${formula}`;
    if (formula !== undefined && /\bundefined\b|\bNaN\b/.test(formula)) return `a formula of nothing: ${formula}`;
    if (typeof value === 'number' && !Number.isFinite(value)) return `${value} in a cell`;
  }
  return undefined;
} // prettier-ignore

/** Lines of a refusal say file, place and reason. */
const isRefusal = (error: unknown, file: string): boolean =>
  error instanceof Error &&
  error.constructor === Error &&
  error.message.split('\n').every((line) => line.startsWith(`${file}: `) && /^[^:]+: [^:]+: \S/.test(line));

export interface TemplateTrial {
  readonly count: number;
  readonly seed: number;
  readonly read?: ReadTemplate;
  readonly plan?: MakePlan;
}

/** So many templates with random damage: each is refused in words, or makes plans that can be laid. */
export function hostileTemplates({ count, seed, ...own }: TemplateTrial, report: Report): void {
  const { read = readTemplate, plan = makePlan } = own;
  for (let n = 0; n < count; n++) {
    report.begins(`--seed ${seed + n} --only templates 1`);
    const { file, text } = damaged(new Draws(seedFor(seed + n, 'templates')));
    const worked = stopwatch();
    const what = tryTemplate(file, text, read, plan, report);
    const seconds = worked();
    report.slowest(seconds, file);
    const fault = seconds > HANGS ? `took ${seconds.toFixed(1)} s` : what;
    if (fault !== undefined) report.escaped({ what: fault, name: 'templates', seed: seed + n, given: text });
  }
}

function tryTemplate(
  file: string,
  text: string,
  read: ReadTemplate,
  plan: MakePlan,
  report: Report,
): string | undefined {
  let template: Template;
  try {
    template = read(file, text);
  } catch (error) {
    if (!isRefusal(error, file)) return `was refused without file, place and reason: ${String(error)}`;
    report.answered(false);
    return undefined;
  }
  report.answered(true);
  try {
    for (const filled of [true, false]) {
      const made = plan(template, { filled, sheets: [template.name], tables: [], names: [] });
      const fault = planFault(made.sheet);
      if (fault !== undefined) return `was taken, and its plan has ${fault}`;
    }
  } catch (error) {
    return `was taken, and its plan threw ${String(error)}`;
  }
  return undefined;
}
