// The course: every lesson brought to its goal by a finger with the server stopped, the marks after a reload, another language and other
// units, what somebody reads who does not see it, every screen.

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { test } from 'node:test';

import { SCREENS, openApp } from './harness.mjs';
import { SIZES, assertUsable, checked, choose, coarse, has, nextTo, openCourse, openLesson, savedPlan, typeNumber } from './steps.mjs';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const PHONE = coarse(SCREENS.phone);
const LESSONS = 10;

/** A place for what each lesson lets be moved at which its goal is reached: as typed, in metres, degrees and kilonewtons. */
const GOALS = {
  1: { 'frame.lean_deg': '18' },
  2: { 'guys[0].inclination_deg': '30' },
  3: { 'frame.foot_m[0][0]': '1.9', 'frame.leg_length_m[0]': '3.2' },
  4: { 'actions.swing_deg': '10' },
  5: { 'guys[4].bearing_deg': '180' },
  6: { 'frame.lean_deg': '18' },
  7: { 'ropes[0].haul.distance_m': '3' },
  8: { 'guys[0].pretension_kN': '0.25' },
  9: { 'tolerances.bearing_deg': '5' },
};

const widget = (state, id) => state.widgets.find((each) => each.id === id);
const reached = (state) => widget(state, 'goal')?.value === 'reached';

/** Past the question, if the lesson begins with one. Resolves with what was asked. */
async function answer(app) {
  const state = await app.state();
  if (!has(state, 'answer 0')) return undefined;
  assert.ok(!has(state, 'readout'), 'nothing is read out before the answer');
  await app.tap('answer 0');
  return checked(app);
}

/** Ties the guys of the last lesson: first one that is wrong, then those that the engine would have. */
async function tieAll(app) {
  const tie = async (name) => {
    const found = (await app.state()).widgets.find(({ id, label }) => id.startsWith('tie guy') && label === `Tie ${name}`);
    assert.ok(found, `no key to tie ${name}`);
    await app.tap(found.id);
  };
  await tie('left');
  assert.match(widget(await app.state(), 'sentence').label, /^Guy left first\?/);
  await app.tap('take off');
  for (const name of ['back', 'left', 'right', 'back left']) await tie(name);
}

async function bringToGoal(app, lesson) {
  await answer(app);
  if (lesson === LESSONS) return tieAll(app);
  assert.ok(!reached(await app.state()), `lesson ${lesson} begins where it is to end`);
  if (lesson === 4) {
    while (!has(await app.state(), 'rig 1')) await app.tap('next');
    await app.tap('rig 1');
  }
  for (const [path, digits] of Object.entries(GOALS[lesson])) await typeNumber(app, path, digits);
  return undefined;
}

test('every lesson is brought to its goal by touch with the server stopped; the marks are there after a reload, the plan is untouched', async (t) => {
  const app = await openApp(t, PHONE);
  await app.copyReady();
  await app.site.stop();
  const before = await savedPlan(app);
  await openLesson(app, 1);
  for (let lesson = 1; lesson <= LESSONS; ++lesson) {
    assert.equal((await app.state()).screen, 'Lesson');
    assert.equal(widget(await app.state(), 'strip').label, 'PRACTICE');
    await bringToGoal(app, lesson);
    const state = await checked(app);
    assert.ok(reached(state), `lesson ${lesson} is not reached: ${JSON.stringify(widget(state, 'readout'))}`);
    assertUsable(state, PHONE, `lesson ${lesson}`);
    assert.equal(state.check_code, '');
    await nextTo(app, 'next lesson'); // behind the pages with further sliders
    await app.tap('next lesson');
  }
  assert.equal((await app.state()).screen, 'Course');
  await app.page.evaluate(() => window.guywright.saved());
  await app.page.reload();
  await app.ready();
  assert.equal(await savedPlan(app), before, 'the plan in hand is the person\'s own');
  await openCourse(app);
  for (let lesson = 1; lesson <= LESSONS; ++lesson) {
    if (!has(await app.state(), `lesson ${lesson}`)) await app.tap('next');
    assert.match((await app.widget(`lesson ${lesson}`)).label, /^\u2713/);
  }
});

test('dragging a slider moves what is read out; a mark comes when the finger is up', async (t) => {
  const app = await openApp(t, PHONE);
  await openLesson(app, 1);
  const before = (await app.widget('readout')).value;
  await app.drag('slide frame.lean_deg', 0.2, 0.6);
  const state = await app.state();
  assert.notEqual(widget(state, 'readout').value, before);
  await app.tap('again');
  assert.equal((await app.widget('readout')).value, before);
});

test('a store that somebody spoilt does no harm', async (t) => {
  const app = await openApp(t, PHONE);
  for (const spoilt of ['{"lessons":', 7, { lessons: ['foot'] }]) {
    await app.page.evaluate((text) => new Promise((resolve, reject) => {
      const request = indexedDB.open('guywright plans');
      request.onsuccess = () => {
        const transaction = request.result.transaction('settings', 'readwrite');
        transaction.objectStore('settings').put(text, 'practice');
        transaction.oncomplete = () => { request.result.close(); resolve(); };
        transaction.onabort = reject;
      };
      request.onerror = reject;
    }), spoilt);
    await app.page.reload();
    await app.ready();
    await openCourse(app);
    assert.doesNotMatch((await app.widget('lesson 1')).label, /\u2713/);
    await choose(app, 'leave practice');
  }
  assert.deepEqual(app.complaints, []);
});

test('a lesson in French and in pounds and feet', async (t) => {
  const app = await openApp(t, PHONE);
  await choose(app, 'language');
  await app.tap('units');
  await app.tap('close menu');
  await openLesson(app, 2);
  const start = await app.state();
  assert.equal(widget(start, 'strip').label, 'EXERCICE');
  assert.match(widget(start, 'readout').value, /^\d+ lbf$/);
  assert.match(widget(start, 'goal').label, /^But : \d+ lbf ou moins$/);
  await typeNumber(app, 'guys[0].inclination_deg', '30');
  const end = await app.state();
  assert.ok(reached(end));
  assert.ok(widget(end, 'sentence').label.includes(widget(start, 'readout').value), 'the sentence has the number of the start');
  assert.ok(widget(end, 'sentence').label.includes(widget(end, 'readout').value), 'and that of the end');
});

test('a lesson as text: the question without its answer, the numbers, the ways on; axe finds nothing', async (t) => {
  const app = await openApp(t, PHONE);
  await openLesson(app, 4);
  await choose(app, 'text');
  const text = app.page.locator('#text');
  await text.getByRole('button', { name: 'back', exact: true }).waitFor();
  assert.doesNotMatch(await text.textContent(), /Head in the swing|kN/);
  await text.getByRole('button', { name: 'right', exact: true }).click();
  await text.getByText('Head in the swing').first().waitFor();
  await text.getByRole('button', { name: 'Four guys' }).click();
  await text.getByText(/Goal: \d+ mm or less/).first().waitFor();
  await app.page.evaluate(AXE);
  const { violations } = await app.page.evaluate(() => window.axe.run(document, { resultTypes: ['violations'] }));
  assert.deepEqual(violations.map(({ id, impact }) => `${impact}: ${id}`), []);
});

for (const [name, size] of Object.entries(SIZES)) {
  if (name === 'desktop') continue;
  test(`list and lessons can be read and touched on a ${name} screen`, async (t) => {
    const screen = coarse(size);
    const app = await openApp(t, screen);
    await openCourse(app);
    assertUsable(await app.state(), screen, 'course');
    while (!has(await app.state(), 'lesson 1')) await app.tap('next');
    await app.tap('lesson 1');
    for (let lesson = 1; lesson <= LESSONS; ++lesson) {
      assertUsable(await app.state(), screen, `lesson ${lesson}`);
      await answer(app);
      while (!has(await app.state(), 'next lesson')) {
        assertUsable(await app.state(), screen, `lesson ${lesson}, a page`);
        await app.tap('next');
      }
      assertUsable(await app.state(), screen, `lesson ${lesson}, last page`);
      await app.tap('next lesson');
    }
  });
}
