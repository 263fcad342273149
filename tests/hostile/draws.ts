import { random } from '../exposure/random';

/** Draws that come alike from one seed. */
export class Draws {
  private readonly next: () => number;

  constructor(seed: number) {
    this.next = random(seed);
    // The first numbers of neighbouring seeds are alike.
    for (let i = 0; i < 3; i++) this.next();
  }

  /** From 0 to 1. */
  share(): number {
    return this.next();
  }
  isSo(chance: number): boolean {
    return this.next() < chance;
  }
  /** A whole number, both ends among them. */
  whole(from: number, to: number): number {
    return from + Math.floor(this.next() * (to - from + 1));
  }
  between(from: number, to: number): number {
    return from + this.next() * (to - from);
  }
  pick<T>(list: readonly T[]): T {
    if (list.length === 0) throw new Error('There is nothing to pick from.');
    return list[this.whole(0, list.length - 1)] as T;
  }
  times<T>(count: number, make: (index: number) => T): T[] {
    return Array.from({ length: count }, (_, i) => make(i));
  }
}

/** A seed of its own for each thing that is tried, so that one of them alone draws what it draws among all. */
export const seedFor = (seed: number, name: string): number =>
  [...name].reduce((mixed, sign) => Math.imul(mixed ^ sign.charCodeAt(0), 16_777_619), 2_166_136_261 ^ seed);
