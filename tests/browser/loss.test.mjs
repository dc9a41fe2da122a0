// The browser's process is killed, in the middle of a drag and at any other moment, and started again with the same profile:
// the plan is the one after the last finished gesture, or where that was still on its way to the disk the one before it;
// undo leads back through all there was.
//   LOSS_KILLS=200 node --test tests/browser/loss.test.mjs      more kills than the usual six
//   LOSS_SEED=7                                                 another session

import assert from 'node:assert/strict';
import { test } from 'node:test';

import { AppPage, SCREENS, killBrowser, launch, startSite, temporaryFolder } from './harness.mjs';
import { choose, coarse, has, showPlans } from './steps.mjs';

const KILLS = Number(process.env.LOSS_KILLS ?? 6);
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

// --- moments to be killed at; each resolves with what may come back: [{ session, at }], `path`: with one step more of that number ---

/** The finger is on the slider and has moved it: nothing of that is finished. */
async function inADrag(app, { session }, kill) {
  await onDisk(app);
  const point = await fingerOn(app, pick(await sliders(app)), 0.5);
  await moveBy(app, point, 30 + 120 * random(), 2 + below(6), 10);
  kill();
  return [{ session, at: session.at }];
}

/** The finger goes up and the power is gone at once, or a few milliseconds later. */
async function asTheFingerGoesUp(app, { session }, kill) {
  await onDisk(app);
  const path = pick(await sliders(app)).slice('slide '.length);
  await app.touch('touchStart', [await app.pointOn(`more ${path}`)]);
  await app.page.waitForTimeout(30);
  app.touch('touchEnd', []).catch(() => {}); // the answer may never come
  await pause(below(60));
  kill();
  return [{ session, at: session.at }, { session, at: session.at, path }];
}

/** Right after a gesture that nobody has seen to the disk. */
async function afterAGesture(app, { session }, kill) {
  await onDisk(app);
  const before = session.at;
  await pick([nudge, dragSlider, undo])(app, session);
  kill();
  return [{ session, at: before }, { session, at: session.at }];
}

async function atRest(app, { session }, kill) {
  await onDisk(app);
  await pause(below(300));
  kill();
  return [{ session, at: session.at }];
}

/** While the app is still starting: nothing has been done, nothing may have changed. */
async function whileStarting(app, { session }, kill) {
  await onDisk(app);
  app.page.reload().catch(() => {});
  await pause(below(900));
  kill();
  return [{ session, at: session.at }];
}

/** As the other plan is taken from the list. */
async function asPlansAreChanged(app, sessions, kill) {
  await onDisk(app);
  await showPlans(app);
  await app.tapAt(await app.pointOn('plan 1'));
  await pause(below(60));
  kill();
  return [sessions.session, sessions.other].map((session) => ({ session, at: session.at }));
}

const MOMENTS = [inADrag, asTheFingerGoesUp, afterAGesture, asPlansAreChanged, whileStarting, atRest];

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

/** Takes note of the plan that came back; fails where it is one that may not. */
function cameBack(text, sessions, allowed) {
  for (const { session, at, path } of allowed) {
    const same = session.texts[at] === text;
    if (!same && !(path && String(differences(session.texts[at], text)) === path)) continue;
    if (session !== sessions.session) [sessions.session, sessions.other] = [sessions.other, sessions.session];
    session.at = at;
    return session.finish(text);
  }
  return assert.fail(`another plan came back: it differs in ${allowed.map(({ session, at }) => differences(session.texts[at], text)).join(' or ')}`);
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
  return { session: made[0], other: made[1] };
}

test(`a killed browser loses at most the gesture in hand (${KILLS} kills, seed ${SEED})`, { timeout: 60_000 * (KILLS + 5) }, async (t) => {
  const site = await startSite(t);
  const folder = temporaryFolder(t);
  let { app, context } = await start(t, folder, site.address);
  const sessions = await twoPlans(app);
  const seen = {};
  for (let i = 0; i < KILLS; ++i) {
    for (let gestures = 1 + below(4); gestures > 0; --gestures) await pick(GESTURES)(app, sessions.session);
    const moment = MOMENTS[i % MOMENTS.length];
    talk(i, moment.name);
    const gone = new Promise((done) => context.once('close', done));
    const allowed = await moment(app, sessions, () => killBrowser(folder, { helpersToo: random() < 0.5 }));
    talk('killed');
    await gone;
    talk('gone');
    ({ app, context } = await start(t, folder, site.address));
    talk('started');
    cameBack(await planOf(app), sessions, allowed);
    seen[moment.name] = (seen[moment.name] ?? 0) + 1;
    if (i % 6 === 2 || i + 1 === KILLS) await assertUndoLeadsThrough(app, sessions.session);
  }
  t.diagnostic(`kills: ${JSON.stringify(seen)}; ${sessions.session.texts.length} and ${sessions.other.texts.length} plans in the end`);
});
