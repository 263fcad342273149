/** Where a command reads and writes. */
export interface Terminal {
  /** One line of an answer. */
  readonly say: (line: string) => void;
  /** One line for the person, beside the answers. */
  readonly complain: (line: string) => void;
  readonly input: AsyncIterable<Buffer | string>;
}
