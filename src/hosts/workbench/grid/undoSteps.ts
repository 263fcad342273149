import type { IUndoRedoItem } from '@univerjs/core';
import type { Grid } from './grid';
import { undoList, unitId } from './inside';

interface Stacks {
  readonly _undoStacks: ReadonlyMap<string, IUndoRedoItem[]>;
  readonly _redoStacks: ReadonlyMap<string, IUndoRedoItem[]>;
  _updateStatus(): void;
}

/** A step that may turn out to be none. */
export interface Step {
  /** Call it when the step is the last one. */
  see(): void;
  /** Nobody finds it by undo or redo, and what could be redone before it can be redone again. */
  forget(): void;
}

/** Keeps what can be undone and redone now, before something is done that a rule may refuse. */
export function stepsBefore(grid: Grid): Step {
  const unit = unitId(grid);
  const stacks = undoList(grid) as unknown as Stacks;
  const undos = (): IUndoRedoItem[] => stacks._undoStacks.get(unit) ?? [];
  const redos = (): IUndoRedoItem[] => stacks._redoStacks.get(unit) ?? [];
  const before = undos().at(-1);
  const undone = [...redos()];
  let step: IUndoRedoItem | undefined;
  let size = 0;
  return {
    see() {
      const last = undos().at(-1);
      step = last === before ? undefined : last;
      size = step?.redoMutations.length ?? 0;
    },
    forget() {
      const index = step ? undos().indexOf(step) : -1;
      // others that came meanwhile may have become a part of it
      if (index >= 0 && step?.redoMutations.length === size) undos().splice(index, 1);
      if (undos().at(-1) === before && redos().length === 0) redos().push(...undone);
      stacks._updateStatus();
    },
  };
}
