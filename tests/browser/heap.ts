import type { Page } from 'playwright-core';

/** Bytes in use after everything that can be given up has been. */
export interface Heap {
  page(): Promise<number>;
  worker(): Promise<number>;
}

type Send = (method: string) => Promise<unknown>;

async function used(send: Send): Promise<number> {
  await send('HeapProfiler.enable');
  // What the first round sets free may itself hold what the next one can.
  for (let i = 0; i < 3; i++) await send('HeapProfiler.collectGarbage');
  const { usedSize } = (await send('Runtime.getHeapUsage')) as { usedSize: number };
  return usedSize;
}

/** Reads the heaps of a page and of its one worker. */
export async function heapOf(page: Page): Promise<Heap> {
  const inspector = await page.context().newCDPSession(page);
  const answers = new Map<number, (result: unknown) => void>();
  const worker = new Promise<string>((resolve) => {
    inspector.on('Target.attachedToTarget', ({ sessionId, targetInfo }) => {
      if (targetInfo.type === 'worker') resolve(sessionId);
    });
  });
  inspector.on('Target.receivedMessageFromTarget', ({ message }) => {
    const { id, result } = JSON.parse(message) as { id?: number; result?: unknown };
    if (id !== undefined) answers.get(id)?.(result);
  });
  await inspector.send('Target.setAutoAttach', {
    autoAttach: true,
    waitForDebuggerOnStart: false,
    flatten: false,
  });
  const sessionId = await worker;
  let id = 0;
  const sendToWorker: Send = (method) =>
    new Promise((resolve, reject) => {
      answers.set(++id, resolve);
      inspector
        .send('Target.sendMessageToTarget', { sessionId, message: JSON.stringify({ id, method }) })
        .catch(reject);
    });
  return {
    page: () => used((method) => inspector.send(method as 'Runtime.getHeapUsage')),
    worker: () => used(sendToWorker),
  };
}
