import { beforeAll, describe, expect, test } from 'vitest';
import { LOCAL_ORIGIN } from '../../src/hosts/excel/metadata';
import { buildAddIn, builtAddIn, LONGEST_BUILD } from '../hosts/excel/support/built-add-in';
import { checkAddIn } from './addInChecks';

describe('the build in dist/', () => {
  let built: string;
  beforeAll(async () => {
    built = await builtAddIn();
  }, LONGEST_BUILD);

  checkAddIn(() => built, LOCAL_ORIGIN);
});

test.each(['http://studio.example/', 'studio.example', 'https://studio.example/?a', ''])(
  'no build is made for %s',
  (origin) => expect(buildAddIn({ origin })).rejects.toThrow('origin must be an https address'),
);
test.each([true, ' '])('no build is made with the contact %j', (contact) =>
  expect(buildAddIn({ contact })).rejects.toThrow('contact must say who helps'),
);
