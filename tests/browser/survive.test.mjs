// What happens to a device on scene, and must change nothing: turned round, squeezed beside another app, out of sight for an
// hour, its graphics taken away, text twice as large.

import assert from 'node:assert/strict';
import { test } from 'node:test';

import { AppPage, SCREENS, freshContext, onlyInChromium, openApp, startSite } from './harness.mjs';
import { checked, choose, coarse, walkThrough } from './steps.mjs';

const PHONE = coarse(SCREENS.phone);
const PLUS = 'more edge.face_deg';

/** Inputs and verdict, as far as they can be told from outside. */
const contentOf = async (app) => {
  const { verdict, check_code, reason, title, not_measured } = await checked(app);
  return { verdict, check_code, reason, title, not_measured };
};

/** Colours of the picture by the number of its pixels, counted in the browser itself: no decoder is needed. */
async function coloursOf(app) {
  const png = (await app.picture()).toString('base64');
  const page = await app.context.newPage();
  const colours = await page.evaluate(async (data) => {
    const bitmap = await createImageBitmap(await (await fetch(`data:image/png;base64,${data}`)).blob());
    const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
    const drawing = canvas.getContext('2d');
    drawing.drawImage(bitmap, 0, 0);
    const { data: bytes } = drawing.getImageData(0, 0, bitmap.width, bitmap.height);
    const counts = {};
    for (let i = 0; i < bytes.length; i += 4) {
      const colour = `${bytes[i]},${bytes[i + 1]},${bytes[i + 2]}`;
      counts[colour] = (counts[colour] ?? 0) + 1;
    }
    return { counts, pixels: bitmap.width * bitmap.height };
  }, png);
  await page.close();
  return colours;
}

/** In the sun theme: white ground, black letters, and more than a few colours between them. */
async function assertDrawn(app, where) {
  const { counts, pixels } = await coloursOf(app);
  const white = (counts['255,255,255'] ?? 0) / pixels, black = (counts['0,0,0'] ?? 0) / pixels;
  assert.ok(white > 0.15, `${where}: ${(white * 100).toFixed(1)} % white`);
  assert.ok(black > 0.003 && black < 0.4, `${where}: ${(black * 100).toFixed(1)} % black`);
  assert.ok(Object.keys(counts).length > 20, `${where}: ${Object.keys(counts).length} colours`);
}

async function assertInside(app, width, height, where) {
  for (const { id, rect } of (await app.state()).widgets) {
    const inside = rect.x >= -0.6 && rect.y >= -0.6 && rect.x + rect.width <= width + 0.6 && rect.y + rect.height <= height + 0.6;
    assert.ok(inside, `${where}: ${id} leaves ${width} x ${height}: ${JSON.stringify(rect)}`);
  }
}

/** A plan that is not the one the app starts with. */
async function enteredApp(t, screen = PHONE) {
  const app = await openApp(t, screen);
  await app.tap(PLUS);
  return { app, before: await contentOf(app) };
}

// Half a phone either way, a third of a tablet, a window hardly larger than a stamp.
const SPLITS = [[390, 400], [360, 300], [844, 195], [422, 390], [266, 800], [427, 1280], [800, 426], [320, 256], [240, 240]];

test('in any part of a split screen everything is there, nothing leaves it, and the content is the same', async (t) => {
  const { app, before } = await enteredApp(t);
  for (const [width, height] of SPLITS) {
    await app.resize(width, height);
    const where = `${width} x ${height}`;
    await assertInside(app, width, height, where);
    assert.deepEqual((await app.state()).cut, [], where);
    await assertDrawn(app, where);
    const value = (await app.widget('slide edge.face_deg')).value;
    await app.tap(PLUS); // and it can be worked with
    assert.notEqual((await app.widget('slide edge.face_deg')).value, value, where);
    await app.tap('undo');
  }
  await app.resize(PHONE.width, PHONE.height);
  assert.deepEqual(await contentOf(app), before);
});

test('turning the device, also with the finger on a slider, keeps what was entered', async (t) => {
  const { app, before } = await enteredApp(t);
  for (let i = 0; i < 3; ++i) {
    await app.resize(PHONE.height, PHONE.width);
    await assertDrawn(app, 'across');
    assert.deepEqual(await contentOf(app), before);
    await app.resize(PHONE.width, PHONE.height);
    await assertDrawn(app, 'upright');
  }
  const from = await app.pointOn('slide edge.face_deg', 0.5, 0.4);
  await app.touch('touchStart', [from]);
  await app.touch('touchMove', [{ x: from.x + 60, y: from.y }]);
  await app.resize(PHONE.height, PHONE.width);
  await app.touch('touchEnd', []);
  await app.settled();
  const after = await checked(app);
  assert.equal(after.verdict, 'GO');
  await assertDrawn(app, 'turned in the middle of a drag');
});

test('graphics that are taken away and given back, three times, change nothing', async (t) => {
  const { app, before } = await enteredApp(t);
  for (let i = 0; i < 3; ++i) {
    await app.loseContext();
    await app.restoreContext();
    await assertDrawn(app, `loss ${i + 1}`);
    assert.deepEqual(await contentOf(app), before);
  }
  await app.tap(PLUS);
  assert.notEqual((await contentOf(app)).check_code, before.check_code);
});

test('while the graphics are gone the app says so and can be worked with as text', async (t) => {
  const { app, before } = await enteredApp(t);
  await app.loseContext();
  const notice = app.page.locator('#notice');
  await notice.getByText('The device has taken the picture away.').waitFor();
  await notice.getByRole('button', { name: 'Read as text' }).tap();
  const text = app.page.locator('#text');
  assert.equal(await text.locator('.verdict').innerText(), before.verdict);
  const input = text.getByLabel('Edge angle, degrees');
  await input.fill('71');
  await input.blur();
  await app.restoreContext();
  await app.page.locator('#text .back').tap();
  await app.settled();
  assert.equal((await app.widget('slide edge.face_deg')).value, '71');
  await assertDrawn(app, 'after the text');
  assert.equal(await notice.isVisible(), false);
});

test('a size that changes while the graphics are gone is right once they are back', async (t) => {
  const { app, before } = await enteredApp(t);
  await app.loseContext();
  await app.resize(PHONE.height, PHONE.width);
  await app.restoreContext();
  await assertDrawn(app, 'turned while lost');
  await assertInside(app, PHONE.height, PHONE.width, 'turned while lost');
  assert.deepEqual(await contentOf(app), before);
});

/** A page whose clocks can be set forward, and that can be put out of sight. */
async function openClockApp(t) {
  const site = await startSite(t);
  const context = await freshContext(t, PHONE);
  await context.addInitScript(() => {
    window.ahead_ms = 0;
    const ticks = performance.now.bind(performance), today = Date.now;
    performance.now = () => ticks() + window.ahead_ms;
    Date.now = () => today() + window.ahead_ms;
    window.setHidden = (hidden) => {
      for (const [key, value] of [['hidden', hidden], ['visibilityState', hidden ? 'hidden' : 'visible']])
        Object.defineProperty(document, key, { configurable: true, get: () => value });
      document.dispatchEvent(new Event('visibilitychange'));
    };
  });
  return Object.assign(await AppPage.open(context, site.address), { site, context });
}

/** Resolves with the plan as it was when the page went out of sight. */
async function sleepAnHour(app) {
  const plan = await app.page.evaluate(() => {
    window.setHidden(true);
    return window.guywright.plan();
  });
  await app.devtools.send('Page.setWebLifecycleState', { state: 'frozen' });
  await new Promise((awake) => setTimeout(awake, 500));
  await app.devtools.send('Page.setWebLifecycleState', { state: 'active' });
  await app.page.evaluate(() => {
    window.ahead_ms += 3_600_000;
    window.setHidden(false);
  });
  await app.settled();
  return plan;
}

test('an hour out of sight, frozen, changes nothing, and the first tap after it counts once', onlyInChromium('to freeze a page'), async (t) => {
  const app = await openClockApp(t);
  await app.tap(PLUS);
  const before = await contentOf(app);
  await sleepAnHour(app);
  assert.deepEqual(await contentOf(app), before);
  await assertDrawn(app, 'after an hour');
  const value = Number((await app.widget('slide edge.face_deg')).value);
  await app.tap(PLUS);
  assert.equal(Number((await app.widget('slide edge.face_deg')).value), value + 1);
});

test('out of sight in the middle of a drag: what it had come to is kept, also when the page never comes back', async (t) => {
  const app = await openClockApp(t);
  const from = await app.pointOn('slide edge.face_deg', 0.5, 0.4);
  await app.touch('touchStart', [from]);
  for (let i = 1; i <= 8; ++i) {
    await app.touch('touchMove', [{ x: from.x - i * 8, y: from.y }]);
    await app.drawn();
  }
  await app.until((state) => state.widgets.find(({ id }) => id === 'slide edge.face_deg').value !== '85', 'a moved slider');
  await app.settled();
  const { value } = await app.widget('slide edge.face_deg');
  await app.page.evaluate(() => window.setHidden(true));
  await app.page.evaluate(() => window.guywright.saved());
  await app.page.reload();
  await app.ready();
  assert.equal((await app.widget('slide edge.face_deg')).value, value);
});

test('a key held down while the page goes out of sight does not repeat for an hour', onlyInChromium('to freeze a page'), async (t) => {
  const app = await openClockApp(t);
  await app.touch('touchStart', [await app.pointOn(PLUS)]);
  await app.drawn();
  const plan = await sleepAnHour(app);
  assert.equal(await app.page.evaluate(() => window.guywright.plan()), plan);
  await app.touch('touchEnd', []);
});

for (const [name, screen] of Object.entries({ phone: PHONE, tabletUpright: coarse(SCREENS.tabletUpright), desktop: coarse(SCREENS.desktop) })) {
  test(`text set twice as large in the browser is followed on a ${name} as far as every page fits`, onlyInChromium('the size of letters'), async (t) => {
    const { app, before } = await enteredApp(t, screen);
    const usual = (await app.widget('menu')).rect.height;
    await app.setLetters(32);
    const large = (await app.widget('menu')).rect.height;
    assert.ok(large > usual * (name === 'phone' ? 1.05 : 1.5), `${usual} px became ${large} px`);
    assert.deepEqual(await contentOf(app), before);
    await walkThrough(app, async (state) => {
      await assertInside(app, screen.width, screen.height, `${name}, ${state.screen}`);
      assert.deepEqual(state.cut, [], state.screen);
    });
    await assertDrawn(app, name);
    await choose(app, 'text');
    const letter = await app.page.evaluate(() => parseFloat(getComputedStyle(document.querySelector('#text label')).fontSize));
    assert.equal(letter, 36);
  });
}

test('200 % zoom of the browser, on a desktop and on a phone, keeps every page whole', onlyInChromium('a pixel ratio'), async (t) => {
  for (const screen of [coarse(SCREENS.desktop), PHONE]) {
    const { app, before } = await enteredApp(t, screen);
    const width = screen.width / 2, height = screen.height / 2;
    await app.devtools.send('Emulation.setDeviceMetricsOverride', { width, height, deviceScaleFactor: 2, mobile: false });
    await app.page.waitForFunction((wanted) => innerWidth === wanted && devicePixelRatio === 2, width);
    await app.laidOut();
    assert.deepEqual(await contentOf(app), before);
    await walkThrough(app, async (state) => {
      await assertInside(app, width, height, state.screen);
      assert.deepEqual(state.cut, [], state.screen);
    });
  }
});
