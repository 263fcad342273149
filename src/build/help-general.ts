import { CATALOGUE, NAMESPACE } from '../catalogue';
import type { Quantity } from '../catalogue/quantities';
import { type Arg, quantitiesOf } from '../catalogue/types';
import { exactMark, marks, markText } from '../exposure/stops/marks';
import { unbroken } from '../pane/numberText';
import { type Beside, CARE, caution, text } from './page';

interface Part {
  readonly id: string;
  readonly heading: string;
  readonly body: string;
}

const paragraphs = (...all: readonly string[]): string =>
  all.map((content) => `<p>${content}</p>\n`).join('');
const code = (content: string): string => `<code>${text(content)}</code>`;
const ours = (call: string): string => code(`=${NAMESPACE}.${call}`);

const EMPTY = { missing: 'missing', zero: '0' } as const;
const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** "Distance, m"; a unit that the name says already is not said twice. */
function labelOf({ title, unit }: Quantity): string {
  const name = capital(title.replace(/^an? /, ''));
  return unit === '' || name.toLowerCase().split(' ').includes(unit.toLowerCase())
    ? name
    : `${name}, ${unit}`;
}

/** Every quantity that some argument takes; those that a reader cannot tell apart share a line. */
function quantityLines(): string {
  const lines = new Map<string, Quantity[]>();
  for (const row of CATALOGUE)
    for (const quantity of (row.args as readonly Arg[]).flatMap(({ kind }) => quantitiesOf(kind))) {
      if (quantity.forms.length === 0) continue;
      const key = labelOf(quantity);
      const known = lines.get(key) ?? [];
      if (!known.includes(quantity)) lines.set(key, [...known, quantity]);
    }
  return [...lines]
    .sort(([a], [b]) => a.localeCompare(b, 'en'))
    .map(([label, all]) => {
      const forms = [...new Set(all.flatMap((quantity) => quantity.forms))];
      const empty = [...new Set(all.map(({ blank }) => EMPTY[blank]))];
      return `<tr><th scope="row">${text(label)}</th><td>${text(unbroken(forms.join(', ')))}</td><td>${empty.join(' or ')}</td></tr>\n`;
    })
    .join('');
}

const CELLS = `${paragraphs(
  'Values are read the way they are written on a set. A number without a unit counts in the unit named here.',
)}<table>
<thead><tr><th scope="col">Value</th><th scope="col">Write</th><th scope="col">Empty cell</th></tr></thead>
<tbody>
${quantityLines()}</tbody>
</table>
${paragraphs(
  'An empty cell is missing, not zero, wherever zero has no meaning; an argument that may be left out then takes what stands in for it.',
  `A spreadsheet turns ${code('1/8')} typed into a plain cell into a date, and ${code('3:1')} into a time of day. Type ${code('=1/8')}, or format the cell as text first. A function that meets a date says so.`,
  'Every value may be a cell or a range. A range in gives a range out, which needs empty cells to spill into.',
)}`;

const shownExact = (exact: number): string => String(Number(exact.toFixed(3)));
const markList = (): string =>
  marks('aperture', 'third')
    .filter(({ marked }) => marked >= 1 && marked <= 64)
    .map(
      ({ marked }) =>
        `<li>${markText('aperture', marked)} = ${shownExact(exactMark('aperture', marked) ?? marked)}</li>\n`,
    )
    .join('');

const MARKS = `${paragraphs(
  `Rings, meters and displays show rounded figures: f/11 is 11.314, and 1/60 s is 1/64 s. A marked value counts as the exact value behind the mark, so that ${ours('STOPDIFF(8,11)')} is one stop and nothing else.`,
  'A figure that is on no ring counts as it stands: 11.3 is f/11.30. Some functions of lists go further: one such figure shows that the whole list was read to decimals, and then 11 beside it is 11.00. Their help says so.',
  'These are the third-stop marks of lenses, with what they count as:',
)}<ul class="marks">
${markList()}</ul>
`;

const TENTHS = paragraphs(
  'A flash meter shows 11 with a small 3 beside it: f/11 and three tenths of a stop, which is 12.55. The number 11.3 is something else: f/11.30.',
  `Write ${code('f/11+0.3')} or ${code('11³')} in the cell, or ${ours('FNUMBER(11,3)')} from a reading in two cells.`,
  `${ours('STOPTEXT')} writes an exact value back as a mark with its tenths.`,
);

const table = (headings: readonly string[], rows: readonly (readonly [string, string])[]): string => `<table>
<thead><tr>${headings.map((heading) => `<th scope="col">${heading}</th>`).join('')}</tr></thead>
<tbody>
${rows.map(([head, words]) => `<tr><th scope="row">${head}</th><td>${words}</td></tr>\n`).join('')}</tbody>
</table>
`;

const ERRORS: readonly (readonly [string, string])[] = [
  ['#VALUE!', 'A value cannot be read, or is missing.'],
  ['#NUM!', 'A value is read, but impossible: an aperture below zero.'],
  ['#N/A', 'The values are possible, and there is no answer: no number of pops is enough.'],
];
const SPILL = ['#SPILL!', 'A list has no room: cells beside or below the formula are full.'] as const;
const NO_NAME = `A name is not known. The names of these functions begin with ${NAMESPACE} and a dot, as in ${ours('STOPDIFF(8,11)')}.`;

const REFUSALS: Readonly<Record<Beside, string>> = {
  excel: `${table(
    ['Cell', 'What happened'],
    [
      ...ERRORS,
      ['#NAME?', `${NO_NAME} Where Excel shows it for all of them, open the pane and press Recalculate.`],
      ['#BUSY!', 'Excel waits for the add-in. Open the pane and wait a moment.'],
      SPILL,
    ],
  )}${paragraphs('Select the cell and point at the sign beside it: Excel shows the reason for #VALUE! and #N/A in a sentence that says what to write instead. Nothing is guessed.')}`,
  workbench: `${table(
    ['Cell', 'What happened'],
    [...ERRORS, ['#NAME?', `${NO_NAME} The tip at the cell says which one may be meant.`], SPILL],
  )}${paragraphs(
    'Point at the cell: a tip says the reason, and what to write instead. <b>Explain</b>, in the pane, says it of the selected cell. Nothing is guessed.',
    'What a cell does not allow is not taken: it stays open with what was typed, and a tip beside it says why. Escape gives back what was there. Where you have typed on, the tip keeps what was not taken, and a button that leads back to the cell.',
  )}`,
};

const COMES_IN: Readonly<Record<Beside, string>> = {
  excel: 'can be taken back as one: press <b>Take back</b>, below in the pane',
  workbench: 'goes as one with Ctrl+Z',
};
const GOES: Readonly<Record<Beside, string>> = {
  excel:
    'Where a sheet is deleted in which others look up, Excel leaves their formulas without an answer, and their rows say what is missing. Link sheets names such columns and makes inputs of them again.',
  workbench:
    'Where a sheet is deleted in which others look up, they keep what they looked up last, as if it had been typed.',
};

const job = (beside: Beside): string => `<ol>
<li><b>Heads</b>: a row a model, with its range of power, its dial and its recycling. You type it once.</li>
<li><b>Pops plan</b>: meter one pop of each light alone and type it in. It says power, pops and the order of switching off for all of them, and looks up by its name what a head can do.</li>
<li><b>Set card</b>: dials in big figures, and a ring to tick for each pop. Print it, or copy it as values for a phone.</li>
</ol>
${paragraphs(
  `<b>New job</b>, in the pane, inserts the three with a demo job in them, each linked to those before it, and ${COMES_IN[beside]}. Type your own over it.`,
  'Sheets that came in one by one and the other way round have numbers of their own. <b>Link sheets</b>, below the list in the pane, shows what it would look up where before it changes anything, and can be taken back.',
  '<b>Balance</b>, in the pane, takes a table with a row a point and a column a head, and says which powers and pops bring several points nearest to what each shall read. <b>Lay a table</b> shows how it is filled: readings such as 11 3, E where the meter shows that there is too little light, none where no light falls.',
  `${GOES[beside]} Pops build and Depth options look up the times of their slowest head in the same way.`,
)}`;

const WORKBENCH = `${table(
  ['Keys', 'What they do'],
  [
    ['Ctrl+F6', 'From the cells to the foot of the nearest table, then to the pane, and back.'],
    [
      'Ctrl+Shift+F6',
      'To the buttons of the bar, from where Tab goes on to the tools; and back to the cells.',
    ],
    ['Ctrl+Alt+Page Down, Page Up', 'To the next sheet, and to the one before.'],
    ['Ctrl+Z, Ctrl+Y', 'Takes a step back, and does it again.'],
    ['Ctrl+F, Ctrl+H', 'Finds, and replaces what was typed.'],
    ['Ctrl+S', 'Saves the workbook as a file, .xlsx.'],
    [
      'Ctrl+P',
      'Prints the sheet in view, light on paper whatever the screen is; <b>Print all</b>, in the bar, all of them.',
    ],
    [
      'Alt+Down',
      'Opens the list of a cell that has one: arrows lead through it, Enter chooses, Escape closes it.',
    ],
    [
      'Shift+F10',
      'Opens the menu of what is chosen, as the menu key does: arrows lead through it, Enter chooses, Escape closes it.',
    ],
    ['Ctrl+Alt+Enter', 'Adds a row to the table of the chosen cell; Tab in its last cell does so too.'],
    ['Ctrl+Alt+S, Ctrl+Alt+F', 'Sorts the table of the chosen cell, and filters it.'],
    ['Ctrl+Alt+5', 'To the charts of the sheet; arrows move one, with Shift they size it.'],
    ['F1', 'Opens this page.'],
    ['Escape', 'Gives up what is being typed.'],
  ],
)}${table(
  ['Fingers', 'What they do'],
  [
    ['Swipe', 'Scrolls the sheet, wherever it begins; below it, the names of the sheets, and the sums.'],
    [
      'Tap',
      'Chooses a cell, or by its heading a row or a column. A tap on the chosen cell opens its list, or opens it for writing.',
    ],
    [
      'Hold, then drag',
      'Chooses several cells, or fills on from the corner of those that are chosen; moves a chart, or sizes it by its corner; puts the chosen name of a sheet elsewhere.',
    ],
    ['Hold, then lift', 'Opens the menu: copy, paste, insert, delete.'],
    ['Two fingers', 'Drawn apart they make the sheet larger, together smaller.'],
  ],
)}${paragraphs(
  'The page is dark where the system is; <b>Dark</b>, in the bar, turns that round. Files and paper stay light.',
  'On a small screen the pane lies over the sheet; <b>Sheets and functions</b>, in the bar, opens and closes it.',
  'Below the cells stands the sum of those that are chosen, where they can be added up: seconds with seconds, and never f-numbers. <b>Shown as</b>, among the tools, has a number read in seconds, metres, watt-seconds or stops.',
  'The workbook is kept by this browser, for this address. <b>Save as .xlsx</b> makes a file of it. <b>Open .xlsx</b> and <b>Start over</b> put another in its place, and offer the former back once.',
)}`;

const EXCEL = paragraphs(
  'The <b>Sweeptable</b> button on the Home tab opens the pane. F6 leads from the cells to it, and on.',
  'What the pane has done is taken back in the pane: <b>Take back</b> stands beside the sentence that says what was done. Excel’s own undo does not reach back over all of it.',
  'Without Sweeptable the formulas keep their last values until they are calculated anew. For people who have none, <b>Copy this sheet as values</b>, below the list of sheets. Excel on a tablet or a phone does not calculate these functions.',
);

/** What holds for all functions, after the job that they are made for. */
export const general = (beside: Beside): readonly Part[] => [
  { id: 'about-job', heading: 'A job in one minute', body: job(beside) },
  { id: 'about-cells', heading: 'How cells are read', body: CELLS },
  { id: 'about-marks', heading: 'Marks', body: MARKS },
  { id: 'about-tenths', heading: 'Tenths', body: TENTHS },
  { id: 'about-refusals', heading: 'When a cell refuses', body: REFUSALS[beside] },
  beside === 'excel'
    ? { id: 'about-excel', heading: 'In Excel', body: EXCEL }
    : { id: 'about-workbench', heading: 'In the workbench', body: WORKBENCH },
  {
    id: 'about-care',
    heading: 'Take care',
    body: caution(
      `${CARE} Keep to the number of flashes in a row that the maker allows. Figures from a sheet help you plan; meter before you shoot.`,
    ),
  },
];
