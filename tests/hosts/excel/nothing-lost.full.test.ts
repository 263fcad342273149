import { assert, asyncProperty } from 'fast-check';
import { test } from 'vitest';
import { trials } from '../../full';
import { cases } from './support/anyExcel';
import { loseNothing } from './support/nothingLost';

test('thousands of combinations lose nobody anything', { timeout: 1_800_000 }, () =>
  assert(
    asyncProperty(cases, loseNothing),
    trials(2122, 3000),
  )); // prettier-ignore
