// Keeps the plan's text in IndexedDB. Every call opens no window and asks for nothing.

const DATABASE = 'guywright';
const TABLE = 'plans';
const CURRENT = 'current';
const SET_ASIDE = 'set aside';

let opened;

function database() {
  opened ??= new Promise((resolve, reject) => {
    const request = indexedDB.open(DATABASE, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(TABLE);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  return opened;
}

/** Runs `work` on the table; resolves with its result once everything is written to disk. */
async function transact(mode, work) {
  const db = await database();
  return new Promise((resolve, reject) => {
    const transaction = db.transaction(TABLE, mode, { durability: 'strict' });
    const request = work(transaction.objectStore(TABLE));
    transaction.oncomplete = () => resolve(request.result);
    transaction.onerror = transaction.onabort = () => reject(transaction.error);
  });
}

/** The kept plan's text, or undefined. */
export const kept = () => transact('readonly', (table) => table.get(CURRENT));

/** Keeps `text` as the plan to start with next time. */
export const keep = (text) => transact('readwrite', (table) => table.put(text, CURRENT));

/** Moves the kept plan out of the way without losing it: the app could not start with it. */
export async function setAside() {
  const text = await kept();
  if (text === undefined) return;
  await transact('readwrite', (table) => {
    table.put(text, SET_ASIDE);
    return table.delete(CURRENT);
  });
}

/** Asks the browser not to clear this site's storage when space is short. Call from a gesture. */
export const askToPersist = async () => (await navigator.storage?.persist?.()) ?? false;
