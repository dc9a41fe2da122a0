// What is not meant changes nothing: the lock, palms, rain, touches that the device takes away.

import assert from 'node:assert/strict';
import { test } from 'node:test';

import { SCREENS, onlyInChromium, openApp } from './harness.mjs';
import { checked, choose, coarse } from './steps.mjs';

const PHONE = coarse(SCREENS.phone);
const PLUS = 'more edge.face_deg';
const planOf = async (app) => (await checked(app)).check_code;

const screenOf = async (app) => (await app.state()).screen;
const saysOf = (state) => state.widgets.find(({ id }) => id === 'locked')?.value ?? '';
const halfOpen = (state) => /Now hold 2/.test(saysOf(state));
const isOpen = ({ screen }) => screen !== 'Locked';

/** Holds a finger on a place of the lock until the program has counted it. */
async function hold(app, point, counted) {
  await app.touch('touchStart', [point]);
  await app.until(counted, 'the end of holding');
  await app.touch('touchEnd', []);
  await app.drawn();
}

/** The same where it must not count: longer than would do. */
async function holdInVain(app, points) {
  await app.touch('touchStart', points);
  await app.page.waitForTimeout(1600);
  await app.drawn();
  assert.ok(!halfOpen(await app.state()));
  await app.touch('touchEnd', []);
  await app.drawn();
}

async function lock(app) {
  await choose(app, 'lock');
  assert.equal(await screenOf(app), 'Locked');
}

async function unlock(app) {
  await hold(app, await app.pointOn('lock 1'), halfOpen);
  await hold(app, await app.pointOn('lock 2'), isOpen);
}

test('while it is locked no touch and no key changes anything or leads anywhere', async (t) => {
  const app = await openApp(t, PHONE);
  const before = await planOf(app);
  await lock(app);
  await app.page.evaluate(() => { document.getElementById('offline').style.visibility = 'hidden'; }); // its word on the copy comes and goes
  await app.settled();
  const picture = await app.picture();
  for (let y = 30; y < PHONE.height; y += 90) for (const x of [40, 195, 350]) await app.tapAt({ x, y });
  await app.dragBetween({ x: 30, y: 700 }, { x: 360, y: 500 });
  for (const key of ['Tab', 'Enter', ' ', 'Escape', 'ArrowLeft', 'ArrowRight', 'Backspace', '3', 'z']) await app.page.keyboard.press(key);
  await app.settled(); // nothing begun is waited for any more
  assert.equal(await screenOf(app), 'Locked');
  assert.ok(picture.equals(await app.picture()), 'the locked screen has changed');
  await unlock(app);
  assert.equal(await screenOf(app), 'Edge');
  assert.equal(await planOf(app), before);
});

test('the lock opens to 1 held and then 2 held, and says in between what is left to do', async (t) => {
  const app = await openApp(t, PHONE);
  await lock(app);
  assert.match((await app.widget('locked')).value, /hold 1 for a second, let go, then hold 2/);
  await unlock(app);
  assert.equal(await screenOf(app), 'Edge');
});

test('short taps, the wrong order, a finger that slides across, and two fingers at once leave it locked', onlyInChromium('several fingers'), async (t) => {
  const app = await openApp(t, PHONE);
  await lock(app);
  const first = await app.pointOn('lock 1'), second = await app.pointOn('lock 2');
  for (let i = 0; i < 3; ++i) for (const point of [first, second]) await app.tapAt(point);
  await holdInVain(app, [second]);
  await hold(app, first, halfOpen);
  await hold(app, { x: 195, y: 420 }, (state) => !halfOpen(state)); // forgets the first
  await app.dragBetween(first, second, 40);
  await holdInVain(app, [first, second]);
  await app.settled();
  assert.equal(await screenOf(app), 'Locked');
});

test('the keys 1 and 2, held in turn, open it too', async (t) => {
  const app = await openApp(t, coarse(SCREENS.desktop));
  await lock(app);
  await app.page.locator('#canvas').focus();
  for (const [key, counted] of [['1', halfOpen], ['2', isOpen]]) {
    await app.page.keyboard.down(key);
    await app.until(counted, 'the end of holding');
    await app.page.keyboard.up(key);
    await app.drawn();
  }
  await app.settled();
  assert.equal(await screenOf(app), 'Edge');
});

for (const [name, screen] of Object.entries({ ...SCREENS, phoneAcross: { width: 844, height: 390, touch: true }, smallPhone: { width: 360, height: 640, touch: true } })) {
  test(`the two places of the lock are far apart on a ${name} screen, and nothing leaves it`, async (t) => {
    const app = await openApp(t, coarse(screen));
    await lock(app);
    const state = await app.state();
    const [a, b] = await Promise.all(['lock 1', 'lock 2'].map((id) => app.widget(id)));
    const apart = Math.hypot(a.rect.x - b.rect.x, a.rect.y - b.rect.y);
    assert.ok(a.rect.height >= 72 && b.rect.height >= 72);
    assert.ok(apart >= 250, `${apart} px apart`);
    assert.deepEqual(state.cut, []);
    for (const { id, rect } of state.widgets) assert.ok(rect.x >= -0.5 && rect.y >= -0.5 && rect.x + rect.width <= screen.width + 0.5 && rect.y + rect.height <= screen.height + 0.5, id);
  });
}

/** The finger of a slider, on its way when the rest of the hand comes down. */
async function dragUntil(app, end) {
  const from = await app.pointOn('slide edge.face_deg', 0.5, 0.4);
  await app.touch('touchStart', [from]);
  for (let i = 1; i <= 10; ++i) {
    await app.touch('touchMove', [{ x: from.x + i * 8, y: from.y }]);
    await app.drawn();
  }
  await app.until((state) => state.widgets.find(({ id }) => id === 'slide edge.face_deg').value !== '85', 'a moved slider: the test proves nothing');
  await end({ x: from.x + 80, y: from.y });
  await app.settled();
}

test('a palm, three touches or more, takes back what its first finger had begun', onlyInChromium('several fingers'), async (t) => {
  const app = await openApp(t, PHONE);
  const before = await planOf(app);
  await dragUntil(app, async (at) => {
    await app.touch('touchStart', [at, { x: 100, y: 500 }, { x: 200, y: 600 }]);
    await app.drawn();
    await app.touch('touchMove', [{ x: at.x - 60, y: at.y }, { x: 100, y: 520 }, { x: 200, y: 620 }]);
    await app.drawn();
    await app.touch('touchEnd', []);
  });
  assert.equal((await app.widget('slide edge.face_deg')).value, '85');
  assert.equal(await planOf(app), before);
  assert.equal((await app.widget('undo')).value, 'off');
});

test('rain on the keys, four drops at once and again, presses none of them', onlyInChromium('several fingers'), async (t) => {
  const app = await openApp(t, PHONE);
  const before = await planOf(app);
  const points = await Promise.all([PLUS, 'less edge.face_deg', 'next', 'menu'].map((id) => app.pointOn(id)));
  for (let i = 0; i < 4; ++i) {
    const turned = [...points.slice(i), ...points.slice(0, i)];
    await app.touch('touchStart', turned);
    await app.drawn();
    await app.touch('touchEnd', []);
    await app.settled();
  }
  assert.equal(await screenOf(app), 'Edge');
  assert.equal(await planOf(app), before);
  await app.tap(PLUS); // and then a finger counts again
  assert.notEqual(await planOf(app), before);
});

test('a touch that the device takes away presses nothing, and a drag of it is taken back', onlyInChromium('touches that are taken away'), async (t) => {
  const app = await openApp(t, PHONE);
  const before = await planOf(app);
  await app.touch('touchStart', [await app.pointOn(PLUS)]);
  await app.drawn();
  await app.touch('touchCancel', []);
  await app.settled();
  assert.equal(await planOf(app), before);
  await dragUntil(app, () => app.touch('touchCancel', []));
  assert.equal(await planOf(app), before);
  await app.tap(PLUS);
  assert.notEqual(await planOf(app), before, 'the finger after it does not count');
});

