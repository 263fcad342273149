/** What is wrong with a template, and where in it. */
export interface Fault {
  readonly at: string;
  readonly reason: string;
}
