// The walk as a rigger takes it: sliders, keypad, new plan, every step and frame, verdict and reason, files, keyboard.
// Screens at one device pixel per CSS pixel: sharpness is looked at elsewhere, and these tests draw many frames.

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';

import { AppPage, SCREENS, launch, openApp, startSite } from './harness.mjs';
import { EXAMPLES, checked, choose, coarse, has, isTouched, savedPlan, walkThrough } from './steps.mjs';

const PHONE = coarse(SCREENS.phone);

const numberIn = (text) => parseFloat(text.replace('\u2212', '-'));

/** What the slider of `path` shows. */
const shownIn = async (app, path) => numberIn((await app.widget(`slide ${path}`)).value);

// --- verdicts ---

test('starts on the example with GO, its reason and its check code', async (t) => {
  const app = await openApp(t, PHONE);
  const state = await checked(app);
  assert.equal(state.verdict, 'GO');
  assert.match(state.check_code, /^[2-9A-HJ-NP-Z]{6}$/);
  assert.ok(state.reason.length > 20);
  assert.deepEqual(app.complaints, []);
});

for (const name of EXAMPLES) {
  test(`the menu opens the example ${name}, which is a GO`, async (t) => {
    const app = await openApp(t, PHONE);
    await choose(app, `example ${name}`);
    const state = await checked(app);
    const plan = JSON.parse(readFileSync(new URL(`../../assets/examples/${name}.json`, import.meta.url), 'utf8'));
    assert.deepEqual([state.title, state.verdict], [plan.title, 'GO'], state.reason);
  });
}

test('a finger on the lean turns GO into NO-GO with the reason in words, and undo brings GO back', async (t) => {
  const app = await openApp(t, PHONE);
  const before = await checked(app);
  await choose(app, 'step Frame');
  while (!has(await app.state(), 'slide frame.lean_deg')) await app.tap('next');
  const { rect } = await app.widget('slide frame.lean_deg');
  const from = { x: rect.x + rect.width * 0.6, y: rect.y + 30 };
  await app.touch('touchStart', [from]);
  for (let i = 1; i <= 20; ++i) await app.touch('touchMove', [{ x: from.x - i * 7, y: from.y }]);
  await app.until(({ verdict }) => verdict === 'NO-GO', 'a verdict that follows the finger');
  await app.touch('touchEnd', []);
  await app.settled();
  const after = await checked(app);
  assert.equal(after.verdict, 'NO-GO');
  assert.match(after.reason, /guy|head|leg|foot|rope|force/i);
  assert.equal((await app.widget('strip')).label, 'NO-GO');
  await app.tap('undo');
  const back = await checked(app);
  assert.deepEqual([back.verdict, back.check_code], [before.verdict, before.check_code]);
});

test('a new plan is NOT CHECKED, never GO, until its last value is entered', async (t) => {
  const app = await openApp(t, PHONE);
  await choose(app, 'new');
  let state = await app.state();
  const missing = state.not_measured.length;
  assert.ok(missing >= 15, `${missing} values missing`);
  await app.tap('strip');
  while (state.not_measured.length > 0) {
    assert.equal(state.verdict, 'NOT CHECKED');
    assert.equal(state.check_code, '');
    assert.match(state.reason, new RegExp(`^${state.not_measured.length} values? still to enter$`));
    const left = state.not_measured.length;
    await app.tap('to missing');
    await app.tap(`more ${state.not_measured[0]}`);
    await app.tap('strip');
    state = await app.state();
    assert.equal(state.not_measured.length, left - 1);
  }
  state = await checked(app);
  assert.ok(['GO', 'NO-GO'].includes(state.verdict), state.verdict);
  assert.notEqual(state.check_code, '');
});

// --- entering ---

test('the keypad refuses what is out of range, says what is allowed, and loses nothing', async (t) => {
  const app = await openApp(t, PHONE);
  const before = await app.state();
  await app.tap('value edge.face_deg');
  for (const key of '999') await app.tap(`key ${key}`);
  await app.tap('key take');
  const pad = await app.widget('keypad');
  assert.match(pad.label, /^999 is not possible here; allowed 5 to 120°$/);
  assert.equal(pad.value, '999');
  assert.equal((await app.state()).check_code, before.check_code);
  for (const key of '<<<') await app.tap(`key ${key}`);
  await app.tap('key take');
  assert.match((await app.widget('keypad')).label, /Type a number first/);
  for (const key of '87') await app.tap(`key ${key}`);
  await app.tap('key take');
  assert.equal(await shownIn(app, 'edge.face_deg'), 87);
  await app.tap('undo');
  assert.equal((await checked(app)).check_code, before.check_code);
});

test('a minus on the keypad is the minus that the slider shows', async (t) => {
  const app = await openApp(t, PHONE);
  await choose(app, 'example drain-shaft');
  await choose(app, 'step Frame');
  await app.tap('next');
  await app.tap('value frame.foot_m[0][0]'); // shown behind the edge, kept as x: the sign turns
  for (const key of ['1', '.', '2', '5', '-']) await app.tap(`key ${key}`);
  await app.tap('key take');
  assert.equal(await shownIn(app, 'frame.foot_m[0][0]'), -1.25);
});

const plan = (text) => ({ name: 'plan.json', mimeType: 'application/json', buffer: Buffer.from(text) });
const EXAMPLE = readFileSync(new URL('../../assets/examples/spillway-bench.json', import.meta.url), 'utf8');

async function openPlanFile(app, text) {
  await app.tap('menu');
  await app.openFile('open', plan(text));
}

test('a hostile or broken file says why and leaves the plan as it was', async (t) => {
  const app = await openApp(t, PHONE);
  await app.tap('more edge.face_deg');
  const { check_code } = await checked(app);
  const spoilt = (change) => {
    const copy = JSON.parse(EXAMPLE);
    change(copy);
    return JSON.stringify(copy);
  };
  const cases = {
    'no JSON': ['}{', /JSON/],
    'a number too large': [spoilt((p) => { p.guys[1].inclination_deg = 95; }), /guys\[1\]\.inclination_deg is 95; allowed: 2 to 88 deg/],
    'a wrong type': [spoilt((p) => { p.edge.face_deg = 'steep'; }), /edge\.face_deg/],
    'a key too many': [spoilt((p) => { p.guyz = []; }), /guyz/],
    'two faults at once': [spoilt((p) => { p.edge.face_deg = 500; p.frame.lean_deg = 80; }), /edge\.face_deg is 500[^]*frame\.lean_deg is 80/],
    'NaN': [EXAMPLE.replace('"face_deg": 85', '"face_deg": NaN'), /JSON/],
    'nesting without end': ['['.repeat(100_000), /./],
    'more guys than anything can hold': [spoilt((p) => { p.guys = Array(3000).fill(0); }), /guys/],
  };
  for (const [what, [text, why]] of Object.entries(cases)) {
    await openPlanFile(app, text);
    const state = await app.state();
    assert.equal(state.screen, 'Message', what);
    const { label } = state.widgets.find(({ id }) => id === 'message');
    assert.match(label, /Your plan is as it was/, what);
    assert.match(label, why, what);
    await app.tap('close message');
    assert.equal((await checked(app)).check_code, check_code, what);
  }
});

test('a plan saved as a file opens again with the same check code', async (t) => {
  const app = await openApp(t, PHONE);
  await choose(app, 'example dam-crest');
  await app.tap('less edge.face_deg');
  const { check_code } = await checked(app);
  const { text } = await app.handed(() => choose(app, 'save'));
  await choose(app, 'new');
  assert.equal((await app.state()).check_code, '');
  await openPlanFile(app, text);
  assert.equal((await checked(app)).check_code, check_code);
});

// --- the make-up of a plan ---

test('the frame changes its kind in one step that undo takes back', async (t) => {
  const app = await openApp(t, PHONE);
  const first = await checked(app);
  await choose(app, 'step Frame');
  for (const kind of ['A-frame', 'tripod', 'monopod']) {
    await app.tap(kind);
    const state = await app.state();
    assert.equal(state.verdict, 'NOT CHECKED', kind);
    const legs = { 'A-frame': 2, tripod: 3, monopod: 1 }[kind];
    assert.ok(state.not_measured.includes(`frame.foot_m[${legs - 1}][0]`), kind);
    assert.ok(!state.not_measured.some((path) => path.includes(`foot_m[${legs}]`)), kind);
  }
  for (let i = 0; i < 3; ++i) await app.tap('undo');
  const back = await checked(app);
  assert.deepEqual([back.verdict, back.check_code, back.not_measured], ['GO', first.check_code, []]);
});

/** Taps "next" until `id` is on the screen. */
async function findByNext(app, id) {
  for (let i = 0; i < 80; ++i) {
    if (has(await app.state(), id)) return;
    await app.tap('next');
  }
  assert.fail(`"${id}" never came`);
}

/** Goes to `id`, which few need, on its step: opens what is left out on the way. */
async function showMore(app, step, id) {
  await choose(app, `step ${step}`);
  for (let i = 0; !has(await app.state(), id); ++i) {
    assert.ok(i < 80, `"${id}" never came`);
    await app.tap(has(await app.state(), 'more') ? 'more' : 'next');
  }
}

test('guys, ropes, ties, hobbles, poles and anchors come and go, each with one undo', async (t) => {
  const app = await openApp(t, PHONE);
  await choose(app, 'example dam-crest');
  const first = await checked(app);
  const acts = [['Guys', 'remove guy 0'], ['Guys', 'by position 0'], ['Rope', 'add rope 0'], ['Rope', 'rope strength 0'], ['Edge', 'opening'], ['Feet', 'add tie 0'],
    ['Margins', 'guy loss']];
  for (const [step, id] of acts) {
    await showMore(app, step, id);
    await app.tap(id);
    await app.settled();
    const changed = await checked(app);
    assert.notEqual(changed.check_code, first.check_code, id);
    assert.ok(!has(changed, 'message'), id);
    await app.tap('undo');
    assert.equal((await checked(app)).check_code, first.check_code, `${id}, taken back`);
  }
  await choose(app, 'step Feet');
  await findByNext(app, 'remove hobble 0');
  await app.tap('remove hobble 0');
  await app.tap('add hobble 01');
  assert.equal((await checked(app)).verdict, 'GO');
});

test('a cord has the strength of its standard by one key, and one undo takes it back', async (t) => {
  const app = await openApp(t, PHONE);
  const strength = async () => JSON.parse(await savedPlan(app)).guys[0].strength_kN;
  const before = await strength();
  await choose(app, 'step Guys');
  const list = 'parts guys[0].strength_kN', label = /6 mm.*7[.]2 kN.*EN 564/;
  while (!has(await app.state(), list)) await app.tap(has(await app.state(), 'more') ? 'more' : 'next');
  await app.tap(list);
  const find = async () => (await app.state()).widgets.find((each) => label.test(each.label));
  while (!(await find())) await app.tap('next');
  await app.tap((await find()).id);
  assert.equal(await strength(), 7.2);
  assert.match((await find()).label, /\u2713/);
  await app.tap('undo');
  assert.equal(await strength(), before);
});

test('an anchor entered by position stays where it is, and so do all forces', async (t) => {
  const app = await openApp(t, PHONE);
  const forces = async () => {
    await app.tap('strip');
    await findByNext(app, 'force');
    return (await app.state()).widgets.filter(({ id }) => id === 'force').map(({ label, value }) => `${label} ${value}`);
  };
  const before = await forces();
  await showMore(app, 'Guys', 'by position 0');
  await app.tap('by position 0');
  assert.deepEqual((await app.state()).not_measured, []);
  assert.ok(has(await app.state(), 'slide guys[0].anchor_m[0]'), 'the position is not shown');
  assert.deepEqual(await forces(), before);
});

// --- how much work it is ---

const notEntered = ({ kind, value }) => kind === 'slider' && value.endsWith('not entered');

/** Counts what a hand does. */
class Hand {
  gestures = 0;
  log = [];

  constructor(app) {
    this.app = app;
  }

  async tap(id) {
    ++this.gestures;
    await this.app.tap(id);
  }

  /** Moves a finger along the slider with an eye on the value, and lifts it at the nearest it comes to. One gesture. */
  async drag(path, wanted) {
    ++this.gestures;
    const { rect } = await this.app.widget(`slide ${path}`);
    const y = rect.y + rect.height * 0.4, start = rect.x + rect.width / 2;
    const far = async (x) => {
      await this.app.touch('touchMove', [{ x, y }]);
      await this.app.drawn();
      return (await shownIn(this.app, path)) - wanted;
    };
    await this.app.touch('touchStart', [{ x: start, y }]);
    let off = await far(start);
    const way = -Math.sign(off);
    let x = start;
    for (const px of [12, 3, 1]) { // forth in long steps until past it, back, and again in shorter ones
      while (off !== 0 && Math.sign(off) !== way && Math.abs(x - start) < 400) off = await far(x += way * px);
      if (px > 1 && off !== 0) off = await far(x -= way * px);
    }
    await this.app.touch('touchEnd', []);
    await this.app.settled();
  }

  /** Types the value: one tap on it, one for each sign, one to take it. */
  async type(path, wanted) {
    await this.tap(`value ${path}`);
    for (const sign of String(wanted)) await this.tap(`key ${sign}`);
    await this.tap('key take');
  }

  /** A drag, then single steps until the value is there, or the keypad where that is shorter: what one does with a slider. */
  async slide(path, wanted) {
    for (let i = 0; i < 15; ++i) {
      const here = await shownIn(this.app, path);
      if (Math.abs(here - wanted) < 1e-6) return;
      const steps = Math.abs(here - wanted) / measurement(path).step;
      if (i < 1 && steps > 2.5) await this.drag(path, wanted);
      else if (steps > String(wanted).length + 2) await this.type(path, wanted);
      else await this.tap(`${here < wanted ? 'more' : 'less'} ${path}`);
    }
    assert.fail(`${path} does not come to ${wanted}`);
  }

  /** Enters what is missing on this page; what shows the right value already is said to be right by the one key for that. */
  async fillPage(measured) {
    for (const { id, value } of (await this.app.state()).widgets.filter(notEntered)) {
      const path = id.slice('slide '.length);
      const { wanted } = measured(path);
      const before = this.gestures;
      if (numberIn(value) !== wanted) await this.slide(path, wanted);
      this.log.push(`${path} ${this.gestures - before}`);
    }
    const right = (await this.app.state()).widgets.some(notEntered);
    if (right) await this.tap('confirm');
    else if ((await this.app.state()).not_measured.length > 0) await this.tap('next');
  }
}

// What was measured on site, and one press of a nudge key.
const measure = (wanted, step) => ({ wanted, step });
const MEASURED = {
  'edge.face_deg': measure(80, 1),
  'frame.foot_m[0][0]': measure(2.6, 0.05),
  'frame.leg_length_m[0]': measure(2.7, 0.05),
  'frame.lean_deg': measure(20, 1),
  'frame.leg_rating_kN[0]': measure(40, 0.5),
  'ropes[0].load_kg': measure(140, 5),
  'ropes[0].haul.bearing_deg': measure(185, 5),
  'ropes[0].haul.distance_m': measure(7, 0.1),
  'ropes[0].haul.height_m': measure(0.5, 0.1),
};
const GUYS = [[180, 30, 20], [80, 32, 18], [280, 31, 18]];
function measurement(path) {
  const guy = /^guys\[(\d)\]\.(\w+)$/.exec(path);
  if (!guy) return MEASURED[path] ?? assert.fail(`${path} was not measured`);
  const [bearing, inclination, strength] = GUYS[guy[1]];
  return { bearing_deg: measure(bearing, 5), inclination_deg: measure(inclination, 1), anchor_strength_kN: measure(strength, 0.5) }[guy[2]];
}

test('a leg with three guys takes few gestures from new to verdict, with the measurements in hand', async (t) => {
  const app = await openApp(t, PHONE);
  const hand = new Hand(app);
  await hand.tap('menu');
  await hand.tap('new');
  while ((await app.state()).not_measured.length > 0) {
    assert.equal((await app.state()).verdict, 'NOT CHECKED');
    await hand.fillPage(measurement);
  }
  const state = await checked(app);
  assert.ok(['GO', 'NO-GO'].includes(state.verdict), state.reason);
  console.log(hand.log.join(', '));
  console.log(`gestures from new to verdict: ${hand.gestures} (${state.verdict}: ${state.reason})`);
  assert.ok(hand.gestures < 40, `${hand.gestures} gestures`);
});

// --- keyboard ---

test('the keyboard reaches every key and slider, arrows move a slider, digits fill the keypad', async (t) => {
  const app = await openApp(t, coarse(SCREENS.desktop));
  await app.page.locator('#canvas').focus();
  const reached = new Set();
  for (let i = 0; i < 40; ++i) {
    await app.strike('Tab');
    const { focus } = await app.state();
    if (focus) reached.add(focus);
  }
  const { widgets } = await app.state();
  for (const { id } of widgets.filter((each) => isTouched(each) && each.value !== 'off')) assert.ok(reached.has(id), `Tab never comes to ${id}`);
  for (let i = 0; (await app.state()).focus !== 'slide edge.face_deg'; ++i) {
    assert.ok(i < 40);
    await app.strike('Tab');
  }
  const before = await shownIn(app, 'edge.face_deg');
  await app.strike('ArrowLeft');
  await app.strike('ArrowLeft');
  await app.strike('ArrowRight');
  assert.equal(await shownIn(app, 'edge.face_deg'), before - 1);
  assert.equal((await app.state()).focus, 'slide edge.face_deg', 'the arrow has moved the focus');
  await app.page.keyboard.down('Shift');
  while ((await app.state()).focus !== 'value edge.face_deg') await app.strike('Tab');
  await app.page.keyboard.up('Shift');
  await app.strike('Enter');
  assert.equal((await app.state()).screen, 'Keypad');
  for (const key of ['7', '8', 'Backspace', '5', 'Enter']) await app.strike(key);
  assert.equal(await shownIn(app, 'edge.face_deg'), 75);
  while ((await app.state()).focus !== 'next') await app.strike('Tab');
  await app.strike('Enter');
  assert.equal((await app.state()).screen, 'Frame');
});

// --- at rest, and away from any network ---

test('draws nothing while nothing changes, on every step', async (t) => {
  const app = await openApp(t, PHONE);
  for (const step of ['Edge', 'Frame', 'Rope', 'Guys', 'Feet', 'Margins', 'Card']) {
    await choose(app, `step ${step}`);
    await checked(app);
    await app.settled();
    const before = await app.framesDrawn();
    await app.page.waitForTimeout(700);
    assert.equal(await app.framesDrawn(), before, step);
  }
});

test('the whole walk works with the server stopped and the network off', async (t) => {
  const site = await startSite(t);
  const context = await launch(t, undefined, { screen: PHONE });
  const first = await AppPage.open(context, site.address);
  await first.copyReady();
  await first.page.close();
  await site.stop();
  await context.setOffline(true);
  const app = await AppPage.open(context, site.address);
  const before = await checked(app);
  const seen = new Set();
  await walkThrough(app, (state) => seen.add(state.screen));
  assert.equal(seen.size, 7);
  await choose(app, 'example drain-shaft');
  assert.equal((await checked(app)).verdict, 'GO');
  await choose(app, 'example spillway-bench');
  assert.equal((await checked(app)).check_code, before.check_code);
});

test('a tap on the picture makes it large, a drag turns it, and a key or the next step brings the sliders back', async (t) => {
  const app = await openApp(t, PHONE);
  const small = (await app.widget('scene')).rect;
  await app.drag('scene', 0.3, 0.6);
  assert.deepEqual((await app.widget('scene')).rect, small);
  await app.tapAt(await app.pointOn('scene', 0.5, 0.3));
  await app.settled();
  const large = (await app.widget('scene')).rect;
  assert.ok(large.height > 1.7 * small.height, `${large.height} px high`);
  assert.ok(!has(await app.state(), 'next'));
  await app.tap('smaller');
  assert.deepEqual((await app.widget('scene')).rect, small);
  await app.tapAt(await app.pointOn('scene', 0.5, 0.3));
  await app.settled();
  await app.tapAt(await app.pointOn('scene', 0.5, 0.3));
  await app.settled();
  assert.deepEqual((await app.widget('scene')).rect, large, 'a touch of the large picture must not lose it');
  await app.tap('strip');
  assert.equal((await app.state()).screen, 'Card');
  assert.ok(has(await app.state(), 'next'));
});
