const NAME = 'sweeptable workbook';
const ASKED = 'another tab asks for it';

/** Not there where the browser is told to keep nothing. */
function channelToTabs(): BroadcastChannel | undefined {
  try {
    return new BroadcastChannel(NAME);
  } catch {
    return undefined;
  }
}

/** The tabs of a browser share one stored workbook: one tab at a time has it, until that is closed or gives it up. */
export class Turn {
  readonly #channel = channelToTabs();
  #giveUp: (() => void) | undefined;

  get canAsk(): boolean {
    return this.#channel !== undefined;
  }

  /** Takes the workbook if no other tab has it. So it is too where the browser has no locks, or forbids them with all storage. */
  take(): Promise<boolean> {
    return this.#request({ ifAvailable: true });
  }

  /** Settles when this tab has the workbook. */
  async wait(): Promise<void> {
    await this.#request({});
  }

  /** Asks the tab that has it. */
  ask(): void {
    this.#channel?.postMessage(ASKED);
  }

  onAsked(listener: () => void): void {
    this.#channel?.addEventListener('message', ({ data }) => {
      if (data === ASKED && this.#giveUp) listener();
    });
  }

  giveUp(): void {
    this.#giveUp?.();
    this.#giveUp = undefined;
  }

  #request(options: LockOptions): Promise<boolean> {
    const locks: LockManager | undefined = navigator.locks;
    if (!locks) return Promise.resolve(true);
    return new Promise((resolve) => {
      const holding = locks.request(NAME, options, (lock) => {
        resolve(lock !== null);
        return lock === null
          ? undefined
          : new Promise<void>((giveUp) => {
              this.#giveUp = giveUp;
            });
      });
      holding.catch(() => resolve(true));
    });
  }
}
