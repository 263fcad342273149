import { expect, test } from 'vitest';
import { address } from '../../../src/formula/address';
import { layRecordFile, layNextShot, recordFile, recordLights } from '../../../src/pane/records';
import { recordSaved } from '../../../src/pane/sentences';
import { blockPlace, layout, tableTop } from '../../../src/sheets/layout';
import type { TemplateTable } from '../../../src/sheets/template';
import { templateOf } from '../../sheets/support';
import { openExcel, sheetOf } from './support/laid';

const lights = layout(templateOf('shot-record')).tables.get('Record') as TemplateTable;
/** A cell of the lights, by its row below the headings. */
const cell = (row: number, name: string): string =>
  address({
    row: tableTop(lights) + row,
    column: blockPlace(lights).column + lights.columns.findIndex(({ id }) => id === name),
  });

test('a record is laid from the lights on set, for the next shot, and from its file', async () => {
  const { host, workbook } = openExcel();
  expect(await recordLights(host.sheets)).toHaveProperty('refused', expect.stringContaining('has lights to record')); // prettier-ignore
  expect(await layNextShot(host.sheets)).toHaveProperty('refused', expect.stringContaining('is a Shot record'));
  await host.insertSheet('lights-on-set', true);
  const held = Object.fromEntries(sheetOf(workbook, 'Lights on set').cells);
  const laid = await recordLights(host.sheets);
  expect('done' in laid && laid.done).toContain(
    'It has the lights of “Lights on set” as they are now, without links: type where they stand.',
  );
  expect(Object.fromEntries(sheetOf(workbook, 'Lights on set').cells)).toEqual(held);
  const record = sheetOf(workbook, 'Shot record');
  expect(['Light', 'Shows', 'Reading', 'Tenths', 'Most'].map((name) => record.cells.get(cell(2, name)))).toEqual([
    'fill', '8.5', 8, 9, 1200,
  ]); // prettier-ignore

  // Nobody knows what stands beside a label that was typed over.
  const label = [...record.cells].find(([, value]) => value === 'Camera y')?.[0] ?? '';
  record.cells.set(label, 'Kamera y');
  for (const wish of [recordFile, layNextShot])
    expect(await wish(host.sheets)).toHaveProperty('refused', expect.stringContaining('no label “Camera y” any more')); // prettier-ignore
  record.cells.set(label, 'Camera y');
  const shows = record.cells.get(cell(2, 'Shows')) ?? '';
  record.cells.set(cell(2, 'Shows'), '#REF!');
  for (const wish of [recordFile, layNextShot])
    expect(await wish(host.sheets)).toHaveProperty('refused', expect.stringContaining(`holds an error in ${cell(2, 'Shows')}, so that`)); // prettier-ignore
  record.cells.set(cell(2, 'Shows'), shows);

  const file = await recordFile(host.sheets);
  if ('refused' in file) throw new Error(file.refused);
  expect(file.name).toBe('Shot record.json');
  // A stranger's file may hold what looks like a formula.
  const text = file.text.replace('"Modifier": null', '"Modifier": "=1+1 box"');
  const given = { name: file.name, size: text.length, text: () => Promise.resolve(text) };
  const read = await layRecordFile(host.sheets, given);
  expect('done' in read && read.done).toContain('“Shot record (2)” is inserted.');
  const again = sheetOf(workbook, 'Shot record (2)');
  const typed = lights.columns.filter(({ formula }) => formula === undefined).map(({ id }) => id);
  for (const row of [1, 2, 6])
    for (const name of typed.filter((id) => id !== 'Modifier'))
      expect(again.cells.get(cell(row, name)) ?? '', `${name} ${row}`).toBe(record.cells.get(cell(row, name)) ?? ''); // prettier-ignore
  expect(again.cells.get(cell(1, 'Modifier'))).toBe('=1+1 box');

  // A column of one's own goes with no record, and that is said.
  expect(file.own).toEqual([]);
  const [table] = again.tables.filter(({ name }) => name.startsWith('Record'));
  if (!table) throw new Error('There are no lights.');
  const { row, column, columns } = table.block;
  table.block = { ...table.block, columns: columns + 1 };
  again.cells.set(address({ row, column: column + columns }), 'Flag');
  expect(await recordFile(host.sheets)).toHaveProperty('own', []);
  again.cells.set(address({ row: row + 2, column: column + columns }), 'black, left');
  expect(await recordFile(host.sheets)).toHaveProperty('own', ['Flag']);
  expect(recordSaved(file.name, ['Flag'])).toContain('Not in it: “Flag”, which only this sheet has.');

  const next = await layNextShot(host.sheets);
  expect('done' in next && next.done).toMatch(/“Shot record \(3\)” is inserted\..*without its readings: meter each light\. Not in it: “Flag”, which only this sheet has\./);
  const third = sheetOf(workbook, 'Shot record (3)');
  expect(['Light', 'Shows', 'Reading', 'Tenths'].map((name) => third.cells.get(cell(2, name)) ?? '')).toEqual([
    'fill', '8.5', '', '',
  ]);
}); // prettier-ignore

test('a file that is no record lays nothing', async () => {
  const { host, workbook } = openExcel();
  const before = workbook.sheets?.length;
  const file = (text: string, size = text.length) => ({
    name: 'a.json',
    size,
    text: () => Promise.resolve(text),
  });
  expect(await layRecordFile(host.sheets, undefined)).toHaveProperty('refused', 'No file was chosen. Nothing was changed.'); // prettier-ignore
  expect(await layRecordFile(host.sheets, file('{}', 1e7))).toHaveProperty('refused', 'This file has 10 MB, and a shot record less than one. Nothing was changed.'); // prettier-ignore
  expect(await layRecordFile(host.sheets, file('{'))).toHaveProperty(
    'refused',
    expect.stringContaining('damaged'),
  );
  const lost = { name: 'a', size: 1, text: () => Promise.reject(new Error('gone')) };
  expect(await layRecordFile(host.sheets, lost)).toHaveProperty('refused', expect.stringContaining('could not read')); // prettier-ignore
  expect(workbook.sheets?.length).toBe(before);
});
