import type { BookCell, BookCondition, BookPage, BookRule, BookSheet, BookTable, Part } from '../book/book';
import { KINDS } from '../book/kinds';
import type { KnownTable, ToldPage } from '../book/kinds/kind';
import { rowHeights } from '../book/widthsAndHeights';
import { pageBreaks } from '../book/printedPages';
import { type Place, parseAddress } from '../formula/address';
import { area, type Area } from '../formula/area';
import { quotedText } from '../formula/quotedText';
import { tableConditions, warned } from './warnings';
import { formatOf } from './formats';
import {
  blockPlace,
  blockRows,
  fieldRow,
  isGiven,
  isInput,
  type Layout,
  layout,
  tableTop,
  valueColumns,
} from './layout';
import { type Shape, styleOf } from './looks';
import type { SheetPlan } from './plan';
import { planChart } from './planChart';
import { bookRule } from './inputRules';
import { settled } from './settleFormula';
import { settleLookUps } from './settleLookUps';
import type {
  Accepts,
  TemplateColumn,
  Field,
  Form,
  TemplateTable,
  Template,
  TemplateValue,
} from './template';

/** What a plan has to know of the workbook it is for. */
export interface Wish {
  /** With the demo job in the inputs, or with empty inputs. */
  readonly filled: boolean;
  /** What is in the workbook already: names that are taken, and tables to look up in. */
  readonly sheets: readonly string[];
  readonly tables: readonly KnownTable[];
  /** Those of the tables that came in the same step: a job looks up in its own sheets, not in those of an earlier one. */
  readonly together?: readonly KnownTable[];
  /** What cells and formulas are called there: a table may not have a name of theirs. */
  readonly names: readonly string[];
}

const LONGEST_SHEET_NAME = 31;

/** The first of these names that nobody has, whatever the case of its letters. */
function firstFree(nth: (n: number) => string, taken: readonly string[]): string {
  const used = new Set(taken.map((name) => name.toLowerCase()));
  let n = 1;
  while (used.has(nth(n).toLowerCase())) n++;
  return nth(n);
}

/** A name nobody has: "Pops build", "Pops build (2)", … */
export const freeSheetName = (wanted: string, taken: readonly string[]): string =>
  firstFree((n) => {
    const end = n === 1 ? '' : ` (${n})`;
    return wanted.slice(0, LONGEST_SHEET_NAME - end.length) + end;
  }, taken);

/** The same for a table: Lights, Lights_2, … */
export const freeTableName = (wanted: string, taken: readonly string[]): string =>
  firstFree((n) => (n === 1 ? wanted : `${wanted}_${n}`), taken);

/** What stands in a cell, and how it differs from others of its part. */
interface Content extends Shape, Pick<BookCell, 'formula' | 'note'> {
  readonly value?: TemplateValue;
}

const TENTHS: Accepts = {
  least: 0,
  most: 9,
  whole: true,
  message: 'Tenths of a stop: a whole number from 0 to 9, the small figure on the meter.',
};

class Builder {
  private readonly cells: BookCell[] = [];
  private readonly merges: Area[] = [];
  private readonly tables: BookTable[] = [];
  private readonly rules: BookRule[] = [];
  private readonly conditions: BookCondition[] = [];
  private readonly map: Layout;
  private readonly tableNames: ReadonlyMap<string, string>;
  private readonly formulas = new Map<string, string>();
  private readonly template: Template;
  private readonly filled: boolean;
  /** What is told of the pages. */
  private readonly told: readonly ToldPage[];
  /** Points of the smallest words that print. */
  private readonly least: number;
  /** The last cell that prints; titles and cautions run across to it. */
  private readonly last: Place | undefined;

  constructor(template: Template, wish: Wish) {
    const workbook = settleLookUps(template, wish.tables, wish.together);
    this.template = workbook.template;
    this.filled = wish.filled;
    this.told = KINDS.map((kind) => kind.page?.(template) ?? {});
    this.least = Math.max(0, ...KINDS.map((kind) => kind.least?.(template) ?? 0));
    this.last = this.told.find(({ last }) => last)?.last;
    this.map = layout(this.template);
    const taken = [...wish.tables.map(({ name }) => name), ...wish.names];
    const own = [...this.map.tables.keys()].map((id) => [id, freeTableName(id, taken)] as const);
    this.tableNames = new Map([...own, ...workbook.partners]);
  }

  /** A formula with its addresses settled. A column has the same one in every row: it is settled once. */
  formula(text: string, table?: TemplateTable): string {
    const key = `${table?.id ?? ''} ${text}`;
    const known = this.formulas.get(key);
    if (known !== undefined) return known;
    const made = settled(text, this.map, this.tableNames, table);
    this.formulas.set(key, made);
    return made;
  }

  put(at: Place, part: Part, { value = null, formula, note, ...shape }: Content): void {
    const style = styleOf(part, shape);
    this.cells.push({
      ...at,
      part,
      value,
      ...(formula === undefined ? {} : { formula }),
      style: { ...style, size: Math.max(at.column < this.across ? this.least : 0, style.size ?? 0) },
      ...(note === undefined ? {} : { note }),
    });
  }

  /** Columns that print. */
  private get across(): number {
    return this.last ? this.last.column + 1 : this.map.columns;
  }

  /** A line of words across the sheet. */
  line(row: number, part: Part, value: string): void {
    const at = { row, column: 0 };
    this.put(at, part, { value, wrap: true });
    this.merges.push(area(at, 1, this.across));
  }

  /** An input or a result. */
  content(
    at: Place,
    meaning: Field | TemplateColumn,
    value: TemplateValue | undefined,
    table?: TemplateTable,
  ): void {
    const format = formatOf(meaning.quantity);
    if (!format) return;
    const part = partOf(meaning);
    this.put(at, part, {
      ...this.holds(meaning, value, table),
      // A fraction that the sheet holds is text like one that is typed, or it becomes a date.
      format: isInput(meaning) || (isHeld(meaning) && format.text) ? format.input : format.result,
      align: format.align,
      ...(meaning.note === undefined ? {} : { note: meaning.note }),
      ...KINDS.reduce<Shape>((look, kind) => ({ ...look, ...kind.look?.(meaning, part) }), {}),
    });
  }

  /** The value or the formula of a cell. */
  holds(
    meaning: Field | TemplateColumn,
    value: TemplateValue | undefined,
    table?: TemplateTable,
  ): Pick<Content, 'value' | 'formula'> {
    if (!isGiven(meaning)) return { formula: this.formula(meaning.formula as string, table) };
    if (isInput(meaning)) return { value: this.filled ? (value ?? null) : null };
    const isFormula = 'fixed' in meaning && meaning.fixed === 'formulas';
    return isFormula ? { formula: this.formula(String(value), table) } : { value: value ?? null };
  }

  accept(accepts: Accepts | undefined, where: Area): void {
    if (accepts) this.rules.push(bookRule(where, accepts));
  }

  form(form: Form): void {
    const start = blockPlace(form);
    this.put(start, 'section', { value: form.title });
    for (const [i, field] of form.fields.entries()) {
      const row = fieldRow(form, i);
      const value = { row, column: start.column + 1 };
      if (field.label !== undefined) this.put({ row, column: start.column }, 'label', { value: field.label });
      this.content(value, field, field.value);
      this.widen(value, field);
      this.accept(field.accepts, area(value, 1, 1));
      if (field.tenths) {
        const small = { row, column: start.column + 2 };
        this.content(
          small,
          {
            id: field.tenths.id,
            quantity: 'tenths',
            note: 'Tenths of a stop: the small figure beside the full stop on the meter.',
          },
          field.tenths.value,
        );
        this.accept(TENTHS, area(small, 1, 1));
      }
      this.remark({ row, column: start.column + 3 }, field, value);
    }
  }

  /** Has the value of a field take the columns right of it as well. */
  widen(value: Place, field: Field): void {
    const columns = valueColumns(field);
    if (columns === 1) return;
    const { part, style } = this.cells.at(-1) ?? {};
    const same = { value: null, ...(part && { part }), ...(style && { style }) };
    for (let c = 1; c < columns; c++) this.cells.push({ row: value.row, column: value.column + c, ...same });
    this.merges.push(area(value, 1, columns));
  }

  /** The words beside a value: its remark, or its warning while that holds. */
  remark(at: Place, field: Field, value: Place): void {
    const words = field.remark ?? '';
    if (!field.warning) {
      if (words) this.put(at, 'remark', { value: words });
      return;
    }
    const when = this.formula(field.warning.when).slice(1);
    const { text } = field.warning;
    const said = text.startsWith('=') ? `"! "&${this.formula(text).slice(1)}` : quotedText(`! ${text}`);
    this.put(at, 'warning', { formula: `=IF(${when},${said},${quotedText(words)})` });
    this.conditions.push(
      warned(area(value, 1, 1), `=${when}`),
      warned(area(at, 1, this.room(at)), `=${when}`),
    );
  }

  /** Columns that words have from a cell on: to what stands right of it, or to the edge of the page. */
  room({ row, column }: Place): number {
    const { blocks, charts } = this.template;
    const others = [
      ...blocks.map((block) => area(blockPlace(block), blockRows(block), 1)),
      ...charts.map((chart) => planChart(chart, this.map, this.tableNames).place),
    ];
    const beside = others.filter((o) => o.column > column && row >= o.row && row < o.row + o.rows);
    return Math.max(1, Math.min(this.across, ...beside.map((other) => other.column)) - column);
  }

  table(table: TemplateTable): void {
    const start = blockPlace(table);
    const top = tableTop(table);
    this.put(start, 'section', { value: table.title });
    let given = 0;
    const columns: BookTable['columns'][number][] = [];
    for (const [c, column] of table.columns.entries()) {
      const at = { row: top, column: start.column + c };
      const body = area({ row: top + 1, column: at.column }, table.rows.length, 1);
      const index = isGiven(column) ? given++ : -1;
      this.put(at, 'heading', {
        value: column.id,
        wrap: true,
        align: formatOf(column.quantity)?.align ?? 'left',
        ...(column.note === undefined ? {} : { note: column.note }),
      });
      const { note: _, ...meaning } = column;
      for (const [r, row] of table.rows.entries())
        this.content({ row: top + 1 + r, column: at.column }, meaning, row[index], table);
      if (column.tenths) this.accept(TENTHS, body);
      this.accept(column.accepts, body);
      columns.push({
        name: column.id,
        ...(column.formula === undefined ? {} : { formula: this.formula(column.formula, table) }),
      });
    }
    this.conditions.push(...tableConditions(table, this.map));
    this.tables.push({
      name: this.tableNames.get(table.id) as string,
      area: area({ row: top, column: start.column }, 1 + table.rows.length, table.columns.length),
      columns,
    });
  }

  /** Cells that are kept free: their edges stand in each of them, and the words in the first. */
  slots(): void {
    for (const { place, words } of KINDS.flatMap((kind) => kind.slots?.(this.template) ?? [])) {
      for (let row = place.row; row < place.row + place.rows; row++)
        for (let column = place.column; column < place.column + place.columns; column++)
          this.put({ row, column }, 'slot', {
            value: row === place.row && column === place.column ? words : null,
            wrap: true,
          });
      this.merges.push(place);
    }
  }

  /** The last lines; gives the first row below everything. */
  cautions(below: number): number {
    const { cautions, cautionsAt } = this.template;
    const first = cautionsAt === undefined ? below + 1 : (parseAddress(cautionsAt)?.row ?? 0);
    for (const [i, caution] of cautions.entries()) this.line(first + i, 'caution', caution);
    return cautions.length > 0 ? Math.max(below, first + cautions.length) : below;
  }

  /** Rows that head each page: those that stay in view, or the headings of a long table. */
  titles(): Pick<BookPage, 'titleRows' | 'titlesFrom'> {
    const { headsPages = '', freezeRows } = this.template;
    const table = this.map.tables.get(headsPages);
    return table ? { titleRows: 1, titlesFrom: tableTop(table) } : { titleRows: freezeRows };
  }

  plan(name: string): SheetPlan {
    const { template, map, cells, last } = this;
    this.line(0, 'title', template.answers);
    this.line(1, 'lead', template.start);
    for (const block of template.blocks) {
      if (block.kind === 'form') this.form(block);
      else this.table(block);
    }
    this.slots();
    const charts = template.charts.map((chart) => planChart(chart, map, this.tableNames));
    const end = this.cautions(
      charts.reduce((lowest, { place: p }) => Math.max(lowest, p.row + p.rows), map.end),
    );
    const widths = { ...template.columns };
    const heights = rowHeights(cells, widths, this.merges);
    const page: Omit<BookPage, 'breaks'> = {
      landscape: template.landscape,
      header: name,
      ...this.titles(),
      area: area({ row: 0, column: 0 }, last ? last.row + 1 : end, this.across),
    };
    const sheet: BookSheet = {
      name,
      hidden: false,
      widths,
      heights,
      cells,
      merges: this.merges,
      freeze: { rows: template.freezeRows, columns: 0 },
      gridlines: false,
      tables: this.tables,
      rules: this.rules,
      conditions: this.conditions,
      charts,
      page: {
        ...page,
        breaks: pageBreaks(
          { charts, widths, heights },
          page,
          this.told.flatMap(({ breaks }) => breaks ?? []),
        ),
      },
    };
    const names = [...map.cells].map(([id, { place: at }]) => ({ name: id, ...at }));
    return { sheet, names, start: cells.find(isTypedIn) };
  }
}

function partOf(meaning: Field | TemplateColumn): Part {
  if (isInput(meaning)) return meaning.accepts?.list ? 'choice' : 'input';
  if ('answer' in meaning && meaning.answer) return 'answer';
  return isHeld(meaning) ? 'held' : 'result';
}

const isHeld = (meaning: Field | TemplateColumn): boolean => 'fixed' in meaning && meaning.fixed === 'values';

const isTypedIn = ({ part }: BookCell): boolean => part === 'input' || part === 'choice';

/** The plan of a sheet: where everything goes, for whatever host lays it. */
export const makePlan = (template: Template, wish: Wish): SheetPlan =>
  new Builder(template, wish).plan(freeSheetName(template.name, wish.sheets));

/** The plan of a sheet that is alone in its workbook. */
export const planAlone = (template: Template, filled: boolean): SheetPlan =>
  makePlan(template, { filled, sheets: [], tables: [], names: [] });
