// The browser's database of plans: opening it, transactions, and what an earlier version of the app had kept.
//
//   plans     id -> { title, created, changed, first, number, last, untouched, text, writer, stamp, deleted }
//   steps     [id, number] -> text of the plan after that step; first to last exist, `number` is the plan
//   settings  'settings' -> language, units and light, see settings.js; 'current' -> id of the plan last in hand, 'taken over' -> texts of the earlier version's store
// Times are milliseconds since 1970. `writer` and `stamp` tell which window wrote last.

const DATABASE = 'guywright plans';
const TABLES = ['plans', 'steps', 'settings'];
const EARLIER = 'guywright';

let opened;

function open() {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(DATABASE, 1);
    request.onupgradeneeded = () => TABLES.forEach((table) => request.result.createObjectStore(table));
    request.onerror = () => reject(request.error);
    request.onsuccess = () => {
      const db = request.result;
      const forget = () => (opened = undefined);
      db.onclose = forget;
      db.onversionchange = () => {
        db.close(); // a newer version of the app in another window needs the database for itself
        forget();
      };
      resolve(db);
    };
  });
}

async function database() {
  opened ??= open();
  try {
    return await opened;
  } catch (error) {
    opened = undefined; // the next call tries anew
    throw error;
  }
}

/**
 * Runs `work({ plans, steps, settings })` in one transaction: all of it is written, or nothing. Resolves with what `work` has
 * returned once everything is on the disk, not only in the system's hands: a flat battery is more likely than a crash.
 */
export async function transact(mode, work) {
  const db = await database();
  return new Promise((resolve, reject) => {
    const transaction = db.transaction(TABLES, mode, { durability: 'strict' });
    transaction.onabort = () => reject(transaction.error ?? new Error('the browser broke off'));
    const answer = work(Object.fromEntries(TABLES.map((table) => [table, transaction.objectStore(table)])));
    transaction.oncomplete = () => resolve(answer);
  });
}

/** Keys of all steps of a plan, or of those from one number to another. */
export const stepsOf = (id, from = -Infinity, to = Infinity) => IDBKeyRange.bound([id, from], [id, to]);

/** What the store of the earlier version holds: [plan last in hand, plan set aside], each a text or undefined. It is left as it is. */
export function earlierTexts() {
  return new Promise((resolve) => {
    const request = indexedDB.open(EARLIER);
    request.onupgradeneeded = () => request.transaction.abort(); // there is none, and none is to be made
    request.onerror = () => resolve([]);
    request.onsuccess = () => {
      const db = request.result;
      if (!db.objectStoreNames.contains('plans')) return resolve([]);
      const read = db.transaction('plans').objectStore('plans');
      const [current, aside] = ['current', 'set aside'].map((key) => read.get(key));
      read.transaction.oncomplete = () => {
        db.close();
        resolve([current.result, aside.result]);
      };
      read.transaction.onabort = () => resolve([]);
    };
  });
}
