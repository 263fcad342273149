import { expect, test } from 'vitest';
import { planAlone } from '../../src/sheets/makePlan';
import { TEMPLATES } from '../../src/sheets/templates';
import { readSet } from '../../src/set/readSet';
import { setImage } from '../../src/set/setImage';
import type { SheetAsRead } from '../../src/set/sheetAsRead';
import { ON_PAPER } from '../../src/set/svg';
import { place } from './drawnSets';

/** Shot record as it is laid, without what its formulas show. */
function record(): SheetAsRead {
  const template = TEMPLATES.find(({ id }) => id === 'shot-record');
  if (!template) throw new Error('There is no Shot record.');
  const { cells, tables, name } = planAlone(template, true).sheet;
  const lines: unknown[][] = [];
  for (const { row, column, value } of cells) (lines[row] ??= [])[column] = value;
  const whole = Array.from(lines, (line) => Array.from(line ?? [], (value) => value ?? ''));
  return { name, cells: whole, tables: tables.map(({ area }) => area) };
}

// x, y and heights as the template has them
test('Shot record has its set drawn, with nothing that cannot be read', () => {
  const read = readSet(record());
  expect(read?.unread).toEqual([]);
  const { lights, camera, datumHeight } = read?.setUp ?? { lights: [] };
  expect(lights.map(({ name }) => name)).toEqual(['key, Alder 600', 'fill, Birch 1200', 'rim, Hazel 400', 'accent, Hazel 400', 'background, Cedar 2400']); // prettier-ignore
  expect(lights[0]).toMatchObject({ at: place(0.03, 0.25, 1.4), aim: place(0.6, 0.35, 0.85), setting: '1/2', reading: 'f/16 +0.5' }); // prettier-ignore
  expect(camera?.at).toEqual(place(0.6, -0.22, 1.05));
  expect(datumHeight).toBe(0.75);
  // a draw of 150 mm: 53.4 mm · 0.6041 m / 150 mm = 0.2151 m, at √(0.57² + 0.2²) = 0.6041 m along the axis
  expect(setImage(record(), 350, ON_PAPER)?.said).toContain(
    'The picture takes in 0.22 m × 0.16 m, 0.60 m before the lens.',
  );
});
