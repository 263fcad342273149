import { onChange } from '../grid/changes';
import type { Grid } from '../grid/grid';
import { askWhetherThere } from './signsOfLife';

/** A long calculation is silent too, so the worker is given up only after two such waits. */
const WAIT = 15_000;
const WAITS = 2;
/** Its script has to come over the network first. */
const WAITS_AT_START = 4;

export type Trouble = 'not loaded' | 'silent';

/**
 * Notices when the worker answers no more. A browser tells of a script that could not be loaded or run, and of nothing
 * else, so after every change the worker is asked for a sign of life.
 */
export class WorkerWatch {
  readonly #worker: Worker;
  readonly #told: (trouble: Trouble | undefined) => void;
  #trouble: Trouble | undefined;
  #waiting: ReturnType<typeof setTimeout> | undefined;
  #hasBegun = false;
  #giveUp: () => void = () => {};
  /** Settles at the first trouble. */
  readonly trouble = new Promise<void>((resolve) => {
    this.#giveUp = resolve;
  });

  constructor(worker: Worker, told: (trouble: Trouble | undefined) => void) {
    this.#worker = worker;
    this.#told = told;
    worker.addEventListener('message', () => this.#lives());
    worker.addEventListener('error', () => {
      if (!this.#hasBegun) this.#tell('not loaded');
    });
    this.#expect(WAITS_AT_START);
  }

  watch(grid: Grid): void {
    onChange(grid, () => this.#expect(WAITS));
  }

  #expect(waits: number): void {
    if (this.#waiting !== undefined) return;
    askWhetherThere(this.#worker);
    this.#wait(waits);
  }

  #wait(waits: number): void {
    // Wait by wait: a page that was asleep meanwhile hears the answer before the last of them.
    this.#waiting = setTimeout(() => {
      this.#waiting = undefined;
      if (waits > 1) this.#wait(waits - 1);
      else this.#tell(this.#trouble ?? 'silent');
    }, WAIT);
  }

  #lives(): void {
    this.#hasBegun = true;
    clearTimeout(this.#waiting);
    this.#waiting = undefined;
    if (!this.#trouble) return;
    this.#trouble = undefined;
    this.#told(undefined);
  }

  #tell(trouble: Trouble): void {
    this.#trouble = trouble;
    this.#told(trouble);
    this.#giveUp();
  }
}
