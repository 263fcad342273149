import { expect, test } from 'vitest';
import type { EngineValue } from '../../src/engine/headless';
import type { Place } from '../../src/formula/address';
import { isCellError } from '../../src/formula/errors';
import { blockPlace, layout, tableTop } from '../../src/sheets/layout';
import type { Template } from '../../src/sheets/template';
import { FULL } from '../full';
import { templateOf } from './support';
import type { Slip } from './tired/mishaps';
import { opened } from './tired/opened';

/**
 * What somebody types who is tired, and what the sheet says of it: a cell, right of it the words, or the cell of a row. Each
 * was read in silence as something that nobody means, or ended in an error.
 */
type Misread = readonly [typed: Readonly<Record<string, Slip>>, where: string, says: EngineValue | RegExp];

const SHEETS: Readonly<Record<string, readonly Misread[]>> = {
  'pops-build': [
    // A camera shows 60 and means 1/60.
    [{ ambientTime: '60' }, 'beside ambientTime', '! read as 60 s: a fraction is typed 1/60'],
    [{ ambientTime: '60 s' }, 'beside ambientTime', 'the shutter time set on the meter'],
    [{ ambientTime: '1/60' }, 'beside ambientTime', 'the shutter time set on the meter'],
    // An ISO in the place of an f-number: a meter ends at f/128 and 9 tenths, f/175.
    [{ reading: 400 }, 'beside pops', '! the reading of one pop cannot be right'],
    [{ ambient: 200 }, 'beside pops', '! the ambient reading cannot be right'],
    [{ target: 800 }, 'beside pops', '! the lens setting cannot be right'],
    // A filter of factor 8 is 3 stops, one of density 0.9 is 2.99.
    [{ filters: 8 }, 'beside filters', '! read as 8 stops: a factor is typed 8x'],
    [{ filters: '0,9' }, 'beside filters', '! read as 0.9 stop; a density is ND 0.9'],
    [{ filters: '-4' }, 'beside filters', '! filters take light: no stops below 0'],
    [{ filters: 'ND 0.9' }, 'beside filters', /^stops, such as/],
    [{ filters: '16x' }, 'beside filters', /^stops, such as/],
    [{ filters: '4 stops' }, 'beside filters', /^stops, such as/],
    [{ filters: 1.5 }, 'beside filters', /^stops, such as/],
    [{ filters: '100 stops' }, 'beside pops', '! what filters take cannot be right'],
    // A lens of 12 mm at 150 mm pictures 138/12 = 11.5 times.
    [{ focal: 12 }, 'beside draw', '! pictured 11.5 times its size?'],
    [{ recycle: 1300 }, 'beside pops', '! recycle time or pause cannot be right'],
    // The small figure and the large one: a meter shows that is no full stop.
    [{ reading: 9, readingTenths: 8 }, 'beside reading', /^! read as f\/11 \+0\.1: that is no full stop$/],
  ],
  'depth-options': [
    [{ reading: 400 }, 'beside stackFlashes', '! the reading of one pop cannot be right'],
    [{ filters: '8' }, 'beside filters', '! read as 8 stops: a factor is typed 8x'],
    [{ filters: '30 stops' }, 'beside stackFlashes', '! what filters take cannot be right'],
    [{ filters: '-4' }, 'beside filters', '! filters take light: no stops below 0'],
    [{ distance: 2000 }, 'beside distance', '! unused: the draw counts'],
    [{ pitch: 0.00376 }, 'beside pitch', '! a number of µm, from 0.1 to 100'],
    [{ magnification: 'abc' }, 'beside frame', '! the magnification cannot be right'],
    [{ focal: 12 }, 'beside draw', '! pictured 11.5 times its size?'],
    [{ recycle: 1300 }, 'beside stackTime', '! recycle time or pause cannot be right'],
    [{ reading: 9, readingTenths: 8 }, 'beside reading', /that is no full stop$/],
  ],
  'freeze-check': [
    [{ delay: '1.2' }, 'beside shutter', '! type the delay with its unit, such as 1.2 ms'],
    [{ delay: 1.2 }, 'shutter', ''],
    [{ delay: '1.2 s' }, 'shutter', '1.3 s'],
    [{ aperture: 160 }, 'must', 'above f/128'],
    [{ filters: 8 }, 'must', 'above f/128'],
    [{ filters: 8 }, 'beside filters', '! read as 8 stops: a factor is typed 8x'],
    [{ filters: '30 stops' }, 'beside must', '! what filters take cannot be right'],
    [{ filters: '-4' }, 'beside filters', '! filters take light: no stops below 0'],
    [{ focal: 12 }, 'beside draw', '! pictured 11.5 times its size?'],
    // Half power, and what a head shows in stops, where Ws are asked for.
    [{ 'FreezeHeads[Power] 1': 0.5 }, 'FreezeHeads[What to do] 1', 'its power, in Ws, is below its least'],
    [{ 'FreezeHeads[Power] 2': 7.3 }, 'FreezeHeads[What to do] 2', 'its power, in Ws, is below its least'],
    [
      { 'FreezeHeads[Power] 1': 0.1, 'FreezeHeads[Least power] 1': null },
      'FreezeHeads[What to do] 1',
      'its power, in Ws, is below its least',
    ],
    [{ 'FreezeHeads[Reading] 1': 400 }, 'FreezeHeads[What to do] 1', 'its reading cannot be right'],
    [
      { 'FreezeHeads[Reading] 1': 9, 'FreezeHeads[Tenths] 1': 8 },
      'FreezeHeads[What to do] 1',
      'its reading: full stop, then tenths beside it',
    ],
    [{ 'FreezeHeads[Head] 2': 'ALDER 600' }, 'FreezeHeads[What to do] 1', /; named twice$/],
    // What is left of a row is no empty row.
    [
      Object.fromEntries(
        ['Head', 'Power', 'Reading', 'Full power', 'Energy 1', 'Flash 1'].map((c) => [
          `FreezeHeads[${c}] 2`,
          null,
        ]),
      ),
      'FreezeHeads[What to do] 2',
      'name the head',
    ],
  ],
  'flash-trace': [
    [{ shutter: '250' }, 'beside shutter', '! read as 250 s: a fraction is typed 1/250'],
    [{ shutter: 500 }, 'beside shutter', '! read as 500 s: a fraction is typed 1/250'],
    [{ shutter: '1 s' }, 'beside shutter', 'as marked on lens or camera'],
    [{ delay: 1.2 }, 'beside needed', '! type the delay with its unit, such as 1.2 ms'],
    [{ delay: '1.2' }, 'needed', ''],
    [{ 'Shutters[Shutter] 3': null }, 'Shutters[Lost] 3', ''],
  ],
  'lights-on-set': [
    [{ filter: '8' }, 'beside filter', '! read as 8 stops: a factor is typed 8x'],
    [{ filter: '-4' }, 'beside filter', '! filters take light: no stops below 0'],
    [{ focal: 12 }, 'beside draw', '! pictured 11.5 times its size?'],
    [{ 'Lights[Part] 2': 'key' }, 'beside ratio', '! stops count from the first of the keys'],
    // A share where Ws are asked for: 1/64 of full power.
    [{ 'Lights[Least] 1': 0.015625 }, 'Lights[Lacks] 1', 'least'],
    [{ 'Lights[Reading] 2': 9, 'Lights[Tenths] 2': 8 }, 'Lights[Lacks] 2', 'reading'],
  ],
  'pops-plan': [[{ filter: '-4' }, 'beside filter', '! filters take light: no stops below 0']],
  'shot-record': [
    // What filters take is typed as what they take: a loss of 4 stops is 4.
    [{ filters: '-4' }, 'beside aperture', '! filters: below 0?'],
    [{ filters: '-1/3' }, 'beside aperture', '! filters: below 0?'],
    [{ filters: '0' }, 'beside aperture', ''],
    [{ filters: null }, 'beside aperture', ''],
    [{ filters: 'ND 0.9' }, 'beside aperture', ''],
    [{ filters: 'elf' }, 'beside aperture', '! filters: not read'],
    [{ aperture: 'elf' }, 'beside aperture', '! cannot be read'],
    [{ aperture: null }, 'beside aperture', ''],
    [{ shutter: '1//60' }, 'beside aperture', '! shutter: not read'],
    [{ shutter: null }, 'beside aperture', ''],
  ],
};

/** The cell of a field, or of a column in one of the rows of its table. */
function placeOf(template: Template, name: string): Place {
  const { cells, tables } = layout(template);
  const inTable = /^(\w+)\[(.+)\] (\d+)$/.exec(name);
  const table = tables.get(inTable?.[1] ?? '');
  const column = table?.columns.findIndex(({ id }) => id === inTable?.[2]) ?? -1;
  if (table && column >= 0)
    return { row: tableTop(table) + Number(inTable?.[3]), column: blockPlace(table).column + column };
  const place = cells.get(name)?.place;
  if (!place) throw new Error(`${template.id} has no ${name}.`);
  return place;
}

function saidAt(template: Template, where: string): Place {
  const beside = /^beside (.+)$/.exec(where)?.[1];
  if (beside === undefined) return placeOf(template, where);
  const { row, column } = placeOf(template, beside);
  return { row, column: column + 2 };
}

/** For every commit a few of each sheet. */
const drawn = (all: readonly Misread[]): readonly Misread[] =>
  FULL ? all : all.filter((_, i) => i % 4 === 0);

test.each(Object.entries(SHEETS))('%s says how it reads what nobody means', async (id, all) => {
  const template = templateOf(id);
  const sheet = await opened(template);
  for (const [typed, where, says] of drawn(all)) {
    const change = new Map(
      Object.entries(typed).map(([name, slip]) => [placeOf(template, name), slip] as const),
    );
    const found = (await sheet.after(change))(saidAt(template, where)) ?? '';
    const text = isCellError(found) ? found.error : found;
    if (says instanceof RegExp) expect(String(text), JSON.stringify(typed)).toMatch(says);
    else expect(text, JSON.stringify(typed)).toBe(says);
  }
  sheet.dispose();
});
