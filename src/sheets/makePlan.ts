import { type Place, parseAddress } from '../formula/address';
import { formatOf } from './formats';
import { blockPlace, fieldRow, isGiven, isInput, type Layout, layout, tableTop } from './layout';
import { area, type Area } from '../formula/area';
import type { InputRule, Part, PlanCell, PlanColumn, PlanTable, SheetPlan, Warning } from './plan';
import { planChart } from './planChart';
import { settled, settledForRow } from './settle';
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
  /** Names that are taken already. */
  readonly sheets: readonly string[];
  readonly tables: readonly string[];
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

class Builder {
  readonly cells: PlanCell[] = [];
  readonly merges: Area[] = [];
  readonly tables: PlanTable[] = [];
  readonly rules: InputRule[] = [];
  readonly warnings: Warning[] = [];
  readonly map: Layout;
  readonly tableNames: ReadonlyMap<string, string>;
  private readonly formulas = new Map<string, string>();
  private readonly template: Template;
  private readonly filled: boolean;

  constructor(template: Template, wish: Wish) {
    this.template = template;
    this.filled = wish.filled;
    this.map = layout(template);
    this.tableNames = new Map([...this.map.tables.keys()].map((id) => [id, freeTableName(id, wish.tables)]));
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

  /** A cell of words. */
  say(at: Place, part: Part, value: string, more: Partial<PlanCell> = {}): void {
    this.cells.push({
      ...at,
      part,
      value,
      format: 'General',
      text: false,
      align: 'left',
      wrap: false,
      ...more,
    });
  }

  /** A line of words across the sheet. */
  line(row: number, part: Part, value: string): void {
    const at = { row, column: 0 };
    this.say(at, part, value, { wrap: true });
    this.merges.push(area(at, 1, this.map.columns));
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
    const input = isInput(meaning);
    const part: Part = input
      ? meaning.accepts?.list
        ? 'choice'
        : 'input'
      : 'answer' in meaning && meaning.answer
        ? 'answer'
        : 'fixed' in meaning && meaning.fixed === 'values'
          ? 'held'
          : 'result';
    this.cells.push({
      ...at,
      part,
      ...this.holds(meaning, value, table),
      format: input ? format.input : format.result,
      text: input && format.text,
      align: format.align,
      wrap: false,
      ...(meaning.note === undefined ? {} : { note: meaning.note }),
    });
  }

  /** The value or the formula of a cell. */
  holds(
    meaning: Field | TemplateColumn,
    value: TemplateValue | undefined,
    table?: TemplateTable,
  ): Pick<PlanCell, 'value' | 'formula'> {
    if (!isGiven(meaning)) return { formula: this.formula(meaning.formula as string, table) };
    if (isInput(meaning)) return { value: this.filled ? (value ?? null) : null };
    const isFormula = 'fixed' in meaning && meaning.fixed === 'formulas';
    return isFormula ? { formula: this.formula(String(value), table) } : { value: value ?? null };
  }

  accept(accepts: Accepts | undefined, where: Area): void {
    if (!accepts) return;
    const { whole, message, ...bounds } = accepts;
    this.rules.push({ area: where, ...bounds, whole: whole ?? false, message });
  }

  tenths(where: Area): void {
    this.rules.push({
      area: where,
      least: 0,
      most: 9,
      whole: true,
      message: 'Tenths of a stop: a whole number from 0 to 9, the small figure on the meter.',
    });
  }

  form(form: Form): void {
    const start = blockPlace(form);
    this.say(start, 'section', form.title);
    for (const [i, field] of form.fields.entries()) {
      const row = fieldRow(form, i);
      const value = { row, column: start.column + 1 };
      this.say({ row, column: start.column }, 'label', field.label);
      this.content(value, field, field.value);
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
        this.tenths(area(small, 1, 1));
      }
      this.remark({ row, column: start.column + 3 }, field, value);
    }
  }

  /** The words beside a value: its remark, or its warning while that holds. */
  remark(at: Place, field: Field, value: Place): void {
    const words = field.remark ?? '';
    if (!field.warning) {
      if (words) this.say(at, 'remark', words);
      return;
    }
    const when = this.formula(field.warning.when).slice(1);
    const text = (s: string): string => `"${s.replace(/"/g, '""')}"`;
    this.cells.push({
      ...at,
      part: 'warning',
      formula: `=IF(${when},${text(`! ${field.warning.text}`)},${text(words)})`,
      format: 'General',
      text: false,
      align: 'left',
      wrap: false,
    });
    this.warnings.push(
      { area: area(value, 1, 1), formula: `=${when}` },
      { area: area(at, 1, 1), formula: `=${when}` },
    );
  }

  table(table: TemplateTable): void {
    const start = blockPlace(table);
    const top = tableTop(table);
    this.say(start, 'section', table.title);
    let given = 0;
    const columns: PlanColumn[] = [];
    for (const [c, column] of table.columns.entries()) {
      const at = { row: top, column: start.column + c };
      const body = area({ row: top + 1, column: at.column }, table.rows.length, 1);
      const index = isGiven(column) ? given++ : -1;
      this.say(at, 'heading', column.id, {
        wrap: true,
        align: formatOf(column.quantity)?.align ?? 'left',
        ...(column.note === undefined ? {} : { note: column.note }),
      });
      const { note: _, ...meaning } = column;
      for (const [r, row] of table.rows.entries())
        this.content({ row: top + 1 + r, column: at.column }, meaning, row[index], table);
      if (column.tenths) this.tenths(body);
      this.accept(column.accepts, body);
      if (column.warning)
        this.warnings.push({
          area: body,
          formula: settledForRow(column.warning.when, this.map, table, top + 1),
        });
      columns.push({
        name: column.id,
        ...(column.formula === undefined ? {} : { formula: this.formula(column.formula, table) }),
      });
    }
    this.tables.push({
      name: this.tableNames.get(table.id) as string,
      area: area({ row: top, column: start.column }, 1 + table.rows.length, table.columns.length),
      columns,
    });
  }

  plan(name: string): SheetPlan {
    this.line(0, 'title', this.template.answers);
    this.line(1, 'lead', this.template.start);
    for (const block of this.template.blocks) {
      if (block.kind === 'form') this.form(block);
      else this.table(block);
    }
    const charts = this.template.charts.map((chart) => planChart(chart, this.map, this.tableNames));
    let end = charts.reduce((last, { place: p }) => Math.max(last, p.row + p.rows), this.map.end);
    const { cautions, cautionsAt } = this.template;
    const first = cautionsAt === undefined ? end + 1 : (parseAddress(cautionsAt)?.row ?? 0);
    for (const [i, caution] of cautions.entries()) this.line(first + i, 'caution', caution);
    if (cautions.length > 0) end = Math.max(end, first + cautions.length);
    return {
      name,
      columns: this.template.columns,
      cells: this.cells,
      merges: this.merges,
      tables: this.tables,
      rules: this.rules,
      warnings: this.warnings,
      names: [...this.map.cells].map(([id, { place: at }]) => ({ name: id, ...at })),
      charts,
      freezeRows: this.template.freezeRows,
      page: {
        landscape: this.template.landscape,
        header: this.template.name,
        titleRows: this.template.freezeRows,
        area: area({ row: 0, column: 0 }, end, this.map.columns),
      },
    };
  }
}

/** The plan of a sheet: where everything goes, for whatever host lays it. */
export const makePlan = (template: Template, wish: Wish): SheetPlan =>
  new Builder(template, wish).plan(freeSheetName(template.name, wish.sheets));
