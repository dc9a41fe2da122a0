// A newer release: taken whole or not at all, on consent or at the next start, never in the middle of work, and told in words.

import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';

import { wordsOf } from '../../web/words.js';
import { AppPage, makeNewer, makeVersion, onlyInChromium, releaseOf, rewrite, spoil, takenOver, visitedOnce } from './harness.mjs';
import { choose, savedPlan } from './steps.mjs';

// An input of the first step, to see that the plan is there and the app at work.
const PLUS = 'more edge.face_deg';
const VALUE = 'value edge.face_deg';
const NEWER = '\n/* newer */\n';
const FR = wordsOf('fr');
const GATEWAY = '<!doctype html><title>Network log-in</title><p>Please log in to this network.';

const cachesOf = (app) => app.page.evaluate(async () => (await caches.keys()).filter((name) => name.startsWith('app-')));
const copyOf = (app) => app.page.evaluate(() => window.guywright.checkCopy());
const line = (app) => app.page.locator('#offline');
const shown = (name) => name.slice(4, 10);

/** Has the browser look for a newer release; resolves with whether one is there, whole. */
const updated = (app) => app.page.evaluate(async () => {
  const registration = await navigator.serviceWorker.getRegistration();
  await registration.update().catch(() => {});
  const worker = registration.installing;
  if (worker) await new Promise((done) => worker.addEventListener('statechange', () => ['installed', 'redundant'].includes(worker.state) && done()));
  return Boolean(registration.waiting);
});

/** Agrees to the newer release; resolves when the page has started anew with it. */
async function useNewer(app, name) {
  const restarted = app.page.waitForEvent('framenavigated');
  await app.page.getByRole('button', { name: 'Use it now' }).tap();
  await restarted;
  await app.ready();
  assert.equal((await app.copyReady()).release, name);
}

/** The release that was in use is, and whole; it starts and works. */
async function assertGoesOn(app, release, where = '') {
  const copy = await copyOf(app);
  assert.deepEqual([copy.release, copy.whole], [release, copy.files], where);
  assert.deepEqual(await cachesOf(app), [release], where);
}

async function assertStarts(app, release) {
  await app.page.reload();
  await app.ready();
  await assertGoesOn(app, release);
  const { value } = await app.widget(VALUE);
  await app.tap(PLUS);
  assert.notEqual((await app.widget(VALUE)).value, value);
}

const html = (status = 200, type = 'text/html; charset=utf-8') => (request, response) => response.writeHead(status, { 'Content-Type': type }).end(GATEWAY);

// --- what can go wrong on the way ---

const WAYS = {
  'cut off': (site, path) => site.cut.add(path),
  'a page of a gateway instead of it': (site, path) => site.answers.set(path, html()),
  'a wrong byte in it': (site, path, body) => {
    const spoilt = Buffer.from(body);
    spoilt[spoilt.length >> 1] ^= 1;
    site.answers.set(path, (request, response) => response.writeHead(200).end(spoilt));
  },
};

test('any one file of a newer release cut off, spoilt or replaced: nothing changes, and it goes through once the line holds', async (t) => {
  const { folder, site, app, release } = await visitedOnce(t);
  const newer = makeNewer(folder, 'style.css', NEWER);
  for (const { path } of releaseOf(folder).files) {
    const body = readFileSync(join(folder, path));
    for (const [way, spoilIt] of Object.entries(WAYS)) {
      spoilIt(site, `/${path}`, body);
      assert.equal(await updated(app), false, `${path}, ${way}`);
      assert.deepEqual(await cachesOf(app), [release], `${path}, ${way}`);
      site.cut.clear();
      site.answers.clear();
    }
  }
  await assertGoesOn(app, release);
  assert.equal(await updated(app), true);
  assert.deepEqual(await cachesOf(app), [release, newer]);
});

test('a newer release that does not arrive whole is told with its file, and the version that goes on, also on the page about the app', async (t) => {
  const { folder, app, release } = await visitedOnce(t);
  makeVersion(folder, '7.0.0');
  spoil(folder, 'icons/icon-180.png');
  assert.equal(await updated(app), false);
  const { version } = await copyOf(app);
  await line(app).getByText(`Version 7.0.0 of the app was not taken: its file icons/icon-180.png did not arrive whole. Version ${version} (${shown(release)}) goes on; nothing has changed.`).waitFor();
  await choose(app, 'about');
  await app.page.locator('#about').getByText('Version 7.0.0 of the app was not taken').waitFor();
});

test('a list of files that is cut off, written into, older or no list at all changes nothing', async (t) => {
  const { folder, site, app, release } = await visitedOnce(t);
  const inUse = readFileSync(join(folder, 'sw.js'), 'utf8');
  const newerName = makeNewer(folder, 'style.css', NEWER);
  const worker = readFileSync(join(folder, 'sw.js'), 'utf8');
  const { files } = releaseOf(folder);
  const broken = {
    'cut off': worker.slice(0, worker.length / 3),
    'a file left out': worker.replace(JSON.stringify(files.at(-1)), '').replace(',]', ']'),
    'no file at all': worker.replace(JSON.stringify(files), '[]'),
    'a hash of another file': worker.replace(files[0].sha256, files[1].sha256),
    'the name of the copy in use': worker.replace(newerName, release),
    'a name that fits everything': worker.replace(newerName, 'app-'),
    'a page of a gateway': GATEWAY,
  };
  for (const signs of [2, inUse.indexOf(';') + 2, inUse.length - 2]) broken[`cut off after ${signs}`] = inUse.slice(0, signs);
  for (const [what, text] of Object.entries(broken)) {
    assert.ok(text !== worker && text !== inUse, what);
    writeFileSync(join(folder, 'sw.js'), text);
    assert.equal(await updated(app), false, what);
    await assertGoesOn(app, release, what);
  }
  for (const answer of [html(), html(200, 'text/javascript'), html(404), html(503)]) {
    site.answers.set('/sw.js', answer);
    assert.equal(await updated(app), false);
    await assertGoesOn(app, release);
  }
  site.answers.clear();
  writeFileSync(join(folder, 'sw.js'), inUse);
  makeVersion(folder, '0.0.9');
  assert.equal(await updated(app), false);
  await line(app).getByText('Version 0.0.9 of the app was not taken: it is older than this one.').waitFor();
  await assertStarts(app, release);
});

test('a disk that is full at any point of an update: told in words, the release in use stays whole, and plans are still kept', onlyInChromium('how much storage there is'), async (t) => {
  const { folder, site, app, release } = await visitedOnce(t);
  const newer = makeNewer(folder, 'style.css', NEWER);
  const total = releaseOf(folder).files.reduce((sum, { bytes }) => sum + bytes, 0);
  const origin = new URL(site.address).origin;
  const { usage } = await app.devtools.send('Storage.getUsageAndQuota', { origin });
  for (const share of [0.05, 0.4, 0.9]) {
    await app.devtools.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: Math.round(usage + share * total) });
    assert.equal(await updated(app), false, `${share}`);
    await assertGoesOn(app, release, `${share}`);
  }
  await line(app).getByText('of the app was not taken: the storage of this browser is full.').waitFor();
  await app.tap(PLUS);
  const { value } = await app.widget(VALUE);
  await savedPlan(app);
  await app.page.reload();
  await app.ready();
  assert.equal((await app.widget(VALUE)).value, value);
  await app.devtools.send('Storage.overrideQuotaForOrigin', { origin });
  assert.equal(await updated(app), true);
  assert.deepEqual(await cachesOf(app), [release, newer]);
});

test('a host that lets everything be kept for a year does not mix an older file into a newer release', async (t) => {
  const { folder, site, app, context } = await visitedOnce(t, { headers: { 'Cache-Control': 'public, max-age=31536000, immutable' } });
  assert.ok(site.requests.includes('/style.css'));
  const newer = makeNewer(folder, 'style.css', NEWER);
  assert.equal(await updated(app), true);
  const second = await AppPage.open(context, site.address);
  await useNewer(second, newer);
  const style = await second.page.evaluate(async () => (await fetch('style.css')).text());
  assert.ok(style.endsWith(NEWER));
});

// --- consent ---

test('a newer release waits for consent, names both versions, keeps the plan, and keeps the release before it', async (t) => {
  const { folder, context, site, app, release } = await visitedOnce(t);
  await app.tap(PLUS);
  const { value } = await app.widget(VALUE);
  const { version } = await copyOf(app);
  const newer = makeVersion(folder, '7.1.0');
  assert.equal(await updated(app), true);
  assert.equal(await app.page.locator('#notice').isVisible(), false); // nothing is offered in the middle of work
  assert.equal((await copyOf(app)).release, release);

  const second = await AppPage.open(context, site.address);
  await app.page.close();
  await second.page.locator('#notice').getByText(`7.1.0 (${shown(newer)}). This is ${version} (${shown(release)}).`).waitFor();
  await useNewer(second, newer);
  assert.equal((await second.widget(VALUE)).value, value);
  assert.deepEqual(await cachesOf(second), [release, newer]);
  await line(second).getByText(`The app is now version 7.1.0 (${shown(newer)}).`).waitFor();
});

test('the offer is withdrawn with the first change of the plan, and the newer release is there at the next start', async (t) => {
  const { folder, context, site, app, release } = await visitedOnce(t);
  const newer = makeNewer(folder, 'style.css', NEWER);
  await choose(app, 'language');
  await updated(app);
  await app.page.reload();
  await app.ready();
  const notice = app.page.locator('#notice');
  await notice.getByRole('button', { name: FR.useNow }).waitFor();
  await app.tap('next');
  await app.tap('back');
  assert.ok(await notice.isVisible(), 'to look about is no work');
  await app.tap(PLUS);
  await notice.waitFor({ state: 'hidden' });
  const { value } = await app.widget(VALUE);
  await savedPlan(app);
  assert.equal((await copyOf(app)).release, release);
  await app.page.close();
  await takenOver(context);
  const second = await AppPage.open(context, site.address);
  assert.equal((await second.copyReady()).release, newer);
  assert.equal((await second.widget(VALUE)).value, value);
  await line(second).getByText(FR.nowVersion.split('{')[0]).waitFor();
});

test('nothing is offered where work begins before the newer release has told its version', async (t) => {
  const { folder, context, app } = await visitedOnce(t);
  makeNewer(folder, 'style.css', NEWER);
  assert.equal(await updated(app), true);
  await context.addInitScript(() => {
    const { postMessage } = ServiceWorker.prototype;
    ServiceWorker.prototype.postMessage = function later(message, ...rest) {
      const send = () => postMessage.call(this, message, ...rest);
      if (message.type === 'version') window.askVersion = send;
      else send();
    };
  });
  await app.page.reload();
  await app.ready();
  await app.tap(PLUS);
  await app.page.evaluate(() => window.askVersion());
  await app.page.evaluate(() => window.guywright.copyTold);
  assert.equal(await app.page.locator('#notice').isVisible(), false);
});

test('of two windows one agrees: the other keeps plan and release, its later parts among it, and takes the newer one when it is loaded again', async (t) => {
  const { folder, context, site, app, release } = await visitedOnce(t);
  const other = await AppPage.open(context, site.address);
  makeVersion(folder, '7.2.0');
  const newer = rewrite(folder, 'lib/qr/index.js', 'throw new Error("of another release");');
  assert.equal(await updated(app), true);
  await other.tap(PLUS);
  const { value } = await other.widget(VALUE);
  const agreeing = await AppPage.open(context, site.address);
  await useNewer(agreeing, newer);

  for (const [window, name] of [[app, 'the first visit'], [other, 'a visit from the copy']]) {
    await line(window).getByText('Another window has gone on to a newer version.').waitFor({ state: 'attached' });
    const copy = await copyOf(window);
    assert.deepEqual([copy.release, copy.whole], [release, copy.files], name);
    await window.page.bringToFront();
    await choose(window, 'share'); // its code is made by a part that is loaded only now
    await window.page.locator('#page .qr').waitFor();
    await window.page.getByRole('button', { name: 'Back to the plan' }).click();
    await choose(window, 'about');
    await window.page.locator('#about').getByText(`App ${copy.version}, build`).waitFor();
    assert.notEqual(copy.version, '7.2.0');
    await window.page.getByRole('button', { name: 'Back to the plan' }).click();
  }
  assert.equal((await other.widget(VALUE)).value, value);
  const complaints = [...app.complaints, ...other.complaints];
  assert.deepEqual(complaints, []);
  await other.page.reload();
  await other.ready();
  assert.equal((await copyOf(other)).release, newer);
  assert.equal((await other.widget(VALUE)).value, value);
});

// --- ways back ---

/** A second window that has gone on to the newer release of `folder`. */
async function goneOn(visited, newer) {
  await updated(visited.app);
  const second = await AppPage.open(visited.context, visited.site.address);
  await visited.app.page.close();
  await useNewer(second, newer);
  return second;
}

test('a damaged copy with no network goes back to the release before it', async (t) => {
  const visited = await visitedOnce(t);
  const newer = makeNewer(visited.folder, 'style.css', NEWER);
  const second = await goneOn(visited, newer);
  await second.page.evaluate(async (name) => (await caches.open(name)).delete(new URL('boot.js', location.href)), newer);
  await visited.site.stop();
  await second.page.goto(visited.site.address);
  await second.page.getByRole('link', { name: 'Use the version before this one' }).tap();
  await second.ready();
  assert.equal((await second.copyReady()).release, visited.release);
});

test('a damaged copy whose server has a newer release by now is mended with that one', async (t) => {
  const { folder, site, app, release } = await visitedOnce(t);
  await app.page.evaluate(async (name) => (await caches.open(name)).delete(new URL('guywright.wasm', location.href)), release);
  const newer = makeNewer(folder, 'style.css', NEWER);
  await app.page.goto(site.address);
  await app.page.getByRole('link', { name: /Mend the copy/ }).tap();
  await app.ready();
  assert.equal((await app.copyReady()).release, newer);
});

test('a version that does not run in this browser is not the end: the one before it is a tap away, with the plan', async (t) => {
  const { folder, context, site, app, release } = await visitedOnce(t);
  await app.tap(PLUS);
  const { value } = await app.widget(VALUE);
  await savedPlan(app);
  rewrite(folder, 'boot.js', 'this is no script');
  assert.equal(await updated(app), true);
  await app.page.close();
  await takenOver(context);
  const second = Object.assign(new AppPage(), { page: await context.newPage() });
  await second.page.goto(site.address);
  await second.page.getByText('The app does not start.').waitFor();
  await second.page.getByRole('link', { name: 'Use the version before this one' }).tap();
  await second.ready();
  assert.equal((await second.copyReady()).release, release);
  assert.equal((await second.widget(VALUE)).value, value);
});
