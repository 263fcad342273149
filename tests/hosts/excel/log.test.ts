import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { LIGHTS, openExcel } from './support/laid';
import { HOST_FILES } from './support/office-host';

/** All that Excel is asked to do for one sheet, to be read by a person. `UPDATE_GOLDEN=1` writes it anew. */
const GOLDEN = join(import.meta.dirname, 'golden/lights-on-set.log');

test.each(HOST_FILES)('what inserting “Lights on set” asks of Excel, through %s', async (file) => {
  const { workbook, host } = openExcel({ file });
  await host.insertSheet(LIGHTS.id, true);
  const log = `${workbook.log.join('\n')}\n`;
  if (process.env.UPDATE_GOLDEN === '1') writeFileSync(GOLDEN, log);
  expect(log).toBe(readFileSync(GOLDEN, 'utf8'));
});
