import { describe, expect, test } from 'vitest';
import { codeOf, locationOf, REFUSALS, excelRefusal } from '../../../src/hosts/excel/refusals';
import { loadOffice } from './support/office-host';
import { FakeWorkbook } from './support/fake-workbook';

const KEPT = 'Nothing was changed.';
const error = (code: string): object => ({ code, message: 'as Excel words it', debugInfo: {} });

/** What each code must tell a person; the codes and their meanings as Microsoft lists them for the Excel library. */
const MEANINGS: Readonly<Record<string, RegExp>> = {
  InvalidOperationInCellEditMode: /being typed in.*Press Enter or Esc/,
  AccessDenied: /protected.*reading only.*protection off/,
  RequestPayloadSizeLimitExceeded: /more than Excel takes/,
  ResponsePayloadSizeLimitExceeded: /more than Excel takes/,
  OperationCellsExceedLimit: /more than Excel takes/,
  RangeExceedsLimit: /more than Excel takes/,
  ConnectionFailure: /connection.*broke off.*Check the network/,
  InvalidOrTimedOutSession: /connection.*broke off/,
  Timeout: /connection.*broke off/,
  RequestAborted: /connection.*broke off/,
  ApiNotFound: /too old.*Update Excel/,
  NotImplemented: /too old/,
  UnsupportedFeature: /too old/,
  ActivityLimitReached: /busy.*wait a moment/,
  WriteNotSupportedWhenModalDialogOpen: /busy.*Close any window/,
  InvalidOperation: /does not work on the sheet.*ordinary sheet/,
  InvalidSelection: /cells that are selected/,
  UnsupportedOperation: /does not work on the sheet/,
  UnsupportedSheet: /does not work on the sheet/,
  InactiveWorkbook: /does not work on the sheet/,
  Conflict: /same moment.*Try again/,
  ItemAlreadyExists: /same moment/,
  ItemNotFound: /same moment/,
};

test('every code in the table is looked at here', () =>
  expect(Object.keys(MEANINGS).sort()).toEqual(Object.keys(REFUSALS).sort()));

describe.each(Object.entries(MEANINGS))('%s', (code, meaning) => {
  const said = excelRefusal(error(code), KEPT);
  test('says what happened and what to do', () => expect(said).toMatch(meaning));
  test('says what was kept, between the two', () => {
    const { happened, todo } = REFUSALS[code] ?? { happened: '', todo: '' };
    expect(said).toBe(`${happened} ${KEPT} ${todo}`);
  });
  test('needs no code and no word of programmers', () => {
    expect(said).not.toContain(code);
    expect(said).not.toMatch(/\b(API|exception|argument|payload|session|null|object)\b/i);
  });
});

describe('anything else', () => {
  test('a code that is not in the table is passed on', () =>
    expect(excelRefusal(error('FilteredRangeConflict'), KEPT)).toBe(
      `Excel refused, and only says “FilteredRangeConflict”. ${KEPT} Try again, or in a new workbook; if it stays, restart Excel.`,
    ));
  test('a name that every object has is no code', () =>
    expect(excelRefusal(error('constructor'), KEPT)).toContain('“constructor”'));
  test('an error without a code gives its words', () =>
    expect(excelRefusal(new Error('out of paper'), KEPT)).toContain('“out of paper”'));
  test.each([undefined, null, 'text', {}])('%s gives a whole sentence still', (thrown) =>
    expect(excelRefusal(thrown, KEPT)).toMatch(
      /^Excel refused, and does not say why\. Nothing was changed\. Try/,
    ),
  );
});

test('code and place are read from an error of the real library', async () => {
  const { Excel } = loadOffice(new FakeWorkbook('Sheet1'));
  const thrown = await Excel.run(async (context) => {
    context.workbook.worksheets.add('Sheet1');
    await context.sync();
  }).catch((reason: unknown) => reason);
  expect(codeOf(thrown)).toBe('ItemAlreadyExists');
  expect(locationOf(thrown)).toBe('WorksheetCollection.add');
});
