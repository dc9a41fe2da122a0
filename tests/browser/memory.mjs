// What an hour of use takes of memory, without the pauses between: a number up and down, every hundredth time the pages over the
// drawing, practice and the list of plans. For budgets.mjs; GESTURES=1200 for an hour.

import { readFileSync, readdirSync } from 'node:fs';

import { checked, choose, has, showPlans } from './steps.mjs';

const GESTURES = Number(process.env.GESTURES ?? 600);
const STEPS_KEPT = 200; // of undo: once they are there memory may grow no more
const SLIDER = 'slide edge.face_deg';

const readOf = (pid, name) => {
  try {
    return readFileSync(`/proc/${pid}/${name}`, 'utf8');
  } catch {
    return ''; // it has just ended
  }
};
const numberIn = (pid, name) => Number(new RegExp(`^${name}:\\s+(\\d+)`, 'm').exec(readOf(pid, 'status'))?.[1] ?? 0);
const isOurs = (pid) => pid === process.pid || (pid > 1 && isOurs(numberIn(pid, 'PPid')));

/** MB of their own that the processes that draw pages have in memory. */
function ofProcesses() {
  const pids = readdirSync('/proc').filter((name) => /^\d+$/.test(name)).map(Number);
  const renderers = pids.filter((pid) => readOf(pid, 'cmdline').includes('--type=renderer') && isOurs(pid));
  return renderers.reduce((sum, pid) => sum + numberIn(pid, 'RssAnon'), 0) / 1000;
}

/** Runs in the page before anything else: notes the memories of WebAssembly that are looked into. */
export function noteMemories() {
  const { get } = Object.getOwnPropertyDescriptor(WebAssembly.Memory.prototype, 'buffer');
  window.memories = new Set();
  Object.defineProperty(WebAssembly.Memory.prototype, 'buffer', { get() { return get.call(window.memories.add(this) && this); } });
}

const ofProgram = (app) => app.page.evaluate(() => [...window.memories].reduce((sum, { buffer }) => sum + buffer.byteLength, 0) / 1e6);

async function memoryOf(app) {
  const { devtools } = app;
  await devtools.send('Performance.enable');
  for (let i = 0; i < 3; ++i) await devtools.send('HeapProfiler.collectGarbage'); // what one round lets go, the next one finds
  const { usedSize } = await devtools.send('Runtime.getHeapUsage');
  const { metrics } = await devtools.send('Performance.getMetrics');
  return { script: usedSize / 1e6, program: await ofProgram(app), process: ofProcesses(), listeners: metrics.find(({ name }) => name === 'JSEventListeners').value };
}

async function toSlider(app) {
  await app.page.locator('#canvas').focus();
  for (let i = 0; i < 60 && (await app.state()).focus !== SLIDER; ++i) {
    await app.page.keyboard.press('Tab');
    await app.settled();
  }
}

async function visitPages(app) {
  for (const id of ['share', 'sheet', 'text']) {
    await choose(app, id);
    await app.page.waitForTimeout(100);
    await app.page.keyboard.press('Escape');
  }
  await choose(app, 'practice');
  await app.tap('level 1');
  while (!has(await app.state(), 'draw site')) await app.tap('next');
  await app.tap('draw site');
  await app.until(({ screen }) => screen === 'Site', 'the site');
  await choose(app, 'leave practice');
  await showPlans(app);
  await app.tap('close plans');
  await choose(app, 'step Edge');
  await toSlider(app);
}

/** `print(what, value, limit, unit, note)` tells each beside its limit. */
export async function session(app, print) {
  await choose(app, 'step Edge');
  await toSlider(app);
  const gestures = async (count) => {
    for (let i = 1; i <= count; ++i) {
      await app.page.keyboard.press(i % 2 ? 'ArrowLeft' : 'ArrowRight');
      if (i % 10 === 0) await app.settled();
      if (i % 100 === 0) await visitPages(app);
    }
    await checked(app);
    await app.page.evaluate(() => window.guywright.saved());
  };
  await gestures(2 * STEPS_KEPT);
  const before = await memoryOf(app);
  await gestures(GESTURES);
  const after = await memoryOf(app);
  const allowed = { script: ['of the page', 'MB', 0.5], program: ['of the program', 'MB', 0.5], process: ['of the process', 'MB', 5], listeners: ['listeners', '', 2] };
  for (const [what, [name, unit, more]] of Object.entries(allowed)) {
    print(`memory, ${name}, after ${GESTURES} more gestures`, after[what], before[what] * (unit ? 1.1 : 1) + more, unit, `before: ${before[what].toFixed(2)}, with ${STEPS_KEPT} steps of undo`);
  }
}
