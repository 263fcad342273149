/** Rows or columns as they are drawn: some stay at the heading, the others are scrolled and hide behind them. In pixels. */
export interface Axis {
  /** Of the heading, as all lengths of the sheet are at the usual zoom. */
  readonly heading: number;
  readonly zoom: number;
  /** From where to where on the sheet the lines lie that stay; nothing where none do. */
  readonly frozen: { readonly from: number; readonly to: number } | undefined;
  /** How far the others are scrolled. */
  readonly scroll: number;
  /** Where on the canvas the others begin, and where it ends. */
  readonly edge: number;
  readonly end: number;
}

/** A part of a span as it is seen: where all of the span would begin, and how much of it is out of sight at both ends. */
export interface Part {
  readonly at: number;
  readonly cutBefore: number;
  readonly cutAfter: number;
}

/** The parts in which a span of the sheet is seen: two where it reaches from lines that stay into those that are scrolled. */
export function partsOf(start: number, end: number, axis: Axis): readonly Part[] {
  const { heading, zoom, frozen, scroll, edge } = axis;
  const length = (end - start) * zoom;
  const part = (shift: number, from: number, to: number): readonly Part[] => {
    const at = (start + heading - shift) * zoom;
    const [cutBefore, cutAfter] = [Math.max(0, from - at), Math.max(0, at + length - to)];
    const isAway = at > axis.end || cutBefore + cutAfter >= length;
    return isAway ? [] : [{ at, cutBefore, cutAfter }];
  };
  const staysFrom = frozen && start < frozen.to ? frozen : undefined;
  const isScrolled = !frozen || end > frozen.to;
  return [
    ...(staysFrom ? part(staysFrom.from, heading * zoom, isScrolled ? edge : Infinity) : []),
    ...(isScrolled ? part(scroll, edge, Infinity) : []),
  ];
}
