import { hasLights, recordFromPlan } from '../sheets/shotRecord/fromPlan';
import { LONGEST, readRecord, writeRecord } from '../sheets/shotRecord/recordFile';
import {
  errorsIn,
  isRecord,
  lostLabels,
  nextShot,
  ownColumns,
  recordIn,
  SHOT_RECORD,
  withRecord,
} from '../sheets/shotRecord/shotRecord';
import type { NamedSheet } from '../sheets/sheetRead';
import type { Template } from '../sheets/template';
import { templateToLay } from '../sheets/templateToLay';
import type { Outcome, SheetHost } from './host';
import {
  errorsTyped,
  FILE_UNREAD,
  labelsLost,
  NO_FILE,
  NO_LIGHTS,
  NO_RECORD,
  nextFrom,
  noSheet,
  recordFrom,
  recordRead,
  recordTooLarge,
} from './sentences';

/** What was done, with a sentence more. */
const saying = (outcome: Outcome, more: string): Outcome =>
  'done' in outcome ? { ...outcome, done: `${outcome.done} ${more}` } : outcome;

/** Goes on with the template of a record, where it arrives. */
async function withTemplate<T>(
  use: (template: Template) => Promise<T>,
): Promise<T | { readonly refused: string }> {
  const template = await templateToLay(SHOT_RECORD);
  if (!template) return noSheet(SHOT_RECORD);
  return 'refused' in template ? template : use(template);
}

/** Lays a record of the lights of a plan, as values of the day. */
export const recordLights = (host: SheetHost): Promise<Outcome> =>
  withTemplate(async (template) => {
    const from = await host.read(hasLights);
    if (!from) return NO_LIGHTS;
    if ('refused' in from) return from;
    const { record, unmetered } = recordFromPlan(from);
    return saying(await host.lay(withRecord(template, record)), recordFrom(from.name, unmetered));
  });

/** Goes on with the record in view, or else the first. */
const withRecordHere = <T>(host: SheetHost, use: (template: Template, from: NamedSheet) => Promise<T>) =>
  withTemplate(async (template) => {
    const from = await host.read(isRecord);
    if (!from) return NO_RECORD;
    if ('refused' in from) return from;
    const lost = lostLabels(template, from);
    if (lost.length > 0) return labelsLost(from.name, lost);
    const errors = errorsIn(template, from);
    return errors.length > 0 ? errorsTyped(from.name, errors) : use(template, from);
  });

/** Lays the same set for another shot, without its readings. */
export const layNextShot = (host: SheetHost): Promise<Outcome> =>
  withRecordHere(host, async (template, from) =>
    saying(
      await host.lay(withRecord(template, nextShot(recordIn(template, from)))),
      nextFrom(from.name, ownColumns(template, from)),
    ),
  );

/** A file to save, and columns of the sheet that are not in it. */
interface RecordFile {
  readonly name: string;
  readonly text: string;
  readonly own: readonly string[];
}

/** A record as a file. */
export const recordFile = (host: SheetHost): Promise<RecordFile | { readonly refused: string }> =>
  withRecordHere(host, (template, from) => {
    const text = writeRecord(recordIn(template, from));
    // What could not be read again is not written either.
    const again = readRecord(text, template);
    return Promise.resolve(
      'refused' in again ? again : { name: `${from.name}.json`, text, own: ownColumns(template, from) },
    );
  });

/** Lays the record of a file as a new sheet. */
export async function layRecordFile(
  host: SheetHost,
  file: Pick<File, 'name' | 'size' | 'text'> | undefined,
): Promise<Outcome> {
  if (!file) return NO_FILE;
  // A file of many megabytes is not even read: it would stop the page.
  if (file.size > 4 * LONGEST) return recordTooLarge(Math.round(file.size / 1e6));
  return withTemplate(async (template) => {
    const text = await file.text().catch(() => undefined);
    if (text === undefined) return FILE_UNREAD;
    const record = readRecord(text, template);
    if ('refused' in record) return record;
    return saying(await host.lay(withRecord(template, record)), recordRead(file.name));
  });
}
