// The copy of the app in the browser: whole or not at all, used with no network, mended. Newer releases: update.test.mjs.

import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';

import { AppPage, SCREENS, SITE, copySite, freshContext, launch, onlyInChromium, openApp, releaseOf, spoil, startSite, temporaryFolder, visitedOnce } from './harness.mjs';
import { choose } from './steps.mjs';

// An input of the first step, to see that the plan is there and the app at work.
const PLUS = 'more edge.face_deg';
const VALUE = 'value edge.face_deg';

/** Copies of releases. */
const cachesOf = (app) => app.page.evaluate(async () => (await caches.keys()).filter((name) => name.startsWith('app-')));

test('one visit makes a whole copy and says so', async (t) => {
  const app = await openApp(t);
  const { files, name, version } = releaseOf(SITE);
  assert.deepEqual(await app.copyReady(), { release: name, version, files: files.length, whole: files.length, before: false });
  await app.page.getByText(`Works with no network from now on: ${files.length} of ${files.length} files checked.`).waitFor({ state: 'attached' }); // shown for a while only
});

// On the card the verdict is higher, and ends elsewhere on each screen.
const smallPhone = { ...SCREENS.phone, width: 360, height: 640 };
for (const [name, screen] of Object.entries({ ...SCREENS, smallPhone }))
  test(`a message in passing does not lie on the verdict, ${name}`, async (t) => {
    const app = await openApp(t, screen);
    await app.copyReady();
    for (const step of ['step Edge', 'step Card']) {
      await choose(app, step);
      const { rect } = await app.widget('strip');
      const top = await app.page.evaluate(() => {
        const line = document.getElementById('offline');
        line.hidden = false; // it may have passed by now; what it said stays in it
        return line.getBoundingClientRect().top;
      });
      const end = rect.y + rect.height;
      assert.ok(top >= end && top < end + 20, `${step}: the message begins at ${top}, the verdict ends at ${end}`);
    }
  });

test('after one visit the app starts with the server stopped, the network off and the browser restarted', async (t) => {
  const site = await startSite(t);
  const profile = temporaryFolder(t);
  const online = await launch(t, profile);
  const first = await AppPage.open(online, site.address);
  await first.copyReady();
  await first.tap(PLUS);
  const { value } = await first.widget(VALUE);
  await site.stop();
  await online.setOffline(true);
  const second = await AppPage.open(online, site.address);
  assert.equal((await second.widget(VALUE)).value, value);
  await online.close();

  const offline = await launch(t, profile);
  await offline.setOffline(true);
  const third = await AppPage.open(offline, site.address);
  assert.deepEqual(third.complaints, []);
  assert.equal((await third.widget(VALUE)).value, value);
  await third.tap(PLUS);
  assert.notEqual((await third.widget(VALUE)).value, value);
});

test('a store of plans that never answers does not cost the copy', async (t) => {
  const site = await startSite(t);
  const context = await freshContext(t);
  await context.addInitScript(() => { IDBFactory.prototype.open = () => new EventTarget(); });
  const page = await context.newPage();
  await page.goto(site.address);
  await page.waitForFunction(() => window.guywright?.framesDrawn() > 0);
  const { files } = releaseOf(SITE);
  await page.waitForFunction(async (whole) => (await window.guywright.checkCopy())?.whole === whole, files.length);
});

test('a page below the start leads to the start, with no network too', async (t) => {
  const app = await openApp(t);
  await app.copyReady();
  await app.site.stop();
  await app.page.goto(`${app.site.address}some/where/else`);
  await app.ready();
  assert.equal(app.page.url(), app.site.address);
});

test('asks nobody but its own server for anything, and nobody at all after the first load', async (t) => {
  const app = await openApp(t);
  await app.copyReady();
  const origin = new URL(app.site.address).origin;
  for (const address of app.requests) assert.equal(new URL(address).origin, origin);
  const asked = app.site.requests.length;
  assert.ok(asked > 0);
  await app.page.reload();
  await app.ready();
  await app.tap(PLUS);
  const more = app.site.requests.slice(asked).filter((path) => path !== '/sw.js'); // the browser's own look for an update
  assert.deepEqual(more, []);
});

test('the page cannot send anything elsewhere', async (t) => {
  const app = await openApp(t);
  const [sent, by] = await app.page.evaluate(async () => {
    const refused = new Promise((done) => { document.addEventListener('securitypolicyviolation', (event) => done(event.effectiveDirective), { once: true }); });
    const outcome = await fetch('http://elsewhere.invalid/leak', { mode: 'no-cors' }).then(() => 'sent', () => 'refused');
    return [outcome, await refused];
  });
  assert.deepEqual([sent, by], ['refused', 'connect-src']);
});

test('one wrong byte in any one file: no copy is made', async (t) => {
  const folder = copySite(t);
  spoil(folder, 'icons/icon-512.png');
  const site = await startSite(t, folder);
  const context = await freshContext(t);
  const app = await AppPage.open(context, site.address);
  await assertNoCopy(app);
});

async function assertNoCopy(app) {
  const outcome = await app.page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    const worker = registration?.installing ?? registration?.waiting ?? registration?.active;
    if (!worker) return 'redundant';
    for (let i = 0; i < 4800 && worker.state !== 'redundant' && worker.state !== 'activated'; ++i) await new Promise((r) => setTimeout(r, 25));
    return worker.state;
  });
  assert.equal(outcome, 'redundant');
  assert.deepEqual(await cachesOf(app), []);
}

test('a server that fails at the last file: no copy is made', async (t) => {
  const folder = copySite(t);
  const { files } = releaseOf(folder);
  const site = await startSite(t, folder);
  site.answers.set(`/${files.find(({ path }) => path.endsWith('192.png')).path}`, (request, response) => response.writeHead(503).end());
  await assertNoCopy(await AppPage.open(await freshContext(t), site.address));
});

test('storage that is full: no copy is made, and the app runs all the same', async (t) => {
  const folder = copySite(t);
  const worker = join(folder, 'sw.js');
  writeFileSync(worker, `Cache.prototype.put = () => Promise.reject(new DOMException('full', 'QuotaExceededError'));\n${readFileSync(worker, 'utf8')}`);
  const site = await startSite(t, folder);
  const app = await AppPage.open(await freshContext(t), site.address);
  await assertNoCopy(app);
  await app.tap(PLUS);
});

test('a damaged copy says so, and is mended where there is a network', async (t) => {
  const { app, site, release } = await visitedOnce(t);
  await app.page.evaluate(async (name) => (await caches.open(name)).delete(new URL('guywright.wasm', location.href)), release);
  await app.page.goto(site.address);
  await app.page.getByText('The copy of the app in this browser is damaged').waitFor();
  await app.page.getByRole('link', { name: /Mend the copy/ }).tap();
  await app.ready();
  const { files, whole } = await app.copyReady();
  assert.equal(whole, files);
});

test('the browser finds nothing that stands in the way of installing', onlyInChromium('to look at the manifest'), async (t) => {
  const site = await startSite(t);
  const app = await AppPage.open(await launch(t), site.address);
  await app.copyReady();
  const manifest = await app.devtools.send('Page.getAppManifest');
  assert.deepEqual(manifest.errors, []);
  const { installabilityErrors } = await app.devtools.send('Page.getInstallabilityErrors');
  assert.deepEqual(installabilityErrors.filter(({ errorId }) => errorId !== 'in-incognito'), []);
});
