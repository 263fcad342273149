import { readdirSync } from 'node:fs';
import { expect, it } from 'vitest';
import { TEMPLATES } from '../../../src/sheets/templates';
import { inputsOf } from './inputs';

it('is tried on every sheet that has something to type, each in a file of its own', () => {
  const wanted = TEMPLATES.filter((template) => inputsOf(template).length > 0).map(({ id }) => id);
  // the largest in full alone
  const files = readdirSync(import.meta.dirname).map((name) => name.replace(/(\.full)?\.test\.ts$/, ''));
  expect(files).toEqual(expect.arrayContaining(wanted));
});
