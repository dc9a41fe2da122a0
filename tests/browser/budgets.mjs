// What the app takes, beside what it may take; nothing is asserted, what is over says so:
//   node tests/browser/budgets.mjs [sizes start frames rest memory ratio]      all of them unless some are named
// The site must have been built. GESTURES=1200 for an hour of use. Chromium at a quarter of its speed where it says so, WebGL in
// software: on a machine that does other work meanwhile times are too long, and the load is told with them.

import { execFileSync } from 'node:child_process';
import { existsSync, statSync } from 'node:fs';
import { loadavg } from 'node:os';
import { join } from 'node:path';

import { at, noteFrames, over, slide } from './frames.mjs';
import { AppPage, SCREENS, SITE, launch, releaseOf, startSite } from './harness.mjs';
import { noteMemories, session } from './memory.mjs';
import { checked, choose, coarse, has } from './steps.mjs';

const THROTTLE = 4;
const PHONE = coarse(SCREENS.phone);
const ROOT = join(SITE, '..', '..');

const endings = [];
const t = { after: (act) => endings.unshift(act) };

function print(what, value, limit, unit, note = '') {
  const verdict = limit === undefined ? '' : value > limit ? 'OVER' : 'ok';
  const number = (n) => (n === undefined ? '-' : Number.isInteger(n) ? String(n) : n.toFixed(n < 10 ? 2 : 1));
  console.log(`${what.padEnd(58)} ${number(value).padStart(9)} of ${number(limit).padStart(7)} ${unit.padEnd(6)} ${verdict.padEnd(4)}  load ${loadavg()[0].toFixed(1)}  ${note}`);
}

// --- bytes ---

function sizes() {
  const paths = [...releaseOf(SITE).files.map(({ path }) => path), 'sw.js'];
  for (const [name, ending] of [['brotli', '.br'], ['gzip', '.gz']]) {
    const sizeOf = (path) => statSync(join(SITE, existsSync(join(SITE, path + ending)) ? path + ending : path)).size;
    const total = paths.reduce((sum, path) => sum + sizeOf(path), 0);
    const largest = [...paths].sort((a, b) => sizeOf(b) - sizeOf(a)).slice(0, 3).map((path) => `${path} ${Math.round(sizeOf(path) / 1000)}`);
    print(`every file once, ${name}`, total / 1000, 700, 'kB', largest.join(', '));
  }
}

/** A browser that has never been here. */
async function stranger() {
  const site = await startSite(t);
  const context = await launch(t, undefined, { screen: PHONE });
  await context.addInitScript(noteFrames);
  await context.addInitScript(noteStart);
  return { site, context };
}

// --- start ---

/** Runs in the page: when the first picture stood and the program answered. */
function noteStart() {
  const look = () => {
    if (window.guywright?.framesDrawn() > 0) window.started_ms = performance.now();
    else setTimeout(look, 4);
  };
  look();
}

async function startTime(context, address) {
  const app = new AppPage();
  app.page = await context.newPage();
  app.devtools = await context.newCDPSession(app.page);
  await app.devtools.send('Emulation.setCPUThrottlingRate', { rate: THROTTLE });
  await app.page.goto(address);
  const started = await app.page.waitForFunction(() => window.started_ms);
  const ms = await started.jsonValue();
  await app.devtools.send('Emulation.setCPUThrottlingRate', { rate: 1 });
  await app.ready();
  return { app, ms };
}

async function starts() {
  const cold = [], cached = [];
  for (let i = 0; i < 3; ++i) {
    const { site, context } = await stranger();
    const first = await startTime(context, site.address);
    cold.push(first.ms);
    await first.app.copyReady();
    if (i === 0) print('first visit with the offline copy, as sent (brotli)', site.sent() / 1000, 700, 'kB', 'what the page and its offline copy make the server send');
    await first.app.page.close();
    for (let j = 0; j < 2; ++j) {
      const again = await startTime(context, site.address);
      cached.push(again.ms);
      await again.app.page.close();
    }
    await context.close();
  }
  print(`start with nothing kept, ${THROTTLE}x slower, best of 3`, Math.min(...cold), 1000, 'ms', `all: ${cold.map(Math.round).join(', ')}`);
  print(`start from the copy, ${THROTTLE}x slower, best of 6`, Math.min(...cached), 500, 'ms', `all: ${cached.map(Math.round).join(', ')}`);
}

// --- a finger, and none ---

async function frames(app) {
  await choose(app, 'step Frame');
  while (!has(await app.state(), 'slide frame.lean_deg')) await app.tap('next');
  await app.devtools.send('Emulation.setCPUThrottlingRate', { rate: THROTTLE });
  const { notes, checking } = await slide(app, 'slide frame.lean_deg', 6);
  await app.devtools.send('Emulation.setCPUThrottlingRate', { rate: 1 });
  const work = notes.map((each) => each.work), waited = notes.map((each) => each.waited);
  const where = `while sliding, ${THROTTLE}x slower`;
  const note = `${notes.length} frames, the picture drawn anew in ${notes.filter(({ drawn }) => drawn).length}, measuring error looked at in ${Math.round(100 * checking)} % of looks`;
  print(`work of a frame ${where}, median`, at(work, 0.5), 16.7, 'ms', note);
  print(`work of a frame ${where}, frames over 50 ms`, over(work, 50), 0, '', `worst ${at(work, 1).toFixed(1)} ms`);
  print(`wait for a frame ${where}, frames over 50 ms`, over(waited, 50), 0, '', `worst ${at(waited, 1).toFixed(1)} ms`);
  print(`wait for a frame ${where}, median`, at(waited, 0.5), 16.7, 'ms', 'with the drawing, which here is in software');
  await app.settled();
}

/** Runs in the page: counts what wakes it up. */
function countWakings() {
  window.wakings = 0;
  for (const name of ['setTimeout', 'setInterval', 'requestAnimationFrame']) {
    const ask = window[name].bind(window);
    window[name] = (act, ...rest) => ask((...given) => {
      ++window.wakings;
      return act(...given);
    }, ...rest);
  }
}

async function idle(app) {
  await checked(app);
  await app.settled();
  await app.page.waitForFunction(() => performance.now() > 25_000); // messages in passing are gone, and what waits for a start that fails
  const busy = async () => (await app.devtools.send('Performance.getMetrics')).metrics.find(({ name }) => name === 'TaskDuration').value * 1000;
  await app.devtools.send('Performance.enable');
  await app.page.evaluate(() => { window.wakings = 0; });
  const [drawn, before] = [await app.framesDrawn(), await busy()];
  await app.page.waitForTimeout(10_000);
  const after = await busy();
  print('frames in 10 s at rest', (await app.framesDrawn()) - drawn, 0, '');
  print('timers and frames that wake the page in 10 s at rest', await app.page.evaluate(() => window.wakings), 0, '', `${(after - before).toFixed(1)} ms of work`);
}

// --- the program itself ---

function ratio() {
  const programs = [join(ROOT, 'build/native/bench_verdict'), join(ROOT, 'build/wasm/bench_verdict_wasm.js')];
  if (!programs.every(existsSync)) return console.log('wasm over native: not measured; bash tests/bench/run.sh builds what is needed');
  const run = (command, args) => JSON.parse(execFileSync(command, args, { encoding: 'utf8' })).filter(Boolean);
  const native = run(programs[0], []), wasm = run(process.execPath, ['--no-experimental-fetch', programs[1]]);
  const ratios = native.map(({ us }, i) => wasm[i].us / us);
  return print('time in wasm over native time, full verdicts and one equilibrium', at(ratios, 0.5), undefined, 'times', `from ${Math.min(...ratios).toFixed(2)} to ${Math.max(...ratios).toFixed(2)}`);
}

/** The parts that need the app open, in one page. */
async function withApp(parts) {
  if (parts.length === 0) return;
  const { site, context } = await stranger();
  await context.addInitScript(countWakings);
  await context.addInitScript(noteMemories);
  const app = await AppPage.open(context, site.address);
  await app.copyReady();
  for (const part of parts) await part(app);
}

const wanted = process.argv.slice(2);
const isWanted = (name) => wanted.length === 0 || wanted.includes(name);

try {
  if (isWanted('sizes')) sizes();
  if (isWanted('start')) await starts();
  await withApp(Object.entries({ frames, rest: idle, memory: (app) => session(app, print) }).filter(([name]) => isWanted(name)).map(([, part]) => part));
  if (isWanted('ratio')) ratio();
} finally {
  for (const end of endings) await end();
}
