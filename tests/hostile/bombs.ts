import { cells, workbook, zip } from '../xlsx/parts';
import { type Limits, type Parts, relation, relations, tryFile } from './files';
import type { Report } from './report';

/** A small file that would take a reader without measure all its time or memory, or what it may not do. */
export interface Bomb {
  readonly what: string;
  readonly bytes: () => Uint8Array;
  /** What is said; nothing where the file is opened. */
  readonly refusal?: RegExp;
  /** Seconds go by before it is refused, or before it is made. */
  readonly slow?: true;
}

const one = (sheet: string, more: Parts = {}, names = ''): Uint8Array => zip(workbook(sheet, more, names));
const SHEET = 'xl/worksheets/sheet1.xml';
const drawn = (drawing: string): Parts => ({
  'xl/worksheets/_rels/sheet1.xml.rels': relations(relation('d', 'drawing', '../drawings/drawing1.xml')),
  'xl/drawings/drawing1.xml': drawing,
});
const nested = (name: string, depth: number): string =>
  `<${name}>`.repeat(depth) + `</${name}>`.repeat(depth);
/** A workbook whose one sheet stands in its list many times. */
const listed = (count: number, sheet: string, more = ''): Parts => ({
  ...workbook(sheet),
  'xl/workbook.xml': `<workbook><sheets>${'<sheet name="S" r:id="s"/>'.repeat(count)}</sheets>${more}</workbook>`,
});
const LARGE = /too large/;
const DAMAGED = /damaged/;

export const BOMBS: readonly Bomb[] = [
  { what: 'widths of all columns, over and over', bytes: () => one(`<cols>${'<col min="1" max="16383" width="9"/>'.repeat(200_000)}</cols>${cells('')}`), refusal: DAMAGED },
  { what: 'a shared formula of a megabyte, in many cells', bytes: () => one(cells(`<row r="1"><c><f t="shared" si="0">${'A1+'.repeat(350_000)}1</f></c>${'<c><f t="shared" si="0"/></c>'.repeat(10_000)}</row>`)) },
  { slow: true, what: 'a shared formula as long as can be, in very many cells', bytes: () => one(cells(`<row r="1"><c><f t="shared" si="0">${'A1+'.repeat(2700)}1</f></c></row>${'<row><c><f t="shared" si="0"/></c></row>'.repeat(300_000)}`)), refusal: LARGE },
  { slow: true, what: 'a sheet that is listed 20,000 times', bytes: () => zip(listed(20_000, cells('<row><c><v>1</v></c></row>'))), refusal: LARGE },
  { slow: true, what: 'sheets that are listed with parts that are not there', bytes: () => zip({ ...listed(1, cells('')), 'xl/workbook.xml': `<workbook><sheets>${'<sheet r:id="n"/>'.repeat(200_000)}<sheet r:id="s"/></sheets></workbook>`, 'xl/_rels/workbook.xml.rels': relations(...Array.from({ length: 100_000 }, (_, i) => relation(`r${i}`, 'x', 'y')), relation('s', 'worksheet', 'worksheets/sheet1.xml')) }) },
  { slow: true, what: 'names of sheets, all to be looked through for each sheet', bytes: () => zip(listed(900, cells(''), `<definedNames>${'<definedName name="a" localSheetId="1">1</definedName>'.repeat(50_000)}</definedNames>`)) },
  { what: 'spills over a million cells on each of many sheets', bytes: () => zip(listed(500, cells('<row r="1"><c r="A1"><f t="array" ref="A1:A1048576">1</f></c></row>'))), refusal: LARGE },
  { slow: true, what: 'a merged cell of 300,000 areas', bytes: () => one(`${cells('')}<mergeCells><mergeCell ref="${'A1 '.repeat(300_000)}"/></mergeCells>`) },
  { what: 'elements in elements, in a drawing', bytes: () => one(cells(''), drawn(`<wsDr>${nested('a', 300_000)}</wsDr>`)), refusal: DAMAGED },
  { what: 'elements in elements, in a sheet', bytes: () => one(cells(nested('row', 300_000))), refusal: DAMAGED },
  { what: 'elements in elements, in the list of sheets', bytes: () => zip({ ...workbook(''), 'xl/workbook.xml': `<workbook>${nested('sheets', 300_000)}</workbook>` }), refusal: DAMAGED },
  { what: 'attributes by the hundred thousand', bytes: () => one(cells(`<row ${Array.from({ length: 100_000 }, (_, i) => `a${i}="1"`).join(' ')}/>`)) },
  { slow: true, what: 'an attribute of 20 megabytes', bytes: () => one(cells(`<row r="1" x="${'a'.repeat(20_000_000)}"/>`)), refusal: DAMAGED },
  { slow: true, what: 'a comment of 20 megabytes that does not end', bytes: () => one(`${cells('')}<!--${'-'.repeat(20_000_000)}`), refusal: DAMAGED },
  { slow: true, what: 'comments by the hundred million letters, with elements between', bytes: () => one(cells(`<!--${'-'.repeat(900_000)}--><row/>`.repeat(100))), refusal: DAMAGED },
  { slow: true, what: 'instructions by the hundred million letters', bytes: () => one(cells(`<?x ${'?'.repeat(900_000)}?><row/>`.repeat(100))), refusal: DAMAGED },
  { slow: true, what: 'an element that does not end', bytes: () => one(`${cells('')}<${'a'.repeat(20_000_000)}`), refusal: DAMAGED },
  { what: 'entities by number, many', bytes: () => one(cells(`<row><c t="str"><v>${'&#65;'.repeat(80_000)}</v></c></row>`)) },
  { what: 'a name with a formula of brackets and quotes', bytes: () => one(cells(''), {}, `<definedNames><definedName name="a">${"['".repeat(200_000)}</definedName></definedNames>`) },
  { what: 'a rule with a formula of open brackets', bytes: () => one(`${cells('')}<dataValidations><dataValidation type="custom" sqref="A1"><formula1>${'['.repeat(400_000)}</formula1></dataValidation></dataValidations>`) },
  { what: 'a rule with a formula of brackets in brackets', bytes: () => one(`${cells('')}<dataValidations><dataValidation type="custom" sqref="A1"><formula1>${'[[a]'.repeat(100_000)}</formula1></dataValidation></dataValidations>`) },
  { what: 'a column of a table with a formula of open quotes', bytes: () => one(cells(''), { 'xl/worksheets/_rels/sheet1.xml.rels': relations(relation('t', 'table', '../tables/t.xml')), 'xl/tables/t.xml': `<table ref="A1:B2" name="T"><tableColumns><tableColumn name="a"><calculatedColumnFormula>${"_xlfn.SINGLE('".repeat(30_000)}</calculatedColumnFormula></tableColumn></tableColumns></table>` }) },
  { slow: true, what: 'areas of a rule without number', bytes: () => one(`${cells('')}<dataValidations>${`<dataValidation type="custom" sqref="${'A1 '.repeat(1000)}"><formula1>1</formula1></dataValidation>`.repeat(5000)}</dataValidations>`), refusal: LARGE },
  { slow: true, what: 'charts that are all one chart', bytes: () => one(cells(''), { ...drawn(`<wsDr>${'<twoCellAnchor><from><col>1</col><row>1</row></from><to><col>6</col><row>9</row></to><chart id="k"/></twoCellAnchor>'.repeat(20_000)}</wsDr>`), 'xl/drawings/_rels/drawing1.xml.rels': relations(relation('k', 'chart', '../charts/c.xml')), 'xl/charts/c.xml': `<chartSpace>${'<a/>'.repeat(200_000)}</chartSpace>` }), refusal: LARGE },
  { what: 'a drawing that is its own drawing', bytes: () => one(cells(''), { 'xl/worksheets/_rels/sheet1.xml.rels': relations(relation('d', 'drawing', 'sheet1.xml')) }) },
  { what: 'a workbook that is its own sheet', bytes: () => zip({ ...workbook(''), 'xl/_rels/workbook.xml.rels': relations(relation('s', 'worksheet', 'workbook.xml')) }) },
  { slow: true, what: 'zeros by the hundred million', bytes: () => one('', { [SHEET]: { content: new Uint8Array(190_000_000) } }), refusal: DAMAGED },
]; // prettier-ignore

/** Opens bombs: each is refused in its words or opened, in time. */
export async function bombs(wanted: readonly Bomb[], limits: Limits, report: Report): Promise<void> {
  for (const { what, bytes, refusal } of wanted) {
    report.begins(`a file: ${what}`);
    const said: string[] = [];
    const fault = await tryFile(bytes(), { ...limits, hears: (words) => said.push(words) }, report);
    const words = said.join(' ');
    const isExpected = refusal === undefined ? words === '' : refusal.test(words);
    const escape =
      fault ?? (isExpected ? undefined : `was not met as it should be: ${words || 'it was opened'}`);
    if (escape !== undefined)
      report.escaped({ what: `${what}: ${escape}`, name: 'files', seed: 0, given: '' });
  }
}
