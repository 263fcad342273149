import { CellValueType } from '@univerjs/core';
import { expect, test } from 'vitest';
import { content } from '../../../src/hosts/workbench/book/snapshotSheet';

const { STRING, FORCE_STRING } = CellValueType;

// one that carries its type is opened with a ' in front, and is the same when it is left
test.each<[value: string, format: string | undefined, t: CellValueType]>([
  ['=B10', '@', FORCE_STRING],
  ["'8", '@', FORCE_STRING],
  ['1/60', '@', STRING],
  ['-1/3', '@', STRING],
  ['=B10', undefined, FORCE_STRING],
  ['-1/3', undefined, FORCE_STRING],
  ["'8", undefined, FORCE_STRING],
  ['f/8', undefined, STRING],
])('the text %s in a cell of the format %s is the same after it is opened', (value, format, t) => {
  const style = format === undefined ? {} : { style: { format } };
  expect(content({ row: 0, column: 0, value, ...style })).toEqual({ v: value, t });
});
