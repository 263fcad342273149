import { BLANK } from '../../cells/quantityReader';
import { isFail } from '../../exposure/core/result';
import type { Band, MeteredPoint } from '../../exposure/balance/heads/bands';
import type { Head } from '../../exposure/balance/heads/settings';
import type { Block } from './block';
import { COLUMNS, type Layout, layoutOf } from './layout';
import { type KnownModels, readHead, type TableHead } from './readHeads';
import { readMeasured, readPoint, type TablePoint } from './readPoints';

/** A table that can be balanced, as it was read. */
export interface ReadTable {
  readonly block: Block;
  readonly layout: Layout;
  readonly heads: readonly TableHead[];
  readonly points: readonly TablePoint[];
  /** Whether it starts from what was measured with all lit. */
  readonly isChecked: boolean;
  /** Stops that each point was measured off what was foretold; empty where nothing was measured. */
  readonly drift: readonly number[];
}
export interface Unread {
  /** What is wrong with it, in sentences. */
  readonly faults: readonly string[];
}

/** The light of a head as a multiple of what was metered, as it is set now. */
const factorNow = ({ power, pops, metered }: Head): number => (power * pops) / metered;

function apart<T>(list: readonly (T | readonly string[])[]): { good: T[]; faults: string[] } {
  const good: T[] = [];
  const faults: string[] = [];
  for (const one of list)
    if (Array.isArray(one)) faults.push(...(one as string[]));
    else good.push(one as T);
  return { good, faults };
}

/**
 * Reads a block of cells as a table to balance.
 *
 * @param models - what Heads knows, for what the table leaves blank.
 * @param floor - the least f-number that the meter reads, for E.
 */
export function readTable(block: Block, models: KnownModels, floor: number): ReadTable | Unread {
  const layout = layoutOf(block);
  if (!('points' in layout)) return { faults: layout };
  const heads = apart(layout.heads.map((column) => readHead(block, layout, column, models)));
  const points = apart(layout.points.map((point) => readPoint(block, layout, point, floor)));
  const faults = [...heads.faults, ...points.faults];
  if (faults.length > 0) return { faults };
  const dark = heads.good.find(({ name }) => points.good.every(({ below }) => below.includes(name)));
  if (dark)
    return {
      faults: [`“${dark.name}” shows E at every point: its light is not known. Meter it nearer or at more power, or leave it out.`], // prettier-ignore
    };
  return checked({ block, layout, heads: heads.good, points: points.good, isChecked: false, drift: [] });
}

/** Goes on from what was measured with all lit, where that stands in the table: for every point, or for none. */
function checked(table: ReadTable): ReadTable | Unread {
  const { block, layout, points } = table;
  if (layout.columns.measured === undefined) return table;
  const reads = points.map((point) => readMeasured(block, layout, point));
  if (reads.every((read) => read === BLANK)) return table;
  const faults = reads.flatMap((read, p) => {
    if (read === BLANK) {
      const isIgnored = points[p]?.metered.kind === 'ignore';
      return isIgnored ? [] : [`${COLUMNS.measured} at “${points[p]?.name}” is blank: meter it too, or clear the column.`]; // prettier-ignore
    }
    return isFail(read) ? [read.message] : [];
  });
  const factors = table.heads.map(({ head }) => factorNow(head));
  const now = points.map((point, p) => {
    const read = reads[p];
    if (read === undefined || read === BLANK || isFail(read)) return { point, drift: 0 };
    const found = withCheck(point.metered, factors, read);
    if (found) return { point: { ...point, metered: found.metered }, drift: found.drift };
    faults.push(`${COLUMNS.measured} at “${point.name}” is no more than the ambient light there: meter both again.`); // prettier-ignore
    return { point, drift: 0 };
  });
  if (faults.length > 0) return { faults };
  return {
    ...table,
    points: now.map(({ point }) => point),
    isChecked: true,
    drift: now.map(({ drift }) => drift),
  };
}

/**
 * A point with its light as it was measured. What all heads bring is taken to be off by the same share, as nothing tells
 * which of them it is; each may as well be as it was metered.
 */
function withCheck(
  metered: MeteredPoint,
  factors: readonly number[],
  check: Band,
): { readonly metered: MeteredPoint; readonly drift: number } | undefined {
  const ambient = metered.ambient.likely;
  const foretold = metered.heads.reduce((sum, { likely }, h) => sum + likely * (factors[h] ?? 0), 0);
  const share = (check.likely - ambient) / foretold;
  if (!(share > 0) || !Number.isFinite(share)) return undefined;
  const heads = metered.heads.map(({ least, likely, most }) => ({
    least: least * Math.min(1, share),
    likely: likely * share,
    most: most * Math.max(1, share),
  }));
  return {
    metered: { ...metered, heads, check },
    drift: Math.log2(check.likely / (foretold + ambient)),
  };
}
