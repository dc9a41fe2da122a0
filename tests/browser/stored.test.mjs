// What an earlier version has kept or written opens in this one, to the last digit: the browser's store, plan files, the log.
// The files in tests/stores, tests/plans and tests/logs are never written anew: a version that keeps otherwise adds its own.

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';

import { AppPage, SCREENS, freshContext, openApp, startSite } from './harness.mjs';
import { checked, choose, coarse, inTable, savedPlan, showPlans } from './steps.mjs';

const PHONE = coarse(SCREENS.phone);
const read = (path) => readFileSync(new URL(`../${path}`, import.meta.url), 'utf8');
const STORE = JSON.parse(read('stores/kept_by_version_1.json'));

/** Fills the databases of the app before it has ever run here. */
async function putStore(context, address) {
  const page = await context.newPage();
  await page.goto(`${address}about.json`);
  await page.evaluate(async (store) => {
    for (const [name, tables] of Object.entries(store)) {
      const request = indexedDB.open(`guywright ${name}`, 1);
      request.onupgradeneeded = () => {
        for (const [table, pairs] of Object.entries(tables)) {
          const made = request.result.createObjectStore(table);
          for (const [key, value] of pairs) made.put(value, key);
        }
      };
      await new Promise((done) => { request.onsuccess = done; });
      request.result.close();
    }
  }, STORE);
  await page.close();
}

async function assertSecondCheckAndLog(app) {
  await choose(app, 'second');
  await app.page.locator('#page input[data-path="edge.face_deg"]').waitFor();
  const [[, draft]] = STORE.log.drafts;
  assert.equal(await app.page.locator('#page input[data-path="edge.face_deg"]').inputValue(), draft.typed['edge.face_deg']);
  await app.page.keyboard.press('Escape');
  await choose(app, 'log');
  const [[, { entry }]] = STORE.log.entries;
  await app.page.locator('#page .entries button').getByText(entry.check_code).waitFor();
  assert.equal(await app.page.locator('#page .entries button').count(), STORE.log.entries.length);
  await app.page.keyboard.press('Escape');
}

/** Undo leads back to the first step, redo on to the last. */
async function assertStepsLead(app, steps, at) {
  await choose(app, 'step Edge');
  for (let i = at - 1; i >= 0; --i) {
    await app.tap('undo');
    assert.equal(await savedPlan(app), steps[i], `back to step ${i}`);
  }
  for (let i = 1; i < steps.length; ++i) {
    await choose(app, 'redo');
    assert.equal(await savedPlan(app), steps[i], `on to step ${i}`);
    await app.tap('close menu');
  }
}

test('a store of version 1: plan in hand, its steps back and forth, the list, what was deleted, the language, a second check under way, the log', async (t) => {
  const site = await startSite(t);
  const context = await freshContext(t, PHONE);
  await putStore(context, site.address);
  const app = await AppPage.open(context, site.address);
  const kept = new Map(STORE.plans.plans);
  const id = new Map(STORE.plans.settings).get('current');
  const steps = STORE.plans.steps.filter(([[of]]) => of === id).map(([, text]) => text);
  const at = kept.get(id).number - kept.get(id).first;
  assert.ok(steps.length > 3 && at > 0 && at < steps.length - 1);
  assert.equal(await savedPlan(app), steps[at]);
  await app.page.waitForFunction(() => document.documentElement.lang === 'fr');
  const { verdict } = await checked(app);
  assert.equal(verdict, 'GO');

  await assertSecondCheckAndLog(app);
  await assertStepsLead(app, steps, at);
  const notDeleted = [...kept.values()].filter(({ deleted }) => !deleted);
  assert.equal((await showPlans(app)).length, notDeleted.length);
  await app.tap('bring back');
  await savedPlan(app);
  const now = await inTable(app, 'plans', 'plans');
  assert.equal(now.filter(([, { deleted }]) => !deleted).length, kept.size);
  for (const [key, { text }] of now) if (key !== id) assert.equal(text, kept.get(key).text);
});

test('plan files of version 1 open as what they were', async (t) => {
  const app = await openApp(t, PHONE);
  for (const path of ['plans/shared_by_version_1.json', 'plans/three_guys.json']) {
    const plan = JSON.parse(read(path));
    const [chooser] = await Promise.all([app.page.waitForEvent('filechooser'), choose(app, 'open')]);
    await chooser.setFiles({ name: 'plan.json', mimeType: 'application/json', buffer: Buffer.from(read(path)) });
    await app.until(({ title }) => title === plan.title, path);
    const opened = JSON.parse(await savedPlan(app));
    const isHeld = (was, is, where) => {
      if (typeof was !== 'object' || was === null) return assert.equal(is, was, where);
      return Object.entries(was).forEach(([key, value]) => isHeld(value, is?.[key], `${where}.${key}`));
    };
    isHeld(plan, opened, path);
  }
});
