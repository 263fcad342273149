import { expect, test } from 'vitest';
import { wordsOf } from '../../src/book/listWords';
import { quotedText } from '../../src/formula/quotedText';

test.each(['m,ft', 'say "no",yes', '', 'a\nb', ' a'])('the words %j come back from their bound', (words) =>
  expect(wordsOf(quotedText(words))).toBe(words),
);
test.each(['"m,"&"ft"', '"m"&A1&"ft"', '$A$1:$A$3', 'Units', '"m', '8', 'TRUE', ''])(
  'the bound %s quotes none',
  (bound) => expect(wordsOf(bound)).toBeUndefined(),
);
