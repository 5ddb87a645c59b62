/**
 * What was typed and is not in the daybook yet, in this browser's own database: one row an entry, in the order it was
 * typed. Read by pages and by the worker alike. Limits: one browser; a browser that keeps no database keeps no outbox.
 */

export interface OutboxEntry {
  /** Made when it was typed, and never again: however often it is sent, the daybook takes it once. */
  readonly key: string;
  readonly tank: string;
  /** Address of its form, with which what can't be read is mended. */
  readonly form: string;
  readonly kind: string;
  /** What it says, for its line in the list. */
  readonly words: string;
  /** Instant with its offset: what "today" meant. */
  readonly typedAt: string;
  readonly fields: readonly (readonly [name: string, value: string])[];
  readonly state: "waiting" | "refused";
  /** Why it was not taken, a sentence a line. */
  readonly doubts: readonly string[];
}
type Row = OutboxEntry & { readonly order: number };

const DATABASE = "grazewell";
const STORE = "outbox";

let opened: Promise<IDBDatabase> | null = null;

function database(): Promise<IDBDatabase> {
  opened ??= new Promise((resolve, reject) => {
    const request = indexedDB.open(DATABASE, 1);
    request.onupgradeneeded = () => {
      const store = request.result.createObjectStore(STORE, { keyPath: "order", autoIncrement: true });
      store.createIndex("key", "key", { unique: true });
    };
    request.onsuccess = () => {
      // Another tab with a later program may change its shape: this one then opens it anew.
      request.result.onversionchange = () => {
        request.result.close();
        opened = null;
      };
      resolve(request.result);
    };
    request.onerror = () => {
      opened = null;
      reject(request.error ?? new Error("the browser keeps no database"));
    };
  });
  return opened;
}

const done = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

/** Resolves once it is on the disk, not before. */
async function write(work: (store: IDBObjectStore) => Promise<void>): Promise<void> {
  const transaction = (await database()).transaction(STORE, "readwrite", { durability: "strict" });
  const ended = new Promise<void>((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error ?? new Error("the browser kept nothing"));
  });
  await work(transaction.objectStore(STORE));
  await ended;
}

async function orderOf(store: IDBObjectStore, key: string): Promise<number | null> {
  const row = (await done(store.index("key").get(key))) as Row | undefined;
  return row?.order ?? null;
}

/** In the order they were typed. */
export async function entriesWaiting(): Promise<readonly OutboxEntry[]> {
  const store = (await database()).transaction(STORE).objectStore(STORE);
  return (await done(store.getAll())) as Row[];
}

/** Keeps it, in the place of the one with its key. */
export const keepEntry = (entry: OutboxEntry): Promise<void> =>
  write(async (store) => {
    const order = await orderOf(store, entry.key);
    const { key, tank, form, kind, words, typedAt, fields, state, doubts } = entry;
    const row = { key, tank, form, kind, words, typedAt, fields, state, doubts };
    await done(store.put(order === null ? row : { ...row, order }));
  });

export const dropEntry = (key: string): Promise<void> =>
  write(async (store) => {
    const order = await orderOf(store, key);
    if (order !== null) await done(store.delete(order));
  });
