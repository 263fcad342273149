import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { calculate } from '../../../src/hosts/command/calculateFormulas';
import { FULL } from '../../full';

// The engine's own remarks on what it was given are for developers.
beforeEach(() => {
  vi.spyOn(console, 'warn').mockImplementation(() => {});
  vi.spyOn(console, 'error').mockImplementation(() => {});
});
afterEach(() => vi.restoreAllMocks());

const READS = 'reads more than four million cells';
const MAKES = 'list of more than half a million cells';
const ENDLESS = 'calls itself';
/** It is calculated for as long as the command waits: in full. */
const WAITS: readonly [formula: string, sentence: string][] = FULL
  ? [['=REDUCE(0,SEQUENCE(700),LAMBDA(a,b,a+SUM(MAP(SEQUENCE(5000),LAMBDA(x,x*b)))))', 'takes longer']]
  : [];

describe('one formula cannot hold up the others', () => {
  test.each<[formula: string, sentence: string]>([
    ['=IMAGE("https://example.org/lamp.png")', 'no function IMAGE'],
    [`=${'('.repeat(5000)}1${')'.repeat(5000)}`, '8,192 letters'],
    [`=${'('.repeat(3000)}1${')'.repeat(3000)}`, 'too many brackets'],
    [`=${'1+'.repeat(20_000)}1`, '8,192 letters'],
    ['=SUM(OFFSET(A1,0,0,1048576,16384))', READS],
    ['=SUM(INDIRECT("A1:XFD1048576"))', READS],
    ['=OFFSET(A1,0,0,1048576,100)*2', READS],
    ['=MAKEARRAY(5000,5000,LAMBDA(r,c,r*c))', MAKES],
    ['=SEQUENCE(100000)*SEQUENCE(1,10000)', MAKES],
    ['=SUM(SEQUENCE(1E6,10))', MAKES],
    ['=RANDARRAY(2000,2000)', MAKES],
    ['=SUM(EXPAND(1,1E6,100,0))', MAKES],
    ['=MUNIT(5000)', MAKES],
    ['=MMULT(SEQUENCE(5000),SEQUENCE(1,5000))', MAKES],
    ['=LAMBDA(f,f(f))(LAMBDA(f,f(f)))', ENDLESS],
    ['=LET(f,LAMBDA(g,g(g)),f(f))', ENDLESS],
    ...WAITS,
  ])('%s', async (formula, sentence) => {
    const [refused, beside] = await calculate([formula, '=1+1']);
    expect(refused?.refusals).toEqual([
      { error: expect.stringMatching(/^#/), message: expect.stringContaining(sentence) },
    ]);
    expect(beside).toEqual({ formula: '=1+1', value: 2, refusals: [] });
  });

  test('many that spill have their room one after the other, and stay in their order', async () => {
    const sums = Array.from({ length: 450 }, (_, i) => `=SUM(SEQUENCE(${i + 1}))`);
    const given = await calculate(sums);
    // 1 + 2 + … + n is n·(n + 1)/2.
    expect(given.map(({ value }) => value)).toEqual(sums.map((_, i) => ((i + 1) * (i + 2)) / 2));
  });
});
