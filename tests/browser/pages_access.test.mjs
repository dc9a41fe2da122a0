// The pages over the drawing for everybody: by keyboard alone, for screen readers, in large text, in colours of the system's own,
// and with nothing that moves by itself.

import assert from 'node:assert/strict';
import { mkdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { test } from 'node:test';

import { wordsOf } from '../../web/words.js';
import { SCREENS, onlyInChromium, openApp } from './harness.mjs';
import { asRead, asked, checked, choose, coarse, has, isTouched, severalCodes, shownAt } from './steps.mjs';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const PHONE = coarse(SCREENS.phone);
const EN = wordsOf('en');
const OLD_LOG = readFileSync(new URL('../logs/signed_by_version_1.json', import.meta.url), 'utf8');
const USUAL_PX = 16;
const LARGE = severalCodes();

const pageKey = (app, id) => app.page.locator(`#page button[data-id="${id}"]`);

/** Pictures for people to look at: LOOK=folder. */
async function look(app, name) {
  if (!process.env.LOOK) return;
  mkdirSync(process.env.LOOK, { recursive: true });
  await app.page.screenshot({ path: join(process.env.LOOK, `${name.replace(/\W+/g, '-')}.png`) });
}

// --- what holds for every page ---

async function assertNoComplaintOfAxe(app, where) {
  const { violations } = await app.page.evaluate(() => window.axe.run(document, { resultTypes: ['violations'] }));
  assert.deepEqual(violations.map(({ id, impact, nodes }) => `${impact}: ${id} at ${nodes.map(({ target }) => target.join(' ')).join(', ')}`), [], where);
}

/** With text twice as large nothing leaves the screen at the side, no key is lower than a glove needs, and no words of one are cut. */
async function assertFitsInLargeText(app, root, where) {
  await app.setLetters(2 * USUAL_PX);
  await look(app, `${where} large`);
  const faults = await app.page.locator(root).evaluate((page) => {
    const found = page.scrollWidth > page.clientWidth + 1 ? [`${page.scrollWidth} px wide in ${page.clientWidth}`] : [];
    for (const node of page.querySelectorAll('button, input, a, summary, h1, h2, h3, p, li, td, th, label')) {
      const { left, right, width, height } = node.getBoundingClientRect();
      const name = `${node.localName} "${node.textContent.slice(0, 30)}"`;
      if (width < 2 || node.type === 'file' || node.closest('.wide')) continue; // a wide table is moved within its own frame
      if (left < -1 || right > innerWidth + 1) found.push(`${name} leaves the screen: ${left} to ${right}`);
      if (node.localName === 'button' && height < 71.9) found.push(`${name} is ${height} px high`);
      if (node.localName === 'button' && node.scrollWidth > node.clientWidth + 1) found.push(`${name} is cut`);
    }
    return found;
  });
  await app.setLetters(USUAL_PX);
  assert.deepEqual(faults, [], where);
}

/** In the system's own colours every key and field has an edge, and what is chosen is told by more than its ground. */
async function assertTellsWithoutColours(app, root, where) {
  await app.page.emulateMedia({ forcedColors: 'active' });
  await look(app, `${where} forced colours`);
  const faults = await app.page.locator(root).evaluate((page) => [...page.querySelectorAll('button, input:not([type="file"])')].flatMap((node) => {
    const style = getComputedStyle(node), mark = getComputedStyle(node, '::before').content;
    const name = `${node.localName} "${node.textContent.slice(0, 30)}"`;
    const bare = parseFloat(style.borderTopWidth) < 1 || style.borderTopColor === style.backgroundColor ? [`${name} has no edge`] : [];
    const silent = node.getAttribute('aria-checked') === 'true' && !mark.includes('\u2713') ? [`${name} does not tell that it is ticked`] : [];
    return [...bare, ...silent];
  }));
  await app.page.emulateMedia({ forcedColors: 'none' });
  assert.deepEqual(faults, [], where);
}

/** The Tab key comes to every key and field of the page, each time seen. */
async function assertTabReaches(app, root, where) {
  const wanted = await app.page.locator(`${root} :is(button, input:not([type="file"]), a[href], summary, pre):visible`).count();
  await app.page.locator(`${root} h1`).first().focus();
  const reached = new Set();
  for (let i = 0; i < wanted + 3; ++i) {
    await app.page.keyboard.press('Tab');
    reached.add(await app.page.evaluate((selector) => {
      const { activeElement: node } = document;
      if (!document.querySelector(selector).contains(node)) return 'outside';
      const { outlineStyle, outlineWidth } = getComputedStyle(node);
      const { top, bottom, height } = node.getBoundingClientRect();
      const isSeen = outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2 && height > 0 && bottom > 0 && top < innerHeight;
      return isSeen ? (node.dataset.id ?? (node.id || node.dataset.path || node.textContent)) : `unseen: ${node.outerHTML.slice(0, 80)}`;
    }, root));
  }
  assert.deepEqual([...reached].filter((each) => each.startsWith('unseen')), [], where);
  reached.delete('outside');
  assert.ok(reached.size >= wanted, `${where}: Tab reaches ${reached.size} of ${wanted}: ${[...reached].join(', ')}`);
}

async function assertForEverybody(app, where, root = '#page') {
  await look(app, where);
  await assertNoComplaintOfAxe(app, where);
  await assertFitsInLargeText(app, root, where);
  await assertTellsWithoutColours(app, root, where);
  await assertTabReaches(app, root, where);
}

/** The page lets no script in but its own; axe comes in by the debugger, which asks nobody. */
async function openForAll(t) {
  const app = await openApp(t, PHONE);
  await app.page.evaluate(AXE);
  await checked(app);
  await app.page.waitForFunction(() => document.getElementById('offline').hidden);
  return app;
}

test('code, reading, sheet, log and about: for screen readers, by keyboard, in large text and in colours of the system', onlyInChromium('the size of letters'), async (t) => {
  const app = await openForAll(t);
  const pages = { share: '.qr', 'read code': 'button[data-id="camera"]', sheet: 'button[data-id="print"]', log: 'button[data-id="import log"]' };
  for (const [id, sign] of Object.entries(pages)) {
    await choose(app, id);
    await app.page.locator(`#page ${sign}`).waitFor();
    await assertForEverybody(app, id);
    await app.page.keyboard.press('Escape');
    assert.equal(await app.page.locator('#page').isVisible(), false);
  }
  await choose(app, 'about');
  await app.page.locator('#about details').first().waitFor();
  await assertForEverybody(app, 'about', '#about');
});

/** Tab until the focus is on `selector`. */
async function tabTo(app, selector) {
  for (let i = 0; i < 60; ++i) {
    if (await app.page.evaluate((wanted) => document.activeElement.matches(wanted), selector)) return;
    await app.page.keyboard.press('Tab');
  }
  assert.fail(`Tab never comes to ${selector}`);
}

const toTop = (app) => app.page.locator('#page h2').first().focus();

async function pressByKeyboard(app, id) {
  await tabTo(app, `button[data-id="${id}"]`);
  await app.page.keyboard.press('Enter');
}

/** From the first field to the comparison: the last Enter leads to the key. */
async function measureByKeyboard(app) {
  const { measurements, text } = await asked(app);
  await toTop(app);
  await tabTo(app, 'input');
  for (const { path } of measurements) {
    await app.page.keyboard.type(asRead(shownAt(JSON.parse(text), path), path));
    await app.page.keyboard.press('Enter');
  }
  await app.page.keyboard.press('Enter');
  await pageKey(app, 'go on').waitFor();
}

async function tickByKeyboard(app) {
  const ticks = await app.page.locator('#page [role="checkbox"]').count();
  for (let i = 0; i < ticks; ++i) {
    await tabTo(app, '[role="checkbox"][aria-checked="false"]');
    await app.page.keyboard.press('Space');
  }
}

async function signByKeyboard(app) {
  await toTop(app);
  for (const [part, name] of [['rigger', 'Mara'], ['second', 'Jon']]) {
    await tabTo(app, `#${part}-name`);
    await app.page.keyboard.type(name);
    await pressByKeyboard(app, `sign as ${part}`);
  }
  await app.page.getByText(EN.signedTitle).waitFor();
}

test('the second check by keyboard alone, from the first number to the log, with every page of it for everybody', onlyInChromium('the size of letters'), async (t) => {
  const app = await openForAll(t);
  await choose(app, 'second');
  await pageKey(app, 'compare').waitFor();
  await assertForEverybody(app, 'second check, blind');
  await measureByKeyboard(app);
  await assertForEverybody(app, 'second check, compared');
  await toTop(app);
  await pressByKeyboard(app, 'go on');
  await app.page.locator('#page [role="checkbox"]').first().waitFor();
  await tickByKeyboard(app);
  await assertForEverybody(app, 'second check, list');
  await signByKeyboard(app);
  await assertForEverybody(app, 'second check, signed');
  await toTop(app);
  await pressByKeyboard(app, 'open log');
  await app.page.locator('#log-file').setInputFiles({ name: 'log.json', mimeType: 'application/json', buffer: Buffer.from(OLD_LOG.replace(/"check_code": *"[^"]{6}"/, '"check_code": "AAAAAA"')) });
  await app.page.getByText(EN.stateDamaged).waitFor();
  await assertForEverybody(app, 'log with entries');
  await app.page.locator('#page .entries button').first().click();
  await assertForEverybody(app, 'entry of the log');
});

// --- the drawing ---

/** Ids that the Tab key comes to on the drawn screen, as often as it takes to come round. */
const tabRound = (app, most) => app.page.evaluate(async (count) => {
  const canvas = document.getElementById('canvas');
  const reached = [];
  for (let i = 0; i < count; ++i) {
    for (const type of ['keydown', 'keyup']) canvas.dispatchEvent(new KeyboardEvent(type, { key: 'Tab', code: 'Tab', keyCode: 9, bubbles: true, cancelable: true }));
    for (let waited = 0; waited < 40; ++waited) {
      await new Promise((drawn) => { setTimeout(drawn, 10); });
      const { focus } = window.guywright.state();
      if (focus && focus !== reached.at(-1)) {
        reached.push(focus);
        break;
      }
    }
    if (reached.length > 2 && reached.at(-1) === reached[0]) break;
  }
  return reached;
}, most);

test('the Tab key comes to everything that can be touched, on every step and where advice is asked for', async (t) => {
  const app = await openApp(t, PHONE);
  await checked(app);
  const seen = new Set();
  const assertReached = async () => {
    await app.page.locator('#canvas').focus();
    const { widgets, screen } = await app.state();
    const reached = await tabRound(app, 60);
    for (const { id } of widgets.filter((each) => isTouched(each) && each.value !== 'off')) assert.ok(reached.includes(id), `${screen}: Tab never comes to ${id}, but to ${reached.join(', ')}`);
    seen.add(screen);
  };
  for (const step of ['Frame', 'Rope', 'Guys', 'Feet', 'Margins', 'Card']) {
    await choose(app, `step ${step}`);
    await assertReached();
  }
  await choose(app, 'advice');
  for (let pages = 0; pages < 3; ++pages) {
    const question = (await app.state()).widgets.find(({ id }) => id.startsWith('ask '));
    if (question) await app.tap(question.id);
    await assertReached();
    if (!has(await app.state(), 'next')) break;
    await app.tap('next');
  }
  assert.ok(seen.size >= 7, [...seen].join(', '));
});

// --- motion ---

test('where somebody wants stillness nothing moves by itself: codes turn only when asked to', onlyInChromium('what the system is set to'), async (t) => {
  const app = await openApp(t, PHONE);
  await app.page.emulateMedia({ reducedMotion: 'reduce' });
  const [chooser] = await Promise.all([app.page.waitForEvent('filechooser'), choose(app, 'open')]);
  await chooser.setFiles({ name: 'plan.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(LARGE)) });
  await app.until(({ title }) => title === LARGE.title, 'the plan of the file');
  await choose(app, 'share');
  const turning = pageKey(app, 'turn codes');
  await turning.waitFor();
  assert.equal(await turning.innerText(), EN.turn);
  const place = () => app.page.locator('#page .place').innerText();
  const first = await place();
  await app.page.waitForTimeout(3000);
  assert.equal(await place(), first);
  await turning.click();
  await app.page.waitForFunction((was) => document.querySelector('#page .place').innerText !== was, first);
  const moving = await app.page.evaluate(() => document.getAnimations().length + [...document.querySelectorAll('*')].filter((node) => {
    const { transitionDuration, animationName } = getComputedStyle(node);
    return transitionDuration !== '0s' || animationName !== 'none';
  }).length);
  assert.equal(moving, 0);
});
