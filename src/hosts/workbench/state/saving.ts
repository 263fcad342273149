import type { IWorkbookData } from '@univerjs/core';
import { leaveBehind } from './lastMinute';
import { remember, rememberBefore } from './memory';

const AFTER_A_CHANGE = 500;
const AFTER_A_FAILURE = 5_000;

/** What becomes of storing, for the person at the sheet. */
export interface Told {
  failed(reason: unknown): void;
  stored(): void;
}

/** Stores the open workbook half a second after a change. What could not be stored is tried again. */
export class Saving {
  readonly #snapshot: () => IWorkbookData | undefined;
  readonly #told: Told;
  #due: ReturnType<typeof setTimeout> | undefined;
  #running: Promise<boolean> = Promise.resolve(true);
  /** How many changes there were, how many of them have been given to the storage, and how many are stored. */
  #changes = 0;
  #given = 0;
  #stored = 0;
  /** Up to which change somebody has worked, and up to which all is in a file. */
  #worked = 0;
  #inFile = 0;
  #failed = false;
  #mine = true;
  /** When the stored workbook that this page knows was stored. */
  known: number | undefined;

  constructor(snapshot: () => IWorkbookData | undefined, told: Told) {
    this.#snapshot = snapshot;
    this.#told = told;
  }

  /** Whether somebody's work is in this page alone. */
  get holdsWork(): boolean {
    return this.#worked > Math.max(this.#stored, this.#inFile);
  }

  /** Whether that work is lost if the page is closed now. */
  get wouldLoseWork(): boolean {
    return this.holdsWork && (this.#failed || !this.#mine);
  }

  /** Whether this page stores its workbook, or another tab has that place. */
  get isMine(): boolean {
    return this.#mine;
  }

  changed({ byHand = true } = {}): void {
    this.#changes += 1;
    if (byHand) this.#worked = this.#changes;
    if (this.#mine) this.#soon(this.#failed ? AFTER_A_FAILURE : AFTER_A_CHANGE);
  }

  /** Stores at once what has not been stored. Gives whether all is stored now. */
  now(): Promise<boolean> {
    if (!this.#mine) return Promise.resolve(!this.holdsWork);
    if (this.#given < this.#changes) this.#running = this.#store(this.#snapshot());
    return this.#running;
  }

  /** Before the page goes: what is not stored is left behind as well, as its storing may end with the page. */
  close(): void {
    if (!this.#mine || this.#stored === this.#changes) return;
    const last = this.#snapshot();
    if (last) leaveBehind(last);
    if (this.#given < this.#changes) this.#running = this.#store(last);
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
    this.#inFile = this.#changes;
  }

  /** Another tab has the stored workbook. */
  leave(): void {
    clearTimeout(this.#due);
    this.#mine = false;
  }

  /** This page has the stored workbook again. */
  takeOver(): void {
    this.#mine = true;
    if (this.#given < this.#changes) this.#soon(0);
  }

  #soon(wait: number): void {
    clearTimeout(this.#due);
    this.#due = setTimeout(() => void this.now(), wait);
  }

  async #store(present: IWorkbookData | undefined): Promise<boolean> {
    clearTimeout(this.#due);
    const given = this.#changes;
    this.#given = given;
    try {
      if (present) this.known = await remember(present);
    } catch (reason) {
      this.#failed = true;
      this.#given = this.#stored;
      this.#told.failed(reason);
      this.#soon(AFTER_A_FAILURE);
      return false;
    }
    this.#failed = false;
    this.#stored = given;
    this.#given = Math.max(this.#given, given);
    this.#told.stored();
    return true;
  }
}
