const NAME = 'sweeptable';
const STORE = 'workbooks';

const settled = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.addEventListener('success', () => resolve(request.result));
    request.addEventListener('error', () =>
      reject(request.error ?? new Error('The browser gave no reason.')),
    );
  });

let opened: Promise<IDBDatabase> | undefined;
const forget = (): void => {
  opened = undefined;
};

async function open(): Promise<IDBDatabase> {
  const request = indexedDB.open(NAME, 1);
  request.addEventListener('upgradeneeded', () => request.result.createObjectStore(STORE));
  const made = await settled(request);
  // As when a person clears the browser's storage: the next record goes into a new one.
  made.addEventListener('close', forget);
  return made;
}

function database(): Promise<IDBDatabase> {
  if (!opened) {
    opened = open();
    opened.catch(forget);
  }
  return opened;
}

/** Reads from this browser's own storage. Rejects where the browser forbids it. */
export async function read(key: string): Promise<unknown> {
  const store = (await database()).transaction(STORE).objectStore(STORE);
  return settled(store.get(key));
}

/** All records whose keys begin so, in the order of their keys. Rejects where the browser forbids it. */
export async function readAll(begins: string): Promise<ReadonlyMap<string, unknown>> {
  const store = (await database()).transaction(STORE).objectStore(STORE);
  const range = IDBKeyRange.bound(begins, `${begins}\uffff`);
  const [keys, records] = await Promise.all([
    settled(store.getAllKeys(range)),
    settled(store.getAll(range) as IDBRequest<unknown[]>),
  ]);
  return new Map(keys.map((key, i) => [String(key), records[i]]));
}

/** Changes several records at once, all or none; undefined takes a record away. Rejects where storage is full or forbidden. */
export async function write(records: Readonly<Record<string, unknown>>): Promise<void> {
  const transaction = (await database()).transaction(STORE, 'readwrite');
  const store = transaction.objectStore(STORE);
  return new Promise((resolve, reject) => {
    transaction.addEventListener('complete', () => resolve());
    transaction.addEventListener('abort', () =>
      reject(transaction.error ?? new Error('Storing was broken off.')),
    );
    for (const [key, value] of Object.entries(records)) {
      if (value === undefined) store.delete(key);
      else store.put(value, key);
    }
    // At once: a page on its way out does not live to hear that its requests are done.
    transaction.commit();
  });
}
