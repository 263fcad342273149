import type { Area } from '../../formula/area';
import type { PlanCell, SheetPlan } from '../../sheets/plan';
import { FONT, PALETTE } from '../../book/palette';
import { isIndented, type Look, THEME, WARNED } from '../../sheets/theme';
import { usedArea } from './cells';
import { patches, excelRange } from './ranges';

/** Of the whole sheet; a part says only how it differs. */
const BASE = THEME.result;

type Side = 'EdgeTop' | 'EdgeRight' | 'EdgeBottom' | 'EdgeLeft' | 'InsideHorizontal' | 'InsideVertical';

interface Line {
  readonly style: 'Dot' | 'Continuous';
  /** Thin unless it says otherwise. */
  readonly weight?: 'Thick';
  /** The colour of the words unless it says otherwise. */
  readonly ink?: string;
  readonly below: boolean;
}
const LINES: Readonly<Record<NonNullable<Look['edge']>, Line>> = {
  dotted: { style: 'Dot', ink: PALETTE.slateSoft, below: false },
  below: { style: 'Continuous', below: true },
  thick: { style: 'Continuous', weight: 'Thick', below: true },
};
const ALIGN = { left: 'Left', right: 'Right' } as const;

/** Every cell of the area gets its line; a side between cells exists only where there are two. */
function sides({ below }: Line, { rows, columns }: Area): Side[] {
  const between: Side[] = [
    ...(rows > 1 ? (['InsideHorizontal'] as const) : []),
    ...(columns > 1 && !below ? (['InsideVertical'] as const) : []),
  ];
  return below ? ['EdgeBottom', ...between] : ['EdgeTop', 'EdgeRight', 'EdgeBottom', 'EdgeLeft', ...between];
}

function dress(format: Excel.RangeFormat, { ink, fill, bold, italic, size, edge }: Look, area: Area): void {
  if (ink !== BASE.ink) format.font.color = ink;
  if (size !== BASE.size) format.font.size = size;
  if (bold) format.font.bold = true;
  if (italic) format.font.italic = true;
  if (fill) format.fill.color = fill;
  if (!edge) return;
  const line = LINES[edge];
  for (const side of sides(line, area)) {
    const border = format.borders.getItem(side);
    border.style = line.style;
    if (line.weight) border.weight = line.weight;
    border.color = line.ink ?? ink;
  }
}

const dotted = ({ part }: PlanCell): boolean => THEME[part].edge === 'dotted';

/** Gives every cell the look of its part, in as few ranges as they fall into. */
export function drawLooks(sheet: Excel.Worksheet, plan: SheetPlan): void {
  const { format } = excelRange(sheet, usedArea(plan));
  format.font.name = FONT;
  format.font.size = BASE.size;
  format.font.color = BASE.ink;
  format.verticalAlignment = 'Center';

  const alike = patches(plan.cells, ({ part, align, wrap }) => `${part} ${align} ${wrap}`);
  // The line below a heading wins over the dots of the cell under it, which share an edge: it is drawn later.
  const inOrder = [
    ...alike.filter(({ first }) => dotted(first)),
    ...alike.filter(({ first }) => !dotted(first)),
  ];
  for (const { first, area } of inOrder) {
    const range = excelRange(sheet, area);
    dress(range.format, THEME[first.part], area);
    range.format.horizontalAlignment = ALIGN[first.align];
    if (isIndented(first)) range.format.indentLevel = 1;
    if (first.wrap) range.format.wrapText = true;
  }
}

/** Marks cells while their warning holds. */
export function drawWarnings(sheet: Excel.Worksheet, { warnings }: SheetPlan): void {
  for (const { area, formula } of warnings) {
    const { rule, format } = excelRange(sheet, area).conditionalFormats.add('Custom').custom;
    rule.formula = formula;
    format.font.color = WARNED.ink;
    if (WARNED.bold) format.font.bold = true;
    if (WARNED.fill) format.fill.color = WARNED.fill;
  }
}
