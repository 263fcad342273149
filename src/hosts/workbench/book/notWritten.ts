/** What a file cannot hold, each once and with the sheets that have it, in words for the person who saves. */
export class NotWritten {
  readonly #sheets = new Map<string, Set<string>>();

  note(what: string, sheet: string): void {
    const sheets = this.#sheets.get(what) ?? new Set();
    this.#sheets.set(what, sheets.add(sheet));
  }

  get sentences(): readonly string[] {
    return [...this.#sheets].map(([what, sheets]) => `${what} (${[...sheets].join(', ')})`);
  }
}
