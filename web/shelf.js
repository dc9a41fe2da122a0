// The plans that this device keeps: saving after each gesture, the list, opening, copies, deleting and bringing back.
//
// What cannot be written stays in memory and is tried again with the next save. Where two windows change the same plan, the
// first to save keeps it; what the other has becomes a plan of its own. Nothing is written over what another window wrote.

import { LARGEST_PLAN_BYTES } from './files.js';
import { earlierTexts, stepsOf, transact } from './store.js';
import { say } from './words.js';

const LONGEST_TITLE = 80;
const MOST_DELETED = 10; // so many deleted plans can still be brought back
const CURRENT = 'current';
const TAKEN_OVER = 'taken over';

const newId = () => Array.from(crypto.getRandomValues(new Uint8Array(12)), (byte) => byte.toString(16).padStart(2, '0')).join('');
const ME = newId(); // this window, until it is closed or loaded anew

/** The program, as far as plans go; see web/keeping.js. */
let program;
/** Told of 'denied', 'full', 'unreadable' and 'changed elsewhere', each when it begins. */
let tell;

const plansOf = new Map(); // number of a document of the program -> the plan that it is
const unwritten = new Set(); // plans of which the last write failed or is under way
let open; // the plan in hand; undefined while it is an example that nobody has changed
let fault; // 'denied' or 'full' while nothing can be written
let pending = Promise.resolve();

// --- plans and what is written of them ---

const newPlan = () => ({ id: newId(), created: Date.now(), steps: new Map(), fresh: new Set(), basedOn: undefined });

function recordOf(plan) {
  const { title, created, changed, first, number, last, untouched, deleted } = plan;
  return { title, created, changed, first, number, last, untouched, deleted, text: plan.steps.get(number), writer: ME, stamp: newId() };
}

/** A record as it was found, or what can be made of a damaged one. */
function sound(found) {
  if (typeof found?.text === 'string') return { title: '', first: 0, number: 0, last: 0, ...found };
  return { title: say('unknownPlan'), first: 0, number: 0, last: 0, text: JSON.stringify(found) ?? String(found), damaged: true };
}

const isElsewhere = (stored, plan) => stored !== undefined && stored.writer !== ME && stored.stamp !== plan.basedOn;

function writeSteps(tables, plan) {
  for (const number of plan.fresh) tables.steps.put(plan.steps.get(number), [plan.id, number]);
  tables.steps.delete(stepsOf(plan.id, -Infinity, plan.first - 1));
  tables.steps.delete(stepsOf(plan.id, plan.last + 1));
}

/** Writes the plan in a transaction, as one of its own where another window has changed it. `after` is called once its id is sure. */
function write(tables, plan, after) {
  const get = tables.plans.get(plan.id);
  get.onsuccess = () => {
    const elsewhere = isElsewhere(get.result, plan);
    if (elsewhere) plan.id = newId();
    if (elsewhere || get.result === undefined) plan.fresh = new Set(plan.steps.keys());
    tables.plans.put(recordOf(plan), plan.id);
    writeSteps(tables, plan);
    if (elsewhere) tell('changed elsewhere');
    after();
  };
}

/** What nobody has changed leaves no trace: it can be had again from the menu. */
function drop(tables, plan) {
  const get = tables.plans.get(plan.id);
  get.onsuccess = () => {
    if (get.result === undefined || isElsewhere(get.result, plan) || get.result.deleted) return;
    tables.plans.delete(plan.id);
    tables.steps.delete(stepsOf(plan.id));
  };
}

function remember(tables, id) {
  tables.settings.put(id, CURRENT);
  try {
    sessionStorage.setItem(CURRENT, id); // this window's own, where several are open
  } catch { /* denied: the setting counts */ }
}

function nothingKept(error) {
  const now = error?.name === 'QuotaExceededError' ? 'full' : 'denied';
  if (fault !== now) tell(now, error);
  fault = now;
}

async function keep(plan, leaving) {
  unwritten.add(plan);
  const written = new Map();
  try {
    await transact('readwrite', (tables) => {
      if (leaving) drop(tables, leaving);
      write(tables, plan, () => {
        for (const number of plan.fresh) written.set(number, plan.steps.get(number));
        if (plan === open) remember(tables, plan.id);
      });
    });
  } catch (error) {
    return nothingKept(error);
  }
  for (const [number, text] of written) if (plan.steps.get(number) === text) plan.fresh.delete(number);
  unwritten.delete(plan);
  fault = undefined;
  const left = [...unwritten].find((other) => other !== plan && other !== open);
  return left && keep(left);
}

/** Runs after whatever is under way, so that a list never misses what was just saved. */
function inOrder(act) {
  pending = pending.then(act, act);
  return pending;
}

/** The program may still say a word on the plan before this one, never on an older one. */
function know(document, plan) {
  plansOf.set(document, plan);
  for (const old of plansOf.keys()) if (old < document - 1) plansOf.delete(old);
}

// --- what the program asks ---

/** Keeps what a gesture has made. `save` is the program's: see Save in wasm/app/shelf.hpp. */
export function save(save) {
  let leaving;
  if (save.begins) {
    const begun = newPlan();
    know(save.document, begun);
    if (save.document === Math.max(...plansOf.keys())) {
      leaving = open?.untouched && !open.deleted ? open : undefined;
      open = begun;
    }
  }
  const plan = plansOf.get(save.document);
  const { title, first, number, last, untouched } = save;
  Object.assign(plan, { title, first, number, last, untouched, changed: Date.now() });
  for (const [step, text] of save.steps) {
    plan.steps.set(step, text);
    plan.fresh.add(step);
  }
  for (const step of plan.steps.keys()) {
    if (step >= first && step <= last) continue;
    plan.steps.delete(step);
    plan.fresh.delete(step);
  }
  if (leaving) unwritten.delete(leaving);
  return inOrder(() => keep(plan, leaving));
}

/** Resolves when everything saved so far is on the disk, or could not be written. */
export const settled = () => pending;

/** Resolves with the plan of that id, from memory or from the database; undefined where there is none. */
async function load(id) {
  for (const plan of unwritten) if (plan.id === id) return plan;
  const [found, keys, texts] = await transact('readonly', ({ plans, steps }) => [plans.get(id), steps.getAllKeys(stepsOf(id)), steps.getAll(stepsOf(id))]);
  if (found.result === undefined) return undefined;
  const record = sound(found.result);
  const steps = new Map(keys.result.map(([, number], i) => [number, texts.result[i]]));
  return { ...record, id, steps: steps.set(record.number, record.text), fresh: new Set(), basedOn: record.stamp };
}

/** Whatever is larger is damage; the program need not look at it. */
const isOfFittingSize = (text) => typeof text === 'string' && text.length <= LARGEST_PLAN_BYTES / 3;

/** Texts that follow each other without a gap from the plan on, the nearest first. */
function neighbours(plan, way) {
  const texts = [];
  for (let number = plan.number + way; isOfFittingSize(plan.steps.get(number)); number += way) texts.push(plan.steps.get(number));
  return texts;
}

const canRead = (text) => isOfFittingSize(text) && program.canRead(text);

/** Has the program go on with a plan. False, with nothing changed, where it cannot read it. */
function resume(plan) {
  const text = plan.steps.get(plan.number);
  if (!canRead(text)) return false;
  for (const back of [true, false]) for (const step of neighbours(plan, back ? -1 : 1)) program.takeInStep(step, back);
  const document = program.resume(text, plan.number, plan.untouched);
  if (document === 0) return false;
  know(document, plan);
  open = plan;
  return true;
}

async function openPlan(id) {
  const leaving = open;
  if (id === leaving?.id) return true;
  const plan = await load(id).catch(() => undefined);
  if (!plan || !resume(plan)) return false;
  await noteInHand(leaving);
  return true;
}

/** Writes which plan is in hand, and lets the one before it go where nobody has changed it. */
async function noteInHand(leaving) {
  const { id } = open;
  await transact('readwrite', (tables) => {
    remember(tables, id);
    if (leaving?.untouched && !leaving.deleted) drop(tables, leaving);
  }).catch(nothingKept);
  if (leaving?.untouched) unwritten.delete(leaving);
}

// --- the list ---

/** All records in the database, as sound as they can be made. Map id -> record. */
async function recordsKept() {
  const [keys, found] = await transact('readonly', ({ plans }) => [plans.getAllKeys(), plans.getAll()]);
  return new Map(keys.result.map((id, i) => [String(id), sound(found.result[i])]));
}

/** The same with those in memory, which come before those in the database. */
async function records() {
  const all = await recordsKept().catch((error) => {
    nothingKept(error);
    return new Map();
  });
  for (const plan of unwritten) all.set(plan.id, recordOf(plan));
  return all;
}

const titleOf = (record) => String(record.title).slice(0, LONGEST_TITLE);
const timeOf = (record) => (Number.isFinite(record.changed) ? record.changed : 0);

/** [id, record] of the plans that are not deleted, changed last first. */
const shown = (all) => [...all].filter(([, record]) => !record.deleted).sort(([, a], [, b]) => timeOf(b) - timeOf(a));

const lastDeleted = (all) => [...all].filter(([, record]) => record.deleted).sort(([, a], [, b]) => b.deleted - a.deleted);

/** "2031-04-05 16:07", local time. */
function clock(record) {
  if (timeOf(record) === 0) return '';
  const at = new Date(record.changed);
  const two = (number) => String(number).padStart(2, '0');
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())} ${two(at.getHours())}:${two(at.getMinutes())}`;
}

const isReadable = (record) => !record.damaged && canRead(record.text);

async function keeping() {
  if (fault) return fault;
  return (await navigator.storage?.persisted?.()) ? 'protected' : 'may be cleared';
}

async function list() {
  const all = await records();
  const plans = shown(all).map(([id, record]) => ({ id, title: titleOf(record), changed: clock(record), readable: isReadable(record), open: id === open?.id }));
  const [deleted] = lastDeleted(all);
  program.setShelf({ plans, deleted: deleted ? titleOf(deleted[1]) : null, keeping: await keeping() });
}

/** The readable plan changed last; a new one where there is none. */
async function openAnother() {
  for (const [id, record] of shown(await records())) if (isReadable(record) && (await openPlan(id))) return;
  program.beginNew();
}

/** Changes one record. A plan in memory is changed there, and written if that can be done. */
async function change(id, what) {
  for (const plan of [open, ...unwritten]) if (plan?.id === id) return keep(Object.assign(plan, what));
  return transact('readwrite', ({ plans }) => {
    const get = plans.get(id);
    get.onsuccess = () => get.result !== undefined && plans.put({ ...sound(get.result), ...what, writer: ME, stamp: newId() }, id);
  }).catch(nothingKept);
}

/** Of the deleted plans all but the last few are let go. */
async function forgetDeleted() {
  const old = lastDeleted(await records()).slice(MOST_DELETED);
  if (old.length === 0) return;
  await transact('readwrite', ({ plans, steps }) => {
    for (const [id] of old) {
      plans.delete(id);
      steps.delete(stepsOf(id));
    }
  }).catch(nothingKept);
}

async function remove(id) {
  const inHand = id === open?.id; // asked first: it becomes a plan of its own, of another id, where another window has changed it
  await change(id, { deleted: Date.now() });
  await forgetDeleted();
  if (inHand) await openAnother();
}

async function bringBack() {
  const [last] = lastDeleted(await records());
  if (last) await change(last[0], { deleted: undefined });
}

async function textOf(id) {
  const plan = await load(id);
  return plan?.steps.get(plan.number);
}

/** Does what the list's keys ask for, and shows the list as it then is. `saveFile(title, text)` hands over a file. */
export function act(what, id, saveFile) {
  const acts = {
    list: () => {},
    open: async () => (await openPlan(id)) || tell('unreadable'),
    duplicate: async () => program.openCopy(await textOf(id)),
    delete: () => remove(id),
    'bring back': bringBack,
    'save text': async () => {
      const record = (await records()).get(id);
      if (record) saveFile(isReadable(record) ? titleOf(record) : say('unreadableFile'), record.text);
    },
  };
  return inOrder(async () => {
    try {
      await acts[what]();
      await list();
    } catch (error) {
      nothingKept(error);
    }
  });
}

// --- start, and coming back to the window ---

/** Puts what the earlier version of the app kept on the list, once for each text. Resolves with the id of the plan it had in hand, if that is new. */
async function takeOver(kept) {
  const texts = kept.map((text) => (text === undefined || typeof text === 'string' ? text : JSON.stringify(text)));
  if (texts.every((text) => text === undefined)) return undefined;
  const taken = { inHand: undefined };
  await transact('readwrite', (tables) => {
    const get = tables.settings.get(TAKEN_OVER);
    get.onsuccess = () => {
      const known = Array.isArray(get.result) ? get.result : [];
      texts.forEach((text, i) => {
        if (text === undefined || known.includes(text)) return;
        const plan = Object.assign(newPlan(), { title: titleIn(text), changed: Date.now() - i, first: 0, number: 0, last: 0, untouched: false });
        plan.fresh.add(0);
        plan.steps.set(0, text);
        tables.plans.put(recordOf(plan), plan.id);
        writeSteps(tables, plan);
        if (i === 0) taken.inHand = plan.id;
        known.push(text);
      });
      tables.settings.put(known, TAKEN_OVER);
    };
  });
  return taken.inHand;
}

function titleIn(text) {
  try {
    return String(JSON.parse(text).title ?? say('unknownPlan'));
  } catch {
    return say('unknownPlan');
  }
}

async function currentId() {
  try {
    const own = sessionStorage.getItem(CURRENT);
    if (own) return own;
  } catch { /* denied: the setting counts */ }
  return (await transact('readonly', ({ settings }) => settings.get(CURRENT))).result;
}

/** The plan of that id, where it can be had, and all records: { id, plan, all }. */
async function askFor(id) {
  const [all, plan] = await Promise.all([recordsKept(), id === undefined ? undefined : load(id).catch(() => undefined)]);
  return { id, plan, all };
}

/** Calls `opened` as soon as the program has a plan. */
async function openLast({ id, plan, all }, opened) {
  if (open) return; // somebody was quicker than the database
  const plans = shown(all);
  const known = plans.some(([each]) => each === id);
  if (known && plan && resume(plan)) {
    opened();
    return noteInHand();
  }
  if (known) tell('unreadable');
  for (const [other, record] of plans) if (isReadable(record) && (await openPlan(other))) return;
}

/**
 * Goes on with the plan last in hand, if there is one and `anew` does not forbid it: asks for it at once, and opens it when the promised
 * program is there. Resolves when that is done, or there is none.
 */
export function start(promisedProgram, teller, anew) {
  tell = teller;
  const asked = Promise.all([earlierTexts(), currentId().then(askFor)]).catch((error) => ({ error }));
  return new Promise((opened) => {
    inOrder(async () => {
      program = await promisedProgram;
      try {
        const answer = await asked;
        if (answer.error) throw answer.error;
        const [earlier, last] = answer;
        const taken = await takeOver(earlier);
        if (!anew) await openLast(taken === undefined ? last : await askFor(taken), opened);
        await showNewer(); // it was asked for a while ago
      } catch (error) {
        nothingKept(error);
      }
      opened();
    });
  });
}

async function showNewer() {
  if (!open || unwritten.has(open)) return;
  const newer = await load(open.id).catch(() => undefined);
  if (newer && !newer.deleted && isElsewhere(newer, open)) resume(newer);
}

/** Back in this window: shows what another one has made of the plan meanwhile, if nothing here waits to be written. */
export const takeNewer = () => inOrder(showNewer);

/** That of the plan in hand; undefined while it is an example that nobody has changed. */
export const planId = () => open?.id;

/** Text of the plan last kept, for when the program itself cannot give it any more. */
export async function lastText() {
  if (open) return open.steps.get(open.number);
  const id = await currentId();
  return id === undefined ? undefined : textOf(id);
}
