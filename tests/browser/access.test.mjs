// The app as text: the same inputs, checks and commands as on the drawn screen, by keyboard and for screen readers.

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { test } from 'node:test';

import { SCREENS, openApp } from './harness.mjs';
import { checked, choose, coarse } from './steps.mjs';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const DESKTOP = coarse(SCREENS.desktop), PHONE = coarse(SCREENS.phone);

const text = (app) => app.page.locator('#text');
const field = (app, label) => text(app).getByLabel(label, { exact: true }).first();

async function openText(app) {
  await choose(app, 'text');
  await text(app).getByRole('heading', { level: 2, name: 'Edge', exact: true }).waitFor();
}

/** Everything that axe has to say of the page as it stands, by its weight. */
async function complaintsOfAxe(app) {
  await app.page.evaluate(AXE);
  const { violations } = await app.page.evaluate(() => window.axe.run(document, { resultTypes: ['violations'] }));
  return violations.map(({ id, impact, nodes }) => `${impact}: ${id} at ${nodes.map(({ target }) => target.join(' ')).join(', ')}`);
}

/** The page lets no script in but its own; axe comes in by the debugger, which asks nobody. */
async function openForAxe(t, screen = DESKTOP) {
  const app = await openApp(t, screen);
  await app.told();
  return app;
}

for (const [name, act] of Object.entries({
  'the drawn screen': async () => {},
  'the text': (app) => openText(app),
  'the text of a plan with nothing entered': async (app) => {
    await choose(app, 'new');
    await openText(app);
  },
  'the text in red night': async (app) => {
    await choose(app, 'theme');
    await app.tap('theme');
    await app.tap('text');
  },
  'the page about the app': async (app) => {
    await choose(app, 'about');
    await app.page.getByRole('heading', { name: 'What it is made of' }).waitFor();
    for (const each of await app.page.locator('#about summary').all()) await each.click();
  },
  'the plan as a code': async (app) => {
    await choose(app, 'share');
    await app.page.locator('#page .qr').waitFor();
  },
  'the reading of a code': (app) => choose(app, 'read code'),
  'the rig sheet': async (app) => {
    await choose(app, 'sheet');
    await app.page.locator('#page button[data-id="print"]').waitFor();
  },
})) {
  test(`axe finds nothing in ${name}`, async (t) => {
    const app = await openForAxe(t);
    await act(app);
    await app.told();
    assert.deepEqual(await complaintsOfAxe(app), []);
  });
}

test('every number of the plan is a labelled field with its range and how to measure it', async (t) => {
  const app = await openApp(t, PHONE);
  await openText(app);
  const fields = await text(app).locator('input').evaluateAll((inputs) => inputs.map((input) => ({
    path: input.dataset.path, label: input.labels[0]?.textContent, value: input.value, how: document.getElementById(input.getAttribute('aria-describedby'))?.textContent,
  })));
  assert.ok(fields.length > 60, `${fields.length} fields`);
  for (const { path, label, how } of fields) {
    assert.ok(label?.length > 3, path);
    assert.match(how, /Allowed -?[\d.]+ to -?[\d.]+/, path);
  }
  assert.equal(new Set(fields.map(({ path }) => path)).size, fields.length, 'a number stands twice');
});

test('numbers, verdict and check code in the text are those of the drawing, on every step', async (t) => {
  const app = await openApp(t, PHONE);
  const compare = async () => {
    const state = await checked(app);
    await app.told();
    const drawn = state.widgets.filter(({ id }) => id.startsWith('slide ')).map(({ id, value }) => [id.slice('slide '.length), value]);
    for (const [path, value] of drawn) assert.equal(await app.page.locator(`[data-path="${path}"]`).inputValue(), value, path);
    assert.equal(await text(app).locator('.verdict').textContent(), state.verdict);
    assert.ok((await text(app).locator('.reason').textContent()).includes(state.check_code));
    return drawn.length;
  };
  let compared = 0;
  for (const step of ['Edge', 'Frame', 'Rope', 'Guys', 'Feet', 'Margins']) {
    await choose(app, `step ${step}`);
    compared += await compare();
  }
  assert.ok(compared >= 8, `${compared} numbers compared`);
});

test('a number typed in the text changes the plan as the slider does, is undone by the same key, and is out of range with words', async (t) => {
  const app = await openApp(t, PHONE);
  const before = await checked(app);
  await openText(app);
  const input = field(app, 'Edge angle, degrees');
  await input.fill('77');
  await input.press('Tab');
  const changed = await checked(app);
  assert.notEqual(changed.check_code, before.check_code);
  await input.fill('999');
  await input.press('Tab');
  assert.equal(await app.page.locator('#alarm').textContent(), '999 is not possible here; allowed 5 to 120°');
  assert.equal(await input.inputValue(), '77');
  assert.equal((await checked(app)).check_code, changed.check_code);
  await text(app).getByRole('button', { name: 'Undo' }).click();
  await app.told();
  assert.equal((await checked(app)).check_code, before.check_code);
  assert.equal(await input.inputValue(), '85');
});

test('a minus is the minus of the slider, a comma is a point, and nothing or a word is refused', async (t) => {
  const app = await openApp(t, PHONE);
  await openText(app);
  const input = app.page.locator('[data-path="frame.foot_m[0][0]"]');
  await input.fill('-0,5');
  await input.press('Tab');
  await app.told();
  await text(app).locator('.back').click();
  await choose(app, 'step Frame');
  assert.equal((await app.widget('slide frame.foot_m[0][0]')).value, '-0.50');
  await openText(app);
  for (const typed of ['', 'two']) {
    await input.fill(typed);
    await input.press('Tab');
    assert.match(await app.page.locator('#alarm').textContent(), /Type a number first/);
    assert.equal(await input.inputValue(), '-0.50');
  }
});

test('guys come and go by the keys of the text, and the focus stays where it was', async (t) => {
  const app = await openApp(t, PHONE);
  await openText(app);
  const count = () => text(app).locator('[data-path^="guys["][data-path$="strength_kN"]').count();
  const before = await count();
  const add = text(app).getByRole('button', { name: 'Add a guy' });
  await add.focus();
  await app.page.keyboard.press('Enter');
  await app.told();
  assert.equal(await count(), before + 2); // its anchor's and its own
  assert.equal(await app.page.evaluate(() => document.activeElement.dataset.id), 'add guy');
  assert.equal((await app.state()).verdict, 'NOT CHECKED');
  const right = text(app).getByRole('button', { name: /^The value shown is right/ });
  const missing = (await app.state()).not_measured.length;
  assert.equal(await right.count(), missing);
  await right.first().click();
  await app.told();
  assert.equal((await app.state()).not_measured.length, missing - 1);
});

test('a new verdict is spoken: the line for it is a live region that changes', async (t) => {
  const app = await openApp(t, PHONE);
  await checked(app);
  await openText(app);
  const line = app.page.locator('#verdict');
  assert.equal(await line.getAttribute('role'), 'status');
  const input = app.page.locator('[data-path="guys[0].bearing_deg"]');
  await input.fill('90');
  await input.press('Tab');
  await app.page.waitForFunction(() => document.getElementById('verdict').textContent.startsWith('NO-GO. '));
});

test('the whole of the text is reached by the Tab key, and Escape and F6 lead back and forth', async (t) => {
  const app = await openApp(t, DESKTOP);
  await app.page.locator('#canvas').focus();
  await app.page.keyboard.press('F6');
  assert.equal(await app.page.evaluate(() => document.activeElement.id), 'text-verdict');
  await app.told();
  const all = await text(app).locator('button, input').count();
  const reached = new Set();
  for (let i = 0; i < all; ++i) {
    await app.page.keyboard.press('Tab');
    reached.add(await app.page.evaluate(() => {
      const { dataset, className } = document.activeElement;
      const box = document.activeElement.getBoundingClientRect();
      if (box.width < 20 || box.height < 20) return 'unseen';
      return dataset.id ?? dataset.path ?? className;
    }));
  }
  assert.ok(!reached.has('unseen'), 'the focus cannot be seen');
  assert.equal(reached.size, all);
  await app.page.keyboard.press('Escape');
  assert.equal(await app.page.evaluate(() => document.activeElement.id), 'canvas');
  assert.ok(!(await text(app).evaluate((node) => node.classList.contains('open'))));
});

test('the keyboard finds the text before the drawing, too', async (t) => {
  const app = await openApp(t, DESKTOP);
  await app.page.keyboard.press('Tab');
  assert.equal(await app.page.evaluate(() => document.activeElement.id), 'to-text');
  await app.page.keyboard.press('Enter');
  assert.equal(await app.page.evaluate(() => document.activeElement.id), 'text-verdict');
});

test('while the app is locked the text changes nothing either, and opens the lock in two steps', async (t) => {
  const app = await openApp(t, PHONE);
  const before = await checked(app);
  await choose(app, 'lock');
  await app.told();
  await app.page.evaluate(() => document.querySelector('#text .back').focus()); // as a screen reader comes to it
  const input = app.page.locator('[data-path="edge.face_deg"]');
  assert.equal(await input.evaluate((node) => node.readOnly), true);
  for (const id of ['add guy', 'new', 'undo', 'lock 2']) await app.page.evaluate((key) => document.querySelector(`#text [data-id="${key}"]`).click(), id);
  await app.told();
  assert.equal((await app.state()).screen, 'Locked');
  assert.equal((await checked(app)).check_code, before.check_code);
  await text(app).getByRole('button', { name: 'Open the lock, first key' }).click();
  await app.told();
  await text(app).getByRole('button', { name: 'Open the lock, second key' }).click();
  await app.told();
  assert.equal((await app.state()).screen, 'Edge');
  assert.equal(await input.evaluate((node) => node.readOnly), false);
});

test('the colours of the text are those of the theme', async (t) => {
  const app = await openApp(t, PHONE);
  const ground = () => app.page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  assert.equal(await ground(), 'rgb(255, 255, 255)');
  await choose(app, 'theme');
  await app.tap('theme');
  await app.told();
  assert.equal(await ground(), 'rgb(0, 0, 0)');
});

test('the page about the app has the licence of every part, the versions and the state of the copy, without a network', async (t) => {
  const app = await openApp(t, PHONE);
  await app.copyReady();
  await app.context.setOffline(true);
  await app.site.stop();
  await app.page.reload();
  await app.ready();
  await choose(app, 'about');
  const about = app.page.locator('#about');
  await about.getByRole('heading', { name: 'What it is made of' }).waitFor();
  const words = await about.textContent();
  for (const part of ['Dear ImGui', 'stb_truetype', 'SDL', 'JSON for Modern C++', 'GLM', 'B612', 'musl', 'LLVM', 'ProggyClean', 'fdlibm', 'QR codes']) assert.ok(words.includes(part), part);
  for (const licence of [/Permission is hereby granted, free of charge/, /This software is provided 'as-is'/, /SIL OPEN FONT LICENSE|Eclipse Public License/i, /Apache License/]) assert.match(words, licence);
  assert.match(words, /App \d+\.\d+\.\d+, build [0-9a-f]{12}/);
  assert.match(words, /Engine \d+\.\d+\.\d+, build [0-9a-f]{12}/);
  assert.match(words, /Offline copy app-[0-9a-f]{12}: (\d+) of \1 files whole/);
  assert.match(words, /no authority has approved it/);
  for (const part of await about.locator('details pre').allTextContents()) assert.ok(part.length > 200, part);
  await about.getByRole('button', { name: 'Back to the plan' }).tap();
  assert.equal(await about.isVisible(), false);
});

test('a service worker that never answers hides neither versions nor licences', async (t) => {
  const app = await openApp(t, PHONE);
  await app.page.evaluate(() => { navigator.serviceWorker.getRegistration = async () => ({ active: { postMessage() {} } }); });
  await choose(app, 'about');
  const about = app.page.locator('#about');
  await about.getByRole('heading', { name: 'What it is made of' }).waitFor();
  const words = await about.textContent();
  assert.match(words, /Whether the offline copy is whole is not known/);
  assert.doesNotMatch(words, /No offline copy/);
  assert.match(words, /App \d+\.\d+\.\d+, build/);
});
