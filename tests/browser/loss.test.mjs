// The browser's process is killed, in the middle of a drag and at any other moment, and started again with the same profile:
// the plan is the one after the last finished gesture, or where that was still on its way to the disk the one before it, never
// another; every step of it and of the other plan is on the disk as it was, and no plan is there that nobody has made. The app
// itself is whole after each start, also where it was being replaced by a newer release.
//   LOSS_KILLS=200 node --test tests/browser/loss.test.mjs      more kills than the usual nine
//   LOSS_SEED=7                                                 another session

import assert from 'node:assert/strict';
import { test } from 'node:test';

import { AppPage, SCREENS, copySite, killBrowser, launch, makeNewer, startSite, temporaryFolder } from './harness.mjs';
import { choose, coarse, has, inTable, savedPlan, showPlans } from './steps.mjs';

const KILLS = Number(process.env.LOSS_KILLS ?? 9);
const SEED = Number(process.env.LOSS_SEED ?? 1);
const SCREEN = coarse(SCREENS.phone);

/** Numbers from 0 to 1 that are the same in every run. */
function randomNumbers(seed) {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}
const random = randomNumbers(SEED);
const below = (count) => Math.floor(random() * count);
const pick = (list) => list[below(list.length)];

const talk = (...words) => process.env.LOSS_TALK && console.error(new Date().toISOString(), ...words);
const MOST_STEPS = 200; // of a plan, on the disk
const planOf = (app) => app.page.evaluate(() => window.guywright.plan());
const pause = (ms) => new Promise((done) => setTimeout(done, ms));
const onDisk = (app) => app.page.evaluate(() => window.guywright.saved());

/** What the app must be able to give back of one plan: its texts, gesture by gesture, of which `at` is the present one. */
class Session {
  at = 0;

  constructor(text) {
    this.texts = [text];
  }

  /** A gesture is finished; the program shows `text`. */
  finish(text) {
    if (text === this.texts[this.at]) return;
    this.texts.length = this.at + 1;
    this.texts.push(text);
    ++this.at;
  }

  /** As it is now: { session, texts, at }. */
  get state() {
    return { session: this, texts: [...this.texts], at: this.at };
  }

  goOnFrom({ texts, at }) {
    Object.assign(this, { texts: [...texts], at });
  }
}

// --- gestures; each resolves when the finger is up and the program has drawn ---

async function fingerOn(app, id, shareX) {
  const point = await app.pointOn(id, shareX, 0.4);
  await app.touch('touchStart', [point]);
  return point;
}

async function moveBy(app, point, px, steps, waitMs) {
  for (let i = 1; i <= steps; ++i) {
    await app.touch('touchMove', [{ x: point.x + (px * i) / steps, y: point.y }]);
    await app.page.waitForTimeout(waitMs);
  }
}

const sliders = async (app) => (await app.state()).widgets.filter(({ kind }) => kind === 'slider').map(({ id }) => id);

async function dragSlider(app, session) {
  const id = pick(await sliders(app));
  await moveBy(app, await fingerOn(app, id, 0.5), (random() - 0.5) * 200, 6, 10);
  await app.touch('touchEnd', []);
  await app.settled();
  session.finish(await planOf(app));
}

async function nudge(app, session) {
  const path = pick(await sliders(app)).slice('slide '.length);
  await app.tap(`${pick(['more', 'less'])} ${path}`);
  session.finish(await planOf(app));
}

async function undo(app, session) {
  if (session.at === 0) return;
  await app.tap('undo');
  session.at -= 1;
  assert.equal(await planOf(app), session.texts[session.at], 'undo leads to another plan than the one before');
}

async function redo(app, session) {
  if (session.at + 1 === session.texts.length) return;
  await choose(app, 'redo');
  session.at += 1;
  assert.equal(await planOf(app), session.texts[session.at], 'redo leads to another plan than the one after');
  if (has(await app.state(), 'close menu')) await app.tap('close menu');
}

async function turnPage(app) {
  const { widgets } = await app.state();
  const ways = widgets.filter(({ id, value }) => (id === 'next' || id === 'back') && value !== 'off');
  await app.tap(pick(ways).id);
  if ((await sliders(app)).length === 0) await choose(app, 'step Rope');
}

const GESTURES = [dragSlider, dragSlider, nudge, nudge, nudge, undo, redo, turnPage];

// --- moments to be killed at; each resolves with the states of the plan in hand that may come back; `holds(app)`: what else must ---

/** The finger is on the slider and has moved it: nothing of that is finished. */
async function inADrag(app, { session }, kill) {
  await onDisk(app);
  const point = await fingerOn(app, pick(await sliders(app)), 0.5);
  await moveBy(app, point, 30 + 120 * random(), 2 + below(6), 10);
  kill();
  return [session.state];
}

/** The finger goes up and the power is gone at once, or a few milliseconds later. What it would make is tried and taken back before. */
async function asTheFingerGoesUp(app, { session }, kill) {
  const path = pick(await sliders(app)).slice('slide '.length);
  await app.tap(`more ${path}`);
  session.finish(await planOf(app));
  const after = session.state;
  await undo(app, session);
  await onDisk(app);
  const before = session.state;
  app.tapAt(await app.pointOn(`more ${path}`)).catch(() => {}); // the answer may never come
  await pause(below(60));
  kill();
  return [before, after];
}

/** Right after a gesture that nobody has seen to the disk. */
async function afterAGesture(app, { session }, kill) {
  await onDisk(app);
  const before = session.state;
  await pick([nudge, dragSlider, undo])(app, session);
  kill();
  return [before, session.state];
}

async function atRest(app, { session }, kill) {
  await onDisk(app);
  await pause(below(300));
  kill();
  return [session.state];
}

/** While the app is still starting: nothing has been done, nothing may have changed. */
async function whileStarting(app, { session }, kill) {
  await onDisk(app);
  app.page.reload().catch(() => {});
  await pause(below(900));
  kill();
  return [session.state];
}

/** As the other plan is taken from the list. */
async function asPlansAreChanged(app, sessions, kill) {
  await onDisk(app);
  await showPlans(app);
  await app.tapAt(await app.pointOn('plan 1'));
  await pause(below(60));
  kill();
  return [sessions.session.state, sessions.other.state];
}

/** As a newer release comes in, in the middle of a gesture. */
async function duringAnUpdate(app, { session }, kill, folder) {
  makeNewer(folder, 'style.css', '\n');
  app.page.evaluate(() => navigator.serviceWorker.getRegistration().then((registration) => registration.update())).catch(() => {});
  await pause(below(400));
  const before = session.state;
  await nudge(app, session);
  kill();
  return [before, session.state];
}

/** As a newer release takes the place of the one in use, by consent. */
async function asANewerReleaseTakesOver(app, { session }, kill, folder) {
  makeNewer(folder, 'style.css', '\n');
  await app.page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    await registration.update();
    for (let i = 0; i < 4800 && !registration.waiting; ++i) await new Promise((over) => { setTimeout(over, 25); });
  });
  await onDisk(app);
  await app.page.reload();
  await app.page.getByRole('button', { name: 'Use it now' }).click({ noWaitAfter: true });
  await pause(below(500));
  kill();
  return [session.state];
}

/** A second person is typing what they measured. */
async function inASecondCheck(app, { session }, kill) {
  await app.until((state) => !state.checking, 'the end of the check');
  const isJudged = await app.page.evaluate(() => JSON.parse(window.guywright.second()).measurements.length > 0);
  if (!isJudged) return atRest(app, { session }, kill); // a slider has made a rig that cannot be
  await choose(app, 'second');
  const field = app.page.locator('#page input[data-path]').first();
  await field.waitFor();
  await field.fill(`${below(90)}`);
  await onDisk(app);
  const [first, second] = [await field.inputValue(), `${90 + below(90)}`];
  await field.fill(second);
  await pause(below(30));
  kill();
  const holds = async (again) => {
    const drafts = (await inTable(again, 'log', 'drafts')).map(([, draft]) => draft).filter(({ text }) => text === session.texts[session.at]);
    assert.ok(drafts.length === 1 && [first, second].includes(Object.values(drafts[0].typed)[0]), `of the second check there is ${JSON.stringify(drafts)}`);
  };
  return Object.assign([session.state], { holds });
}

const MOMENTS = [inADrag, asTheFingerGoesUp, afterAGesture, asPlansAreChanged, whileStarting, duringAnUpdate, asANewerReleaseTakesOver, inASecondCheck, atRest];

// --- coming back ---

/** Leaves of a JSON value by their paths. */
function leaves(value, path = '') {
  if (typeof value !== 'object' || value === null) return [[path, value]];
  return Object.entries(value).flatMap(([key, inner]) => leaves(inner, Array.isArray(value) ? `${path}[${key}]` : path ? `${path}.${key}` : key));
}

/** Paths in which two plans differ. */
function differences(a, b) {
  const [before, after] = [a, b].map((text) => new Map(leaves(JSON.parse(text))));
  return [...new Set([...before.keys(), ...after.keys()])].filter((path) => before.get(path) !== after.get(path));
}

/** The plans on the disk: id -> { texts, at } as a Session has them. */
async function shelfOf(app) {
  await savedPlan(app);
  const steps = await inTable(app, 'plans', 'steps');
  return new Map((await inTable(app, 'plans', 'plans')).map(([id, { number, first, last, text, deleted }]) => {
    const own = steps.filter(([[of]]) => of === id);
    assert.deepEqual(own.map(([[, n]]) => n), Array.from({ length: last - first + 1 }, (_, i) => first + i), 'a step is missing, or one too many is there');
    const texts = own.map(([, step]) => step);
    assert.equal(texts[number - first], text, 'the plan is not the step that it should be');
    assert.equal(deleted, undefined);
    return [id, { texts, at: number - first }];
  }));
}

/** Whether the disk holds a plan as it was, of many steps the last. */
function isHeld(held, { texts, at }) {
  const cut = texts.length - held.texts.length;
  if (cut < 0 || (cut > 0 && held.texts.length < MOST_STEPS)) return false;
  return held.at === at - cut && held.texts.every((text, i) => text === texts[i + cut]);
}

/** Takes note of the plan that came back; fails where it is one that may not, or where anything else on the disk has changed. */
function cameBack(text, shelf, sessions, allowed) {
  const back = allowed.find(({ session, texts, at }) => texts[at] === text && isHeld(shelf.get(session.id), { texts, at }));
  if (!back) {
    const apart = allowed.map(({ session, texts, at }) => `${differences(texts[at], text)} (steps ${isHeld(shelf.get(session.id), { texts, at }) ? 'as' : 'not as'} they were)`);
    assert.fail(`another plan came back: it differs in ${apart.join(' or ')}`);
  }
  if (back.session !== sessions.session) [sessions.session, sessions.other] = [sessions.other, sessions.session];
  sessions.session.goOnFrom(shelf.get(back.session.id));
  assert.deepEqual([...shelf.keys()].sort(), [sessions.session.id, sessions.other.id].sort(), 'a plan is there that nobody made');
  assert.ok(isHeld(shelf.get(sessions.other.id), sessions.other), 'the plan that was not in hand has changed');
}

/** Back to the first plan of the session and on again, step by step. */
async function assertUndoLeadsThrough(app, session) {
  const here = session.at;
  while (session.at > 0) await undo(app, session);
  assert.equal((await app.widget('undo')).value, 'off', 'there is something before the first plan');
  while (session.at < here) await redo(app, session);
  assert.equal(await planOf(app), session.texts[here]);
}

async function start(t, folder, address) {
  const context = await launch(t, folder, { screen: SCREEN });
  const app = await AppPage.open(context, address);
  const copy = await app.copyReady();
  assert.equal(copy.whole, copy.files, 'the app itself is not whole');
  await app.page.evaluate(() => window.guywright.copyTold);
  const refusal = app.page.getByRole('button', { name: 'Not now' });
  if (await refusal.isVisible()) await refusal.click();
  await choose(app, 'step Edge');
  return { app, context };
}

/** Two plans, both changed: the one in hand and the one on the list. */
async function twoPlans(app) {
  const made = [];
  for (const id of ['new', 'example dam-crest']) {
    await choose(app, id);
    const session = new Session(await planOf(app));
    await nudge(app, session); // what nobody has changed is not kept
    made.unshift(session);
  }
  for (const [id, held] of await shelfOf(app)) made.find((session) => isHeld(held, session)).id = id;
  return { session: made[0], other: made[1] };
}

test(`a killed browser loses at most the gesture in hand (${KILLS} kills, seed ${SEED})`, { timeout: 60_000 * (KILLS + 5) }, async (t) => {
  const releases = copySite(t);
  const site = await startSite(t, releases);
  const folder = temporaryFolder(t);
  let { app, context } = await start(t, folder, site.address);
  const sessions = await twoPlans(app);
  const seen = {};
  for (let i = 0; i < KILLS; ++i) {
    for (let gestures = 1 + below(4); gestures > 0; --gestures) await pick(GESTURES)(app, sessions.session);
    const moment = MOMENTS[i % MOMENTS.length];
    talk(i, moment.name);
    const gone = new Promise((done) => context.once('close', done));
    const allowed = await moment(app, sessions, () => killBrowser(folder, { helpersToo: random() < 0.5 }), releases);
    talk('killed');
    await gone;
    talk('gone');
    ({ app, context } = await start(t, folder, site.address));
    talk('started');
    cameBack(await planOf(app), await shelfOf(app), sessions, allowed);
    await allowed.holds?.(app);
    seen[moment.name] = (seen[moment.name] ?? 0) + 1;
    if (i % MOMENTS.length === 2 || i + 1 === KILLS) await assertUndoLeadsThrough(app, sessions.session);
  }
  t.diagnostic(`kills: ${JSON.stringify(seen)}; ${sessions.session.texts.length} and ${sessions.other.texts.length} plans in the end`);
});
