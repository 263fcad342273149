import { expect, test } from 'vitest';
import { CATALOGUE } from '../../../src/catalogue';
import { functionName } from '../../../src/catalogue/words';
import { describeReading } from '../../../src/explain/reading';
import { cellError } from '../../../src/formula/errors';
import { call } from '../../../src/hosts/script/call';

const said = (run: () => unknown): string => {
  try {
    return `no refusal: ${String(run())}`;
  } catch (thrown) {
    return (thrown as Error).message;
  }
};

test('an error of a cell that goes in is said in the words of the explanation', () => {
  const row = CATALOGUE.find((each) => functionName(each) === 'SWEEP.STOPDIFF');
  const [arg] = row?.args ?? [];
  if (arg === undefined) throw new Error('STOPDIFF has no argument');
  const way = 'A cell that this one uses shows #REF!: put that cell right first.';
  expect(describeReading(cellError('#REF!'), arg, undefined).meaning).toBe(way);
  expect(said(() => call('STOPDIFF', ['#REF!', 11]))).toBe(`#REF! ${way}`);
});
