import { type Answer, isError } from './answers';
import type { Drawn } from './generate';

/** A formula that the engine answers otherwise than its judge, for no known reason. */
export interface Fault extends Drawn {
  readonly ours: Answer;
  readonly right: Answer;
}

interface Cause {
  readonly id: string;
  readonly says: string;
  readonly shows: (fault: Fault) => boolean;
}

const has = (pattern: RegExp) => (fault: Fault) => pattern.test(fault.formula);
const of =
  (...families: readonly string[]) =>
  (fault: Fault) =>
    families.includes(fault.family);
const both =
  (...tests: readonly ((fault: Fault) => boolean)[]) =>
  (fault: Fault) =>
    tests.every((test) => test(fault));
const isText = (answer: Answer): boolean => typeof answer === 'string';

/** What the engine gets wrong without its mends, each cause by the formulas and answers that show it and no other does. */
export const CAUSES: readonly Cause[] = [
  { id: 'A1', says: 'a number not spelt as a program prints it is a text', shows: of('spelt') },
  {
    id: 'A2',
    says: 'the second comparison with a column takes "" for 0, "12" for 12 and drops errors',
    shows: of('twice'),
  },
  { id: 'A3', says: 'an array calculated in between is found in the cells near A1', shows: of('between') },
  { id: 'A4', says: 'SUMIF with a short third argument changes the range for others', shows: of('short') },
  { id: 'A5', says: 'a formula that gives "" counts as blank', shows: both(of('blanks'), has(/A11|B8|L1/)) },
  {
    id: 'A6',
    says: '= and <> take * and ? for patterns',
    shows: both(of('patterns'), has(/(?:=|<>)"[^"]*[*?]/)),
  },
  {
    id: 'A7',
    says: 'XLOOKUP and XMATCH take * and ? for patterns unasked',
    shows: both(of('exact'), has(/\("[^"]*[*?~]/)),
  },
  {
    id: 'A8',
    says: 'a truth value does not differ from a number or a text',
    shows: both(of('kinds'), has(/<>/), has(/TRUE|FALSE|A7|1=1/)),
  },
  {
    id: 'A9',
    says: 'TRUNC of whole negative numbers is one too high',
    shows: has(/^=TRUNC\((?:-\d|A12|C5|C7)/),
  },
  { id: 'A10', says: 'EDATE runs past the end of a month', shows: has(/^=EDATE\(/) },
  {
    id: 'A11',
    says: 'weeks are one too low in years that begin on a Saturday',
    shows: has(/^=(?:ISOWEEKNUM\(|WEEKNUM\(.*,21\)$)/),
  },
  { id: 'A12', says: 'CHOOSE with a list of numbers uses one row of ranges', shows: has(/CHOOSE\(\{1,2\}/) },
  {
    id: 'A13',
    says: 'rows of different length are filled up',
    shows: both(of('ragged'), has(/\{[^;{}]*\}.\{[^;{}]*\}/)),
  },
  {
    id: 'A14',
    says: 'IF and AND take any text',
    shows: both(
      of('logic'),
      has(/IF|AND|OR/),
      ({ ours, right }) => (isError(right) || right === 'refused') && !isError(ours),
    ),
  },
  {
    id: 'A15',
    says: 'MAXIFS and MINIFS give "" where nothing is found',
    shows: both(has(/^=M(?:AX|IN)IFS\(/), ({ ours, right }) => ours === '' && right === 0),
  },
  {
    id: 'A16',
    says: 'UNIQUE minds the case of letters, SORT is not stable',
    shows: both(of('sorted'), has(/UNIQUE|SORT/)),
  },
  {
    id: 'A17',
    says: 'a number has seventeen digits in a text, or -0',
    shows: both(of('shownNumbers'), has(/\/|\*|-0|\+|SQRT|PI/)),
  },
  {
    id: 'A18',
    says: 'TEXT and FIXED round the binary number',
    shows: both(
      of('formats'),
      has(/(?:TEXT|FIXED)\((?:-?[\d.]+|C\d)/),
      ({ ours, right }) => isText(ours) && isText(right),
    ),
  },
  {
    id: 'A19',
    says: 'AVERAGEA and its kin read texts as numbers',
    shows: both(of('statistics'), has(/^=(?:AVERAGEA|VARA|VARPA|STDEVA|STDEVPA|MAXA|MINA)\(/)),
  },
  {
    id: 'A20',
    says: 'CONCAT writes truth values in small letters',
    shows: both(
      of('truthTexts'),
      has(/CONCAT|TEXTJOIN/),
      ({ ours }) => isText(ours) && /true|false/.test(ours as string),
    ),
  },
  {
    id: 'A21',
    says: 'what is found empty stays empty',
    shows: both(of('found'), ({ ours, right }) => (ours === null || ours === '') && right === 0),
  },
  { id: 'A22', says: 'SEARCH knows no patterns', shows: has(/SEARCH\("[^"]*[*?~]/) },
  {
    id: 'A23',
    says: 'numbers are compared beyond fifteen digits',
    shows: both(of('almost'), ({ ours }) => !isError(ours)),
  },
  {
    id: 'A24',
    says: 'YEARFRAC counts some years and months otherwise',
    shows: has(/^=YEARFRAC\(/),
  },
  {
    id: 'A25',
    says: 'a line break in a text is a space, TRIM removes the space that holds words together',
    shows: has(/\n|160/),
  },
];

/** The formulas that show each cause. */
export const findings = (faults: readonly Fault[]): (readonly [Cause, readonly Fault[]])[] =>
  CAUSES.map((cause) => [cause, faults.filter(cause.shows)]);
