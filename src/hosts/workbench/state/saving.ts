import { CommandType, ICommandService, type IWorkbookData } from '@univerjs/core';
import type { Grid } from '../grid';
import { leaveBehind } from './lastMinute';
import { remember, rememberBefore } from './memory';

const AFTER_A_CHANGE = 500;
const AFTER_A_FAILURE = 5_000;
/** Steps that calculating takes by itself. */
const OF_THE_ENGINE = /^formula\.mutation\.(?!(set|remove)-defined-name)/;

/** What becomes of storing, for the person at the sheet. */
export interface Told {
  failed(reason: unknown): void;
  stored(): void;
}

/**
 * Stores the open workbook half a second after a change, and at once when the page goes out of sight. What could not be
 * stored is tried again, and the browser asks before the page is closed over it.
 */
export class Saving {
  readonly #snapshot: () => IWorkbookData | undefined;
  readonly #told: Told;
  #due: ReturnType<typeof setTimeout> | undefined;
  #running: Promise<boolean> = Promise.resolve(true);
  #isStored = true;
  #isStoring = false;
  #holdsWork = false;
  #failed = false;
  #mine = true;
  /** When the stored workbook that this page knows was stored. */
  known: number | undefined;

  constructor(snapshot: () => IWorkbookData | undefined, told: Told) {
    this.#snapshot = snapshot;
    this.#told = told;
  }

  /** From now on every change is stored. */
  watch({ univer }: Grid): void {
    univer
      .__getInjector()
      .get(ICommandService)
      .onCommandExecuted(({ id, type }, options) => {
        if (type !== CommandType.MUTATION) return;
        this.changed({ byHand: !options?.['applyFormulaCalculationResult'] && !OF_THE_ENGINE.test(id) });
      });
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState === 'hidden') void this.now();
    });
    addEventListener('pagehide', () => {
      const last = this.#mine && (!this.#isStored || this.#isStoring) ? this.#snapshot() : undefined;
      if (last) leaveBehind(last);
      void this.now();
    });
    addEventListener('beforeunload', (event) => {
      if (this.holdsWork && (this.#failed || !this.#mine)) event.preventDefault();
    });
  }

  /** Whether somebody's work is in this page alone. */
  get holdsWork(): boolean {
    return this.#holdsWork;
  }

  /** Whether this page stores its workbook, or another tab has that place. */
  get isMine(): boolean {
    return this.#mine;
  }

  changed({ byHand = true } = {}): void {
    this.#isStored = false;
    this.#holdsWork ||= byHand;
    if (this.#mine) this.#soon(this.#failed ? AFTER_A_FAILURE : AFTER_A_CHANGE);
  }

  /** Stores at once what has not been stored. Gives whether all is stored now. */
  now(): Promise<boolean> {
    if (!this.#mine) return Promise.resolve(!this.#holdsWork);
    if (!this.#isStored) this.#running = this.#store();
    return this.#running;
  }

  /** Keeps the workbook that another has taken the place of, or forgets it. */
  async before(snapshot: IWorkbookData | undefined): Promise<void> {
    if (!this.#mine) return;
    try {
      await rememberBefore(snapshot);
    } catch (reason) {
      this.#told.failed(reason);
    }
  }

  /** All is in a file: nothing is lost with this page. */
  keptInFile(): void {
    this.#holdsWork = false;
  }

  /** Another tab has the stored workbook. */
  leave(): void {
    clearTimeout(this.#due);
    this.#mine = false;
  }

  /** This page has the stored workbook again. */
  takeOver(): void {
    this.#mine = true;
    if (!this.#isStored) this.#soon(0);
  }

  #soon(wait: number): void {
    clearTimeout(this.#due);
    this.#due = setTimeout(() => void this.now(), wait);
  }

  async #store(): Promise<boolean> {
    clearTimeout(this.#due);
    const present = this.#snapshot();
    const heldWork = this.#holdsWork;
    this.#isStored = true;
    this.#holdsWork = false;
    if (!present) return true;
    this.#isStoring = true;
    try {
      this.known = await remember(present);
    } catch (reason) {
      this.#failed = true;
      this.#isStored = false;
      this.#holdsWork ||= heldWork;
      this.#told.failed(reason);
      this.#soon(AFTER_A_FAILURE);
      return false;
    } finally {
      this.#isStoring = false;
    }
    this.#failed = false;
    this.#told.stored();
    return true;
  }
}
