import { assert, asyncProperty } from 'fast-check';
import { test } from 'vitest';
import { trials } from '../../full';
import { cases } from './support/anyExcel';
import { loseNothing } from './support/nothingLost';

test('whatever Excel is like, whatever happens meanwhile: nobody loses anything, and a failure ends in a sentence', () =>
  assert(
    asyncProperty(cases, loseNothing),
    trials(2121, 200),
  )); // prettier-ignore
