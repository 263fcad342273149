import type { Template, TemplateValue } from '../template';
import { nameTwice } from './nameTwice';
import { isOfVersion, lightColumns, setCells, type ShotRecord, type Values } from './shotRecord';

/** What is written into a file of a record, beside what was typed: `record.schema.json` describes it for others. */
const KIND = 'shot-record';
export const VERSION = 2;
const FIRST = 1;
/** Characters and lights above which nobody has typed a file. */
export const LONGEST = 1_000_000;
const MOST_LIGHTS = 200;
/** As much as a cell of a spreadsheet takes. */
const LONGEST_TEXT = 32_767;

export type Refused = { readonly refused: string };
const refuse = (why: string): Refused => ({ refused: `${why} Nothing was changed.` });

/** What a decoder puts in the place of bytes that are no letter: no file has it, since one that was typed is written in its number. */
const UNREAD = '\ufffd';

/** A record as the text of a file: what was typed, and no time, name or place of its own. */
export const writeRecord = ({ set, lights }: ShotRecord): string =>
  `${JSON.stringify({ sweeptable: KIND, version: VERSION, set, lights }, null, 2)}\n`.replaceAll(
    UNREAD,
    String.raw`\ufffd`,
  );

type Json = Readonly<Record<string, unknown>>;
const isObject = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const isValue = (value: unknown): value is TemplateValue =>
  value === null ||
  (typeof value === 'number' && Number.isFinite(value)) ||
  (typeof value === 'string' && value.trim() !== '' && value.length <= LONGEST_TEXT);

/** What is wrong with some values by their names; undefined where nothing is. */
function valueFault(values: unknown, names: readonly string[], where: string): string | undefined {
  if (!isObject(values)) return `${where} is no list of values.`;
  const stranger = Object.keys(values).find((name) => !names.includes(name));
  if (stranger !== undefined)
    return `${where} has “${stranger.slice(0, 40)}”, which this Sweeptable does not know.`;
  const bad = Object.entries(values).find(([, value]) => !isValue(value));
  return bad && `“${bad[0]}” of ${where} is neither a number nor a text.`;
}

function versionFault({ sweeptable, version }: Json): string | undefined {
  if (sweeptable !== KIND || typeof version !== 'number') return 'This file is no shot record of Sweeptable.';
  if (version > VERSION)
    return `This record was written by a newer Sweeptable (version ${version} of the file, here ${VERSION}). Update, then read it again.`;
  if (version < FIRST || !Number.isInteger(version))
    return `This record is of version ${version}, which no Sweeptable has written.`;
  return undefined;
}

const parsed = (text: string): unknown => {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
};

const filled = (values: Values, names: readonly string[]): Values =>
  Object.fromEntries(names.map((name) => [name, values[name] ?? null]));

function recordFault(file: Json, template: Template): string | undefined {
  const stranger = Object.keys(file).find((name) => !['sweeptable', 'version', 'set', 'lights'].includes(name));
  if (stranger !== undefined) return `The file has “${stranger.slice(0, 40)}”, which this Sweeptable does not know.`;
  const { set, lights } = file;
  if (!Array.isArray(lights)) return 'The file is damaged: it has no list of lights.';
  if (lights.length > MOST_LIGHTS) return `The file has ${lights.length} lights, and a record no more than ${MOST_LIGHTS}.`;
  const isKnown = isOfVersion(Number(file['version']));
  const columns = lightColumns(template).filter(isKnown);
  return (
    valueFault(set, setCells(template).filter(isKnown), 'the set') ??
    lights.flatMap((light, i) => valueFault(light, columns, `light ${i + 1}`) ?? [])[0]
  );
} // prettier-ignore

/**
 * Reads the text of a file, of this version or an older one: what that did not know is blank. Texts stay texts, whatever they begin with.
 *
 * @param template - the Shot record, whose cells and columns a file may name.
 */
export function readRecord(text: string, template: Template): ShotRecord | Refused {
  if (text.length > LONGEST)
    return refuse(`This file has ${Math.round(text.length / LONGEST)} MB, and a shot record less than one.`);
  if (text.includes(UNREAD))
    return refuse(
      'Some letters of this file cannot be read: an editor has saved it another way. Save it as UTF-8.',
    );
  // some editors put a mark before all they save
  const file = parsed(text.replace(/^\ufeff/, ''));
  if (file === undefined) return refuse('This file is damaged, or no shot record: it cannot be read.');
  if (!isObject(file)) return refuse('This file is no shot record of Sweeptable.');
  const fault = versionFault(file) ?? recordFault(file, template);
  if (fault !== undefined) return refuse(fault);
  const twice = nameTwice(text);
  if (twice !== undefined)
    return refuse(
      `“${twice.slice(0, 40)}” stands there twice in one place, and nobody knows which of the two counts.`,
    );
  const { set, lights } = file as { readonly set: Values; readonly lights: readonly Values[] };
  return {
    set: filled(set, setCells(template)),
    lights: lights.map((light) => filled(light, lightColumns(template))),
  };
}
