import type { CellError } from '../../src/formula/errors';
import { isCellError } from '../../src/formula/errors';
import type { AnyRow, Arg } from '../../src/catalogue/types';

/** Letters that a cell can hold. */
const LONGEST_TEXT = 32_767;

/** A refusal that names none of its row's arguments, and may. */
interface Exception {
  readonly why: string;
  readonly holds: (refusal: CellError & { message: string }, row: AnyRow) => boolean;
}
export const EXCEPTIONS: Readonly<Record<string, Exception>> = {
  'count of values': {
    why: 'Too many values are the fault of none of them: the function is named with how many it takes.',
    holds: ({ error, message }, { id }) => error === '#VALUE!' && /^\w+ takes [\d or to]+ values?, not \d+\.$/.test(message) && message.startsWith(`${id} takes `),
  },
  'no answer': {
    why: 'The question is sound: the sentence tells what it comes to.',
    holds: ({ error }) => error === '#N/A',
  },
  'size of the answer': {
    why: 'It takes all the numbers together to leave what a cell holds.',
    holds: ({ error, message }) => error === '#NUM!' && message === 'The answer is too large or too small for a cell: check the numbers that go in.',
  },
  'the trace': {
    why: 'Times and values together are the trace.',
    holds: ({ message }, { args }) => /^The (?:numbers of the )?trace /.test(message) && (args as readonly Arg[]).some(({ takes }) => takes === 'series'),
  },
}; // prettier-ignore

/** The words of a sentence that are ours: without what it quotes from a cell. */
const ourWords = (message: string): string => message.replace(/"[^"]*"(?=[ .,:])/g, '""');

function sentenceFault(message: string): string | undefined {
  const own = ourWords(message);
  if (!/^\S.*[.?]$/s.test(message)) return 'a refusal that is no sentence';
  if (/\[object|undefined|\bNaN\b|\bnull\b|\bInfinity\b/.test(own)) return 'a refusal in words of a program';
  if (/[\p{Cc}]/u.test(message) || message.length > 1000) return 'a refusal that fills no line of a sheet';
  return undefined;
}

/** All cells that went in, however deep they lay. */
function* cellsIn(given: unknown): Generator<unknown> {
  if (Array.isArray(given)) for (const member of given) yield* cellsIn(member);
  else yield given;
}

/** What a call was given and gave, looked at once. */
export class Verdict {
  private readonly row: AnyRow;
  private readonly given: readonly unknown[];
  private errors: ReadonlySet<unknown> | undefined;
  /** Names of the exceptions that were met. */
  readonly excepted = new Set<string>();

  constructor(row: AnyRow, given: readonly unknown[]) {
    this.row = row;
    this.given = given;
  }

  /** Why the answer is none that a sheet can hold; undefined where it is in order. */
  of(answer: unknown): string | undefined {
    if (!Array.isArray(answer)) return this.cell(answer);
    const width: unknown = Array.isArray(answer[0]) ? answer[0].length : 0;
    if (width === 0) return 'an answer of no cells';
    for (const row of answer as unknown[]) {
      if (!Array.isArray(row) || row.length !== width) return 'rows that are not all as long';
      for (const cell of row as unknown[]) {
        const fault = this.cell(cell);
        if (fault !== undefined) return fault;
      }
    }
    return undefined;
  }

  private cell(cell: unknown): string | undefined {
    if (typeof cell === 'number') {
      if (!Number.isFinite(cell)) return `${cell} in a cell`;
      return Object.is(cell, -0) ? '-0 in a cell' : undefined;
    }
    if (typeof cell === 'boolean') return undefined;
    if (typeof cell === 'string') return cell.length > LONGEST_TEXT ? 'a text longer than a cell' : undefined;
    if (!isCellError(cell)) return `${cell === null ? 'null' : typeof cell} in a cell`;
    return this.isPassedOn(cell) ? undefined : this.refusal(cell);
  }

  private isPassedOn(cell: CellError): boolean {
    this.errors ??= new Set([...cellsIn(this.given)].filter(isCellError));
    return this.errors.has(cell);
  }

  private refusal({ error, message }: CellError): string | undefined {
    if (message === undefined) return `${error} without a sentence`;
    const fault = sentenceFault(message);
    if (fault !== undefined) return `${fault}: ${message}`;
    const own = ourWords(message);
    const names = (this.row.args as readonly Arg[]).map(({ name }) => name);
    if (names.some((name) => new RegExp(`\\b${name}\\b`).test(own))) return undefined;
    const excepted = Object.entries(EXCEPTIONS).find(([, { holds }]) => holds({ error, message }, this.row));
    if (!excepted) return `a refusal that names none of ${names.join(', ')}: ${message}`;
    this.excepted.add(excepted[0]);
    return undefined;
  }
}
