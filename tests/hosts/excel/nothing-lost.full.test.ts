import { assert, asyncProperty } from 'fast-check';
import { test } from 'vitest';
import { trials } from '../../full';
import { cases } from './support/anyExcel';
import { loseNothing } from './support/nothingLost';

test('three hundred combinations more lose nobody anything', { timeout: 900_000 }, () =>
  assert(
    asyncProperty(cases, loseNothing),
    trials(2122, 300),
  )); // prettier-ignore
