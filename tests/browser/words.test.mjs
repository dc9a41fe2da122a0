// Languages and units: the same plan has the same verdict and check code in each, everything fits, and the choice is kept.

import assert from 'node:assert/strict';
import { test } from 'node:test';

import { AppPage, SCREENS, freshContext, launch, openApp, startSite, temporaryFolder } from './harness.mjs';
import { usualFor } from '../../web/settings.js';
import { SIZES, assertUsable, checked, choose, chooseHere, coarse, has, walkThrough } from './steps.mjs';

const PHONE = coarse(SCREENS.phone);

const plan = (app) => app.page.evaluate(() => window.guywright.plan());

/** A fresh browser that speaks `locale`. */
async function openIn(t, locale, screen = PHONE) {
  const site = await startSite(t);
  return AppPage.open(await freshContext(t, screen, { locale }), site.address);
}

async function assertViewsFit(app, screen) {
  await app.tapAt(await app.pointOn('scene', 0.5, 0.3));
  await app.settled();
  for (const view of ['free', 'above', 'side', 'behind', 'forces']) {
    await app.tap(`view ${view}`);
    assertUsable(await app.state(), screen, `view ${view}`);
  }
  await app.tap('smaller');
}

test('a plan has the same verdict and check code in French and in feet and pounds, and every page of it fits a phone', async (t) => {
  const app = await openApp(t, PHONE);
  await choose(app, 'example dam-crest');
  const english = await checked(app), text = await plan(app);
  await choose(app, 'language');
  assertUsable(await app.state(), PHONE, 'menu in French');
  await chooseHere(app, 'units');
  await app.tap('close menu');
  await choose(app, 'step Edge');
  const seen = [];
  await walkThrough(app, (state) => {
    assertUsable(state, PHONE, `French, imperial, ${state.screen}`);
    seen.push(...state.widgets.map(({ label, value }) => `${label} ${value}`));
  });
  const words = seen.join('\n');
  for (const expected of [/Longueur de jambe 9,84 ft/, /Prétension \d+ lbf/, /Charge 353 lb/, /\d+ % de marge/, /Poulie, corde main \d+ lbf/, /Un hauban|La corde|La tête/]) assert.match(words, expected);
  assert.doesNotMatch(words, /\d\.\d|\bkN\b|\bkg\b|\bGuy |\bLeg /);
  await choose(app, 'step Edge');
  await assertViewsFit(app, PHONE);
  const french = await checked(app);
  assert.deepEqual([french.verdict, french.check_code, french.language, french.units], [english.verdict, english.check_code, 'fr', 'imperial']);
  assert.equal(await plan(app), text);
  assert.deepEqual(app.complaints, []);
});

test('sliders and keypad in feet: there and back changes nothing, what is typed is stored exactly', async (t) => {
  const app = await openIn(t, 'en-US');
  const before = await checked(app), text = await plan(app);
  assert.equal(before.units, 'imperial');
  await choose(app, 'step Frame');
  while (!has(await app.state(), 'slide frame.leg_length_m[0]')) await app.tap('next');
  const slider = await app.pointOn('slide frame.leg_length_m[0]', 0.5, 0.4);
  await app.touch('touchStart', [slider]);
  for (const x of [20, 60, 110, 60, 20, 3, 0]) {
    await app.touch('touchMove', [{ x: slider.x + x, y: slider.y }]);
    await app.drawn();
    if (x === 110) assert.notEqual(await plan(app), text);
  }
  await app.touch('touchEnd', []);
  await app.settled();
  assert.equal(await plan(app), text);
  await app.tap('value frame.leg_length_m[0]');
  for (const key of '99.9') await app.tap(`key ${key}`);
  await app.tap('key take');
  assert.equal((await app.widget('keypad')).label, '99.9 is not possible here; allowed 0.99 to 49.21 ft');
  for (const key of '<<<<13.94') await app.tap(`key ${key}`);
  await app.tap('key take');
  assert.equal(JSON.parse(await plan(app)).frame.leg_length_m[0], 4.248912);
  await app.tap('more frame.leg_length_m[0]');
  assert.equal((await app.widget('slide frame.leg_length_m[0]')).value, '14.00');
  await app.tap('more frame.leg_length_m[0]');
  await app.tap('less frame.leg_length_m[0]');
  assert.equal(JSON.parse(await plan(app)).frame.leg_length_m[0], 4.2672);
});

test('the keypad in French has a comma, and a keyboard may type either mark', async (t) => {
  const app = await openIn(t, 'fr-FR');
  await choose(app, 'step Frame');
  while (!has(await app.state(), 'value frame.leg_length_m[0]')) await app.tap('next');
  await app.tap('value frame.leg_length_m[0]');
  assert.equal((await app.widget('key .')).label, ',');
  for (const key of '2.5') await app.tap(`key ${key}`);
  assert.equal((await app.widget('keypad')).value, '2,5');
  await app.tap('key take');
  assert.equal(JSON.parse(await plan(app)).frame.leg_length_m[0], 2.5);
  await app.tap('value frame.leg_length_m[0]');
  await app.page.keyboard.type('2,75');
  await app.page.keyboard.press('Enter');
  await app.settled();
  assert.equal(JSON.parse(await plan(app)).frame.leg_length_m[0], 2.75);
  await app.tap('value frame.leg_length_m[0]');
  for (const key of '99') await app.tap(`key ${key}`);
  await app.tap('key take');
  assert.match((await app.widget('keypad')).label, /^99 n'est pas possible ici ; admis : 0,3 à 15 m$/);
});

for (const [name, what] of [['phone', 'new'], ['tabletAcross', 'example dam-crest']]) {
  test(`in French ${what} fits on a ${name} screen, with what few need`, async (t) => {
    const screen = coarse(SIZES[name]);
    const app = await openIn(t, 'fr-FR', screen);
    await choose(app, what);
    await checked(app);
    assert.equal((await app.widget('strip')).label, what === 'new' ? 'NON VÉRIFIÉ' : 'GO');
    await walkThrough(app, async (state) => {
      assertUsable(state, screen, `${what}, ${state.screen}`);
      if (!has(state, 'more')) return;
      await app.tap('more');
      assertUsable(await app.state(), screen, `more of ${state.screen}`);
    });
    await choose(app, 'step Edge');
    await assertViewsFit(app, screen);
  });
}

test('language, units and light are kept over a restart and are no part of the plan', async (t) => {
  const folder = temporaryFolder(t), site = await startSite(t);
  const first = await launch(t, folder, { screen: PHONE });
  const app = await AppPage.open(first, site.address);
  const text = await plan(app);
  await choose(app, 'theme'); // the first two stand beside it
  for (const id of ['language', 'units']) await chooseHere(app, id);
  assert.equal(await plan(app), text);
  await app.page.evaluate(() => window.guywright.saved());
  await first.close();
  const again = await AppPage.open(await launch(t, folder, { screen: PHONE }), site.address);
  const state = await again.until(({ language }) => language === 'fr', 'the language chosen');
  assert.equal(state.units, 'imperial');
  assert.equal(await again.page.evaluate(() => document.documentElement.lang), 'fr');
  await again.tap('menu');
  while (!has(await again.state(), 'theme')) await again.tap('more menu');
  assert.equal((await again.widget('theme')).label, 'Lumière : pénombre');
  await chooseEnglish(again);
});

test('a store that answers late counts all the same', async (t) => {
  const site = await startSite(t), context = await freshContext(t, PHONE);
  const first = await AppPage.open(context, site.address);
  await choose(first, 'language');
  await chooseHere(first, 'units');
  await first.page.evaluate(() => window.guywright.saved());
  await context.addInitScript(() => {
    Object.defineProperty(IDBTransaction.prototype, 'oncomplete', { set(act) { this.addEventListener('complete', (event) => setTimeout(() => act(event), 4000)); } });
  });
  const app = await AppPage.open(context, site.address);
  const { language, units } = await app.until((state) => state.language === 'fr', 'what was chosen');
  assert.deepEqual([language, units], ['fr', 'imperial']);
});

/** Back again, by the key that says its name in both languages. */
async function chooseEnglish(app) {
  while (!has(await app.state(), 'language')) await app.tap('more menu');
  assert.match((await app.widget('language')).label, /Langue.*Language/);
  await app.tap('language');
  assert.match((await app.widget('language')).label, /Language.*Langue/);
  assert.equal((await app.state()).language, 'en');
  assert.equal(await app.page.evaluate(() => document.documentElement.lang), 'en');
}

test('the first start speaks as the browser does, also where nothing can be kept', async (t) => {
  assert.deepEqual(['fr', 'fr-CA', 'en-US', 'en-GB', 'de-DE', ''].map((tag) => [usualFor(tag).language, usualFor(tag).units]),
    [['fr', 'metric'], ['fr', 'metric'], ['en', 'imperial'], ['en', 'metric'], ['en', 'metric'], ['en', 'metric']]);
  const site = await startSite(t), context = await freshContext(t, PHONE, { locale: 'fr-CA' });
  await context.addInitScript(() => {
    indexedDB.open = () => { throw new DOMException('denied', 'SecurityError'); };
  });
  const app = await AppPage.open(context, site.address);
  assert.equal((await app.state()).language, 'fr');
  await app.page.getByRole('alert').getByText(/Ce navigateur ne garde rien ici/).waitFor();
  await app.page.getByRole('button', { name: 'OK', exact: true }).tap();
  await choose(app, 'units');
  assert.equal((await app.state()).units, 'imperial'); // for as long as the app is open
});

test('the text view speaks French with the units chosen, takes a comma, and has the keys for language and units', async (t) => {
  const app = await openIn(t, 'fr-FR');
  const text = app.page.locator('#text');
  await choose(app, 'text');
  await text.getByRole('heading', { level: 2, name: 'Bord', exact: true }).waitFor();
  const length = text.getByLabel('Longueur de jambe, m', { exact: true });
  assert.match(await length.inputValue(), /^\d,\d\d$/);
  await length.fill('2,85');
  await length.blur();
  await app.settled();
  assert.equal(JSON.parse(await plan(app)).frame.leg_length_m[0], 2.85);
  await length.fill('deux');
  await length.blur();
  await app.page.getByText(/^Tapez d'abord un nombre/).waitFor({ state: 'attached' });
  await text.getByRole('button', { name: /^Unités/ }).click();
  await text.getByLabel('Longueur de jambe, ft', { exact: true }).waitFor();
  await text.getByRole('button', { name: /^Langue/ }).click();
  await text.getByLabel('Leg length, ft', { exact: true }).waitFor();
  await text.getByRole('button', { name: 'Back to the drawing' }).waitFor();
  assert.deepEqual(app.complaints, []);
});
