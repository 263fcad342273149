/** Seconds after which something that is still at it hangs. Far above what anything here takes. */
export const HANGS = 20;

/** Seconds of work since it was started: what else a machine is busy with does not count. */
export function stopwatch(): () => number {
  const start = process.cpuUsage();
  return () => {
    const { user, system } = process.cpuUsage(start);
    return (user + system) / 1e6;
  };
}

export interface Escape {
  readonly what: string;
  readonly name: string;
  readonly seed: number;
  readonly given: string;
}

/** What a run has met. */
export class Report {
  readonly escapes: Escape[] = [];
  readonly exceptions = new Map<string, number>();
  answers = 0;
  refusals = 0;
  longest = { seconds: 0, name: '' };
  /** Told of each thing before it is tried, so that one that hangs can be named. */
  readonly begins: (what: string) => void;

  constructor(begins: (what: string) => void = () => undefined) {
    this.begins = begins;
  }

  escaped(escape: Escape): void {
    this.escapes.push(escape);
  }
  excepted(name: string): void {
    this.exceptions.set(name, (this.exceptions.get(name) ?? 0) + 1);
  }
  answered(isAnswer: boolean): void {
    if (isAnswer) this.answers++;
    else this.refusals++;
  }
  slowest(seconds: number, name: string): void {
    if (seconds > this.longest.seconds) this.longest = { seconds, name };
  }
}
