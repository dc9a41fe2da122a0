// Practice: a drawn site played by touch with the server stopped, the person's own plan untouched, nothing given away before the answer.

import assert from 'node:assert/strict';
import { test } from 'node:test';

import { AppPage, SCREENS, freshContext, openApp } from './harness.mjs';
import { checked, choose, chooseHere, coarse, enterText, has, nextTo, savedPlan } from './steps.mjs';

const PHONE = coarse(SCREENS.phone);
const label = (state, id) => state.widgets.find((each) => each.id === id)?.label;
const texts = (state) => state.widgets.map((each) => `${each.label} ${each.value}`).join('\n');

/** From anywhere to the drawn site of that number. */
async function draw(app, seed, level) {
  await choose(app, 'practice');
  await app.tap(`level ${level}`);
  await app.tap('site number');
  await enterText(app, String(seed));
  await app.tap('draw site');
  await app.until(({ screen, advising }) => screen === 'Site' && !advising, 'the site');
}

/** Predicts GO, the first guy and 11 degrees. */
async function predict(app) {
  await app.tap('predict');
  await app.tap('say go');
  await app.tap('say guy 0');
  await app.tap('angle +10');
  await app.tap('angle +1');
  await app.tap('show answer');
  await checked(app);
}

test('a site is played by touch with the server stopped; a reload in the middle opens the own plan, as it was', async (t) => {
  const app = await openApp(t, PHONE);
  await app.copyReady();
  await app.tap('more edge.face_deg');
  const own = await savedPlan(app);
  await app.site.stop();
  await draw(app, 12, 1);
  assert.equal((await app.state()).verdict, 'PRACTICE');
  assert.notEqual((await app.state()).title, JSON.parse(own).title);
  assert.equal(await savedPlan(app), own, 'what is kept is the own plan');
  await predict(app);
  let state = await app.state();
  assert.equal(state.screen, 'Answer');
  assert.match(state.reason, /^Would be (GO|NO-GO)\. /);
  assert.equal(state.check_code, '');
  await nextTo(app, 'why');
  await app.tap('why');
  for (let i = 0; i < 4; ++i) await app.tap('sentence after');
  state = await app.state();
  assert.match(label(state, 'title'), /5 of \d+/);
  assert.ok(has(state, 'head forces'));
  await app.tap('back');
  await nextTo(app, 'what if');
  await app.tap('what if');
  await nextTo(app, 'more frame.lean_deg');
  const before = (await app.widget('slide frame.lean_deg')).value;
  await app.tap('more frame.lean_deg');
  assert.notEqual((await app.widget('slide frame.lean_deg')).value, before);
  assert.equal(await savedPlan(app), own);

  await app.page.reload();
  await app.ready();
  state = await checked(app);
  assert.equal(state.title, JSON.parse(own).title);
  assert.notEqual(state.verdict, 'PRACTICE');
  assert.equal(await savedPlan(app), own);
  await choose(app, 'practice');
  await app.tap('progress');
  assert.match(texts(await app.state()), /Level 1: 1 site answered/, 'what was answered is kept');
});

test('before the answer neither screen, text view nor the line for screen readers gives it away', async (t) => {
  const app = await openApp(t, PHONE);
  await draw(app, 12, 1);
  await app.until(({ checking }) => !checking, 'the end of the check');
  const told = [texts(await app.state()), JSON.stringify((await app.state()).reason)];
  await app.tap('scene');
  told.push(texts(await app.state()));
  await app.tap('view forces');
  told.push(texts(await app.state()));
  await app.tap('smaller');
  await app.told();
  told.push(await app.page.evaluate(() => document.body.textContent));
  for (const words of told) {
    assert.doesNotMatch(words, /NO-GO\.|Would be|check code|stays up|carries|to spare|broken/i);
    assert.doesNotMatch(words, /force [A-Z]/);
  }
  await predict(app);
  await app.told();
  assert.match(await app.page.evaluate(() => document.getElementById('verdict').textContent), /^PRACTICE\. Would be/);
});

test('its menu has nothing that keeps, shares or signs; the strip leads to no card; leaving brings the own plan back', async (t) => {
  const app = await openApp(t, PHONE);
  const own = await savedPlan(app);
  await checked(app);
  const { check_code: code } = await app.state();
  await draw(app, 5, 2);
  await app.tap('strip');
  assert.equal((await app.state()).screen, 'Site');
  await app.tap('menu');
  for (const id of ['save', 'share', 'sheet', 'second', 'log', 'plans', 'new', 'open', 'lock', 'name plan']) assert.ok(!has(await app.state(), id), id);
  await chooseHere(app, 'leave practice');
  const state = await checked(app);
  assert.equal(state.check_code, code);
  assert.equal(await savedPlan(app), own);
});

test('in French and imperial: the sentences, the units and the names', async (t) => {
  const app = await openApp(t, PHONE);
  await choose(app, 'language');
  await chooseHere(app, 'units');
  await chooseHere(app, 'practice');
  await app.tap('level 1');
  await app.tap('draw site');
  await app.until(({ screen }) => screen === 'Site', 'the site');
  await predict(app);
  await nextTo(app, 'why');
  await app.tap('why');
  const words = texts(await app.state());
  assert.match(words, /La corde principale tire la tête .* lbf/);
  assert.equal((await app.state()).widgets.find(({ id }) => id === 'strip').label, 'EXERCICE');
});

test('the same number and level are the same site on another device, another number another', async (t) => {
  const app = await openApp(t, PHONE);
  await draw(app, 77, 4);
  const first = texts(await app.state());
  const other = await AppPage.open(await freshContext(t, PHONE), app.site.address);
  await draw(other, 77, 4);
  assert.equal(texts(await other.state()), first);
  await draw(other, 78, 4);
  assert.notEqual(texts(await other.state()), first);
});

test('the text view plays a whole site', async (t) => {
  const app = await openApp(t, PHONE);
  await choose(app, 'practice');
  await chooseText(app);
  const press = async (name) => {
    await app.page.locator('#text').getByRole('button', { name, exact: true }).first().click();
    await app.told();
  };
  await press('Draw this site');
  await press('Predict');
  await press('NO-GO');
  await app.page.locator('#text button[data-id="say guy 0"]').click();
  await app.told();
  await press('Show the answer');
  await checked(app);
  await app.told();
  assert.match(await app.page.locator('#text .body').innerText(), /You: NO-GO\. It is:/);
});

/** The text view, from the menu of practice. */
async function chooseText(app) {
  await app.tap('menu');
  await chooseHere(app, 'text');
}
