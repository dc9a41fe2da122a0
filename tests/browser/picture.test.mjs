// The picture of the site: fingers, mouse and keyboard on it, its views, the slider through the cases, the forces at the head.

import assert from 'node:assert/strict';
import { test } from 'node:test';

import { SCREENS, onlyInChromium, openApp } from './harness.mjs';
import { EXAMPLES, assertUsable, checked, choose, coarse, has } from './steps.mjs';

const PHONE = coarse(SCREENS.phone);
const SIZES = { ...SCREENS, phoneAcross: { width: 844, height: 390, touch: true }, smallPhone: { width: 360, height: 640, touch: true } };
const VIEWS = ['free', 'above', 'side', 'behind', 'forces'];

/** A millionth of a pixel is no movement. */
const rounded = (picture) => JSON.parse(JSON.stringify(picture, (key, value) => (typeof value === 'number' ? Number(value.toFixed(6)) : value)));
const picture = async (app) => rounded((await app.state()).picture);

async function openLarge(t, screen = PHONE) {
  const app = await openApp(t, screen);
  await checked(app);
  if (screen.touch) await app.tapAt(await app.pointOn('scene', 0.5, 0.3));
  else {
    const { x, y } = await app.pointOn('scene', 0.5, 0.3);
    await app.page.mouse.click(x, y);
  }
  await app.until((state) => has(state, 'smaller'), 'the large picture');
  await app.settled();
  return app;
}

/** Fingers `from` come down one after the other, go to `to` in steps and leave one after the other. */
async function fingers(app, from, to, steps = 8) {
  const at = (share) => from.map((point, id) => ({ id, x: point.x + (to[id].x - point.x) * share, y: point.y + (to[id].y - point.y) * share }));
  for (let count = 1; count <= from.length; ++count) {
    await app.touch('touchStart', at(0).slice(0, count));
    await app.drawn();
  }
  for (let i = 1; i <= steps; ++i) {
    await app.touch('touchMove', at(i / steps));
    await app.drawn();
  }
  const last = at(1);
  await app.touch('touchEnd', last.slice(1)); // all but the first leave
  await app.drawn();
  await app.touch('touchMove', [{ ...last[0], x: last[0].x + 60 }]); // the one left slides on
  await app.drawn();
  await app.touch('touchEnd', []);
  await app.settled();
}

const round = (number) => Math.round(number * 100) / 100;

// --- fingers ---

test('two fingers zoom and move the picture, and neither turns or presses anything', onlyInChromium('several fingers'), async (t) => {
  const app = await openLarge(t);
  const before = await app.state();
  const middle = await app.pointOn('scene', 0.5, 0.5);
  const beside = (dx, dy = 0) => ({ x: middle.x + dx, y: middle.y + dy });
  await fingers(app, [beside(-40), beside(40)], [beside(-100), beside(100)]);
  const zoomed = await app.state();
  assert.ok(Math.abs(zoomed.picture.zoom - 2.5) < 0.1, `zoom ${zoomed.picture.zoom}`);
  assert.deepEqual([zoomed.picture.yaw, zoomed.picture.pitch], [before.picture.yaw, before.picture.pitch]);
  assert.equal(zoomed.picture.large, true);
  assert.deepEqual([zoomed.check_code, zoomed.screen], [before.check_code, before.screen]);
  await fingers(app, [beside(-40), beside(40)], [beside(10, 60), beside(90, 60)]);
  const moved = await picture(app);
  assert.ok(Math.abs(moved.zoom - zoomed.picture.zoom) < 0.05, `zoom ${moved.zoom}`);
  assert.ok(moved.moved[0] > zoomed.picture.moved[0] && moved.moved[1] > zoomed.picture.moved[1], JSON.stringify(moved));
  assert.equal(moved.yaw, before.picture.yaw);
});

test('one finger turns, and after a pinch it turns again', onlyInChromium('several fingers'), async (t) => {
  const app = await openLarge(t);
  const before = await picture(app);
  await app.drag('scene', 0.3, 0.6);
  const turned = await picture(app);
  assert.notEqual(turned.yaw, before.yaw);
  assert.equal(turned.zoom, 1);
  const middle = await app.pointOn('scene', 0.5, 0.5);
  await fingers(app, [middle, { x: middle.x + 50, y: middle.y }], [middle, { x: middle.x + 90, y: middle.y }]);
  assert.equal((await picture(app)).yaw, turned.yaw);
  await app.drag('scene', 0.6, 0.4);
  assert.notEqual((await picture(app)).yaw, turned.yaw);
});

test('a double tap and a key bring the view back', onlyInChromium('several fingers'), async (t) => {
  const app = await openLarge(t);
  const fresh = await picture(app);
  for (const way of ['double tap', 'key']) {
    await app.drag('scene', 0.3, 0.6);
    const middle = await app.pointOn('scene', 0.5, 0.5);
    await fingers(app, [middle, { x: middle.x + 50, y: middle.y }], [middle, { x: middle.x + 90, y: middle.y }]);
    assert.notDeepEqual(await picture(app), fresh);
    if (way === 'key') await app.tap('reset view');
    else {
      await Promise.all([app.tapAt(middle), app.tapAt(middle)]);
      await app.settled();
    }
    assert.deepEqual(await picture(app), fresh, way);
    assert.ok(!has(await app.state(), 'reset view'), 'a key that does nothing');
  }
});

test('a second finger on the picture does not disturb a slider in hand', onlyInChromium('several fingers'), async (t) => {
  const app = await openApp(t, PHONE);
  await checked(app);
  const { rect } = await app.widget('slide edge.face_deg');
  const slider = { id: 0, x: rect.x + rect.width * 0.5, y: rect.y + 30 };
  const palm = { id: 1, ...(await app.pointOn('scene', 0.5, 0.3)) };
  const value = async () => parseFloat((await app.widget('slide edge.face_deg')).value);
  const before = await value();
  await app.touch('touchStart', [slider]);
  await app.drawn();
  await app.touch('touchStart', [slider, palm]);
  for (let i = 1; i <= 10; ++i) {
    await app.touch('touchMove', [{ ...slider, x: slider.x - 6 * i }, palm]);
    await app.drawn();
  }
  assert.ok(await value() < before - 3, 'the slider follows');
  await app.touch('touchEnd', []);
  await app.settled();
  const { zoom, large } = await picture(app);
  assert.deepEqual([zoom, large], [1, false]);
});

// --- desk ---

test('at a desk the wheel zooms about the mouse, the right button moves, keys do all of it', async (t) => {
  const app = await openLarge(t, coarse(SCREENS.desktop));
  const { x, y } = await app.pointOn('scene', 0.3, 0.4);
  await app.page.mouse.move(x, y);
  await app.settled();
  await app.page.mouse.wheel(0, -240);
  await app.settled();
  const zoomed = await picture(app);
  assert.ok(zoomed.zoom > 1.05, `zoom ${zoomed.zoom}`);
  assert.ok(zoomed.moved[0] > 0, 'what is left of the middle stays under the mouse');
  await app.page.mouse.down({ button: 'right' });
  await app.page.mouse.move(x + 80, y + 30, { steps: 6 });
  await app.page.mouse.up({ button: 'right' });
  await app.settled();
  const moved = await picture(app);
  assert.ok(moved.moved[0] > zoomed.moved[0] && moved.moved[1] > zoomed.moved[1]);
  assert.equal(moved.yaw, zoomed.yaw);
  for (let i = 0; i < 12 && (await app.state()).focus !== 'scene'; ++i) {
    await app.page.keyboard.press('Tab');
    await app.settled();
  }
  assert.equal((await app.state()).focus, 'scene');
  const press = async (key) => {
    await app.page.keyboard.press(key);
    await app.settled();
    return picture(app);
  };
  assert.equal((await press('0')).zoom, 1);
  assert.ok((await press('=')).zoom > 1);
  assert.equal(round((await press('-')).zoom), 1);
  const before = await picture(app);
  await press('ArrowRight');
  assert.notEqual((await press('ArrowRight')).yaw, before.yaw);
  assert.equal((await app.state()).focus, 'scene', 'the arrows turn and do not lead away');
});

// --- views ---

for (const [name, screen] of Object.entries(SIZES)) {
  test(`the large picture and its keys fit on a ${name} screen, and no dimension is missing`, async (t) => {
    const app = await openLarge(t, { ...coarse(screen), touch: true });
    for (const example of name === 'smallPhone' || name === 'phoneAcross' ? EXAMPLES.slice(0, 1) : EXAMPLES) {
      await app.tap('smaller');
      await choose(app, `example ${example}`);
      await app.tapAt(await app.pointOn('scene', 0.5, 0.3));
      await app.settled();
      for (const view of VIEWS) {
        await app.tap(`view ${view}`);
        const state = await app.state();
        assert.equal(state.picture.view, view);
        assertUsable(state, screen, `${example}, ${view}`);
        assert.ok(state.widgets.find(({ id }) => id === 'caption').label.length > 20);
      }
    }
  });
}

test('views from above, side and behind do not turn; each view begins whole', async (t) => {
  const app = await openLarge(t);
  for (const view of ['above', 'side', 'behind']) {
    await app.tap(`view ${view}`);
    const before = await picture(app);
    assert.deepEqual([before.zoom, before.moved], [1, [0, 0]]);
    await app.drag('scene', 0.3, 0.6);
    const after = await picture(app);
    assert.equal(after.yaw, before.yaw);
    assert.ok(after.moved[0] > 0.2, 'one finger moves what does not turn');
  }
});

// --- cases and forces ---

test('one finger walks through the cases; names, forces and movement follow', async (t) => {
  const app = await openLarge(t);
  const { cases } = await picture(app);
  assert.ok(cases > 8, `${cases} cases`);
  const name = async () => (await app.widget('slide case')).value;
  assert.equal(await name(), 'holding');
  await app.tap('view forces');
  const forces = async () => (await app.state()).widgets.filter(({ id }) => id.startsWith('force ')).map(({ label, value }) => `${label} ${value}`);
  const captions = new Set();
  const seen = new Map();
  const { rect } = await app.widget('slide case');
  const at = { x: rect.x + 30, y: rect.y + 36 };
  await app.touch('touchStart', [at]);
  for (let px = 0; px <= 340; px += 10) {
    await app.touch('touchMove', [{ x: Math.min(at.x + px, PHONE.width - 1), y: at.y }]);
    await app.drawn();
    seen.set(await name(), await forces());
    captions.add((await app.widget('caption')).label);
  }
  await app.touch('touchEnd', []);
  await app.settled();
  assert.equal(seen.size, cases - 1, [...seen.keys()].join(', ')); // all but the one before the start
  assert.notDeepEqual(seen.get('raising'), seen.get('holding'));
  assert.ok(seen.get('holding').some((row) => /load side \d/.test(row)), seen.get('holding').join(', '));
  assert.ok([...captions].some((words) => /Left over: 0\.00 kN/.test(words)));
  assert.equal((await picture(app)).case, cases - 1);
  assert.equal((await app.widget('case after')).value, 'off');
  await app.tap('case before');
  assert.equal((await picture(app)).case, cases - 2);
  await app.tap('view free');
  assert.match((await app.widget('caption')).label, /moves \d+ mm, drawn \d+ times larger|less than 1 mm|No forces/);
});

test('the numbers beside the polygon are the outcome of the case: both sides of a held rope carry the load', async (t) => {
  const app = await openLarge(t);
  await app.tap('view forces');
  const { widgets } = await app.state();
  const amount = (pattern) => parseFloat(widgets.find(({ id }) => pattern.test(id)).value);
  const weight = 150 * 9.80665 / 1000;
  assert.ok(Math.abs(amount(/load side/) - weight) < 0.02, `${amount(/load side/)} kN`);
  assert.ok(Math.abs(amount(/haul side/) - weight) < 0.02, `${amount(/haul side/)} kN`);
});

test('nothing is drawn when nothing changes: large picture, after a pinch, after the check', onlyInChromium('several fingers'), async (t) => {
  const app = await openLarge(t);
  const middle = await app.pointOn('scene', 0.5, 0.5);
  for (const view of VIEWS) {
    await app.tap(`view ${view}`);
    await fingers(app, [middle, { x: middle.x + 50, y: middle.y }], [middle, { x: middle.x + 90, y: middle.y }], 3);
    await checked(app);
    await app.settled();
    const before = await app.framesDrawn();
    await app.page.waitForTimeout(600);
    assert.equal(await app.framesDrawn(), before, view);
  }
});
