// The plans that the device keeps: the list, names and order, undo after a restart, two windows, storage that is denied, full
// or damaged.

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';

import { AppPage, SCREENS, freshContext, onlyInChromium, openApp, startSite } from './harness.mjs';
import { SIZES, assertUsable, choose, chooseHere, coarse, enterText, has, inTable, plansOn, savedPlan, showPlans } from './steps.mjs';

const PHONE = coarse(SCREENS.phone);
const PLUS = 'more edge.face_deg';
const EXAMPLE = readFileSync(new URL('../../assets/examples/dam-crest.json', import.meta.url), 'utf8');
const planFile = (text) => ({ name: 'plan.json', mimeType: 'application/json', buffer: Buffer.from(text) });

const titles = (plans) => plans.map(({ label }) => label);
const faceOf = (text) => JSON.parse(text).edge.face_deg;

async function reload(app) {
  await app.page.bringToFront();
  await savedPlan(app);
  await app.page.reload();
  await app.ready();
}

/** Puts [[key, value]] into a table behind the app's back. */
const putInto = (app, table, entries) => app.page.evaluate(async ([name, pairs]) => {
  const db = await new Promise((done) => { indexedDB.open('guywright plans').onsuccess = (event) => done(event.target.result); });
  const into = db.transaction(name, 'readwrite').objectStore(name);
  for (const [key, value] of pairs) into.put(value, key);
  await new Promise((done) => { into.transaction.oncomplete = done; });
  db.close();
}, [table, entries]);

const recordOf = (title, changed, text = EXAMPLE) => ({ title, created: changed, changed, first: 0, number: 0, last: 0, untouched: false, text, writer: 'test', stamp: title });

// --- the list ---

test('a new plan, an example and a file leave the plan before them on the list, each with its own undo', async (t) => {
  const app = await openApp(t, PHONE);
  const first = await app.page.evaluate(() => window.guywright.plan());
  await app.tap(PLUS);
  await app.tap(PLUS);
  const mine = await savedPlan(app);
  await choose(app, 'new');
  assert.equal((await app.widget('undo')).value, 'off', 'a new plan has nothing to undo');
  await app.tap(PLUS);
  await choose(app, 'example drain-shaft');
  await app.tap(PLUS);
  await app.tap('menu');
  await app.openFile('open', planFile(EXAMPLE));
  const file = await savedPlan(app);
  const plans = await showPlans(app);
  assert.deepEqual(titles(plans), [JSON.parse(file).title, 'Drain shaft tripod', 'New rig', JSON.parse(mine).title]);
  assert.match(plans[0].value, /^Open now, \d{4}-\d\d-\d\d \d\d:\d\d$/);
  assert.match(plans[3].value, /^\d{4}-\d\d-\d\d \d\d:\d\d$/);
  await app.tap('plan 3');
  assert.equal(await savedPlan(app), mine);
  await app.tap('undo');
  await app.tap('undo');
  assert.equal(await savedPlan(app), first);
  assert.equal((await app.widget('undo')).value, 'off');
});

test('undo and redo go on after a restart, back to the beginning and on to the end', async (t) => {
  const app = await openApp(t, PHONE);
  const seen = [await app.page.evaluate(() => window.guywright.plan())];
  for (const id of [PLUS, PLUS, 'less edge.rope_friction', PLUS]) {
    await app.tap(id);
    seen.push(await savedPlan(app));
  }
  await app.tap('undo');
  await reload(app);
  assert.equal(await savedPlan(app), seen[3]);
  await choose(app, 'redo');
  assert.equal(await savedPlan(app), seen[4]);
  await app.tap('close menu');
  for (const before of [seen[3], seen[2], seen[1], seen[0]]) {
    await app.tap('undo');
    await reload(app);
    assert.equal(await savedPlan(app), before);
  }
  assert.equal((await app.widget('undo')).value, 'off');
  await app.tap(PLUS);
  await reload(app);
  await app.tap('menu');
  assert.equal((await app.widget('redo')).value, 'off', 'what was taken back is gone with the next gesture');
});

/** Runs in the page before anything else: the databases open late, `order` notes that, each picture drawn and each fault, and until the first picture somebody asks for the text. */
function openLate(late_ms) {
  window.order = [];
  addEventListener('error', ({ message }) => window.order.push(message));
  const asking = setInterval(() => {
    if (document.getElementById('skeleton')?.hidden) clearInterval(asking);
    else document.getElementById('to-text')?.click();
  }, 20);
  const open = IDBFactory.prototype.open;
  IDBFactory.prototype.open = function (...given) {
    const promised = {};
    setTimeout(() => {
      const request = open.apply(this, given);
      for (const name of ['result', 'error', 'transaction']) Object.defineProperty(promised, name, { get: () => request[name] });
      for (const name of ['upgradeneeded', 'error', 'success']) request.addEventListener(name, (event) => promised[`on${name}`]?.(event));
      request.addEventListener('success', () => window.order.push('opened'));
    }, late_ms);
    return promised;
  };
  const { clear } = WebGLRenderingContext.prototype;
  WebGLRenderingContext.prototype.clear = function (...bits) {
    window.order.push('drawn');
    return clear.apply(this, bits);
  };
}

test('the plan in hand is the first that is drawn, however long the store takes within a second, and without a store the app draws', async (t) => {
  const app = await openApp(t, PHONE);
  await app.tap(PLUS);
  const mine = await savedPlan(app);
  for (const [late_ms, isFirst] of [[700, true], [1e9, false]]) {
    const page = await app.context.newPage();
    await page.addInitScript(openLate, late_ms);
    await page.goto(app.site.address);
    await page.locator('#skeleton').waitFor({ state: 'hidden' });
    const order = await page.evaluate(() => window.order);
    assert.equal(order.includes('opened') && order.indexOf('opened') < order.indexOf('drawn'), isFirst, order.join(' '));
    assert.deepEqual(order.filter((what) => !['opened', 'drawn'].includes(what)), []);
    assert.equal(await page.locator('#skeleton .choices').count(), 0, 'a way out was offered of a start that went well');
    await page.waitForFunction(() => window.guywright); // without a store only after 5 s
    assert.equal((await page.evaluate(() => window.guywright.plan())) === mine, isFirst);
    await page.close();
  }
});

test('an example or a new plan that nobody changed leaves no trace', async (t) => {
  const app = await openApp(t, PHONE);
  await app.tap(PLUS);
  for (const id of ['new', 'example dam-crest', 'new', 'example drain-shaft']) await choose(app, id);
  await reload(app);
  assert.equal((await app.state()).title, 'Drain shaft tripod', 'the plan in hand is there again');
  assert.equal((await showPlans(app)).length, 2);
  await app.tap('plan 1');
  await savedPlan(app);
  assert.equal((await inTable(app, 'plans', 'plans')).length, 1);
  assert.equal((await inTable(app, 'plans', 'steps')).length, 2);
});

test('a copy is a plan of its own with a name of its own', async (t) => {
  const app = await openApp(t, PHONE);
  await app.tap(PLUS);
  const original = await savedPlan(app);
  for (let i = 0; i < 2; ++i) {
    const plans = await showPlans(app);
    await app.tap(`plan more ${plans.length - 1}`);
    await app.tap('duplicate plan');
    await savedPlan(app);
  }
  const { title } = JSON.parse(original);
  assert.equal((await app.state()).title, `${title}, copy 2`);
  await app.tap(PLUS);
  const plans = await showPlans(app);
  assert.deepEqual(titles(plans), [`${title}, copy 2`, `${title}, copy`, title]);
  await app.tap('plan 2');
  assert.equal(await savedPlan(app), original);
});

test('a deleted plan can be brought back, with its undo, after a restart and after another was deleted', async (t) => {
  const app = await openApp(t, PHONE);
  await app.tap(PLUS);
  const mine = await savedPlan(app);
  await choose(app, 'new');
  await app.tap(PLUS);
  await showPlans(app);
  for (const left of [1, 0]) {
    await app.tap(`plan more ${left}`);
    await app.tap('delete plan');
    await savedPlan(app);
  }
  await reload(app);
  await showPlans(app);
  assert.match((await app.widget('keeping')).label, /^Deleted last: New rig\./);
  await app.tap('bring back');
  await savedPlan(app);
  assert.match((await app.widget('keeping')).label, new RegExp(`^Deleted last: ${JSON.parse(mine).title}\\.`));
  await app.tap('bring back');
  await savedPlan(app);
  const plans = plansOn(await app.state());
  assert.ok(!has(await app.state(), 'bring back'));
  await app.tap(plans.find(({ label }) => label === JSON.parse(mine).title).id);
  assert.equal(await savedPlan(app), mine);
  await app.tap('undo');
  assert.equal(faceOf(await savedPlan(app)), faceOf(mine) - 1);
});

test('deleting the plan in hand opens the one changed before it', async (t) => {
  const app = await openApp(t, PHONE);
  await app.tap(PLUS);
  const mine = await savedPlan(app);
  await choose(app, 'new');
  await app.tap(PLUS);
  await showPlans(app);
  await app.tap('plan more 0');
  await app.tap('delete plan');
  assert.equal(await savedPlan(app), mine);
  assert.deepEqual(titles(plansOn(await app.state())), [JSON.parse(mine).title]);
});

test('of the deleted plans the last ten can be brought back, the others are gone', async (t) => {
  const app = await openApp(t, PHONE);
  await app.tap(PLUS);
  const deleted = Array.from({ length: 14 }, (_, i) => [`old ${i}`, { ...recordOf(`old ${i}`, 1e12 + i), deleted: 1e12 + i }]);
  await putInto(app, 'plans', deleted);
  await putInto(app, 'steps', deleted.map(([id]) => [[id, 0], EXAMPLE]));
  await showPlans(app);
  await app.tap('plan more 0');
  await app.tap('delete plan');
  await savedPlan(app);
  const left = (await inTable(app, 'plans', 'plans')).map(([id]) => id).filter((id) => id.startsWith('old'));
  assert.deepEqual(left.sort(), ['old 10', 'old 11', 'old 12', 'old 13', 'old 5', 'old 6', 'old 7', 'old 8', 'old 9']);
  const steps = (await inTable(app, 'plans', 'steps')).map(([[id]]) => id).filter((id) => id.startsWith('old'));
  assert.deepEqual([...new Set(steps)].sort(), left);
});

for (const [name, size] of Object.entries(SIZES)) {
  test(`the list, its pages and the keys for a plan can be read and touched on a ${name} screen`, async (t) => {
    const screen = coarse(size);
    const app = await openApp(t, screen);
    await app.tap(PLUS);
    await savedPlan(app);
    const many = Array.from({ length: 17 }, (_, i) => [`many ${i}`, recordOf(i === 3 ? 'A title as long as one can be, '.repeat(3).slice(0, 80) : `Bay ${i}`, 1e12 + i)]);
    await putInto(app, 'plans', [...many, ['gone', { ...recordOf('Gone', 1e12), deleted: 1e12 }], ['bad', recordOf('Damaged', 2e12, '{')]]);
    const seen = new Set();
    let plans = await showPlans(app);
    do {
      assertUsable(await app.state(), screen, `plans, ${plans[0].id}`);
      plans.forEach(({ label }) => seen.add(label));
      await app.tap('next plans');
      plans = plansOn(await app.state());
    } while (plans[0].id !== 'plan 0');
    assert.equal(seen.size, 19);
    for (const id of ['plan more 0', 'plan more 1']) {
      await app.tap(id);
      assertUsable(await app.state(), screen, `keys for a plan, ${id}`);
      await app.tap('back to plans');
    }
  });
}

// --- names and order ---

test('a name is typed with fingers and keyboard, follows the theme, and a refusal keeps what was typed', async (t) => {
  const app = await openApp(t, PHONE);
  await app.tap(PLUS);
  await choose(app, 'theme');
  await app.tap('theme'); // red night
  await chooseHere(app, 'name plan');
  const input = app.page.locator('#entry-text');
  assert.equal(await input.evaluate((each) => document.activeElement === each), true);
  assert.match(await app.page.locator('#entry').innerText(), /Name of this plan/);
  const [ink, field] = await app.page.locator('#entry').evaluate((each) => [getComputedStyle(each).color, getComputedStyle(each).backgroundColor]);
  assert.deepEqual([ink, field], ['rgb(255, 111, 60)', 'rgb(0, 0, 0)']);
  for (const key of await app.page.locator('#entry button, #entry input').all()) assert.ok((await key.boundingBox()).height >= 72);
  await app.page.keyboard.press('Control+a');
  await app.page.keyboard.type('   ');
  await app.page.keyboard.press('Enter');
  assert.match(await app.page.locator('#entry-refusal').innerText(), /at least one letter/);
  assert.equal(await input.inputValue(), '   ');
  await app.page.keyboard.type('Bay 3, north');
  await app.page.keyboard.press('Enter');
  await app.settled();
  assert.equal(await app.page.locator('#entry').isVisible(), false);
  assert.equal((await app.state()).title, 'Bay 3, north');
  await chooseHere(app, 'name plan');
  await input.fill('Something else');
  await app.page.getByRole('button', { name: 'Cancel' }).tap();
  assert.equal((await app.state()).title, 'Bay 3, north');
  await reload(app);
  assert.equal((await app.state()).title, 'Bay 3, north');
  assert.equal((await showPlans(app))[0].label, 'Bay 3, north');
  await app.tap('close plans');
  await app.tap('undo');
  assert.notEqual((await app.state()).title, 'Bay 3, north');
});

test('with the keyboard alone a name is entered, and the key that asked for it is not pressed again', async (t) => {
  const app = await openApp(t, coarse(SCREENS.desktop));
  await app.tap('menu');
  for (let i = 0; i < 40 && (await app.state()).focus !== 'name plan'; ++i) {
    await app.page.keyboard.press('Tab');
    await app.settled();
  }
  assert.equal((await app.state()).focus, 'name plan');
  for (const name of ['First', 'Second']) {
    await app.page.keyboard.press('Space');
    await app.page.locator('#entry').waitFor();
    await app.page.keyboard.type(name);
    await app.page.keyboard.press('Enter');
    await app.page.waitForTimeout(800); // longer than a held key takes to repeat
    assert.equal(await app.page.locator('#entry').isVisible(), false);
    assert.equal((await app.state()).title, name);
  }
  await app.page.keyboard.press('Space');
  await app.page.locator('#entry').waitFor();
  await app.page.keyboard.type('Third');
  await app.page.keyboard.press('Escape');
  await app.page.waitForTimeout(800);
  assert.equal(await app.page.locator('#entry').isVisible(), false);
  assert.equal((await app.state()).title, 'Second');
});

/** Goes to `id` on the Guys step, through what few need. */
async function findOnGuys(app, id) {
  await choose(app, 'step Guys');
  for (let i = 0; !has(await app.state(), id); ++i) {
    assert.ok(i < 40, `"${id}" never came`);
    await app.tap(has(await app.state(), 'more') ? 'more' : 'next');
  }
}

test('guys get names and change places; the verdict stays and undo takes each back', async (t) => {
  const app = await openApp(t, PHONE);
  const before = JSON.parse(await app.page.evaluate(() => window.guywright.plan()));
  const names = async () => JSON.parse(await savedPlan(app)).guys.map(({ name }) => name);
  const old = await names();
  await findOnGuys(app, 'name guy 0');
  await app.tap('name guy 0');
  await enterText(app, old[1]);
  assert.match(await app.page.locator('#entry-refusal').innerText(), new RegExp(`Another guy is called "${old[1]}"`));
  await enterText(app, 'big tree');
  assert.deepEqual(await names(), ['big tree', ...old.slice(1)]);
  assert.match((await app.widget('title')).label, /: big tree$/);
  while (!has(await app.state(), 'move down guys 0')) await app.tap('next');
  const point = await app.pointOn('move down guys 0');
  await app.tap('move down guys 0');
  assert.deepEqual(await names(), [old[1], 'big tree', ...old.slice(2)]);
  assert.match((await app.widget('title')).label, /^Guy 2 of \d: big tree$/);
  assert.deepEqual(await app.pointOn('move down guys 1'), point, 'the key does not move from under the finger');
  const state = await app.until((now) => !now.checking, 'the end of the check');
  assert.equal(state.verdict, 'GO');
  await app.tap('undo');
  await app.tap('undo');
  assert.deepEqual(JSON.parse(await savedPlan(app)), before);
});

// --- what an earlier version kept ---

/** A plan in the database of the version before this one, and nothing of this one. */
async function leaveEarlierPlan(app, entries) {
  await app.page.evaluate(async (pairs) => {
    const db = await new Promise((done) => {
      const request = indexedDB.open('guywright', 1);
      request.onupgradeneeded = () => request.result.createObjectStore('plans');
      request.onsuccess = () => done(request.result);
    });
    const plans = db.transaction('plans', 'readwrite').objectStore('plans');
    for (const [key, value] of pairs) plans.put(value, key);
    await new Promise((done) => { plans.transaction.oncomplete = done; });
    db.close();
  }, entries);
}

test('what an earlier version kept is taken over once, the damaged too, and the earlier store is left as it is', async (t) => {
  const app = await openApp(t, PHONE);
  assert.deepEqual(await app.page.evaluate(async () => (await indexedDB.databases()).map(({ name }) => name).sort()), ['guywright log', 'guywright plans'], 'no earlier store is made');
  await leaveEarlierPlan(app, [['current', EXAMPLE], ['set aside', 'not a plan']]);
  for (let i = 0; i < 3; ++i) {
    await reload(app);
    assert.equal((await app.state()).title, JSON.parse(EXAMPLE).title);
    const plans = await inTable(app, 'plans', 'plans');
    assert.deepEqual(plans.map(([, { text }]) => text).sort(), [EXAMPLE, 'not a plan'].sort());
  }
  await app.tap(PLUS);
  await reload(app);
  assert.equal((await showPlans(app)).length, 2);
  // The version before was used once more, and its plan has changed.
  const changed = EXAMPLE.replace(/"face_deg": *[\d.]+/, '"face_deg": 61');
  await leaveEarlierPlan(app, [['current', changed]]);
  await reload(app);
  await app.page.evaluate(() => sessionStorage.clear());
  await reload(app);
  assert.equal(faceOf(await savedPlan(app)), 61);
  assert.equal((await showPlans(app)).length, 3);
});

// --- damage ---

const DAMAGED = {
  'no plan at all': (record) => ({ ...record, text: '}{' }),
  'a plan of a newer version': (record) => ({ ...record, text: record.text.replace('"version":1', '"version":9') }),
  'no text': (record) => ({ ...record, text: undefined }),
  'not even a record': () => 'broken',
};

for (const [what, damage] of Object.entries(DAMAGED)) {
  test(`a damaged plan (${what}) is set aside, listed, and its text given as a file; it is never deleted`, async (t) => {
    const app = await openApp(t, PHONE);
    await app.tap(PLUS);
    await savedPlan(app);
    await putInto(app, 'plans', [['other', recordOf('Other', 1e12)]]);
    const [[id, record]] = (await inTable(app, 'plans', 'plans')).filter(([key]) => key !== 'other');
    const bad = damage(record);
    await putInto(app, 'plans', [[id, bad]]);
    await app.page.reload();
    await app.ready();
    assert.match(await app.page.locator('#notice').innerText(), /cannot be read[^]*set aside, not deleted/);
    await app.page.getByRole('button', { name: 'OK' }).tap();
    assert.equal((await app.state()).title, JSON.parse(EXAMPLE).title, 'the other plan is open');
    const plans = await showPlans(app);
    const listed = plans.find(({ value }) => value.startsWith('Cannot be read'));
    assert.ok(listed, JSON.stringify(plans));
    await app.tap(listed.id);
    assert.ok(!has(await app.state(), 'open plan'));
    const { text } = await app.handed(() => app.tap('save plan'));
    assert.equal(text, typeof bad.text === 'string' ? bad.text : JSON.stringify(bad));
    await app.tap('back to plans');
    await app.tap('close plans');
    await app.tap(PLUS);
    await savedPlan(app);
    assert.deepEqual(JSON.stringify((await inTable(app, 'plans', 'plans')).find(([key]) => key === id)[1]), JSON.stringify(bad));
  });
}

test('a damaged step of the history stops undo there, in words, and harms nothing', async (t) => {
  const app = await openApp(t, PHONE);
  for (let i = 0; i < 3; ++i) await app.tap(PLUS);
  await savedPlan(app);
  const [key] = (await inTable(app, 'plans', 'steps')).map(([each]) => each).filter(([, number]) => number === 1);
  await putInto(app, 'steps', [[key, 'damaged']]);
  await reload(app);
  await app.tap('undo');
  const here = await savedPlan(app);
  await app.tap('undo');
  assert.match((await app.widget('message')).label, /cannot be read any more/);
  await app.tap('close message');
  assert.equal(await savedPlan(app), here);
});

// --- two windows ---

/** A tap that changes the plan, in a window that may be behind another: there the browser draws hardly at all. */
async function gesture(app, id) {
  await app.page.bringToFront();
  const before = await app.page.evaluate(() => window.guywright.plan());
  await app.tap(id);
  await app.page.waitForFunction((text) => window.guywright.plan() !== text, before);
  await app.settled();
}

test('two windows that change the same plan: the first keeps it, the other has one of its own, nothing is lost', async (t) => {
  const site = await startSite(t);
  const context = await freshContext(t, PHONE);
  const first = await AppPage.open(context, site.address);
  await gesture(first, PLUS);
  const common = await savedPlan(first);
  const second = await AppPage.open(context, site.address);
  assert.equal(await savedPlan(second), common);
  await gesture(second, PLUS);
  await gesture(second, PLUS);
  const seconds = await savedPlan(second);
  await first.page.evaluate(() => {}); // the first window knows nothing of it
  await gesture(first, 'less edge.face_deg');
  const firsts = await savedPlan(first);
  assert.match(await first.page.locator('#notice').innerText(), /changed in another window/);
  await first.page.getByRole('button', { name: 'OK' }).tap();
  for (let i = 0; i < 2; ++i) {
    await gesture(first, 'less edge.rope_friction');
    await gesture(second, 'more edge.rope_friction');
  }
  await gesture(first, 'undo');
  await gesture(first, 'undo');
  await gesture(second, 'undo');
  await gesture(second, 'undo');
  assert.equal(await savedPlan(second), seconds);
  assert.equal(await savedPlan(first), firsts);
  assert.deepEqual((await inTable(first, 'plans', 'plans')).map(([, { text }]) => text).sort(), [firsts, seconds].sort());
  await reload(first); // each window comes back to its own
  await reload(second);
  assert.equal(await savedPlan(first), firsts);
  assert.equal(await savedPlan(second), seconds);
  for (const [app, taps] of [[first, 2], [second, 3]]) {
    for (let i = 0; i < taps; ++i) await gesture(app, 'undo');
    await app.until(({ widgets }) => widgets.some(({ id, value }) => id === 'undo' && value === 'off'), 'the beginning of the history');
  }
  assert.equal(await savedPlan(first), await savedPlan(second));
});

test('a window that comes to the front shows what another has made of the plan', async (t) => {
  const site = await startSite(t);
  const context = await freshContext(t, PHONE);
  const first = await AppPage.open(context, site.address);
  await gesture(first, PLUS);
  await savedPlan(first);
  const second = await AppPage.open(context, site.address);
  await gesture(second, PLUS);
  const newer = await savedPlan(second);
  await first.page.evaluate(() => document.dispatchEvent(new Event('visibilitychange'))); // headless windows are never hidden
  assert.equal(await savedPlan(first), newer);
  await gesture(first, 'undo');
  await gesture(first, 'undo');
  await gesture(first, PLUS);
  await savedPlan(first);
  assert.equal((await inTable(first, 'plans', 'plans')).length, 1, 'no second plan came of it');
});

test('a plan that another window deletes goes on where it is in hand', async (t) => {
  const site = await startSite(t);
  const context = await freshContext(t, PHONE);
  const first = await AppPage.open(context, site.address);
  await gesture(first, PLUS);
  await savedPlan(first);
  const second = await AppPage.open(context, site.address);
  await showPlans(second);
  await second.tap('plan more 0');
  await second.tap('delete plan');
  await savedPlan(second);
  await gesture(first, PLUS);
  const mine = await savedPlan(first);
  const plans = await inTable(first, 'plans', 'plans');
  assert.ok(plans.some(([, { text, deleted }]) => text === mine && !deleted));
  assert.equal(plans.filter(([, { deleted }]) => deleted).length, 1);
});

// --- denied, full, protected ---

test('denied storage is said at once; the app goes on, keeps several plans while it is open, and offers the file', async (t) => {
  const site = await startSite(t);
  const context = await freshContext(t, PHONE);
  await context.addInitScript(() => {
    IDBFactory.prototype.open = () => { throw new DOMException('denied here', 'SecurityError'); };
  });
  const app = await AppPage.open(context, site.address);
  const notice = app.page.locator('#notice');
  assert.match(await notice.innerText(), /keeps nothing here \(denied here\)/);
  await notice.getByRole('button', { name: 'OK' }).tap();
  await app.tap(PLUS);
  const mine = await savedPlan(app);
  await choose(app, 'new');
  await app.tap(PLUS);
  const plans = await showPlans(app);
  assert.deepEqual(titles(plans), ['New rig', JSON.parse(mine).title]);
  assert.match((await app.widget('keeping')).label, /keeps nothing/);
  await app.tap('plan 1');
  assert.equal(await savedPlan(app), mine);
  await app.tap('undo');
  assert.equal(faceOf(await savedPlan(app)), faceOf(mine) - 1);
  assert.equal(await notice.isVisible(), false, 'said once, not with each gesture');
});

test('full storage is said at once with the file at hand; all is written once there is space', onlyInChromium('how much storage there is'), async (t) => {
  const app = await openApp(t, PHONE);
  const limit = (quotaSize) => app.devtools.send('Storage.overrideQuotaForOrigin', { origin: new URL(app.site.address).origin, ...(quotaSize === undefined ? {} : { quotaSize }) });
  await limit(1);
  await app.tap(PLUS);
  await app.tap('more edge.rope_friction');
  const last = await savedPlan(app);
  const notice = app.page.locator('#notice');
  assert.match(await notice.innerText(), /storage of this browser is full/);
  assert.equal((await app.handed(() => notice.getByRole('button', { name: 'Save the plan as a file' }).tap())).text, last);
  await showPlans(app);
  assert.match((await app.widget('keeping')).label, /full and the last changes are not kept/);
  await app.tap('close plans');
  await app.tap('undo');
  await app.tap('less edge.face_deg');
  await limit(undefined);
  await app.tap(PLUS);
  const kept = await savedPlan(app);
  await reload(app);
  assert.equal(await savedPlan(app), kept);
  for (let i = 0; i < 3; ++i) await app.tap('undo'); // the steps of the time without space are there, too
  assert.equal((await app.widget('undo')).value, 'off');
});

test('says whether the browser has promised to keep the plans, and asks for it in a gesture', async (t) => {
  const site = await startSite(t);
  const context = await freshContext(t, PHONE);
  await context.addInitScript(() => {
    let kept = false;
    window.asked = [];
    StorageManager.prototype.persist = async () => { window.asked.push(navigator.userActivation.isActive); return (kept = true); };
    StorageManager.prototype.persisted = async () => kept;
  });
  const app = await AppPage.open(context, site.address);
  await showPlans(app);
  assert.match((await app.widget('keeping')).label, /may clear these plans/);
  await app.tap('close plans');
  await app.tap(PLUS);
  await app.tap(PLUS);
  assert.deepEqual(await app.page.evaluate(() => window.asked), [true]);
  await showPlans(app);
  assert.match((await app.widget('keeping')).label, /has promised not to clear/);
});
