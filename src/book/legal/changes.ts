/** What is otherwise in a file than in the workbook, each sentence once and in the order it was met. */
export class Changes {
  readonly #said = new Set<string>();

  say(sentence: string): void {
    this.#said.add(sentence);
  }
  /** Says what something is called in the file. */
  called(what: string, old: string, now: string, why: string): void {
    this.say(
      `${what} ${old.trim() === '' ? 'without a name' : `“${shown(old)}”`} is “${shown(now)}” in the file: ${why}.`,
    );
  }
  get sentences(): readonly string[] {
    return [...this.#said];
  }
}

const MOST_SHOWN = 60;
/** As much of a name as a sentence can hold. */
export const shown = (name: string): string =>
  name.length > MOST_SHOWN ? `${name.slice(0, MOST_SHOWN)}…` : name;
