import { describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../src/catalogue';
import { exampleFormula } from '../../src/catalogue/words';
import { withNamesMended } from '../../src/formula/lostNames';

describe('a lost name is found back', () => {
  test.each([
    ['alone', '=_xldudf_SWEEP_STOPDIFF(8,11)', '=SWEEP.STOPDIFF(8,11)'],
    ['in small letters', '=_xldudf_sweep_stopdiff(8,11)', '=SWEEP.STOPDIFF(8,11)'],
    ['with the number of a workbook', '=[2]!_xldudf_SWEEP_STOPDIFF(8,11)', '=SWEEP.STOPDIFF(8,11)'],
    ['with a file', "='C:\\add-ins\\[old.xlam]x'!SWEEP.STOPDIFF(8,11)", '=SWEEP.STOPDIFF(8,11)'],
    ['with a file that has an apostrophe', "='C:\\Ann''s\\old.xlam'!_xldudf_SWEEP_STOPDIFF(8,11)", '=SWEEP.STOPDIFF(8,11)'],
    ['with a file that needs no quotes', '=old.xlam!SWEEP.STOPDIFF(8,11)', '=SWEEP.STOPDIFF(8,11)'],
    ['with a workbook in brackets', '=[old.xlam]!SWEEP.STOPDIFF(8,11)', '=SWEEP.STOPDIFF(8,11)'],
    ['behind the sign for one cell', '=@_xldudf_SWEEP_STOPDIFF(A1,B1)', '=@SWEEP.STOPDIFF(A1,B1)'],
    ['in the middle', '=IF(A1="","",1+_xldudf_SWEEP_STOPDIFF(A1,B1)/2)', '=IF(A1="","",1+SWEEP.STOPDIFF(A1,B1)/2)'],
    ['twice, one in the other', '=_xldudf_SWEEP_STOPTEXT([1]!_xldudf_SWEEP_LIGHTSUM(8,11))', '=SWEEP.STOPTEXT(SWEEP.LIGHTSUM(8,11))'],
    ['beside one that is not lost', '=SWEEP.STOPDIFF(8,11)+_xldudf_SWEEP_STOPDIFF(8,11)', '=SWEEP.STOPDIFF(8,11)+SWEEP.STOPDIFF(8,11)'],
    ['beside a text that looks like it', '="_xldudf_SWEEP_STOPDIFF("&_xldudf_SWEEP_STOPDIFF(8,11)', '="_xldudf_SWEEP_STOPDIFF("&SWEEP.STOPDIFF(8,11)'],
    ['after a sheet with a quotation mark in its name', `='8" set'!A1+_xldudf_SWEEP_STOPDIFF(8,11)`, `='8" set'!A1+SWEEP.STOPDIFF(8,11)`],
    ['after a column with a quotation mark in its name', '=SUM(Lights[8" head])+_xldudf_SWEEP_STOPDIFF(8,11)', '=SUM(Lights[8" head])+SWEEP.STOPDIFF(8,11)'],
    ['with columns of a table in it', '=_xldudf_SWEEP_LIGHTSUM(Lights[[#This Row],[Reading]],Lights[Own \'[x\']])', "=SWEEP.LIGHTSUM(Lights[[#This Row],[Reading]],Lights[Own '[x']])"],
  ])('%s', (_, lost, mended) => {
    expect(withNamesMended(lost)).toBe(mended);
    expect(withNamesMended(mended)).toBeUndefined();
  }); // prettier-ignore

  test.each(CATALOGUE.map((row) => [row.id, row] as const))('%s', (id, row) => {
    for (const shown of row.examples) {
      const formula = exampleFormula(row, shown);
      expect(withNamesMended(formula.replace(`SWEEP.${id}`, `_xldudf_SWEEP_${id}`))).toBe(formula);
    }
  });
});

describe('everything else stays', () => {
  test.each([
    ['a formula in order', '=SWEEP.STOPDIFF(8,11)'],
    ['one typed in small letters', '=sweep.stopdiff(8,11)'],
    ['a plain formula', '=SUM(A1:A3)'],
    ['a text', '_xldudf_SWEEP_STOPDIFF(8,11)'],
    ['a text within a formula', '="_xldudf_SWEEP_STOPDIFF(8,11)"'],
    ['a text with quotation marks in it', '="say ""_xldudf_SWEEP_STOPDIFF(8,11)"""'],
    ['a sheet of that name', "='_xldudf_SWEEP_STOPDIFF(8)'!A1"],
    ['a function that we do not have', '=_xldudf_SWEEP_HELICOPTER(8)'],
    ['a function of somebody else', '=_xldudf_OTHER_STOPDIFF(8,11)'],
    ['a longer name', '=MY_xldudf_SWEEP_STOPDIFF(8,11)'],
    ['a name without a call', '=_xldudf_SWEEP_STOPDIFF'],
    ['a function of another file', "='C:\\[x.xlam]y'!OTHER.STOPDIFF(8)"],
    ['nothing', ''],
  ])('%s', (_, formula) => expect(withNamesMended(formula)).toBeUndefined());

  test('a formula as long as a cell takes, with an open quotation mark, is read in an instant', () => {
    const long = `=${"'[".repeat(4000)}`;
    expect(withNamesMended(long)).toBeUndefined();
  });
});
