import { type Answer, agree } from './answers';
import type { Judge } from './asked';
import type { Fault } from './causes';
import type { Drawn } from './generate';
import { excuseFor, type Known } from './known';
import { answersOfOffice } from './office';

/** What the judge of each formula says. */
export async function rightAnswers(asked: readonly Drawn[]): Promise<Answer[]> {
  const calculated = asked.flatMap(({ formula, judge }, i) => {
    if (judge.by === 'documentation') return [];
    return [{ i, formula: judge.by === 'LibreOffice' ? formula : judge.formula }];
  });
  const theirs = await answersOfOffice(calculated.map(({ formula }) => formula));
  const right = asked.map(({ judge }): Answer => (judge.by === 'documentation' ? judge.answer : null));
  calculated.forEach(({ i }, k) => (right[i] = theirs[k] ?? null));
  return right;
}

/** As many decimal places as the documentation prints. */
function printed(answer: Answer, judge: Judge): Answer {
  if (judge.by !== 'documentation' || judge.digits === undefined || typeof answer !== 'number') return answer;
  return Number(answer.toFixed(judge.digits));
}

/** The documentation is never wrong; LibreOffice may be in whatever it calculates, the formula itself or the older functions. */
function excuseOf({ formula, judge, ours, right }: Fault): Known | undefined {
  if (judge.by === 'documentation') return undefined;
  const calculated = judge.by === 'LibreOffice' ? formula : judge.formula;
  return excuseFor({ formula: calculated, ours, theirs: right });
}

export interface Judged {
  readonly by: ReadonlyMap<Judge['by'], number>;
  readonly excused: ReadonlyMap<Known, readonly Fault[]>;
  readonly faults: readonly Fault[];
}

/** Takes the differences apart: those that are known, and faults. */
export function judged(asked: readonly Drawn[], ours: readonly Answer[], right: readonly Answer[]): Judged {
  const by = new Map<Judge['by'], number>();
  const excused = new Map<Known, Fault[]>();
  const faults: Fault[] = [];
  asked.forEach((each, i) => {
    const { judge } = each;
    by.set(judge.by, (by.get(judge.by) ?? 0) + 1);
    const fault: Fault = { ...each, ours: printed(ours[i] ?? null, judge), right: right[i] ?? null };
    if (agree(fault.ours, fault.right)) return;
    const excuse = excuseOf(fault);
    if (excuse) excused.set(excuse, [...(excused.get(excuse) ?? []), fault]);
    else faults.push(fault);
  });
  return { by, excused, faults };
}
