import { expect, test } from 'vitest';
import { readXlsx } from '../../src/xlsx/read';
import { cells, workbook, zip } from './parts';

const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const relation = (type: string, target: string): string =>
  `<Relationships><Relationship Id="k" Type="${OFFICE}/${type}" Target="${target}"/></Relationships>`;
const from = (area: string): string => `<strRef><f>Sheet1!${area}</f></strRef>`;

/** A sheet with words in A, numbers in B and their headings above, and a chart of it as another program writes it. */
const fileWith = (chart: string): Uint8Array =>
  zip(
    workbook(
      `${cells('<row r="1"><c r="A1" t="inlineStr"><is><t>Head</t></is></c><c r="B1" t="inlineStr"><is><t>Watts</t></is></c><c r="C1"><v>400</v></c></row><row r="2"><c r="A2" t="inlineStr"><is><t>Alder</t></is></c><c r="B2"><v>100</v></c></row>')}<drawing id="k"/>`,
      {
        'xl/worksheets/_rels/sheet1.xml.rels': relation('drawing', '../drawings/drawing1.xml'),
        'xl/drawings/drawing1.xml':
          '<wsDr><twoCellAnchor><from><col>3</col><row>1</row></from><to><col>8</col><row>12</row></to><graphicFrame><chart id="k"/></graphicFrame></twoCellAnchor></wsDr>',
        'xl/drawings/_rels/drawing1.xml.rels': relation('chart', '../charts/chart1.xml'),
        'xl/charts/chart1.xml': `<chartSpace><chart>${chart}</chart></chartSpace>`,
      },
    ),
  );
const bars = (name: string): string =>
  `<plotArea><barChart><barDir val="col"/><grouping val="clustered"/><ser><tx>${name}</tx><cat>${from('$A$2:$A$2')}</cat><val><numRef><f>Sheet1!$B$2:$B$2</f></numRef></val></ser></barChart><catAx/><valAx/></plotArea>`;
const chartIn = async (chart: string) => (await readXlsx(fileWith(chart))).book.sheets[0]?.charts[0];

test.each([
  ['the words last seen in its cell', '<strRef><f>Sheet1!$B$1</f><strCache><pt><v>Once</v></pt></strCache></strRef>', 'Once'],
  ['what its cell holds, where the file keeps no words of it', from('$B$1'), 'Watts'],
  ['the number in its cell', from('$C$1'), '400'],
  ['the words typed in', '<v>Typed</v>', 'Typed'],
  ['none where its cell is empty', from('$Z$9'), ''],
  ['none where it comes from another sheet', '<strRef><f>Other!$B$1</f></strRef>', ''],
])('a series is called by %s', async (_, name, called) =>
  expect((await chartIn(bars(name)))?.series).toEqual([
    { name: called, values: { cells: { row: 1, column: 1, rows: 1, columns: 1 } } },
  ])); // prettier-ignore

test('a chart and its axes are called by their cells too', async () => {
  const titled = bars('<v>W</v>').replace(
    '<catAx/>',
    `<catAx><title><tx>${from('$A$1')}</tx></title></catAx>`,
  );
  expect(await chartIn(`<title><tx>${from('$B$1')}</tx></title>${titled}`)).toMatchObject({
    title: 'Watts',
    xTitle: 'Head',
  });
});

const line = (look: string, axes: string): string =>
  `<lineChart><grouping val="standard"/><ser><tx><v>Most</v></tx><spPr><ln><prstDash val="${look}"/></ln></spPr><marker><symbol val="none"/></marker><cat>${from('$A$2:$A$2')}</cat><val><numRef><f>Sheet1!$C$2:$C$2</f></numRef></val></ser>${axes}</lineChart>`;
const over = (look: string, axes = '<axId val="1"/><axId val="2"/>'): string =>
  bars('<v>W</v>').replace('</barChart>', `<axId val="1"/><axId val="2"/></barChart>${line(look, axes)}`);

test('a constant line over columns is read with them', async () =>
  expect((await chartIn(over('sysDash')))?.series.map(({ name, role }) => [name, role])).toEqual([
    ['W', undefined],
    ['Most', 'limit'],
  ]));
test.each([
  ['another line than a constant one', over('solid')],
  ['a line on axes of its own', over('sysDash', '<axId val="3"/><axId val="4"/>')],
  ['a third group', over('sysDash').replace('<catAx/>', '<areaChart/><catAx/>')],
])('columns with %s are left out, and said', async (_, chart) => {
  const { book, notUnderstood } = await readXlsx(fileWith(chart));
  expect(book.sheets[0]?.charts).toEqual([]);
  expect(notUnderstood).toEqual([expect.stringContaining('Charts that are not plain lines or columns')]);
});
