import { PLAIN_ARGUMENTS } from './arguments';
import { PLAIN_ROWS } from './rows';

export type PlainFamily = keyof typeof PLAIN_ROWS;

/** A plain spreadsheet function in words of ours. */
export interface PlainFunction {
  readonly name: string;
  readonly family: PlainFamily;
  /** What it gives, in one line. */
  readonly gives: string;
  readonly args: readonly PlainArgument[];
}

interface PlainArgument {
  readonly name: string;
  readonly about: string;
  readonly optional: boolean;
  readonly repeats: boolean;
  /** As an example writes it: several with commas between them where it repeats. */
  readonly example: string;
}

function argument(written: string, example: string): PlainArgument {
  const [, name = '', optional = '', repeats = ''] = /^(\w+)(\??)(…?)$/.exec(written) ?? [];
  const about = PLAIN_ARGUMENTS[name as keyof typeof PLAIN_ARGUMENTS];
  return { name, about: `${about}.`, optional: optional !== '', repeats: repeats !== '', example };
}

/** In the order of the families. */
export const PLAIN_FUNCTIONS: readonly PlainFunction[] = Object.entries(PLAIN_ROWS).flatMap(
  ([family, rows]) =>
    Object.entries(rows).map(([name, [gives, args]]) => ({
      name,
      family: family as PlainFamily,
      gives,
      args: Object.entries(args).map(([written, example]) => argument(written, example)),
    })),
);
