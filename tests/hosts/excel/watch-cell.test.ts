import { beforeEach, describe, expect, test } from 'vitest';
import { explain } from '../../../src/explain/explain';
import { watchCell } from '../../../src/hosts/excel/watchCell';
import type { SelectedCell } from '../../../src/pane/host';
import { blockAt } from './support/a1';
import { type ExcelEvent, eventMessage } from './support/excel-events';
import { FakeWorkbook } from './support/fake-workbook';
import { MANIFEST_LEVEL, sheetOf } from './support/laid';
import { HOST_FILES, type HostFile, loadOffice } from './support/office-host';

type Listener = () => void;
type Answered = (result: { status: string }) => void;

/** What the test reaches in the library beside Excel itself. */
interface Insides {
  Office: { context: { document?: object } };
  OfficeExtension: {
    HostBridge: { init(bridge: object): void };
    GenericEventRegistration: {
      getGenericEventRegistration(id: string): { _handleRichApiMessage(message: object): void };
    };
  };
}

/** The document of the older library, through which Excel tells a change of selection. */
function documentWith(listeners: Set<Listener>) {
  return {
    addHandlerAsync(_type: string, listener: Listener, answered: Answered) {
      listeners.add(listener);
      answered({ status: 'succeeded' });
    },
    removeHandlerAsync(_type: string, { handler }: { handler: Listener }, answered: Answered) {
      listeners.delete(handler);
      answered({ status: 'succeeded' });
    },
  };
}

/** A workbook with a watcher, and what the watcher told. */
function watched(file: HostFile) {
  const workbook = new FakeWorkbook('Plan', "It's (2)");
  const office = loadOffice(workbook, { file, excelApi: MANIFEST_LEVEL });
  const { Office, OfficeExtension } = office as unknown as Insides;
  OfficeExtension.HostBridge.init({ sendMessageToHost() {} });
  const selecting = new Set<Listener>();
  Office.context.document = documentWith(selecting);
  const told: (SelectedCell | undefined)[] = [];
  const settle = async (): Promise<void> => {
    let before = -1;
    while (before !== workbook.batches.length + told.length) {
      before = workbook.batches.length + told.length;
      // oxlint-disable-next-line no-await-in-loop -- waits until nothing more happens
      for (let i = 0; i < 20; i++) await new Promise((resolve) => setImmediate(resolve));
    }
  };
  const happens = async (event: ExcelEvent): Promise<void> => {
    OfficeExtension.GenericEventRegistration.getGenericEventRegistration('')._handleRichApiMessage(
      eventMessage(event),
    );
    await settle();
  };
  const selects = async (): Promise<void> => {
    for (const listener of selecting) listener();
    await settle();
  };
  const select = async (address: string): Promise<void> => {
    workbook.select('Plan', address);
    await selects();
  };
  return {
    workbook,
    plan: sheetOf(workbook, 'Plan'),
    excel: office.Excel,
    told,
    settle,
    happens,
    selects,
    select,
  };
}

describe.each(HOST_FILES)('the active cell, through %s', (file) => {
  let on: ReturnType<typeof watched>;
  let stop: () => void;
  const last = () => on.told[on.told.length - 1];

  beforeEach(async () => {
    on = watched(file);
    on.plan.cells.set('A1', 8).set('A2', 'f/11').set('B1', '=SWEEP.STOPDIFF(A1,A2)');
    on.workbook.onFormula = () => 1;
    on.workbook.select('Plan', 'B1');
    stop = watchCell(on.excel)((cell) => on.told.push(cell));
    await on.settle();
  });

  test('is told at once, with the values that its formula speaks of', () => {
    expect(on.told).toHaveLength(1);
    expect(last()).toMatchObject({ address: 'B1', formula: '=SWEEP.STOPDIFF(A1,A2)', shown: '1' });
    expect(last()?.look('A1')).toEqual([[8]]);
    expect(last()?.look('A2')).toEqual([['f/11']]);
    expect(last()?.look('A3')).toBeUndefined();
    const { steps } = explain(last()?.formula ?? '', last()?.look ?? (() => undefined));
    expect(steps[0]?.answers).toEqual([{ text: '1 stop' }]);
  });

  test('is told again when another is selected, something is typed, or Excel has calculated', async () => {
    await on.select('A2');
    expect(last()).toMatchObject({ address: 'A2', formula: '', shown: 'f/11' });
    on.plan.cells.set('A2', 16);
    await on.happens('change');
    expect(last()).toMatchObject({ shown: '16' });
    on.plan.cells.set('A2', 22);
    await on.happens('calculation');
    expect(last()).toMatchObject({ shown: '22' });
    expect(on.told).toHaveLength(4);
  });

  test('takes two requests at most, one where the formula speaks of no cells', async () => {
    const count = async (formula: unknown): Promise<number> => {
      on.plan.cells.set('C1', formula);
      const before = on.workbook.batches.length;
      await on.select('C1');
      return on.workbook.batches.length - before;
    };
    expect(await count('=SWEEP.LIGHTSUM(A1,A2,A1:A2)')).toBe(2);
    expect(await count('=SWEEP.STOPDIFF(8,11)')).toBe(1);
    expect(await count(8)).toBe(1);
  });

  test('is the first of several that are selected', async () => {
    await on.select('A1:B2');
    expect(last()).toMatchObject({ address: 'A1' });
  });

  test('knows tables, rows of tables, names, other sheets and errors', async () => {
    const { workbook, plan } = on;
    for (const [i, cells] of [
      ['Head', 'Reading', 'Power'],
      ['Alder', 8, 300],
      ['Birch', '#N/A', 600],
    ].entries())
      for (const [j, cell] of cells.entries()) plan.cells.set(`${'DEF'[j]}${i + 5}`, cell);
    plan.addTable(blockAt('D5:F7'), 'Lights');
    sheetOf(workbook, "It's (2)").cells.set('A1', 22);
    workbook.names.push('Target', 'Constant');
    workbook.namedCells.set('Target', { sheet: plan, block: blockAt('A1:A2') });
    const references = ['Lights[Reading]', 'Lights[[#This Row],[Reading]]', '[@Power]', 'Lights[[Head]:[Reading]]', 'Lights[Nothing]', 'Nobody[Reading]', 'Target', 'Constant', 'Nowhere', 'Nosheet!A1', 'A:A', 'A1:A10001']; // prettier-ignore
    plan.cells.set('F6', `=SWEEP.LIGHTSUM(${references.join(',')},'It''s (2)'!A1)`);
    await on.select('F6');
    const look = (reference: string) => last()?.look(reference);
    expect(look('Lights[Reading]')).toEqual([[8], [{ error: '#N/A' }]]);
    expect(look('Lights[[#This Row],[Reading]]')).toEqual([[8]]);
    expect(look('[@Power]')).toEqual([[1]]);
    expect(look('Lights[[Head]:[Reading]]')).toEqual([['Alder', 8], ['Birch', { error: '#N/A' }]]); // prettier-ignore
    expect(look('Target')).toEqual([[8], ['f/11']]);
    expect(look("'It''s (2)'!A1")).toEqual([[22]]);
    for (const unknown of [
      'Lights[Nothing]',
      'Nobody[Reading]',
      'Constant',
      'Nowhere',
      'Nosheet!A1',
      'A:A',
      'A1:A10001',
    ])
      // prettier-ignore
      expect(look(unknown), unknown).toBeUndefined();
  });

  test('knows the names of sheets, its own before those of the workbook', async () => {
    const { workbook, plan } = on;
    const other = sheetOf(workbook, "It's (2)");
    plan.names.set('pops', 'A1');
    other.names.set('pops', 'C3').set('target', 'C4');
    other.cells.set('C3', 32).set('C4', 45);
    workbook.names.push('Pops', 'Target');
    workbook.namedCells.set('Pops', { sheet: plan, block: blockAt('A2:A2') });
    plan.cells.set('F6', "=SWEEP.LIGHTSUM(pops,'It''s (2)'!pops,'it''s (2)'!TARGET,target,Nowhere!pops)");
    await on.select('F6');
    const look = (reference: string) => last()?.look(reference);
    expect(look('pops')).toEqual([[8]]);
    expect(look("'It''s (2)'!pops")).toEqual([[32]]);
    expect(look("'it''s (2)'!TARGET")).toEqual([[45]]);
    expect(look('target')).toBeUndefined();
    expect(look('Nowhere!pops')).toBeUndefined();
  });

  test('is on a sheet whose name is told in quotation marks', async () => {
    const other = sheetOf(on.workbook, "It's (2)");
    other.cells.set('A1', 22).set('B1', '=SWEEP.STOPDIFF(A1,8)');
    on.workbook.select("It's (2)", 'B1');
    await on.selects();
    expect(last()?.address).toBe('B1');
    expect(last()?.look('A1')).toEqual([[22]]);
  });

  test('outside its table has no row there', async () => {
    on.plan.cells.set('D5', 'Reading').set('D6', 8).set('A9', '=SWEEP.FNUMBER(Lights[@Reading])');
    on.plan.addTable(blockAt('D5:D6'), 'Lights');
    await on.select('A9');
    expect(last()?.look('Lights[@Reading]')).toBeUndefined();
  });

  test('stays as told while a cell is edited', async () => {
    const { batches } = on.workbook;
    on.workbook.failures = [{ batch: batches.length + 1, action: 0, code: 'InvalidOperationInCellEditMode' }];
    await on.select('A1');
    expect(on.told).toHaveLength(1);
    await on.happens('change');
    expect(last()).toMatchObject({ address: 'A1' });
  });

  test('is nothing where no cell is selected', async () => {
    on.workbook.selection = undefined;
    await on.selects();
    expect(last()).toBeUndefined();
    expect(on.told).toHaveLength(2);
  });

  test('is told once for events that come thick and fast, with what holds at the end', async () => {
    on.plan.cells.set('A1', 16);
    await Promise.all([on.happens('change'), on.happens('calculation'), on.happens('calculation')]);
    expect(last()?.look('A1')).toEqual([[16]]);
    expect(on.told.length).toBeLessThanOrEqual(3);
  });

  test('is watched no longer once that is over, and Excel is asked nothing more', async () => {
    stop();
    await on.settle();
    const before = on.workbook.batches.length;
    await on.select('A2');
    await on.happens('change');
    expect(on.told).toHaveLength(1);
    expect(on.workbook.batches).toHaveLength(before);
  });
});
