import type { Spot } from './fingers';

/** What lies under a finger, and what becomes of its touch there. A swipe scrolls the sheet, wherever it begins. */
export interface Surface {
  /** Said when a finger has lain still so long that it holds, of the place that `hold` was told; undefined where nothing comes of that. */
  readonly hint: string | undefined;
  /** Said of a swipe that begins at a place where it might have been meant to hold; undefined elsewhere. */
  swiped?(from: Spot): string | undefined;
  tap(at: Spot): void;
  hold(at: Spot): void;
  drag(to: Spot): void;
  drop(at: Spot, hasMoved: boolean): void;
  giveUp(): void;
}
