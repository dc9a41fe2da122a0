// What the browser tests share: a site on a free port, Chromium, a page of a given screen, and a finger.

import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { cpSync, mkdtempSync, readFileSync, readlinkSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { after } from 'node:test';
import { fileURLToPath } from 'node:url';

import { chromium, firefox } from 'playwright-core';

import { listen, siteServer } from '../../web/serve.mjs';

export const SITE = join(dirname(fileURLToPath(import.meta.url)), '..', '..', 'build', 'web');

/** Screens that every screen of the app must fit. CSS pixels. */
export const SCREENS = {
  phone: { width: 390, height: 844, ratio: 3, touch: true },
  tabletUpright: { width: 800, height: 1280, ratio: 2, touch: true },
  tabletAcross: { width: 1280, height: 800, ratio: 2, touch: true },
  desktop: { width: 1440, height: 900, ratio: 1, touch: false },
};

const CHROMIUM = process.env.CHROMIUM ?? '/usr/bin/chromium';
const FLAGS = ['--no-sandbox', '--use-gl=angle', '--use-angle=swiftshader', '--enable-unsafe-swiftshader', '--disable-quic',
  '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'];

/** BROWSER=firefox: the same tests there, as far as they need nothing that only Chromium can be told. Needs a display with OpenGL, such as xvfb's. */
const IN_FIREFOX = process.env.BROWSER === 'firefox';
/** For a test that needs what only Chromium can be told: it is skipped elsewhere. */
export const onlyInChromium = (why) => (IN_FIREFOX ? { skip: `only Chromium can be told: ${why}` } : {});
const FIREFOX = { channel: 'moz-firefox', executablePath: process.env.FIREFOX ?? '/usr/bin/firefox-esr', headless: false, firefoxUserPrefs: { 'webgl.force-enabled': true } };

const launchBrowser = () => (IN_FIREFOX ? firefox.launch(FIREFOX) : chromium.launch({ executablePath: CHROMIUM, args: FLAGS }));

/** Only ends what hangs: a machine may be ten times slower than another. */
export const PATIENCE_MS = 120_000;

const cleanUps = new WeakMap();

/** Runs `undo` after the test; what was made last is undone first. */
function afterwards(t, undo) {
  if (!cleanUps.has(t)) {
    cleanUps.set(t, []);
    t.after(async () => {
      for (const each of cleanUps.get(t).reverse()) await each();
    });
  }
  cleanUps.get(t).push(undo);
}

/** A folder that is gone after the test. */
export function temporaryFolder(t) {
  const folder = mkdtempSync(join(tmpdir(), 'guywright-'));
  // A browser's helpers may still be writing for a moment after it has closed.
  afterwards(t, () => rmSync(folder, { recursive: true, force: true, maxRetries: 20, retryDelay: 100 }));
  return folder;
}

/** What a host sends that was told nothing. */
const typeOnly = (headers) => Object.fromEntries(Object.entries(headers ?? {}).filter(([name]) => ['Content-Type', 'Content-Encoding'].includes(name)));

/**
 * Serves `root`. `requests` are the paths asked for so far, `sent()` the bytes that went out; to a path in `cut` the line goes dead; `answers` holds what a path
 * is answered instead; `headers` go with every answer, and with `bare` none that guards the page; `stop()` ends it all, as a dead
 * server would.
 */
export async function startSite(t, root = SITE, port = 0) {
  const server = siteServer(root);
  const site = { requests: [], cut: new Set(), answers: new Map(), headers: {}, sent: () => [...lines].reduce((sum, { bytesWritten }) => sum + bytesWritten, 0) };
  const lines = new Set();
  server.on('connection', (line) => lines.add(line));
  const [usual] = server.listeners('request');
  server.removeAllListeners('request');
  server.on('request', (request, response) => {
    site.requests.push(request.url);
    const send = response.writeHead.bind(response);
    response.writeHead = (status, headers) => send(status, { ...(site.bare ? typeOnly(headers) : headers), ...site.headers });
    if (site.cut.has(request.url)) request.socket.destroy();
    else (site.answers.get(request.url) ?? usual)(request, response);
  });
  const address = await listen(server, port);
  const stop = () => new Promise((stopped) => {
    server.close(stopped);
    server.closeAllConnections();
  });
  afterwards(t, stop);
  return Object.assign(site, { address, port: server.address().port, stop });
}

function contextOptions(screen, options) {
  return {
    viewport: { width: screen.width, height: screen.height },
    deviceScaleFactor: screen.ratio,
    hasTouch: screen.touch,
    ...(IN_FIREFOX ? {} : { isMobile: screen.touch }), // it does not know phones
    acceptDownloads: true,
    locale: 'en-GB', // English and metric, unless a test asks for another
    ...options,
  };
}

let shared; // one browser for all tests of a file that need no profile of their own

/** A fresh, empty context of a browser that all tests of the file share. */
export async function freshContext(t, screen = SCREENS.phone, options = {}) {
  shared ??= launchBrowser(); // the promise, so that two at once start one browser
  const context = await (await shared).newContext(contextOptions(screen, options));
  context.setDefaultTimeout(PATIENCE_MS);
  afterwards(t, () => context.close());
  return context;
}
after(async () => (await shared)?.close());

/**
 * A browser with a profile of its own in `folder`. The same folder again is the same user coming back.
 * @param {{ screen?: object, flags?: string[], options?: object }} choices
 */
export async function launch(t, folder = temporaryFolder(t), { screen = SCREENS.phone, flags = [], options = {} } = {}) {
  const context = IN_FIREFOX
    ? await firefox.launchPersistentContext(folder, { ...FIREFOX, ...contextOptions(screen, options) })
    : await chromium.launchPersistentContext(folder, { executablePath: CHROMIUM, args: [...FLAGS, ...flags], ...contextOptions(screen, options) });
  context.setDefaultTimeout(PATIENCE_MS);
  afterwards(t, () => context.close());
  return context;
}

/** Ends the browser of `folder` as a flat battery would: nothing is written, nothing is asked. With all its helpers, or alone. */
export function killBrowser(folder, { helpersToo = false } = {}) {
  const [, pid] = /[-+](\d+)$/.exec(readlinkSync(join(folder, IN_FIREFOX ? 'lock' : 'SingletonLock')));
  process.kill(helpersToo ? -Number(pid) : Number(pid), 'SIGKILL');
}

/** Firefox makes no click of the touch that a test sends to an element. */
function clickForTap(page) {
  Object.getPrototypeOf(page.locator('body')).tap = function tap() { return this.click(); };
}

/** Before a picture the driver of Firefox tries to add a style of its own. A style of ours that is refused is told in Chromium. */
const isOfDriver = (line) => IN_FIREFOX && /blocked an inline style \(style-src-elem\)/.test(line);

/** The app in a page: its state, its requests and complaints, and a finger that taps and drags by widget id. */
export class AppPage {
  requests = []; // addresses of everything the page asked for
  complaints = []; // errors and warnings on the console, and faults

  /** Opens `address` and waits until the program has drawn. */
  static async open(context, address) {
    const app = new AppPage();
    app.page = await context.newPage();
    if (IN_FIREFOX) clickForTap(app.page);
    else app.devtools = await context.newCDPSession(app.page);
    app.page.on('request', (request) => app.requests.push(request.url()));
    const complain = (line) => !isOfDriver(line) && app.complaints.push(line);
    app.page.on('console', (line) => ['error', 'warning'].includes(line.type()) && complain(line.text()));
    app.page.on('pageerror', (error) => complain(String(error)));
    await app.page.goto(address);
    await app.ready();
    return app;
  }

  async ready() {
    await this.page.waitForFunction(() => window.guywright?.framesDrawn() > 0);
    await this.page.evaluate(() => window.guywright.saved()); // what is kept has been told to the program
    await this.settled();
  }

  /** The view model that the screen was drawn from. */
  state() {
    return this.page.evaluate(() => window.guywright.state());
  }

  framesDrawn() {
    return this.page.evaluate(() => window.guywright.framesDrawn());
  }

  /**
   * Resolves once the program has had nothing to take in, to compute or to draw for a moment. Not by the browser's
   * frames: it hands out few of them to a window behind another.
   */
  async settled() {
    await this.page.evaluate(() => new Promise((done) => {
      let idle = 0;
      const look = () => {
        idle = window.guywright.isIdle() ? idle + 1 : 0;
        if (idle > 3) done();
        else setTimeout(look, 15);
      };
      look();
    }));
  }

  /** Resolves once what the finger has just done is drawn, also while the program is at work on it. */
  async drawn() {
    await this.page.evaluate(() => new Promise((done) => {
      const { framesDrawn, isIdle } = window.guywright;
      const before = framesDrawn();
      const look = () => (isIdle() || framesDrawn() > before + 1 ? done() : setTimeout(look, 5)); // a frame takes in one event of the finger
      look();
    }));
  }

  /** Resolves once the page has laid itself out after a change of its size or letters, and the program has followed. */
  async laidOut() {
    await this.page.evaluate(() => new Promise((done) => { requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done))); }));
    await this.settled();
  }

  /** Resolves once the screen has that size. */
  async resize(width, height) {
    await this.page.setViewportSize({ width, height });
    await this.page.waitForFunction((size) => String([innerWidth, innerHeight]) === size, String([width, height]));
    await this.laidOut();
  }

  /** What the person sets in the browser: 16 px is usual. */
  async setLetters(px) {
    await this.devtools.send('Page.setFontSizes', { fontSizes: { standard: px, fixed: px * 13 / 16 } });
    await this.page.waitForFunction((wanted) => parseFloat(getComputedStyle(document.documentElement).fontSize) === wanted * 1.125, px);
    await this.laidOut();
  }

  /** The graphics are taken away, or given back after that. */
  async loseContext() {
    await this.page.evaluate(() => new Promise((gone) => {
      const canvas = document.getElementById('canvas');
      window.lossTool ??= canvas.getContext('webgl').getExtension('WEBGL_lose_context');
      canvas.addEventListener('webglcontextlost', () => setTimeout(gone), { once: true });
      window.lossTool.loseContext();
    }));
  }

  async restoreContext() {
    await this.page.evaluate(() => new Promise((back) => {
      document.getElementById('canvas').addEventListener('webglcontextrestored', () => setTimeout(back), { once: true });
      window.lossTool.restoreContext();
    }));
    await this.settled();
  }

  /** Resolves once text view and spoken verdict have caught up with the drawing, too. */
  async told() {
    await this.page.waitForFunction(() => window.guywright.isIdle() && window.guywright.isTold(), null, { polling: 30 });
  }

  /** Resolves when `condition(state)` holds; fails with the last state seen. */
  async until(condition, what) {
    let state;
    for (const start = Date.now(); Date.now() - start < PATIENCE_MS; await this.page.waitForTimeout(30)) {
      state = await this.state();
      if (condition(state)) return state;
    }
    return assert.fail(`never came: ${what}. Last state: ${JSON.stringify(state)}`);
  }

  async widget(id) {
    const { widgets } = await this.state();
    const found = widgets.find((each) => each.id === id);
    assert.ok(found, `no widget "${id}" on the screen; there are ${widgets.map((each) => each.id).join(', ')}`);
    return found;
  }

  /** Middle of a widget, or the point at the given shares of its width and height. */
  async pointOn(id, shareX = 0.5, shareY = 0.5) {
    const { rect } = await this.widget(id);
    return { x: rect.x + rect.width * shareX, y: rect.y + rect.height * shareY };
  }

  /** In Firefox one finger only, as a mouse. */
  async touch(type, points) {
    if (!IN_FIREFOX) return this.devtools.send('Input.dispatchTouchEvent', { type, touchPoints: points });
    const { mouse } = this.page;
    for (const { x, y } of points.slice(0, 1)) await mouse.move(x, y);
    if (type === 'touchStart') return mouse.down();
    return type === 'touchEnd' ? mouse.up() : undefined;
  }

  /** Down and up are sent at once: were the second to wait for the answer to the first, a slow machine would hold the key until it repeats. */
  async tapAt(point, holdMs = 0) {
    if (holdMs === 0 && IN_FIREFOX) return this.page.mouse.click(point.x, point.y);
    const down = this.touch('touchStart', [point]);
    if (holdMs > 0) await down.then(() => this.page.waitForTimeout(holdMs));
    return Promise.all([down, this.touch('touchEnd', [])]);
  }

  /** One stroke of a key: down and up are sent at once, as in a tap. */
  async strike(key) {
    const { keyboard } = this.page;
    await Promise.all([keyboard.down(key), keyboard.up(key)]);
    await this.settled();
  }

  async tap(id) {
    await this.tapAt(await this.pointOn(id));
    await this.settled();
  }

  /** Drags a finger from one point to another in steps, as a hand does. */
  async dragBetween(from, to, steps = 12) {
    await this.touch('touchStart', [from]);
    for (let i = 1; i <= steps; ++i) {
      const share = i / steps;
      await this.touch('touchMove', [{ x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share }]);
      await this.page.waitForTimeout(16);
    }
    await this.touch('touchEnd', []);
    await this.settled();
  }

  /** Drags along a widget, from one share of its width to another. */
  async drag(id, fromShare, toShare) {
    await this.dragBetween(await this.pointOn(id, fromShare), await this.pointOn(id, toShare));
  }

  /** Hands the app a plan file through the file picker that a tap on `id` opens. `file`: a path or { name, mimeType, buffer }. */
  async openFile(id, file) {
    const [chooser] = await Promise.all([this.page.waitForEvent('filechooser'), this.tap(id)]);
    await chooser.setFiles(file);
    await this.settled();
  }

  /** What `act` hands the person as a file: { name, text }. Firefox tells a test nothing of that: there the page is asked what it gives away. */
  async handed(act) {
    if (!IN_FIREFOX) {
      const [download] = await Promise.all([this.page.waitForEvent('download'), act()]);
      return { name: download.suggestedFilename(), text: readFileSync(await download.path(), 'utf8') };
    }
    await this.page.evaluate(() => {
      window.handedName = undefined;
      const { createObjectURL } = URL;
      URL.createObjectURL = (blob) => {
        window.handed = blob;
        return createObjectURL(blob);
      };
      HTMLAnchorElement.prototype.click = function click() { window.handedName = this.download; };
    });
    await act();
    await this.page.waitForFunction(() => window.handedName);
    return this.page.evaluate(async () => ({ name: window.handedName, text: await window.handed.text() }));
  }

  /** Picture of the whole screen as PNG bytes: equal bytes are equal pixels. */
  async picture() {
    return this.page.screenshot();
  }

  /** Resolves with the state of the copy of the app once it is made. */
  async copyReady() {
    await this.page.evaluate(() => navigator.serviceWorker.ready);
    return this.page.evaluate(() => window.guywright.checkCopy());
  }
}

/** Site and page in one go, for tests that need nothing special. */
export async function openApp(t, screen = SCREENS.phone) {
  const site = await startSite(t);
  const context = await freshContext(t, screen);
  const app = await AppPage.open(context, site.address);
  return Object.assign(app, { site, context });
}

// --- other releases, for tests of updates and of damage ---

const RELEASE_LINE = /^const RELEASE = (.*);$/m;

export function releaseOf(folder) {
  return JSON.parse(RELEASE_LINE.exec(readFileSync(join(folder, 'sw.js'), 'utf8'))[1]);
}

/** A copy of the site without packed files: what is served is what the files hold. */
export function copySite(t) {
  const folder = join(temporaryFolder(t), 'site');
  cpSync(SITE, folder, { recursive: true, filter: (path) => !/\.(br|gz)$/.test(path) });
  return folder;
}

/** The list of `folder` as `change(release)` leaves it, under the name that fits it. */
function relist(folder, change) {
  const { name: _, ...release } = releaseOf(folder);
  change(release);
  const named = { name: `app-${createHash('sha256').update(JSON.stringify(release)).digest('hex').slice(0, 12)}`, ...release };
  const worker = readFileSync(join(folder, 'sw.js'), 'utf8');
  writeFileSync(join(folder, 'sw.js'), worker.replace(RELEASE_LINE, () => `const RELEASE = ${JSON.stringify(named)};`));
  return named.name;
}

/** Writes `body` into a file of `folder` and lists its new hash. Returns the name of the release that this makes. */
export function rewrite(folder, path, body) {
  writeFileSync(join(folder, path), body);
  return relist(folder, ({ files }) => {
    const sha256 = createHash('sha256').update(body).digest('base64');
    Object.assign(files.find((each) => each.path === path), { bytes: Buffer.byteLength(body), sha256 });
  });
}

/** Makes `folder` a newer release: adds `text` to `path`. */
export const makeNewer = (folder, path, text) => rewrite(folder, path, Buffer.concat([readFileSync(join(folder, path)), Buffer.from(text)]));

/** Makes `folder` a release of another version. */
export function makeVersion(folder, version) {
  const about = JSON.parse(readFileSync(join(folder, 'about.json'), 'utf8'));
  about.app.version = version;
  rewrite(folder, 'about.json', JSON.stringify(about));
  return relist(folder, (release) => Object.assign(release, { version }));
}

/** Changes one byte of a file and nothing else. */
export function spoil(folder, path, at = 100) {
  const body = readFileSync(join(folder, path));
  body[at] ^= 1;
  writeFileSync(join(folder, path), body);
}

const pause = (ms) => new Promise((over) => { setTimeout(over, ms); });

/** Resolves once no window is left and a newer release has taken over by itself. Firefox tells nothing of its workers: there it gets a while. */
export async function takenOver(context) {
  if (IN_FIREFOX) return pause(3000);
  const look = (worker) => worker.evaluate(() => registration.waiting === null && registration.active?.state === 'activated').catch(() => false);
  const isDone = (worker) => Promise.race([look(worker), pause(2000)]); // one that is being stopped may never answer
  for (const start = Date.now(); Date.now() - start < PATIENCE_MS; await pause(50)) {
    if ((await Promise.all(context.serviceWorkers().map(isDone))).includes(true)) return undefined;
  }
  return assert.fail('the newer release never took over');
}

/** A browser with a whole copy of a release, and the folder that it came from; `headers` go with every answer of its site. */
export async function visitedOnce(t, { headers = {} } = {}) {
  const folder = copySite(t);
  const site = Object.assign(await startSite(t, folder), { headers });
  const context = await freshContext(t);
  const app = await AppPage.open(context, site.address);
  const { release } = await app.copyReady();
  return { folder, site, context, app, release };
}
