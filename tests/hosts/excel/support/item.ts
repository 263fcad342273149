import type { Block } from './a1';
import type { Sheet } from './sheet';

/** Something in the workbook that the library holds on to. */
export interface Item {
  readonly kind: string;
  readonly label: string;
  readonly sheet: Sheet | undefined;
  readonly block: Block | undefined;
  /** Where it lies within its range, such as Format.Font; empty for anything that is not part of a range. */
  readonly within: string;
  readonly missing: boolean;
  readonly properties: Record<string, unknown>;
  /** The arguments of the last call of each method. */
  readonly calls: Record<string, readonly unknown[]>;
  readonly children: Map<string, Item>;
  /** What a collection holds; empty for any other item. */
  readonly members: Item[];
}

export const item = (kind: string, label: string, more: Partial<Item> = {}): Item => ({
  kind,
  label,
  sheet: undefined,
  block: undefined,
  within: '',
  missing: false,
  properties: {},
  calls: {},
  children: new Map(),
  members: [],
  ...more,
});

/** A property further down: `look(chart, 'Axes.ValueAxis.Title.Text')`. */
export function look(from: Item, path: string): unknown {
  const names = path.split('.');
  const last = names.pop() as string;
  const owner = names.reduce<Item | undefined>((at, name) => at?.children.get(name), from);
  return owner?.properties[last];
}

/** Values as they read in the log: a block of cells by its lines, without those that say nothing; an item by its name. */
export function shown(value: unknown): string {
  if (Array.isArray(value) && value.every(Array.isArray))
    return value
      .map((line: unknown[], i) =>
        line.every((cell) => cell === null) ? '' : `\n  ${i + 1}: ${JSON.stringify(line)}`,
      )
      .join('');
  const label = (value as Partial<Item> | null | undefined)?.label;
  return label ?? JSON.stringify(value) ?? '';
}

/** Another item like it, with all its parts, on another sheet. */
export function itemOn(sheet: Sheet, of: Item, label = of.label): Item {
  const relabelled = (part: Item): string => part.label.replace(of.label, label);
  return item(of.kind, label, {
    ...of,
    label,
    sheet,
    properties: { ...of.properties },
    calls: { ...of.calls },
    children: new Map([...of.children].map(([name, part]) => [name, itemOn(sheet, part, relabelled(part))])),
    members: of.members.map((part) => itemOn(sheet, part, relabelled(part))),
  });
}
