// The browser's database of plans: opening it, transactions, and what an earlier version of the app had kept.
//
//   plans     id -> { title, created, changed, first, number, last, untouched, text, writer, stamp, deleted }
//   steps     [id, number] -> text of the plan after that step; first to last exist, `number` is the plan
//   settings  'settings' -> language, units and light, 'practice' -> what was answered there, see settings.js; 'current' -> id of the plan last in hand, 'taken over' -> texts of the earlier version's store
// The log of signed verdicts is a database of its own: an older version of the app, which knows nothing of it, still opens that of the plans.
//
//   entries   id -> { entry: as in log_format.js, origin: 'here' | 'file', of: id of the plan that was changed after }
//   drafts    check code -> { text of the plan, typed, ticks, signatures, changed }: a second check under way
// Times are milliseconds since 1970. `writer` and `stamp` tell which window wrote last.

const DATABASE = 'guywright plans';
const TABLES = ['plans', 'steps', 'settings'];
const LOG_DATABASE = 'guywright log';
const LOG_TABLES = ['entries', 'drafts'];
const EARLIER = 'guywright';

/** A database of the browser, made when it is first used. */
class Database {
  #name;
  #tables;
  #opened;

  constructor(name, tables) {
    this.#name = name;
    this.#tables = tables;
  }

  #open() {
    return new Promise((resolve, reject) => {
      const request = indexedDB.open(this.#name, 1);
      request.onupgradeneeded = () => this.#tables.forEach((table) => request.result.createObjectStore(table));
      request.onerror = (event) => {
        event.preventDefault(); // else Firefox takes it for a fault of the page
        reject(request.error);
      };
      request.onsuccess = () => {
        const db = request.result;
        const forget = () => (this.#opened = undefined);
        db.onclose = forget;
        db.onversionchange = () => {
          db.close(); // a newer version of the app in another window needs the database for itself
          forget();
        };
        resolve(db);
      };
    });
  }

  async #database() {
    this.#opened ??= this.#open();
    try {
      return await this.#opened;
    } catch (error) {
      this.#opened = undefined; // the next call tries anew
      throw error;
    }
  }

  async transact(mode, work) {
    const db = await this.#database();
    return new Promise((resolve, reject) => {
      const transaction = db.transaction(this.#tables, mode, { durability: 'strict' });
      transaction.onabort = () => reject(transaction.error ?? new Error('the browser broke off'));
      const answer = work(Object.fromEntries(this.#tables.map((table) => [table, transaction.objectStore(table)])));
      transaction.oncomplete = () => resolve(answer);
    });
  }
}

const plans = new Database(DATABASE, TABLES);
const log = new Database(LOG_DATABASE, LOG_TABLES);

/**
 * Runs `work({ plans, steps, settings })` in one transaction: all of it is written, or nothing. Resolves with what `work` has
 * returned once everything is on the disk, not only in the system's hands: a flat battery is more likely than a crash.
 */
export const transact = (mode, work) => plans.transact(mode, work);

/** The same with `work({ entries, drafts })` of the log. */
export const transactLog = (mode, work) => log.transact(mode, work);

/** Keys of all steps of a plan, or of those from one number to another. */
export const stepsOf = (id, from = -Infinity, to = Infinity) => IDBKeyRange.bound([id, from], [id, to]);

/** What the store of the earlier version holds: [plan last in hand, plan set aside], each a text or undefined. It is left as it is. */
export function earlierTexts() {
  return new Promise((resolve) => {
    const request = indexedDB.open(EARLIER);
    request.onupgradeneeded = () => request.transaction.abort(); // there is none, and none is to be made
    request.onerror = (event) => {
      event.preventDefault();
      resolve([]);
    };
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
