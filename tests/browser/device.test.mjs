// Taking numbers from the device: sensors, permission, compass, vibration, a screen that stays on.

import assert from 'node:assert/strict';
import { test } from 'node:test';

import { heldOf, pictureOf, sensorsOf } from '../../web/device.js';
import { AppPage, SCREENS, freshContext, onlyInChromium, openApp, startSite } from './harness.mjs';
import { checked, choose, coarse, has } from './steps.mjs';

const PHONE = coarse(SCREENS.phone);
const TAKE = 'take guys[0].inclination_deg';

// --- what the page makes of events ---

const event = (alpha, beta, gamma, more = {}) => ({ alpha, beta, gamma, absolute: false, ...more });
const UPRIGHT = { turn: 0, tall: true };

test('an event against north counts before one against anything, unless it says nothing', () => {
  const north = event(10, 20, 30, { absolute: true }), any = event(200, 21, 31);
  assert.deepEqual(heldOf({ north, any }, UPRIGHT), [10, 20, 30, 1, NaN, NaN, 0, 1]);
  assert.deepEqual(heldOf({ any }, UPRIGHT), [200, 21, 31, 0, NaN, NaN, 0, 1]);
  assert.deepEqual(heldOf({ north: event(null, null, null, { absolute: true }), any }, UPRIGHT), [200, 21, 31, 0, NaN, NaN, 0, 1]);
});

test('a heading that the browser tells by itself goes along with its accuracy', () => {
  const any = event(200, 21, 31, { webkitCompassHeading: 77, webkitCompassAccuracy: 12 });
  assert.deepEqual(heldOf({ any }, { turn: 90, tall: false }), [200, 21, 31, 0, 77, 12, 90, 0]);
  assert.deepEqual(sensorsOf({ any }), [1, 1]);
});

test('sensors are there only when an event has numbers', () => {
  assert.deepEqual(sensorsOf({}), [0, 0]);
  assert.deepEqual(sensorsOf({ any: event(null, null, null) }), [0, 0]);
  assert.deepEqual(sensorsOf({ any: event(5, 1, 2) }), [1, 0]);
  assert.deepEqual(sensorsOf({ any: event(5, 1, 2), north: event(null, 1, 2) }), [1, 0]);
  assert.deepEqual(sensorsOf({ north: event(5, 1, 2) }), [1, 1]);
});

test('how the picture is turned, from new browsers and from old ones', () => {
  assert.deepEqual(pictureOf({ screen: { orientation: { angle: 90, type: 'landscape-primary' } } }), { turn: 90, tall: false });
  assert.deepEqual(pictureOf({ orientation: -90, innerWidth: 800, innerHeight: 400 }), { turn: 270, tall: false });
  assert.deepEqual(pictureOf({ innerWidth: 400, innerHeight: 800 }), { turn: 0, tall: true });
});

// --- in the app ---

/** The browser's own stand-in for a device that is held so. */
async function holdDevice(app, alpha, beta, gamma) {
  await app.page.evaluate(() => { window.held = new Promise((told) => { addEventListener('deviceorientation', told, { once: true }); }); });
  await app.devtools.send('DeviceOrientation.setDeviceOrientationOverride', { alpha, beta, gamma });
  await app.page.evaluate(() => window.held.then(() => {}));
}

/** Events that the stand-in cannot make: against north, or with a heading and its accuracy. Goes on until the page closes. */
const fireEvents = (app, name, values) =>
  app.page.evaluate(([kind, init]) => {
    clearInterval(window.firing);
    const fire = () => {
      const made = new DeviceOrientationEvent(kind, init);
      for (const key of ['webkitCompassHeading', 'webkitCompassAccuracy']) if (key in init) Object.defineProperty(made, key, { value: init[key] });
      dispatchEvent(made);
    };
    fire();
    window.firing = setInterval(fire, 60);
  }, [name, values]);

async function tapOnly(app, id) {
  await app.tapAt(await app.pointOn(id)); // not until settled: while a reading is in hand frames go on
}

async function showTakeKey(app, id = TAKE, step = 'Guys') {
  await choose(app, `step ${step}`);
  for (let i = 0; i < 20 && !has(await app.state(), id); ++i) await app.tap('next');
  assert.ok(has(await app.state(), id), `no key ${id}`);
}

const readingOf = (state) => state.widgets.find(({ id }) => id === 'reading');
const canTake = (state) => state.screen === 'Reading' && state.widgets.find(({ id }) => id === 'reading take')?.value === '';

test('without sensors there is no key to take anything from the device', async (t) => {
  const app = await openApp(t, PHONE);
  await choose(app, 'step Guys');
  for (let i = 0; i < 4; ++i, await app.tap('next')) assert.deepEqual((await app.state()).widgets.map(({ id }) => id).filter((id) => id.startsWith('take ')), []);
});

test('the inclination of a guy comes from the device along it, and undo takes it back', onlyInChromium('how the device is held'), async (t) => {
  const app = await openApp(t, PHONE);
  const before = await checked(app);
  await holdDevice(app, 0, 37.2, 4);
  await showTakeKey(app);
  await tapOnly(app, TAKE);
  const state = await app.until(canTake, 'a steady reading');
  assert.equal(readingOf(state).value, '37°');
  assert.match(state.widgets.find(({ id }) => id === 'reading state').label, /^Spread over two seconds ± 0°$/);
  assert.match(state.widgets.find(({ id }) => id === 'reading state').value, /^Counts as ± 3°, as the plan says\.$/);
  await tapOnly(app, 'reading take');
  await app.settled();
  assert.equal((await app.widget('slide guys[0].inclination_deg')).value, '37');
  assert.notEqual((await checked(app)).check_code, before.check_code);
  await app.tap('undo');
  assert.equal((await checked(app)).check_code, before.check_code);
});

test('a device that moves gives no reading, and one that is cancelled changes nothing', onlyInChromium('how the device is held'), async (t) => {
  const app = await openApp(t, PHONE);
  const { check_code } = await checked(app);
  await holdDevice(app, 0, 20, 0);
  await showTakeKey(app);
  await tapOnly(app, TAKE);
  await app.page.evaluate(() => {
    let up = 0;
    setInterval(() => dispatchEvent(new DeviceOrientationEvent('deviceorientation', { alpha: 0, beta: (up = 70 - up), gamma: 0 })), 110);
  });
  await app.until((state) => /moves too much/.test(state.widgets.find(({ id }) => id === 'reading state')?.label), 'word of the movement');
  assert.ok(!canTake(await app.state()));
  await tapOnly(app, 'reading cancel');
  await app.settled();
  assert.equal((await checked(app)).check_code, check_code);
});

test('what the plan cannot hold is refused with the range, and the old value stays', onlyInChromium('how the device is held'), async (t) => {
  const app = await openApp(t, PHONE);
  const { check_code } = await checked(app);
  await holdDevice(app, 0, 0, 0);
  await showTakeKey(app);
  await tapOnly(app, TAKE);
  await app.until(canTake, 'a steady reading');
  await tapOnly(app, 'reading take');
  await app.until((state) => /^0° is not possible here; allowed 2 to 88°$/.test(state.widgets.find(({ id }) => id === 'reading state')?.label), 'the range');
  await tapOnly(app, 'reading cancel');
  await app.settled();
  assert.equal((await checked(app)).check_code, check_code);
});

test('the lean of a leg has the sign of the side that the screen faces away from', onlyInChromium('how the device is held'), async (t) => {
  const app = await openApp(t, PHONE);
  await holdDevice(app, 0, 78, 0);
  await showTakeKey(app, 'take frame.lean_deg', 'Frame');
  await tapOnly(app, 'take frame.lean_deg');
  assert.equal(readingOf(await app.until(canTake, 'a steady reading')).value, '12°');
  await holdDevice(app, 0, 102, 0);
  await app.until((state) => canTake(state) && readingOf(state).value === '-12°', 'the other side');
});

test('a bearing needs straight out first, then counts from it, and says what the tolerance becomes', async (t) => {
  const app = await openApp(t, PHONE);
  await choose(app, 'new');
  await app.page.evaluate(() => {
    window.alpha = 300; // heading 60
    const fire = () => dispatchEvent(new DeviceOrientationEvent('deviceorientationabsolute', { alpha: window.alpha, beta: 5, gamma: 0, absolute: true }));
    fire();
    setInterval(fire, 60);
  });
  const key = 'take guys[0].bearing_deg';
  await showTakeKey(app, key);
  await tapOnly(app, key);
  let state = await app.until(canTake, 'a steady heading');
  assert.deepEqual([readingOf(state).label, readingOf(state).value], ['Straight out', '60°']);
  await tapOnly(app, 'reading take');
  await app.until((now) => readingOf(now)?.label.startsWith('Bearing, guy'), 'the bearing itself');
  await app.page.evaluate(() => { window.alpha = 350; }); // heading 10
  state = await app.until((now) => canTake(now) && readingOf(now).value === '310°', 'the bearing from straight out');
  assert.match(state.widgets.find(({ id }) => id === 'reading state').label, /Compass 10°, accuracy not told/);
  await tapOnly(app, 'reading take');
  await app.settled();
  assert.equal((await app.widget('slide guys[0].bearing_deg')).value, '310');
});

test('a compass that tells a poor accuracy widens the tolerance in so many words, and a useless one is refused', async (t) => {
  const app = await openApp(t, PHONE);
  const poor = { alpha: 0, beta: 0, gamma: 0, webkitCompassHeading: 200, webkitCompassAccuracy: 12 };
  await fireEvents(app, 'deviceorientation', poor);
  const key = 'take guys[0].bearing_deg';
  await showTakeKey(app, key);
  await tapOnly(app, key);
  const state = await app.until(canTake, 'a steady heading');
  const said = state.widgets.find(({ id }) => id === 'reading state');
  assert.match(said.label, /accuracy told ± 12°/);
  assert.match(said.value, /taking it sets all bearings of the plan from ± 5° to ± 17°\./);
  await fireEvents(app, 'deviceorientation', { ...poor, webkitCompassAccuracy: 40 });
  await app.until((now) => /not accurate enough/.test(now.widgets.find(({ id }) => id === 'reading state').label), 'a refusal');
  assert.ok(!canTake(await app.state()));
});

/** A page whose sensors want to be asked, as on some phones. */
async function askingPage(t, answer) {
  const site = await startSite(t);
  const context = await freshContext(t, PHONE);
  await context.addInitScript((given) => {
    window.asked = [];
    navigator.permissions.query = () => Promise.reject(new TypeError('not known'));
    DeviceOrientationEvent.requestPermission = () => {
      window.asked.push(navigator.userActivation.isActive);
      return given === 'error' ? Promise.reject(new Error('not in a gesture')) : Promise.resolve(given);
    };
  }, answer);
  return AppPage.open(context, site.address);
}

test('permission is asked for inside the tap, once it is needed, and then readings come', onlyInChromium('how the device is held'), async (t) => {
  const app = await askingPage(t, 'granted');
  await showTakeKey(app);
  assert.deepEqual(await app.page.evaluate(() => window.asked), []);
  await tapOnly(app, TAKE);
  assert.deepEqual(await app.page.evaluate(() => window.asked), [true]);
  await holdDevice(app, 0, 45, 0);
  await app.until(canTake, 'a steady reading');
  await tapOnly(app, 'reading cancel');
});

for (const answer of ['denied', 'error']) {
  test(`permission that is not given (${answer}) is said in plain words, and the number can be entered by hand`, onlyInChromium('that there is a screen to be touched'), async (t) => {
    const app = await askingPage(t, answer);
    await showTakeKey(app);
    await fireEvents(app, 'deviceorientation', { alpha: null, beta: null, gamma: null }); // as where there are no sensors
    await tapOnly(app, TAKE);
    await app.until((state) => /may not read the sensors here/.test(state.widgets.find(({ id }) => id === 'reading state')?.label), 'plain words');
    await tapOnly(app, 'reading cancel');
    await app.settled();
    assert.ok(has(await app.state(), 'slide guys[0].inclination_deg'));
  });
}

test('a change of verdict is felt, the checking in between is not', async (t) => {
  const site = await startSite(t);
  const context = await freshContext(t, PHONE);
  await context.addInitScript(() => {
    window.felt = [];
    navigator.vibrate = (pattern) => window.felt.push(pattern.length);
  });
  const app = await AppPage.open(context, site.address);
  await checked(app);
  await app.tap('more edge.face_deg');
  await checked(app);
  assert.deepEqual(await app.page.evaluate(() => window.felt), [], 'GO to GO');
  await choose(app, 'step Guys');
  await app.tap('value guys[0].bearing_deg');
  for (const key of ['9', '0']) await app.tap(`key ${key}`);
  await app.tap('key take');
  assert.equal((await checked(app)).verdict, 'NO-GO');
  await app.tap('undo');
  assert.equal((await checked(app)).verdict, 'GO');
  assert.deepEqual(await app.page.evaluate(() => window.felt), [5, 1]);
});

test('the screen stays on when asked to, says so, and asks again after it was out of sight', async (t) => {
  const site = await startSite(t);
  const context = await freshContext(t, PHONE);
  await context.addInitScript(() => {
    window.locks = [];
    const request = async () => {
      if (window.refuse) throw new DOMException('battery', 'NotAllowedError');
      const lock = new EventTarget();
      lock.release = async () => lock.dispatchEvent(new Event('release'));
      window.locks.push(lock);
      return lock;
    };
    Object.defineProperty(navigator, 'wakeLock', { value: { request } });
    window.hide = (hidden) => {
      Object.defineProperty(document, 'hidden', { configurable: true, get: () => hidden });
      if (hidden) window.locks.at(-1)?.release(); // as a browser does
      document.dispatchEvent(new Event('visibilitychange'));
    };
  });
  const app = await AppPage.open(context, site.address);
  const label = async () => {
    await app.tap('menu');
    while (!has(await app.state(), 'awake')) await app.tap('more menu');
    const { label: words } = await app.widget('awake');
    return words;
  };
  assert.equal(await label(), 'Screen may go dark');
  await app.tap('awake');
  assert.match((await app.widget('awake')).label, /Screen stays on/);
  await app.page.evaluate(() => window.hide(true));
  await app.page.evaluate(() => window.hide(false));
  await app.settled();
  assert.equal(await app.page.evaluate(() => window.locks.length), 2);
  assert.match((await app.widget('awake')).label, /Screen stays on/);
  await app.tap('awake');
  assert.equal((await app.widget('awake')).label, 'Screen may go dark');
  await app.page.evaluate(() => { window.refuse = true; });
  await app.tap('awake');
  assert.match((await app.widget('awake')).label, /refuses/);
});
