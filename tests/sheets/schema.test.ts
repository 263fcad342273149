import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect, test } from 'vitest';
import { CHECKS } from '../../src/book/kinds';
import type { Check } from '../../src/book/kinds/kind';

const { SCHEMA, withKinds } = createRequire(import.meta.url)('../../src/build/template-schema.cjs') as {
  SCHEMA: string;
  withKinds: (schema: unknown, checks: readonly Check[]) => unknown;
};
const schema: unknown = JSON.parse(readFileSync(SCHEMA, 'utf8'));

test('the schema has what every kind says of itself: npm run schema', () =>
  expect(schema).toEqual(withKinds(schema, CHECKS)));
test('a kind that the schema lacks is noticed, and one that says otherwise', () => {
  const wider: Check = { property: 'page', of: ['table', 'chart'], shape: { const: true } };
  expect(schema).not.toEqual(withKinds(schema, [wider]));
  expect(schema).not.toEqual(withKinds(schema, [{ ...wider, property: 'title' }]));
});
