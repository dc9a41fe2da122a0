// The app in WebKit, once through and by its own driver, since no library drives Debian's WebKitGTK:
//   xvfb-run -a node tests/browser/webkit_smoke.mjs FOLDER       (packages webkit2gtk-driver, xvfb, xauth; pictures go to FOLDER)
// No part of tests/run.sh. Ends with "N passed, N failed".

import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

import { PATIENCE_MS, startSite } from './harness.mjs';

const LIBRARIES = '/usr/lib/x86_64-linux-gnu';
const BROWSER = process.env.MINIBROWSER ?? join(LIBRARIES, readdirSync(LIBRARIES).find((name) => /^webkit2gtk-4/.test(name)), 'MiniBrowser');
const [out] = process.argv.slice(2);
assert.ok(out, 'which folder are the pictures to go to?');
mkdirSync(out, { recursive: true });

const pause = (ms) => new Promise((over) => { setTimeout(over, ms); });

async function until(look, what) {
  let seen;
  for (const start = Date.now(); Date.now() - start < PATIENCE_MS; await pause(100)) {
    seen = await look().catch(String); // a page on its way answers nothing
    if (seen && typeof seen !== 'string') return seen;
  }
  return assert.fail(`never came: ${what}; last: ${seen}`);
}

/** A session of the driver: plain requests. */
class Driver {
  #base = 'http://127.0.0.1:8790';

  async ask(path, body, method = 'POST') {
    const answer = await fetch(this.#base + path, { method, ...(body && { body: JSON.stringify(body) }) });
    const { value } = await answer.json();
    if (!answer.ok) throw new Error(`${path}: ${value.error}: ${value.message}`);
    return value;
  }

  async start() {
    this.process = spawn('WebKitWebDriver', ['--port=8790'], { stdio: 'ignore' });
    const capabilities = { alwaysMatch: { 'webkitgtk:browserOptions': { binary: BROWSER, args: ['--automation', '--geometry=420x880'] } } };
    const { sessionId } = await until(() => this.ask('/session', { capabilities }), 'the browser');
    this.#base += `/session/${sessionId}`;
  }

  go(url) {
    return this.ask('/url', { url });
  }

  /** Runs `act(...args)` in the page; it may resolve later. */
  run(act, ...args) {
    const script = `const done = arguments[arguments.length - 1]; Promise.resolve((${act})(...Array.from(arguments).slice(0, -1))).then(done, (error) => done(String(error)));`;
    return this.ask('/execute/async', { script, args });
  }

  /** A finger comes down on the first point and goes up on the last. */
  async press(points) {
    const moves = points.map(({ x, y }) => ({ type: 'pointerMove', duration: 30, x: Math.round(x), y: Math.round(y) }));
    const actions = [moves[0], { type: 'pointerDown', button: 0 }, { type: 'pause', duration: 30 }, ...moves.slice(1), { type: 'pointerUp', button: 0 }];
    const drawn = await this.run(() => window.guywright.framesDrawn());
    await this.ask('/actions', { actions: [{ type: 'pointer', id: 'hand', parameters: { pointerType: 'mouse' }, actions }] });
    await until(() => this.run((before) => window.guywright.framesDrawn() > before && window.guywright.isIdle() && window.guywright.isTold(), drawn), 'rest');
  }

  async picture(name) {
    writeFileSync(join(out, `${name}.png`), Buffer.from(await this.ask('/screenshot', undefined, 'GET'), 'base64'));
  }
}

const endings = [];
const site = await startSite({ after: (end) => endings.push(end) });
const driver = new Driver();
const state = () => driver.run(() => window.guywright?.state());
const widget = async (id) => (await state()).widgets.find((each) => each.id === id);
const pointOn = ({ rect }, share = 0.5) => ({ x: rect.x + rect.width * share, y: rect.y + rect.height / 2 });
const tap = async (id) => driver.press([pointOn(await widget(id))]);
const plan = () => driver.run(() => window.guywright.saved().then(() => window.guywright.plan()));

async function choose(id) {
  await tap('menu');
  for (let page = 0; page < 8 && !(await widget(id)); ++page) await tap('more menu');
  await tap(id);
}

const opened = () => until(async () => (await driver.run(() => window.guywright?.framesDrawn() > 0)) === true, 'the app');

const PARTS = {
  'the app opens with a verdict': async () => {
    await driver.go(site.address);
    await opened();
    const { verdict } = await until(async () => { const now = await state(); return now.checking ? '' : now; }, 'the end of the check');
    assert.equal(verdict, 'GO');
  },
  'an example comes to its verdict': async () => {
    await choose('example dam-crest');
    const now = await until(async () => { const each = await state(); return each.checking ? '' : each; }, 'the end of the check');
    assert.equal(now.verdict, 'GO');
    assert.match(now.check_code, /^[2-9A-HJ-NP-Z]{6}$/);
  },
  'a slider moves': async () => {
    const before = await widget('slide edge.face_deg');
    await driver.press([pointOn(before), pointOn(before, 0.6), pointOn(before, 0.7)]);
    assert.notEqual((await widget('slide edge.face_deg')).value, before.value);
  },
  'the plan is kept over a reload': async () => {
    const before = await plan();
    await driver.ask('/refresh', {});
    await opened();
    assert.equal(await plan(), before);
  },
  'the language changes': async () => {
    await choose('language');
    assert.equal((await state()).language, 'fr');
    assert.equal(await driver.run(() => document.documentElement.lang), 'fr');
  },
  'the text has verdict and fields': async () => {
    const [fields, words] = await driver.run(() => [document.querySelectorAll('#text input').length, document.querySelector('#text .verdict').textContent]);
    assert.ok(fields > 20 && words.length > 1, `${fields} fields, ${words}`);
  },
  'the offline copy is whole': async () => {
    const copy = await until(() => driver.run(() => ('serviceWorker' in navigator ? window.guywright.checkCopy() : { none: true })), 'the copy');
    if (copy.none) return 'this WebKit has no service workers';
    assert.equal(copy.whole, copy.files);
    return undefined;
  },
};

let passed = 0, failed = 0;
try {
  await driver.start();
  for (const [name, part] of Object.entries(PARTS)) {
    const outcome = await part().then((left) => left ?? 'passed', (error) => `FAILED: ${error.message}`);
    if (outcome === 'passed') ++passed;
    else ++failed;
    await driver.picture(name.replaceAll(' ', '-')).catch(() => {});
    console.log(`${name}: ${outcome}`);
  }
} finally {
  await driver.ask('', undefined, 'DELETE').catch(() => {});
  driver.process.kill();
  for (const end of endings) await end();
}
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);
