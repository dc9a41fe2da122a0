// The signed verdicts that this device keeps: none is ever deleted or written over. And the second checks under way.
//
// What cannot be written stays in memory, can be saved as a file from there, and is tried again with the next that is written.

import { entryFaults, readLog, timeOf, writeLog } from './log_format.js';
import { transactLog } from './store.js';

const MOST_DRAFTS = 20;
const newId = () => Array.from(crypto.getRandomValues(new Uint8Array(12)), (byte) => byte.toString(16).padStart(2, '0')).join('');

export class Log {
  #codeOf;
  #stand; // told of the entries whose signatures stand
  #pending = Promise.resolve();
  #unwritten = new Map(); // id -> record
  #falls = new Map(); // id -> { time, of }: of entries that could not be read when their plan was changed
  #drafts = new Map(); // check code -> draft, what is in hand before it is on the disk
  fault; // 'denied' or 'full' while nothing can be written

  /** `codeOf(text)`: check code of a plan's text; `stand(entries)` is called with those that stand whenever that may have changed. */
  constructor({ codeOf, stand }) {
    this.#codeOf = codeOf;
    this.#stand = stand;
  }

  #inOrder(act) {
    this.#pending = this.#pending.then(act, act);
    return this.#pending;
  }

  /** Resolves when everything so far is on the disk, or could not be written. */
  settled() {
    return this.#pending.catch(() => {});
  }

  #failed(error) {
    this.fault = error?.name === 'QuotaExceededError' ? 'full' : 'denied';
  }

  /** Writes everything that waits. Resolves with whether nothing waits any more. */
  async #write() {
    const waiting = [...this.#unwritten], drafts = [...this.#drafts];
    try {
      await transactLog('readwrite', (tables) => {
        for (const [id, record] of waiting) tables.entries.put(record, id);
        for (const [code, draft] of drafts) tables.drafts.put(draft, code);
      });
    } catch (error) {
      this.#failed(error);
      return false;
    }
    for (const [id, record] of waiting) if (this.#unwritten.get(id) === record) this.#unwritten.delete(id);
    for (const [code, draft] of drafts) if (this.#drafts.get(code) === draft) this.#drafts.delete(code);
    this.fault = undefined;
    return true;
  }

  // --- entries ---

  /** id -> record, in memory before in the database; `all.unread` where that cannot be read. A record that is none is handed on as it was found. */
  async #records() {
    const all = new Map();
    try {
      const [keys, found] = await transactLog('readonly', ({ entries }) => [entries.getAllKeys(), entries.getAll()]);
      keys.result.forEach((id, i) => all.set(String(id), found.result[i]));
    } catch (error) {
      this.#failed(error);
      all.unread = true;
    }
    for (const [id, record] of this.#unwritten) all.set(id, record);
    return all;
  }

  /** Signed last first; of a damaged one only { id, damaged: true, found, faults }. */
  async all() {
    const listed = [...(await this.#records())].map(([id, record]) => {
      const faults = entryFaults(record?.entry, this.#codeOf);
      if (faults.length > 0) return { id, damaged: true, found: record?.entry ?? record, faults };
      return { id, entry: record.entry, origin: record.origin === 'here' ? 'here' : 'file', of: record.of, kept: !this.#unwritten.has(id) };
    });
    const signedAt = ({ entry }) => (entry ? Date.parse(entry.signatures[1].time) : 0);
    return listed.sort((a, b) => signedAt(b) - signedAt(a));
  }

  /** What two persons have just signed. Resolves with whether it is on the disk. */
  sign(entry) {
    const whole = { id: newId(), ...entry, fell_away: null };
    return this.#inOrder(async () => {
      this.#unwritten.set(whole.id, { entry: whole, origin: 'here' });
      const kept = await this.#write();
      await this.#tellStanding();
      return { entry: whole, kept };
    });
  }

  /** The plan of an entry was changed: its signatures hold no longer. `planId()`: the plan that it became, for the message there. */
  fall(id, planId) {
    return this.#inOrder(() => {
      this.#falls.set(id, { time: timeOf(new Date()), of: planId() });
      return this.#writeFalls();
    });
  }

  async #writeFalls() {
    if (this.#falls.size === 0) return;
    const all = await this.#records();
    for (const [id, { time, of }] of this.#falls) {
      const record = all.get(id);
      if (!record && all.unread) continue; // tried again, and holds meanwhile
      this.#falls.delete(id);
      if (entryFaults(record?.entry, this.#codeOf).length > 0 || record.entry.fell_away) continue;
      this.#unwritten.set(id, { ...record, entry: { ...record.entry, fell_away: { time } }, of });
    }
    await this.#write();
  }

  /** Signed on this device and not fallen away. What was read from a file is a record, and signs nothing here. */
  async #standing() {
    return (await this.all()).filter(({ id, entry, origin }) => entry && origin === 'here' && !entry.fell_away && !this.#falls.has(id));
  }

  async standingFor(planText) {
    await this.settled();
    return (await this.#standing()).find(({ entry }) => entry.plan === planText);
  }

  /** The last entry whose plan has become the plan `planId`. */
  async fallenFor(planId) {
    await this.settled();
    return planId === undefined ? undefined : (await this.all()).find(({ entry, of }) => entry?.fell_away && of === planId);
  }

  async #tellStanding() {
    this.#stand((await this.#standing()).map(({ entry }) => entry));
  }

  /** At the start, and on coming back from another window. */
  refresh() {
    return this.#inOrder(async () => {
      await this.#writeFalls();
      await this.#tellStanding();
    });
  }

  // --- as a file ---

  async exported(app) {
    await this.settled();
    const all = await this.all();
    return writeLog({ entries: all.filter(({ entry }) => entry).map(({ entry }) => entry), setAside: all.filter(({ damaged }) => damaged).map(({ found }) => found), app, written: timeOf(new Date()) });
  }

  /** Takes in a file. { added, known, setAside, faults, kept }, or { refused, ... } with nothing changed. */
  async take(content) {
    const read = readLog(content, this.#codeOf); // may break off where one is nested too deep
    if (read.refused) return read;
    return this.#inOrder(async () => {
      const here = await this.#records();
      const names = new Set(here.keys());
      const texts = new Set([...here.values()].map((record) => JSON.stringify(record?.entry ?? record)));
      const taken = { added: 0, known: 0, setAside: 0, faults: read.faults };
      const add = (entry, wanted, what) => {
        if (texts.has(JSON.stringify(entry))) return ++taken.known;
        const id = names.has(wanted) ? newId() : wanted; // what stands under that name, here or before it in the file, stays as it is
        names.add(id);
        texts.add(JSON.stringify(entry));
        this.#unwritten.set(id, { entry, origin: 'file' });
        return ++taken[what];
      };
      for (const entry of read.entries) add(entry, entry.id, 'added');
      for (const found of read.setAside) add(found, newId(), 'setAside');
      taken.kept = await this.#write();
      return taken;
    });
  }

  // --- second checks under way ---

  /** What was entered for that very plan; undefined where nothing was. */
  async draft(code, planText) {
    let found = this.#drafts.get(code);
    if (!found) {
      await this.settled();
      try {
        found = (await transactLog('readonly', ({ drafts }) => drafts.get(code))).result;
      } catch (error) {
        this.#failed(error);
      }
    }
    return found?.text === planText ? found : undefined;
  }

  keepDraft(code, draft) {
    this.#drafts.set(code, { ...draft, changed: Date.now() });
    return this.#inOrder(async () => {
      if (!this.#drafts.has(code)) return; // written together with a later one
      if (await this.#write()) await this.#forgetOldDrafts();
    });
  }

  async #forgetOldDrafts() {
    try {
      const [keys, found] = await transactLog('readonly', ({ drafts }) => [drafts.getAllKeys(), drafts.getAll()]);
      const old = keys.result.map((code, i) => [code, found.result[i]?.changed ?? 0]).sort(([, a], [, b]) => b - a).slice(MOST_DRAFTS);
      if (old.length > 0) await transactLog('readwrite', ({ drafts }) => old.forEach(([code]) => drafts.delete(code)));
    } catch (error) {
      this.#failed(error);
    }
  }
}
