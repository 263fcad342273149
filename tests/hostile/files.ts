import { isCellError } from '../../src/formula/errors';
import { drawnCharts } from '../../src/book/chart';
import type { Book, BookSheet } from '../../src/book/book';
import { looksOutside } from '../../src/formula/looksOutside';
import { type OpenedFile, readXlsx, UnreadableFile } from '../../src/xlsx/read';
import { MOST_COLUMNS, MOST_ROWS } from '../../src/formula/areaText';
import type { Area } from '../../src/formula/area';
import { cells, type Part, workbook, zip } from '../xlsx/parts';
import { text as hostileText } from './cells';
import { Draws, seedFor } from './draws';
import { HANGS, type Report, stopwatch } from './report';

export type ReadFile = (bytes: Uint8Array) => Promise<OpenedFile>;
export type Parts = Record<string, string | Part>;

const TYPES = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
export const relation = (id: string, type: string, target: string, more = ''): string =>
  `<Relationship Id="${id}" Type="${TYPES}/${type}" Target="${target}"${more}/>`;
export const relations = (...list: readonly string[]): string =>
  `<Relationships>${list.join('')}</Relationships>`;

/** A workbook with something of everything that is read, and of what is left out. */
export const EVERYTHING: Parts = {
  ...workbook(
    '<sheetPr/><sheetViews><sheetView><pane state="frozen" ySplit="2" xSplit="1"/></sheetView></sheetViews><cols><col min="1" max="3" width="12.5" hidden="0"/></cols>' +
      cells(
        '<row r="1" ht="20"><c r="A1" t="s" s="1"><v>0</v></c><c r="B1"><f t="shared" ref="B1:B3" si="0">_xldudf_SWEEP_FNUMBER(A1,$C$1)</f><v>8</v></c><c r="C1" t="b"><v>1</v></c></row>' +
          '<row r="2"><c r="A2" t="inlineStr"><is><t>word</t></is></c><c r="B2"><f t="shared" si="0"/><v>11</v></c><c r="C2" t="e"><v>#DIV/0!</v></c></row>' +
          '<row r="3"><c r="A3" t="d"><v>2023-03-15</v></c><c r="B3"><f t="array" ref="B3:C4">_xlfn.ANCHORARRAY(A1)</f><v>1</v></c><c r="D3" t="str"><f>WEBSERVICE("http://localhost/")&amp;""</f><v>x</v></c></row>' +
          '<row r="4"><c r="A4"><f>[1]Rates!B2*2</f><v>42</v></c><c r="B4" s="2"><v>45000.25</v></c><c r="D4"><f>HYPERLINK("file:///x","y")</f><v>0</v></c></row>',
      ) +
      '<sheetProtection sheet="1"/><autoFilter ref="A1:B1"/><mergeCells><mergeCell ref="E1:F2"/></mergeCells>' +
      '<conditionalFormatting sqref="B2:B9 D2"><cfRule type="cellIs" dxfId="0" priority="3" operator="greaterThan"><formula>$A$1</formula></cfRule></conditionalFormatting>' +
      '<dataValidations><dataValidation type="decimal" operator="between" sqref="A5:A9" allowBlank="1" showErrorMessage="1" error="No."><formula1>1</formula1><formula2>9</formula2></dataValidation></dataValidations>' +
      '<pageSetup orientation="landscape"/><rowBreaks><brk id="20"/></rowBreaks><drawing r:id="d"/><tableParts><tablePart r:id="t"/></tableParts>',
    {},
    '<definedNames><definedName name="Rate">Sheet1!$A$1</definedName><definedName name="Out">[1]Rates!$A$1</definedName><definedName name="_xlnm.Print_Area" localSheetId="0">Sheet1!$A$1:$D$9</definedName></definedNames>',
  ),
  'xl/_rels/workbook.xml.rels': relations(
    relation('s', 'worksheet', 'worksheets/sheet1.xml'),
    relation('t', 'sharedStrings', 'sharedStrings.xml'),
    relation('y', 'styles', 'styles.xml'),
    relation('z', 'theme', 'theme.xml'),
    relation('e', 'externalLink', 'externalLinks/externalLink1.xml'),
    relation('m', 'vbaProject', 'vbaProject.bin'),
  ),
  'xl/sharedStrings.xml': '<sst><si><t>first _x0041_</t></si><si><r><t>=SUM(</t></r></si></sst>',
  'xl/styles.xml':
    '<styleSheet><numFmts><numFmt numFmtId="170" formatCode="0.0"/></numFmts><fonts><font><sz val="11"/><name val="Arial"/></font><font><b/><sz val="9"/><color theme="4" tint="-0.5"/></font></fonts>' +
    '<fills><fill/><fill><patternFill patternType="solid"><fgColor rgb="FF204060"/></patternFill></fill></fills><borders><border/><border><bottom style="thin"><color indexed="13"/></bottom></border></borders>' +
    '<cellXfs><xf/><xf numFmtId="170" fontId="1" fillId="1" borderId="1"><alignment horizontal="center" vertical="center" wrapText="1" indent="2"/></xf><xf numFmtId="14"/></cellXfs><dxfs><dxf><font><b/></font></dxf></dxfs></styleSheet>',
  'xl/theme.xml': '<theme><themeElements><clrScheme><dk1><sysClr lastClr="000000"/></dk1><lt1><srgbClr val="FFFFFF"/></lt1><accent1><srgbClr val="204060"/></accent1></clrScheme></themeElements></theme>',
  'xl/worksheets/_rels/sheet1.xml.rels': relations(
    relation('d', 'drawing', '../drawings/drawing1.xml'),
    relation('t', 'table', '../tables/table1.xml'),
    relation('c', 'comments', '../comments1.xml'),
    relation('h', 'hyperlink', 'http://localhost/', ' TargetMode="External"'),
  ),
  'xl/tables/table1.xml': '<table ref="A1:C4" displayName="Heads" totalsRowCount="0"><tableColumns><tableColumn name="a"/><tableColumn name="b"><calculatedColumnFormula>Heads[a]*2</calculatedColumnFormula></tableColumn><tableColumn name="c"/></tableColumns></table>',
  'xl/comments1.xml': '<comments><authors><author>one</author></authors><commentList><comment ref="A2" authorId="0"><text><r><t>A note.</t></r></text></comment></commentList></comments>',
  'xl/drawings/drawing1.xml': '<wsDr><twoCellAnchor><from><col>1</col><row>10</row></from><to><col>6</col><row>20</row></to><graphicFrame><chart id="k"/></graphicFrame></twoCellAnchor></wsDr>',
  'xl/drawings/_rels/drawing1.xml.rels': relations(relation('k', 'chart', '../charts/chart1.xml')),
  'xl/charts/chart1.xml': "<chartSpace><chart><title><t>Title</t></title><plotArea><lineChart><grouping val=\"standard\"/><ser><tx><v>Series</v></tx><cat><f>'Sheet1'!$A$1:$A$4</f></cat><val><f>'Sheet1'!$B$1:$B$4</f></val></ser></lineChart><catAx/><valAx/></plotArea></chart></chartSpace>",
  'xl/externalLinks/externalLink1.xml': '<externalLink/>',
  'xl/vbaProject.bin': 'Sub Auto_Open()\nEnd Sub',
}; // prettier-ignore

const VALUES = ['', '0', '-0', '-1', '1e999', '-1e999', 'NaN', 'Infinity', '1e308', '4294967296', '9999999', '1048577', '16385', '0.5', 'XFD1048576', 'XFE1', 'A0', 'A1:XFD1048576', 'A:A', '1:1', 'A1:A1:A1', '$', 'constructor', '__proto__', 'toString', 'true', '../../../etc', 'worksheets/sheet1.xml', 'http://localhost/', 's', 't', 'd', 'shared', 'array', 'dataTable', 'e', 'str', 'between', '&#0;', '&#x110000;', '&#xD800;', '&nope;', '_x0000_', "'[x.xlsx]S'!A1", '[1]!A1']; // prettier-ignore
const NAMES = [
  'c',
  'v',
  'f',
  'row',
  'col',
  'is',
  't',
  'brk',
  'pane',
  'mergeCell',
  'cfRule',
  'formula',
  'dataValidation',
  'constructor',
  '__proto__',
  'x:c',
  'sheet',
  'chart',
  'si',
];

/** XML with something else in the place of an attribute, a text or an element's name, or with its letters in disorder. */
function otherXml(draws: Draws, xml: string): string {
  const way = draws.share();
  const spots = [...xml.matchAll(way < 0.8 ? /(?<==")[^"]*(?=")|(?<=>)[^<>]+(?=<)/g : /(?<=<)[\w:]+/g)];
  if (way >= 0.9 || spots.length === 0) return otherLetters(draws, xml);
  const { 0: old, index } = draws.pick(spots);
  if (way >= 0.8) {
    const name = draws.pick(NAMES);
    return xml.replaceAll(new RegExp(`(?<=</?)${old}(?=[ />])`, 'g'), name);
  }
  const value = draws.isSo(0.85) ? draws.pick(VALUES) : hostileText(draws).replace(/[<"&]/g, '');
  return xml.slice(0, index) + value + xml.slice(index + old.length);
}

function otherLetters(draws: Draws, xml: string): string {
  const at = draws.whole(0, xml.length);
  const end = at + draws.whole(0, 60);
  const sign = draws.pick(['<', '>', '&', '"', ']]>', '<!--', '<![CDATA[', '\0', '<a>', '</a>']);
  return draws.pick([
    xml.slice(0, at) + xml.slice(end),
    xml.slice(0, end) + xml.slice(at),
    xml.slice(0, at) + sign + xml.slice(at),
  ]);
}

const SHEET = 'xl/worksheets/sheet1.xml';

function otherParts(draws: Draws): Parts {
  const parts = { ...EVERYTHING };
  const names = Object.keys(parts);
  for (let times = draws.pick([1, 1, 2, 3, 6]); times > 0; times--) {
    const name = draws.isSo(0.5) ? SHEET : draws.pick(names);
    const way = draws.share();
    if (way < 0.85) parts[name] = otherXml(draws, parts[name] as string);
    else if (way < 0.9) parts[name] = parts[draws.pick(names)] as string;
    else if (way < 0.95) parts[name] = { content: parts[name] as string, claims: draws.pick([0, 1, 1000, 199_000_000, 4_294_967_295]) };
    else parts[draws.pick(NAMES)] = 'x';
    if (typeof parts[name] !== 'string') break;
  }
  return parts;
} // prettier-ignore

function otherBytes(draws: Draws, whole: Uint8Array): Uint8Array {
  const way = draws.share();
  if (way < 0.3) return whole.slice(0, draws.whole(0, whole.length));
  const bytes = way < 0.4 ? new Uint8Array([...whole, ...draws.times(draws.whole(1, 40), () => draws.whole(0, 255))]) : whole.slice();
  // The directory at the end is where a zip file can lie.
  const from = draws.isSo(0.5) ? Math.max(0, bytes.length - 1500) : 0;
  for (let times = draws.pick([1, 2, 8]); times > 0; times--)
    bytes[draws.whole(from, bytes.length - 1)] = draws.pick([0, 1, 255, draws.whole(0, 255)]);
  return bytes;
} // prettier-ignore

const isCount = (x: number, most: number): boolean => Number.isInteger(x) && x >= 0 && x <= most;
const isOff = ({ row, column, rows, columns }: Area): boolean =>
  !isCount(row, MOST_ROWS - 1) || !isCount(column, MOST_COLUMNS - 1) || !(rows >= 1 && columns >= 1) ||
  !isCount(row + rows, MOST_ROWS) || !isCount(column + columns, MOST_COLUMNS); // prettier-ignore
/** The largest sizes that spreadsheets take, in points and characters. */
const MOST = { height: 409.5, width: 255, size: 409, indent: 250 } as const;

function sheetFault(sheet: BookSheet): string | undefined {
  for (const { row, column, value, style, formula } of sheet.cells) {
    if (isOff({ row, column, rows: 1, columns: 1 })) return `a cell off the sheet: ${row}, ${column}`;
    if (typeof value === 'number' && (!Number.isFinite(value) || Object.is(value, -0))) return `${value} in a cell`;
    if (typeof value === 'object' && value !== null && !isCellError(value)) return `the unknown error ${JSON.stringify(value)}`;
    if (formula !== undefined && (!/^=./s.test(formula) || formula.length > 8193)) return `a formula that is none: ${formula.slice(0, 40)}`;
    if (formula !== undefined && looksOutside(formula)) return `a formula that looks outside: ${formula}`;
    const { size = 1, indent = 0 } = style ?? {};
    if (!(size > 0 && size <= MOST.size) || !(indent >= 0 && indent <= MOST.indent)) return `a look beyond measure: ${size}, ${indent}`;
  }
  const inCharts = drawnCharts(sheet).flatMap(({ x, place, series }) => [x, place, ...series.flatMap((s) => [s.x, s.values])]);
  const inRules = [...sheet.rules, ...sheet.conditions].flatMap(({ areas }) => areas);
  const areas = [...sheet.merges, ...sheet.tables.map(({ area }) => area), ...inCharts, ...inRules, ...(sheet.page.area ? [sheet.page.area] : [])];
  const off = areas.find(isOff);
  if (off) return `an area off the sheet: ${JSON.stringify(off)}`;
  const formulas = [...sheet.conditions.flatMap((c) => (c.kind === 'formula' ? c.formula : [])), ...sheet.rules.flatMap(({ bounds }) => bounds), ...sheet.tables.flatMap(({ columns }) => columns.flatMap(({ formula }) => formula ?? []))];
  const outside = formulas.find((formula) => looksOutside(formula) || formula.includes('[native code]'));
  if (outside !== undefined) return `a formula that looks outside: ${outside}`;
  if (Object.values(sheet.heights).some((x) => !(x > 0 && x <= MOST.height)) || Object.values(sheet.widths).some((x) => !(x > 0 && x <= MOST.width))) return 'a row or column beyond measure';
  const { freeze, page } = sheet;
  if (!isCount(freeze.rows, MOST_ROWS) || !isCount(freeze.columns, MOST_COLUMNS) || !isCount(page.titleRows, MOST_ROWS) || page.breaks.some((row) => !isCount(row, MOST_ROWS))) return 'rows or columns that no sheet has';
  return undefined;
} // prettier-ignore

/** What no host can show of what was read; undefined where it is in order. */
function readFault({ book, notUnderstood }: OpenedFile): string | undefined {
  if (notUnderstood.some((sentence) => typeof sentence !== 'string' || !/^[A-Z].*\.$/s.test(sentence)))
    return 'what was left out is told in no sentences';
  const { sheets, names }: Book = book;
  if (names.some(({ formula }) => looksOutside(formula))) return 'a name that looks outside';
  return sheets.map(sheetFault).find((fault) => fault !== undefined);
}

/** The reader's answer, or that it hangs. */
async function inTime<T>(answer: Promise<T>, seconds: number): Promise<T | 'hangs'> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<'hangs'>((done) => (timer = setTimeout(() => done('hangs'), seconds * 1000)));
  return Promise.race([answer, late]).finally(() => clearTimeout(timer));
}

export interface Limits {
  readonly read?: ReadFile;
  readonly seconds?: number;
  /** Told what a file was refused with. */
  readonly hears?: (refusal: string) => void;
}

/** Reads a file. Undefined where it is refused in a sentence, or read in order and in time. */
export async function tryFile(
  bytes: Uint8Array,
  limits: Limits,
  report: Report,
): Promise<string | undefined> {
  const { read = readXlsx, seconds = HANGS, hears = () => undefined } = limits;
  const worked = stopwatch();
  const fault = await outcome(bytes, { read, seconds, hears }, report);
  const took = worked();
  report.slowest(took, 'a file');
  return fault ?? (took > seconds ? `took ${took.toFixed(1)} s` : undefined);
}

async function outcome(
  bytes: Uint8Array,
  { read, seconds, hears }: Required<Limits>,
  report: Report,
): Promise<string | undefined> {
  try {
    const found = await inTime(read(bytes), 3 * seconds);
    if (found === 'hangs') return 'hangs';
    report.answered(true);
    return readFault(found);
  } catch (error) {
    if (!(error instanceof UnreadableFile)) return `threw ${String(error).slice(0, 200)}`;
    report.answered(false);
    hears(error.message);
    return /^This file .*\.$/.test(error.message) ? undefined : `refused in no sentence: ${error.message}`;
  }
}

const damagedFile = (draws: Draws): Uint8Array =>
  draws.isSo(0.3) ? otherBytes(draws, zip(EVERYTHING)) : zip(otherParts(draws));

/** So many files with random damage: each is refused in a sentence or read, in time, and what was read is in order. */
export async function hostileFiles(
  { count, seed, ...limits }: { readonly count: number; readonly seed: number } & Limits,
  report: Report,
): Promise<void> {
  for (let n = 0; n < count; n++) {
    report.begins(`--seed ${seed + n} --only files 1`);
    const bytes = damagedFile(new Draws(seedFor(seed + n, 'files')));
    const what = await tryFile(bytes, limits, report);
    if (what !== undefined)
      report.escaped({ what, name: 'files', seed: seed + n, given: `${bytes.length} bytes` });
  }
}
