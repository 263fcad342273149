import { ICommandService, type Injector } from '@univerjs/core';
import { SetFormulaCalculationStartMutation } from '@univerjs/engine-formula';
import { FormulaCalculationSessionService, TriggerCalculationController } from '@univerjs/sheets-formula';

/** As in @univerjs/sheets-formula 0.25.1. */
interface Trigger {
  readonly _setTimeoutKey: ReturnType<typeof setTimeout>;
  _waitingCommandQueue: readonly unknown[];
  _executingDirtyData: object;
  _generateDirty(commands: readonly unknown[]): object;
  _mergeDirty(one: object, other: object): object;
}
const inside = (controller: TriggerCalculationController): Trigger => controller as unknown as Trigger;

/**
 * How long a calculation may take to begin, in milliseconds. The engine's own half a second is over before where other work
 * holds up this thread, and what was calculated the last time is then taken for the answer.
 */
const PATIENCE = 60_000;

/** Until all is told that follows from what was done: the engine tells of it by promises alone. */
const turn = () => new Promise<void>((resolve) => setImmediate(resolve));

/**
 * Gives how to calculate, every formula or those that a change reaches. By itself the engine begins a tenth of a second after whatever was typed, and waits as
 * long where it is asked to: nobody types here, so it begins when it is asked, at once, and never else. One that it had begun
 * by itself would be taken for the one that was asked for.
 */
export function calculation(injector: Injector): (which: 'all' | 'changed') => Promise<void> {
  const commands = injector.get(ICommandService);
  const sessions = injector.get(FormulaCalculationSessionService);
  const trigger = inside(injector.get(TriggerCalculationController));
  // hears of each command after the engine, which has set its clock by then
  commands.onCommandExecuted(() => clearTimeout(trigger._setTimeoutKey));

  async function calculate(which: 'all' | 'changed'): Promise<void> {
    await turn();
    const applied = sessions.waitForLatestApplied(undefined, PATIENCE);
    const typed = trigger._generateDirty(trigger._waitingCommandQueue);
    trigger._waitingCommandQueue = [];
    trigger._executingDirtyData = {
      ...trigger._mergeDirty(trigger._executingDirtyData, typed),
      forceCalculation: which === 'all',
    };
    const start = { ...trigger._executingDirtyData };
    void commands.executeCommand(SetFormulaCalculationStartMutation.id, start, { onlyLocal: true });
    await applied;
  }
  // one after the other
  let last = Promise.resolve();
  return (which) => {
    const next = (): Promise<void> => calculate(which);
    return (last = last.then(next, next));
  };
}
