// Ways through the app that several tests take.

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';

import { SCREENS } from './harness.mjs';

/** Plans in assets/examples. */
export const EXAMPLES = ['spillway-bench', 'dam-crest', 'drain-shaft'];

/** One device pixel per CSS pixel: quick to draw, for tests that look at no pixel. */
export const coarse = (screen) => ({ ...screen, ratio: 1 });

/** What a finger or the keyboard can press. */
export const isTouched = ({ id, kind }) => kind === 'button' || kind === 'slider' || id === 'strip';

/** The least height of anything to be touched with a glove. */
const TARGET_PX = 72;

function overlap(a, b) {
  const wide = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  const high = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  return wide > 0.5 && high > 0.5;
}

/** Everything inside the screen, nothing to be touched on top of another or lower than a glove needs, no text cut. */
export function assertUsable(state, screen, where) {
  for (const { id, rect } of state.widgets) {
    const inside = rect.x >= -0.5 && rect.y >= -0.5 && rect.x + rect.width <= screen.width + 0.5 && rect.y + rect.height <= screen.height + 0.5;
    assert.ok(inside, `${where}: ${id} leaves the screen: ${JSON.stringify(rect)}`);
  }
  const touched = state.widgets.filter(isTouched);
  for (const { id, rect } of touched) assert.ok(rect.height >= TARGET_PX - 0.01, `${where}: ${id} is ${rect.height} px high`);
  touched.forEach((a, i) => touched.slice(i + 1).forEach((b) => assert.ok(!overlap(a.rect, b.rect), `${where}: ${a.id} lies on ${b.id}`)));
  assert.deepEqual(state.cut, [], `${where}: text is cut`);
}

export const has = (state, id) => state.widgets.some((each) => each.id === id);

/** Screens that everything must fit. */
export const SIZES = { ...SCREENS, phoneAcross: { width: 844, height: 390, touch: true }, smallPhone: { width: 360, height: 640, touch: true } };

/** Presses a key of the menu, which stands on several pages on a small screen. */
export async function choose(app, id) {
  await app.tap('menu');
  await chooseHere(app, id);
}

/** The same in a menu that is open. */
export async function chooseHere(app, id) {
  for (let page = 0; page < 8; ++page) {
    if (has(await app.state(), id)) return app.tap(id);
    await app.tap('more menu');
  }
  return assert.fail(`the menu has no "${id}"`);
}

/** Opens the list of the course. */
export async function openCourse(app) {
  await choose(app, 'practice');
  while (!has(await app.state(), 'course')) await app.tap('next');
  await app.tap('course');
}

/** Opens a lesson of it, by its number. */
export async function openLesson(app, number) {
  await openCourse(app);
  while (!has(await app.state(), `lesson ${number}`)) await app.tap('next');
  await app.tap(`lesson ${number}`);
}

/** Types a number of the plan on the keypad, on whichever page of the step its slider stands. */
export async function typeNumber(app, path, digits) {
  while (!has(await app.state(), `value ${path}`)) await app.tap('next');
  await app.tap(`value ${path}`);
  for (const digit of digits) await app.tap(`key ${digit}`);
  await app.tap('key take');
}

/** The state once measuring error has been looked at to the end. */
export const checked = (app) => app.until((state) => !state.checking, 'the end of the check');

const placeOf = (state) => {
  const { label, value } = state.widgets.find(({ id }) => id === 'title');
  return `${state.screen} ${label} ${value}`;
};

/** From this page to the end of the card by "next", with `look(state)` at every page. Resolves with the number of pages. */
export async function walkThrough(app, look) {
  for (let pages = 1; pages < 250; ++pages) {
    await look(await app.state());
    const state = await app.state();
    const next = state.widgets.find(({ id }) => id === 'next');
    if (next.value === 'off') return pages;
    await app.tapAt({ x: next.rect.x + next.rect.width / 2, y: next.rect.y + next.rect.height / 2 });
    await app.until((now) => placeOf(now) !== placeOf(state), `the page after ${placeOf(state)}`);
    await app.settled();
  }
  return assert.fail('"next" never comes to an end');
}

/** The list of plans kept, once the page has told the program of it. Resolves with [{ id, label, value }] of those on the screen. */
export async function showPlans(app) {
  await choose(app, 'plans');
  await app.page.evaluate(() => window.guywright.saved());
  await app.settled();
  return plansOn(await app.state());
}

export const plansOn = (state) => state.widgets.filter(({ id }) => /^plan \d+$/.test(id));

/** The plan of the program, once everything is on the disk. */
export async function savedPlan(app) {
  await app.settled();
  return app.page.evaluate(async () => {
    await window.guywright.saved();
    return window.guywright.plan();
  });
}

/** Types `text` into the page's input, in place of what stands there, and takes it. */
export async function enterText(app, text) {
  await app.page.locator('#entry-text').fill(text);
  await app.page.getByRole('button', { name: 'Take it' }).click();
  await app.settled();
}

/** Presses "next" until there is something called `id` on the page. */
export async function nextTo(app, id) {
  for (let i = 0; !has(await app.state(), id) && i < 12; ++i) await app.tap('next');
}

/** Through every screen of practice on a drawn site, with `look(what)` at each. */
export async function throughPractice(app, look) {
  const press = async (id) => {
    await nextTo(app, id);
    await app.tap(id);
  };
  await choose(app, 'practice');
  await look('practice');
  await press('level 4');
  await press('draw site');
  await app.until(({ screen }) => screen === 'Site', 'the site');
  await look('site');
  await app.tap('next');
  await look('numbers');
  await app.tap('back');
  await press('predict');
  await look('say-verdict');
  await press('say go');
  await look('say-guy');
  await press('say guy 0');
  await look('say-angle');
  await press('show answer');
  await checked(app);
  await look('answer');
  await press('why');
  for (let i = 0; i < 4; ++i) await app.tap('sentence after');
  await look('why');
  await app.tap('back');
  await press('what if');
  await look('what-if');
  await choose(app, 'practice');
  await press('progress');
  await look('progress');
  await choose(app, 'leave practice');
}

/** Everything in a table of the app's database 'plans' or 'log': [[key, value]]. */
export const inTable = (app, database, table) => app.page.evaluate(async ([of, name]) => {
  const db = await new Promise((done) => { indexedDB.open(`guywright ${of}`).onsuccess = (event) => done(event.target.result); });
  const from = db.transaction(name).objectStore(name);
  const [keys, values] = [from.getAllKeys(), from.getAll()];
  await new Promise((done) => { from.transaction.oncomplete = done; });
  db.close();
  return keys.result.map((key, i) => [key, values.result[i]]);
}, [database, table]);

/** What a second person is asked for, as the page is told. */
export const asked = (app) => app.page.evaluate(() => JSON.parse(window.guywright.second()));
const valueAt = (plan, path) => path.split(/[.[\]]+/).filter(Boolean).reduce((at, step) => at[step], plan);
/** As the page shows it: what the engine keeps toward the void is measured back from the edge. */
export const shownAt = (plan, path) => (/_m\[\d\]\[0\]$|anchor_m\[0\]$/.test(path) ? -1 : 1) * valueAt(plan, path);
/** What somebody reads off a tape or a compass: few digits, within the tolerance. */
export const asRead = (value, path) => (path.endsWith('_kN') ? value.toFixed(1) : /_m(\[|$)/.test(path) ? value.toFixed(1) : value.toFixed(0)).replace(/^-0(\.0)?$/, '0');

/** A note that cannot be shortened makes a plan of several codes. */
export function severalCodes() {
  let state = 7;
  const letter = () => String.fromCharCode(33 + ((state = (state * 1103515245 + 12345) % 2147483648) >> 8) % 90);
  return { ...JSON.parse(readFileSync(new URL('../../assets/examples/spillway-bench.json', import.meta.url), 'utf8')), title: 'Long note', note: Array.from({ length: 900 }, letter).join('') };
}
