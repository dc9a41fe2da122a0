// Advice: from NO-GO to GO with one tap and back again, what it costs a frame, anchors found on site, the chart of directions.

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';

import { SCREENS, onlyInChromium, openApp } from './harness.mjs';
import { SIZES, assertUsable, checked, choose, coarse, has, savedPlan } from './steps.mjs';

const PHONE = coarse(SCREENS.phone);
const EXAMPLE = JSON.parse(readFileSync(new URL('../../assets/examples/spillway-bench.json', import.meta.url), 'utf8'));
const QUESTIONS = ['Change', 'Ties', 'LineUp', 'Pretension', 'Order', 'Anchors', 'Directions'];

/** The example with something wrong, or more on it. */
const planFile = (alter) => {
  const plan = structuredClone(EXAMPLE);
  alter(plan);
  return { name: 'plan.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(plan)) };
};
const weakCord = planFile((plan) => { plan.guys[0].strength_kN = 2; });
const leansTooLittle = planFile((plan) => { plan.frame.lean_deg = 8; });
const withAnchors = planFile((plan) => {
  plan.candidate_anchors_m = [[-6, 1.5, 0.4], [-5, -3, 0], [0.6, 3.5, -1.2], [-4.5, 4, 0.2]];
  plan.candidate_anchor_strengths_kN = [15, 15, 15, 20];
});

async function open(app, file) {
  await app.tap('menu');
  for (let page = 0; !has(await app.state(), 'open') && page < 8; ++page) await app.tap('more menu');
  await app.openFile('open', file);
  await checked(app);
}

const answered = (app) => app.until((state) => !state.checking && !state.advising, 'an answer');

/** Asks and waits for the answer. */
async function ask(app, question) {
  await choose(app, 'advice');
  while (!has(await app.state(), `ask ${question}`)) await app.tap('next');
  await app.tap(`ask ${question}`);
  return answered(app);
}

const offers = (state) => state.widgets.filter(({ id }) => id.startsWith('apply change'));
const plan = (app) => app.page.evaluate(() => window.guywright.plan());

test('a NO-GO plan: the first change is one tap away and makes it GO; undo gives back every byte', async (t) => {
  const app = await openApp(t, PHONE);
  await open(app, weakCord);
  const before = await savedPlan(app);
  await app.tap('strip');
  assert.equal((await app.state()).verdict, 'NO-GO');
  await app.tap('ask Change');
  const [first] = offers(await answered(app));
  assert.ok(first, 'something is offered');
  await app.tap(first.id);
  const after = await checked(app);
  assert.equal(after.verdict, 'GO');
  assert.deepEqual(offers(after), [], 'advice for the plan before is not shown any more');
  assert.notEqual(await savedPlan(app), before);
  await app.tap('undo');
  assert.equal((await checked(app)).verdict, 'NO-GO');
  assert.equal(await savedPlan(app), before, 'one tap is one step');
  assert.equal(offers(await answered(app))[0].id, first.id, 'the same plan gets the same advice');
});

test('advice is computed between frames: nothing is drawn for it but what was found, and the screen answers meanwhile', onlyInChromium('to be slow'), async (t) => {
  const app = await openApp(t, PHONE);
  await open(app, weakCord);
  await app.devtools.send('Emulation.setCPUThrottlingRate', { rate: 4 });
  await ask(app, 'Order');
  await choose(app, 'advice');
  await app.tapAt(await app.pointOn('ask Change'));
  const looking = await app.until(({ screen, advising }) => screen === 'Change' && advising, 'a search that goes on');
  assert.ok(looking.widgets.some(({ id }) => id === 'back'));
  const frames = await app.framesDrawn();
  await answered(app);
  const { length } = offers(await app.state());
  assert.ok((await app.framesDrawn()) - frames < 40 + 2 * length, 'a frame is drawn where something was found, not for every slice');
  await app.tap('back');
  assert.equal((await app.state()).screen, 'Advice');
});

test('what is asked starts only on its screen, and a change of the plan throws it away', async (t) => {
  const app = await openApp(t, PHONE);
  await open(app, weakCord);
  assert.equal((await app.state()).advising, false);
  await ask(app, 'Ties');
  const told = (await app.widget('ties')).value;
  await choose(app, 'step Guys');
  while (!has(await app.state(), 'more guys[0].pretension_kN')) await app.tap('next');
  for (let i = 0; i < 3; ++i) await app.tap('more guys[0].pretension_kN');
  await checked(app);
  await ask(app, 'Ties');
  assert.notEqual((await app.widget('ties')).value, told);
});

test('taking in a guy: a tap on the drawing or a key chooses it, rigged or holding', async (t) => {
  const app = await openApp(t, PHONE);
  await ask(app, 'Ties');
  const first = await app.widget('ties');
  assert.match(first.value, /[+-]\d+ N/);
  await app.tap('next guy');
  const second = await app.widget('ties');
  assert.notEqual(second.label, first.label);
  await app.tapAt(await app.pointOn('ties', 0.95, 0.35));
  await app.until((state) => state.widgets.find(({ id }) => id === 'ties').label === 'right', 'the guy that was touched');
  await app.tap('ties holding');
  assert.notEqual((await app.widget('ties')).value, first.value);
});

test('lean and pretensions go into the plan as one step each', async (t) => {
  const app = await openApp(t, PHONE);
  await open(app, leansTooLittle);
  const before = await plan(app);
  await ask(app, 'LineUp');
  await app.tap('apply lean');
  const leant = JSON.parse(await plan(app));
  assert.ok(leant.frame.lean_deg > 15);
  assert.equal((await app.state()).screen, 'LineUp');
  await app.tap('undo');
  assert.equal(await plan(app), before);

  await choose(app, 'example spillway-bench');
  const example = await plan(app);
  await ask(app, 'Pretension');
  await app.tap('apply pretension');
  for (const guy of JSON.parse(await plan(app)).guys) assert.ok(Math.abs(guy.pretension_kN * 20 - Math.round(guy.pretension_kN * 20)) < 1e-9);
  await app.tap('undo');
  assert.equal(await plan(app), example);
});

test('anchors found on site are entered, compared and taken', async (t) => {
  const app = await openApp(t, PHONE);
  await open(app, withAnchors);
  await ask(app, 'Anchors');
  await app.tap('add anchor');
  assert.equal((await app.state()).verdict, 'NOT CHECKED', 'what is begun has to be entered');
  const path = 'candidate_anchors_m[4][0]';
  await app.tap(`value ${path}`);
  for (const key of ['9', '0', 'take']) await app.tap(`key ${key}`);
  for (let i = 0; (await app.state()).not_measured.length > 0 && i < 6; ++i) await app.tap(has(await app.state(), 'confirm') ? 'confirm' : 'next');
  const entered = JSON.parse(await plan(app));
  assert.equal(entered.candidate_anchors_m.length, 5);
  assert.ok(entered.candidate_anchors_m[4][1] < -3, '90 is to the right');
  await ask(app, 'Anchors');
  while (!has(await app.state(), 'take anchors 0')) await app.tap('next');
  await app.tap('show anchors 0');
  const names = (await app.widget('anchors')).value.split(', ');
  await app.tap('take anchors 0');
  const taken = JSON.parse(await plan(app));
  assert.deepEqual(taken.guys.map(({ anchor_m: at }) => at), names.map((name) => entered.candidate_anchors_m[name - 1]));
  await app.tap('undo');
  assert.deepEqual(JSON.parse(await plan(app)), entered);
});

test('the chart of directions says what governs where it is touched', async (t) => {
  const app = await openApp(t, PHONE);
  await ask(app, 'Directions');
  const before = (await app.widget('directions')).value;
  await app.tapAt(await app.pointOn('directions', 0.2, 0.3));
  const { value } = (await app.until((state) => state.widgets.find(({ id }) => id === 'directions').value !== before, 'another direction')).widgets.find(({ id }) => id === 'directions');
  assert.match(value, /broken|%/);
  await app.tap('steeper');
  assert.notEqual((await app.widget('directions')).value, value);
});

test('advice is in the text view, with its keys', async (t) => {
  const app = await openApp(t, PHONE);
  await open(app, weakCord);
  await choose(app, 'text');
  await app.page.getByRole('button', { name: 'What would make it go' }).first().click();
  await answered(app);
  const apply = app.page.getByRole('button', { name: /^Apply: / }).first();
  await apply.waitFor();
  await apply.click();
  assert.equal((await checked(app)).verdict, 'GO');
});

for (const name of ['phone', 'phoneAcross']) {
  test(`the first pages of advice can be read and touched on a ${name} screen`, async (t) => {
    const screen = coarse(SIZES[name]);
    const app = await openApp(t, screen);
    await open(app, planFile((each) => {
      each.frame.lean_deg = 8;
      each.candidate_anchors_m = [[-6, 1.5, 0.4], [-5, -3, 0], [-4.5, 4, 0.2]];
    }));
    await choose(app, 'advice');
    assertUsable(await app.state(), screen, 'advice');
    for (const question of QUESTIONS) {
      await ask(app, question);
      for (let page = 1; page < 3; ++page) {
        const state = await app.state();
        assertUsable(state, screen, `${question}, page ${page}`);
        if (state.widgets.find(({ id }) => id === 'next').value === 'off') break;
        await app.tap('next');
      }
    }
  });
}
