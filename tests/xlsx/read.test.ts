import { describe, expect, test } from 'vitest';
import { readXlsx, UnreadableFile } from '../../src/xlsx/read';
import { writeXlsx } from '../../src/xlsx/write';
import { cells, workbook, zip } from './parts';

const read = async (sheet: string, more = {}, names = '') => {
  const { book, notUnderstood } = await readXlsx(zip(workbook(sheet, more, names)));
  const [first] = book.sheets;
  if (!first) throw new Error('there is no sheet');
  return { book, sheet: first, cells: first.cells, notUnderstood };
};
const row = (inside: string): string => cells(`<row r="1">${inside}</row>`);

const ALL_PRINTED =
  'Areas to print are left out where a sheet has several, or a formula finds them; all of the sheet is printed.';

describe('a stranger’s file', () => {
  test('cells of every kind', async () => {
    const { cells: found } = await read(
      row(
        '<c r="A1" t="s"><v>1</v></c><c r="B1" t="inlineStr"><is><t>=in</t><rPh><t>no</t></rPh><r><t>line</t></r></is></c><c r="C1"><v>45000.25</v></c>' +
          '<c r="D1" t="b"><v>1</v></c><c r="E1" t="e"><v>#DIV/0!</v></c><c r="F1" t="str"><f>A1&amp;""</f><v>+x</v></c>' +
          '<c t="d"><v>2023-03-15T06:00:00</v></c><c r="I1"/>',
      ),
      { 'xl/sharedStrings.xml': '<sst><si><t>first</t></si><si><r><t>=SUM(</t></r><r><t xml:space="preserve">A1) _x0041_</t></r></si></sst>' },
    ); // prettier-ignore
    expect(found).toEqual([
      { row: 0, column: 0, value: '=SUM(A1) A' },
      { row: 0, column: 1, value: '=inline' },
      { row: 0, column: 2, value: 45000.25 },
      { row: 0, column: 3, value: true },
      { row: 0, column: 4, value: { error: '#DIV/0!' } },
      { row: 0, column: 5, value: '+x', formula: '=A1&""' },
      { row: 0, column: 6, value: 45000.25 },
    ]);
  });

  test('elements with a prefix, as some programs write them', async () => {
    const part = '<x:worksheet xmlns:x="m"><x:sheetData><x:row r="2"><x:c r="B2"><x:v>7</x:v></x:c></x:row></x:sheetData></x:worksheet>';
    const { cells: found } = await read('', { 'xl/worksheets/sheet1.xml': part });
    expect(found).toEqual([{ row: 1, column: 1, value: 7 }]);
  }); // prettier-ignore

  test('shared formulas, each in its own words', async () => {
    const { cells: found } = await read(
      cells(
        '<row r="1"><c r="B1"><f t="shared" ref="B1:B3" si="0">_xldudf_SWEEP_FNUMBER(A1,$C$1)</f><v>8</v></c></row>' +
          '<row r="2"><c r="B2"><f t="shared" si="0"/><v>11</v></c></row>',
      ),
    );
    expect(found.map(({ formula }) => formula)).toEqual([
      '=SWEEP.FNUMBER(A1,$C$1)',
      '=SWEEP.FNUMBER(A2,$C$1)',
    ]);
  });

  test.each([
    ["'Q1, Q2!'!$B$2:$D$9", { row: 1, column: 1, rows: 8, columns: 3 }, []],
    ['Sheet1!$A$1:$B$2,Sheet1!$D$1:$E$2', undefined, [ALL_PRINTED]],
    ['OFFSET(Sheet1!$A$1,0,0,9,2)', undefined, [ALL_PRINTED]],
  ])('what is printed: %s', async (formula, area, said) => {
    const name = `<definedName name="_xlnm.Print_Area" localSheetId="0">${formula}</definedName>`;
    const titles = '<definedName name="_xlnm.Print_Titles" localSheetId="0">Sheet1!$A:$B,Sheet1!$1:$12</definedName>';
    const { sheet, notUnderstood } = await read(cells(''), {}, `<definedNames>${name}${titles}</definedNames>`);
    expect(sheet.page.area).toEqual(area);
    expect(sheet.page.titleRows).toBe(12);
    expect(notUnderstood).toEqual(said);
  }); // prettier-ignore

  test('headings that head the pages may stand further down', async () => {
    const titles = '<definedName name="_xlnm.Print_Titles" localSheetId="0">Sheet1!$76:$77</definedName>';
    const { sheet } = await read(cells(''), {}, `<definedNames>${titles}</definedNames>`);
    expect([sheet.page.titlesFrom, sheet.page.titleRows]).toEqual([75, 2]);
  });

  test('functions of ours that the file takes for another workbook’s are ours in rules and tables too', async () => {
    const formula = '[1]!_xldudf_SWEEP_FNUMBER(A2)';
    const rels = '<Relationships><Relationship Id="y" Type="x/styles" Target="styles.xml"/></Relationships>';
    const { sheet, notUnderstood } = await read(
      `<conditionalFormatting sqref="A2"><cfRule type="expression" dxfId="0" priority="1"><formula>${formula}&gt;8</formula></cfRule></conditionalFormatting>` +
        `<dataValidations><dataValidation type="custom" sqref="A2"><formula1>${formula}&gt;8</formula1></dataValidation></dataValidations>`,
      {
        'xl/_rels/workbook.xml.rels': rels.replace('<Relationship ', '<Relationship Id="s" Type="x/worksheet" Target="worksheets/sheet1.xml"/><Relationship '),
        'xl/styles.xml': '<styleSheet><dxfs><dxf><font><b/></font></dxf></dxfs></styleSheet>',
        'xl/worksheets/_rels/sheet1.xml.rels': '<Relationships><Relationship Id="t" Type="x/table" Target="../tables/table1.xml"/></Relationships>',
        'xl/tables/table1.xml': `<table ref="A1:A2" displayName="T"><tableColumns><tableColumn name="A"><calculatedColumnFormula>${formula}</calculatedColumnFormula></tableColumn></tableColumns></table>`,
      },
    );
    expect(notUnderstood).toEqual([]);
    expect(sheet.conditions).toMatchObject([{ kind: 'formula', formula: '=SWEEP.FNUMBER(A2)>8' }]);
    expect(sheet.rules.map(({ bounds }) => bounds)).toEqual([['SWEEP.FNUMBER(A2)>8']]);
    expect(sheet.tables[0]?.columns).toEqual([{ name: 'A', formula: '=SWEEP.FNUMBER(A2)' }]);
  }); // prettier-ignore

  test('a formula longer than any program takes keeps its last value alone', async () => {
    const { cells: found, notUnderstood } = await read(
      row(`<c r="A1"><f>${'1+'.repeat(4100)}1</f><v>4101</v></c>`),
    );
    expect(found).toEqual([{ row: 0, column: 0, value: 4101 }]);
    expect(notUnderstood.join()).toContain('longer than a cell can hold');
  });

  test('looks: fonts, theme colours, fills, edges, formats, alignment', async () => {
    const styles =
      '<styleSheet><numFmts><numFmt numFmtId="170" formatCode="0.0&quot; s&quot;"/></numFmts>' +
      '<fonts><font><sz val="11"/><name val="Calibri"/></font><font><b/><i val="0"/><u/><sz val="9"/><color theme="4" tint="-0.5"/><name val="Arial"/></font></fonts>' +
      '<fills><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="solid"><fgColor indexed="13"/></patternFill></fill></fills>' +
      '<borders><border/><border><bottom style="mediumDashed"><color rgb="FF010203"/></bottom></border></borders>' +
      '<cellXfs><xf numFmtId="0" fontId="0"/><xf numFmtId="170" fontId="1" fillId="1" borderId="1"><alignment horizontal="center" vertical="center" wrapText="1" indent="2"/></xf><xf numFmtId="14" fontId="0"/></cellXfs></styleSheet>';
    const theme =
      '<theme><themeElements><clrScheme><dk1><sysClr lastClr="000000"/></dk1><lt1><srgbClr val="FFFFFF"/></lt1><accent1><srgbClr val="204060"/></accent1></clrScheme></themeElements></theme>';
    const rels =
      '<Relationships><Relationship Id="s" Type="x/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="y" Type="x/styles" Target="/xl/styles.xml"/><Relationship Id="z" Type="x/theme" Target="theme.xml"/></Relationships>';
    const { cells: found } = await read(
      row('<c r="A1" s="1"><v>1</v></c><c r="B1" s="2"><v>45000</v></c><c r="C1" s="1"/>'),
      { 'xl/styles.xml': styles, 'xl/theme.xml': theme, 'xl/_rels/workbook.xml.rels': rels },
    );
    const style = {
      font: 'Arial', size: 9, bold: true, underline: true, ink: '#102030', fill: '#ffff00', edges: { bottom: { line: 'medium', ink: '#010203' } },
      format: '0.0" s"', align: 'center', vertical: 'middle', wrap: true, indent: 2,
    }; // prettier-ignore
    expect(found).toEqual([
      { row: 0, column: 0, value: 1, style },
      { row: 0, column: 1, value: 45000, style: { format: 'm/d/yyyy' } },
      { row: 0, column: 2, value: null, style },
    ]);
  });

  test('conditional formats that can be said as a formula; the others are told', async () => {
    const styles = '<styleSheet><dxfs><dxf><font><b/></font><fill><patternFill><bgColor rgb="FFFFC7CE"/></patternFill></fill></dxf></dxfs></styleSheet>';
    const rels = '<Relationships><Relationship Id="s" Type="x/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="y" Type="x/styles" Target="styles.xml"/></Relationships>';
    const rule = (inside: string): string => `<conditionalFormatting sqref="B2:B9 D2">${inside}</conditionalFormatting>`;
    const { sheet, notUnderstood } = await read(
      rule('<cfRule type="cellIs" dxfId="0" priority="3" operator="greaterThan"><formula>$A$1</formula></cfRule>') +
        rule('<cfRule type="cellIs" dxfId="0" priority="1" operator="between"><formula>1</formula><formula>2</formula></cfRule>') +
        rule('<cfRule type="containsText" dxfId="0" priority="2" operator="containsText" text="x"><formula>NOT(ISERROR(SEARCH("x",B2)))</formula></cfRule>') +
        rule('<cfRule type="colorScale" priority="6"><colorScale><cfvo type="min"/><cfvo type="max"/><color rgb="FFFBF8F1"/><color theme="1"/></colorScale></cfRule>') +
        rule('<cfRule type="colorScale" priority="7"><colorScale><cfvo type="min"/><cfvo type="percentile" val="50"/><cfvo type="max"/><color rgb="FFFBF8F1"/><color rgb="FFFFFFFF"/><color rgb="FF88CFC7"/></colorScale></cfRule>') +
        rule('<cfRule type="colorScale" priority="4"><colorScale/></cfRule><cfRule type="top10" dxfId="0" priority="5" rank="3"/>'),
      { 'xl/styles.xml': styles, 'xl/_rels/workbook.xml.rels': rels },
    );
    expect(sheet.conditions.map((c) => (c.kind === 'formula' ? c.formula : [c.low, c.high]))).toEqual(['=AND(B2>=(1),B2<=(2))', '=NOT(ISERROR(SEARCH("x",B2)))', '=B2>($A$1)', ['#fbf8f1', '#000000']]);
    expect(sheet.conditions[0]).toMatchObject({
      areas: [{ row: 1, column: 1, rows: 8, columns: 1 }, { row: 1, column: 3, rows: 1, columns: 1 }],
      look: { bold: true, fill: '#ffc7ce' },
    });
    expect(notUnderstood).toEqual(['Colour scales of three colours, or with ends other than the least and the most, are left out.', 'Some conditional formats are left out.']);
  }); // prettier-ignore

  test('what is left out is told: macros, pictures, pivot tables, links, threads, protection, filters', async () => {
    const { notUnderstood, cells: found, book } = await read(
      `${row('<c r="A1"><f>[1]Rates!B2*2</f><v>42</v></c><c r="B1"><f>1+1</f><v>2</v></c>')}<sheetProtection sheet="1"/><autoFilter ref="A1:B1"/><hyperlinks><hyperlink ref="A1"/></hyperlinks>`,
      {
        'xl/vbaProject.bin': 'x',
        'xl/media/image1.png': 'x',
        'xl/pivotTables/pivotTable1.xml': '<x/>',
        'xl/externalLinks/externalLink1.xml': '<x/>',
        'xl/threadedComments/threadedComment1.xml': '<x/>',
        'xl/activeX/activeX1.bin': 'x',
      },
      '<definedNames><definedName name="Out">[1]Rates!$A$1</definedName><definedName name="In">Sheet1!$A$1</definedName><definedName name="_xlnm._FilterDatabase" hidden="1">Sheet1!$A$1</definedName></definedNames>',
    );
    const told = notUnderstood.join(' ');
    for (const word of ['Macros', 'Pictures', 'Pivot', 'Links to other files', 'threads', 'Protection', 'Filters', 'Links in cells', 'form controls', 'Names'])
      expect(told).toContain(word);
    for (const sentence of notUnderstood) expect(sentence).toMatch(/^[A-Z].*\.$/);
    expect(new Set(notUnderstood).size).toBe(notUnderstood.length);
    expect(found).toEqual([
      { row: 0, column: 0, value: 42 },
      { row: 0, column: 1, value: 2, formula: '=1+1' },
    ]);
    expect(book.names).toEqual([{ name: 'In', formula: '=Sheet1!$A$1' }]);
  }); // prettier-ignore

  test('a rule of a list has one bound, whatever else a program writes; protection that is off is none', async () => {
    const { sheet, notUnderstood } = await read(
      '<sheetProtection sheet="false"/><dataValidations><dataValidation type="list" sqref="A1" allowBlank="true" showErrorMessage="true"><formula1>"a,b"</formula1><formula2>0</formula2></dataValidation></dataValidations>',
    );
    expect(notUnderstood).toEqual([]);
    expect(sheet.rules).toEqual([
      { areas: [{ row: 0, column: 0, rows: 1, columns: 1 }], kind: 'list', bounds: ['"a,b"'], blank: true, strict: true },
    ]);
  }); // prettier-ignore

  test('whole columns and rows in merges and rules take no time and no cells', async () => {
    const { sheet } = await read(
      `<cols><col min="1" max="16384" width="9"/></cols>${row('<c r="A1"><v>1</v></c>')}<mergeCells><mergeCell ref="B1:XFD1048576"/></mergeCells>` +
        '<dataValidations><dataValidation type="whole" sqref="A1:XFD1048576"><formula1>1</formula1><formula2>2</formula2></dataValidation></dataValidations>',
    );
    expect(sheet.cells).toHaveLength(1);
    expect(sheet.widths).toEqual({});
    expect(sheet.merges).toEqual([{ row: 0, column: 1, rows: 1_048_576, columns: 16_383 }]);
  });
});

describe('a hostile or damaged file is refused in a sentence', () => {
  const refusal = async (bytes: Uint8Array): Promise<string> => {
    try {
      await readXlsx(bytes);
    } catch (reason) {
      expect(reason).toBeInstanceOf(UnreadableFile);
      return (reason as UnreadableFile).message;
    }
    return 'it was opened';
  };
  const text = (words: string): Uint8Array => new TextEncoder().encode(words);

  test('no workbook at all', async () => {
    for (const bytes of [new Uint8Array(), text('PK'), text('a,b\n1,2\n'), text('%PDF-1.7 and so on, for some while')])
      expect(await refusal(bytes)).toMatch(/^This file is no workbook/);
    expect(await refusal(zip({ 'mimetype': 'something else' }))).toMatch(/no workbook/);
    expect(await refusal(Uint8Array.of(0xd0, 0xcf, 0x11, 0xe0, 1, 2, 3, 4))).toMatch(/locked with a password/);
  }); // prettier-ignore

  test('cut off anywhere', async () => {
    const bytes = zip(workbook(row('<c r="A1"><v>1</v></c>')));
    for (let length = 5; length < bytes.length; length += 13)
      expect(await refusal(bytes.subarray(0, length)), `${length} bytes`).toMatch(/damaged|no workbook/);
  });

  test('a byte changed anywhere is refused, or read; it never ends in anything else', async () => {
    const bytes = await writeXlsx({
      sheets: [(await readXlsx(zip(workbook(row('<c r="A1"><v>1</v></c>'))))).book.sheets[0] as never],
      names: [],
    });
    for (let at = 0; at < bytes.length; at += 97) {
      const changed = bytes.slice();
      changed[at] = 255 - (changed[at] as number);
      expect(await refusal(changed), `byte ${at}`).toMatch(/^This file|^it was opened$/);
    }
  });

  test('a zip bomb, honest or not about its size', async () => {
    // by what it says alone, and by what comes out of it; with all that it says in full
    const bomb = (size: number, claims: number) =>
      zip(workbook('', { 'xl/worksheets/sheet1.xml': { content: new Uint8Array(size), claims } }));
    expect(await refusal(bomb(1000, 210_000_000))).toMatch(/too large.*200 MB/);
    expect(await refusal(bomb(1_000_000, 1000))).toMatch(/damaged/);
  });

  test('entities that multiply, and parts that are no XML', async () => {
    const bomb =
      '<!DOCTYPE x [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;">]><worksheet><sheetData/></worksheet>';
    expect(await refusal(zip(workbook('', { 'xl/worksheets/sheet1.xml': bomb })))).toMatch(/damaged/);
    expect(await refusal(zip(workbook('<sheetData><row><c>')))).toMatch(/damaged/);
    expect(await refusal(zip(workbook('', { 'xl/worksheets/sheet1.xml': 'no XML' })))).toMatch(/damaged/);
    expect(await refusal(zip(workbook(cells('<row r="9999999"/>'))))).toMatch(/damaged/);
  });

  test('formulas that claim to spill over everything', async () => {
    const spill = '<c r="A1"><f t="array" ref="A1:XFD1048576">A1</f><v>1</v></c>';
    expect(await refusal(zip(workbook(row(spill))))).toMatch(/more than 2 million cells/);
  });
});
