// How long frames take while a finger moves a slider on a slow device, with the check of measuring error running, and while advice is
// computed; nothing is asserted:   node tests/browser/frame_times.mjs [screen ...]
// Chromium at a quarter of its speed. "work" is what the app itself does in a frame, on the processor; "waited" is from one frame to
// the next that it asked for, which is 16.7 ms at the least, and more where WebGL, drawn in software, takes longer. How much of that
// is the browser's own is told by sliding once more with a surface that is cleared and shown, but nothing drawn on it.

import { readFileSync } from 'node:fs';
import { loadavg } from 'node:os';

import { at, noteFrames, over, slide } from './frames.mjs';
import { AppPage, SCREENS, launch, startSite } from './harness.mjs';
import { choose, coarse, has } from './steps.mjs';

const THROTTLE = 4;
const HASTE = 3;
const SLIDERS = [['Edge', 'edge.face_deg'], ['Frame', 'frame.lean_deg'], ['Guys', 'guys[0].bearing_deg']];
const wanted = process.argv.slice(2);
const SLID_ON = ['phone', 'tabletUpright', 'tabletAcross'];

const endings = [];
const t = { after: (act) => endings.unshift(act) };

const line = (numbers) => `median ${at(numbers, 0.5).toFixed(1)}  95 % ${at(numbers, 0.95).toFixed(1)}  worst ${at(numbers, 1).toFixed(1)} ms, over 16.7: ${over(numbers, 16.7)}, over 50: ${over(numbers, 50)}`;

/** A plan that is NO-GO, with twelve anchors found. */
function toBeAdvised() {
  const plan = JSON.parse(readFileSync(new URL('../../assets/examples/spillway-bench.json', import.meta.url), 'utf8'));
  plan.frame.lean_deg = 8;
  plan.candidate_anchors_m = Array.from({ length: 12 }, (_, i) => [-3 + 5 * Math.cos(i / 2), 5 * Math.sin(i / 2), 0]);
  return { name: 'plan.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(plan)) };
}

async function advise(app, name, throttle) {
  await app.tap('menu');
  while (!has(await app.state(), 'open')) await app.tap('more menu');
  await app.openFile('open', toBeAdvised());
  for (const question of ['Change', 'Ties', 'LineUp', 'Pretension', 'Order', 'Anchors', 'Directions']) {
    await choose(app, 'advice');
    while (!has(await app.state(), `ask ${question}`)) await app.tap('next');
    await app.page.evaluate(() => { window.frameNotes = []; });
    const start = Date.now();
    await app.tap(`ask ${question}`);
    const notes = await app.page.evaluate(() => window.frameNotes);
    console.log(`${name}, ${throttle}x slower, advice ${question}: ${notes.length} frames in ${Date.now() - start} ms; load of the machine ${loadavg()[0].toFixed(1)}`);
    console.log(`    work     ${line(notes.map(({ work }) => work))}`);
  }
}

async function slideAndTell(app, path, what, haste) {
  const { notes, checking } = await slide(app, `slide ${path}`, 4, haste);
  console.log(`${what}: ${notes.length} frames, the picture drawn anew in ${notes.filter(({ drawn }) => drawn).length}, checking in ${(100 * checking).toFixed(0)} % of looks; load of the machine ${loadavg()[0].toFixed(1)}`);
  console.log(`    work     ${line(notes.map(({ work }) => work))}`);
  console.log(`    waited   ${line(notes.map(({ waited }) => waited))}`);
  await app.settled();
}

// Both run in the page.
function drawNothing() {
  const calls = WebGLRenderingContext.prototype;
  window.drawElements = calls.drawElements;
  calls.drawElements = () => {};
}
function drawAgain() {
  WebGLRenderingContext.prototype.drawElements = window.drawElements;
}

async function measure(name, screen) {
  const site = await startSite(t);
  const context = await launch(t, undefined, { screen });
  await context.addInitScript(noteFrames);
  const app = await AppPage.open(context, site.address);
  for (const throttle of [1, THROTTLE]) {
    await app.devtools.send('Emulation.setCPUThrottlingRate', { rate: throttle });
    for (const [step, path] of SLIDERS) {
      await choose(app, `step ${step}`);
      while (!has(await app.state(), `slide ${path}`)) await app.tap('next');
      await slideAndTell(app, path, `${name}, ${throttle}x slower, ${path}`);
      await slideAndTell(app, path, `${name}, ${throttle}x slower, ${path}, a hasty finger`, HASTE);
    }
    await app.page.evaluate(drawNothing);
    await slideAndTell(app, SLIDERS.at(-1)[1], `${name}, ${throttle}x slower, nothing drawn`);
    await app.page.evaluate(drawAgain);
    await advise(app, name, throttle);
    await choose(app, 'example spillway-bench');
  }
  await app.devtools.send('Emulation.setCPUThrottlingRate', { rate: 1 });
}

try {
  for (const name of SLID_ON) if (wanted.length === 0 || wanted.includes(name)) await measure(name, coarse(SCREENS[name]));
} finally {
  for (const end of endings) await end();
}
