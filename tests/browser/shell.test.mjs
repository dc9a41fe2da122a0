// The program in its page: starting, drawing on demand, fingers, keys, lost graphics, rotation, plan files, keeping.

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';

import { noteFrames } from './frames.mjs';
import { AppPage, SCREENS, freshContext, killBrowser, launch, onlyInChromium, openApp, startSite, temporaryFolder } from './harness.mjs';
import { checked, choose } from './steps.mjs';

// An input of the first step: one tap on its + is one degree more.
const PLUS = 'more edge.face_deg';
const VALUE = 'value edge.face_deg';
const degrees = async (app) => parseInt((await app.widget(VALUE)).value, 10);

for (const [name, screen] of Object.entries(SCREENS)) {
  test(`starts on a ${name} screen with a verdict and nothing to complain about`, async (t) => {
    const app = await openApp(t, screen);
    const { verdict, widgets } = await app.state();
    assert.ok(['GO', 'NO-GO', 'NOT CHECKED'].includes(verdict), `verdict is ${verdict}`);
    assert.ok(widgets.length > 0);
    assert.equal(await app.page.locator('#skeleton').isVisible(), false);
    assert.deepEqual(app.complaints, []);
  });
}

test('draws no frame while nothing changes', async (t) => {
  const app = await openApp(t);
  const before = await app.framesDrawn();
  await app.page.waitForTimeout(1500);
  assert.equal(await app.framesDrawn(), before);
});

test('a finger that changes nothing seen has no picture drawn while it moves, one that does has each drawn', async (t) => {
  const context = await freshContext(t);
  await context.addInitScript(noteFrames);
  const app = await AppPage.open(context, (await startSite(t)).address);
  await checked(app);
  const { rect } = await app.widget(`slide ${PLUS.slice('more '.length)}`);
  const moved = async (y, width) => {
    const at = (share) => ({ x: rect.x + rect.width * (0.5 + width * (share - 0.5)), y });
    await app.touch('touchStart', [at(0.5)]);
    await app.settled();
    await app.page.evaluate(() => { window.frameNotes = []; });
    for (let i = 0; i < 40; ++i) {
      await app.touch('touchMove', [at((i % 11) / 10)]);
      await app.drawn();
    }
    const notes = await app.page.evaluate(() => window.frameNotes);
    await app.touch('touchEnd', []);
    await app.settled();
    return { frames: notes.length, drawn: notes.filter(({ drawn }) => drawn).length };
  };
  const besides = await moved(rect.y - 12, 0.5); // on the sentence that says what to measure
  assert.ok(besides.frames >= 30 && besides.drawn < besides.frames / 4, JSON.stringify(besides));
  const slid = await moved(rect.y + 30, 0.5);
  assert.ok(slid.drawn >= 30, JSON.stringify(slid));
});

test('a surface that was wiped shows the picture again, in the first frame after the page is told of a size', async (t) => {
  const context = await freshContext(t);
  await context.addInitScript(noteFrames);
  const app = await AppPage.open(context, (await startSite(t)).address);
  await app.page.evaluate(() => { document.getElementById('offline').style.visibility = 'hidden'; }); // its message comes and goes meanwhile
  const before = await app.picture();
  await app.page.evaluate(() => {
    const gl = document.getElementById('canvas').getContext('webgl');
    gl.disable(gl.SCISSOR_TEST);
    gl.clearColor(1, 0, 0, 1);
    gl.clear(gl.COLOR_BUFFER_BIT);
  });
  assert.ok(!before.equals(await app.picture()), 'nothing was wiped: the test proves nothing');
  const first = await app.page.evaluate(() => new Promise((done) => {
    window.frameNotes = [];
    dispatchEvent(new Event('resize')); // to the same size
    const look = () => (window.frameNotes.length > 0 ? done(window.frameNotes[0]) : setTimeout(look, 5));
    look();
  }));
  assert.equal(first.drawn, true);
  await app.settled();
  assert.ok(before.equals(await app.picture()), 'the picture is not the one before');
});

test('counts both taps of a quick double tap', async (t) => {
  const app = await openApp(t);
  const before = await degrees(app);
  const point = await app.pointOn(PLUS);
  for (let i = 0; i < 5; ++i) {
    await app.tapAt(point);
    await app.tapAt(point);
    await app.settled();
  }
  assert.equal(await degrees(app), before + 10);
});

test('a key that is held goes on under a finger that lies still, and one undo takes all of it back', async (t) => {
  const app = await openApp(t);
  const before = await degrees(app);
  await app.touch('touchStart', [await app.pointOn(PLUS)]);
  await app.until(({ widgets }) => parseInt(widgets.find(({ id }) => id === VALUE).value, 10) >= before + 5, 'the fifth degree');
  await app.touch('touchEnd', []);
  await app.settled();
  await app.tap('undo');
  assert.equal(await degrees(app), before);
});

/** The page does nothing else for so long, as on a slow device: from now on, or from when a finger next comes down. */
const keepBusy = (app, ms, fromTouch = false) => app.page.evaluate(({ most, waits }) => {
  const begin = () => setTimeout(() => { for (const end = performance.now() + most; performance.now() < end;); }, 20);
  if (waits) addEventListener('pointerdown', begin, { capture: true, once: true });
  else begin();
}, { most: ms, waits: fromTouch });

test('a tap counts once where the page is busy meanwhile, however long', async (t) => {
  const app = await openApp(t);
  const before = await degrees(app);
  const point = await app.pointOn(PLUS);
  await keepBusy(app, 2000);
  await app.page.waitForTimeout(100); // busy by now
  await app.tapAt(point);
  await app.settled();
  assert.equal(await degrees(app), before + 1, 'down and up while it was busy');
  await keepBusy(app, 2000, true);
  const down = app.touch('touchStart', [point]);
  await app.page.waitForTimeout(100);
  await Promise.all([down, app.touch('touchEnd', [])]);
  await app.settled();
  assert.equal(await degrees(app), before + 2, 'down before it, up meanwhile');
});

test('time in which the page is busy does not count as holding a key', async (t) => {
  const app = await openApp(t);
  const before = await degrees(app);
  const afterwards = app.page.evaluate(() => new Promise((done) => {
    const inFrames = (left, act) => requestAnimationFrame(() => (left > 1 ? inFrames(left - 1, act) : act()));
    const work = () => {
      for (const end = performance.now() + 2000; performance.now() < end;);
      inFrames(3, () => done(window.guywright.state()));
    };
    addEventListener('pointerdown', () => inFrames(3, work), { capture: true, once: true }); // it has been drawn as pressed by then
  }));
  await app.touch('touchStart', [await app.pointOn(PLUS)]);
  const { widgets } = await afterwards;
  assert.equal(parseInt(widgets.find(({ id }) => id === VALUE).value, 10), before);
  await app.touch('touchEnd', []);
});

test('lets go of a button when the finger leaves the screen', async (t) => {
  const app = await openApp(t);
  const { rect } = await app.widget(PLUS);
  const picture = () => app.page.screenshot({ clip: rect });
  const before = await picture();
  await app.tap(PLUS);
  assert.ok(before.equals(await picture()), 'a button still looks touched');
});

test('leaves the keys to an HTML input that has the focus', async (t) => {
  const app = await openApp(t);
  await app.page.evaluate(() => {
    const input = document.createElement('input');
    input.id = 'typed';
    document.body.append(input);
    input.focus();
  });
  await app.page.keyboard.type('North ledge 12.5');
  await app.page.keyboard.press('Backspace');
  assert.equal(await app.page.locator('#typed').inputValue(), 'North ledge 12.');
});

test('paints the same picture after the graphics context was lost and restored', async (t) => {
  const app = await openApp(t);
  await app.page.evaluate(() => { document.getElementById('offline').style.visibility = 'hidden'; }); // its message comes and goes meanwhile
  const before = await app.picture();
  await app.loseContext();
  assert.ok(!before.equals(await app.picture()), 'the context was not lost: the test proves nothing');
  await app.restoreContext();
  assert.ok(before.equals(await app.picture()), 'the picture is not the one before');
});

/** What the drawing buffer is, and what it should be for the canvas' size on the screen. */
function buffer(app) {
  return app.page.evaluate(() => {
    const canvas = document.getElementById('canvas');
    const { width, height } = canvas.getBoundingClientRect();
    return { is: [canvas.width, canvas.height], should: [Math.floor(width * devicePixelRatio), Math.floor(height * devicePixelRatio)], width, height };
  });
}

async function assertFits(app) {
  const { is, should, width, height } = await buffer(app);
  assert.deepEqual(is, should);
  const { widgets } = await app.state();
  for (const { id, rect } of widgets) {
    const inside = rect.x >= 0 && rect.y >= 0 && rect.x + rect.width <= width + 0.5 && rect.y + rect.height <= height + 0.5;
    assert.ok(inside, `${id} leaves the screen of ${width} x ${height}: ${JSON.stringify(rect)}`);
  }
}

test('follows a rotation of the device', async (t) => {
  const app = await openApp(t, SCREENS.tabletUpright);
  await assertFits(app);
  for (const { width, height } of [SCREENS.tabletAcross, SCREENS.tabletUpright]) {
    await app.resize(width, height);
    await assertFits(app);
  }
});

async function becomes(app, width, height, deviceScaleFactor) {
  await app.devtools.send('Emulation.setDeviceMetricsOverride', { width, height, deviceScaleFactor, mobile: false });
  await app.page.waitForFunction((wanted) => String([innerWidth, innerHeight, devicePixelRatio]) === wanted, String([width, height, deviceScaleFactor]));
  await app.laidOut();
}

test('follows the zoom of the browser', onlyInChromium('a pixel ratio'), async (t) => {
  const app = await openApp(t, SCREENS.desktop);
  const { width, height } = SCREENS.desktop;
  for (const zoom of [1.25, 0.75, 1]) {
    await becomes(app, Math.round(width / zoom), Math.round(height / zoom), zoom);
    await assertFits(app);
  }
});

test('follows a pixel ratio that changes alone, at the latest with the next movement', onlyInChromium('a pixel ratio'), async (t) => {
  const app = await openApp(t, SCREENS.desktop);
  const { width, height } = SCREENS.desktop;
  for (const ratio of [2, 1]) {
    await becomes(app, width, height, ratio);
    await app.page.mouse.move(200 + ratio, 200); // the emulation tells the page nothing; a real screen does
    await app.settled();
    await assertFits(app);
  }
});

const EXAMPLE = new URL('../../assets/examples/spillway-bench.json', import.meta.url);

async function chooseFile(app, file) {
  await app.tap('menu');
  await app.openFile('open', file);
}

const planFile = (text) => ({ name: 'plan.json', mimeType: 'application/json', buffer: Buffer.from(text) });

test('opens a plan file', async (t) => {
  const app = await openApp(t);
  const plan = JSON.parse(readFileSync(EXAMPLE, 'utf8'));
  plan.edge.face_deg = 73;
  await chooseFile(app, planFile(JSON.stringify(plan)));
  await app.page.reload();
  await app.ready();
  assert.equal(await degrees(app), 73);
});

test('a file that is no plan changes nothing, and a zero byte does not hide what follows it', async (t) => {
  const app = await openApp(t);
  const { check_code } = await app.state();
  const example = readFileSync(EXAMPLE, 'utf8').replace(/"face_deg": *85/, '"face_deg": 73');
  for (const text of ['', 'no plan', '{"format":"guywright-plan","version":1}', `${example}\0{}`]) {
    await chooseFile(app, planFile(text));
    await app.page.reload(); // what was kept is still the plan of before
    await app.ready();
    assert.equal((await app.state()).check_code, check_code, text.slice(-20));
  }
});

test('refuses a file over 256 kB unread and says so', async (t) => {
  const app = await openApp(t);
  const { check_code } = await app.state();
  await chooseFile(app, { ...planFile(' '.repeat(256 * 1024 + 1)), name: 'film.json' });
  const notice = app.page.locator('#notice');
  assert.match(await notice.innerText(), /"film\.json" is 257 kB\. A plan file is at most 256 kB\./);
  await notice.getByRole('button', { name: 'OK' }).tap();
  assert.equal(await notice.isVisible(), false);
  assert.equal((await app.state()).check_code, check_code);
});

test('saves the plan as a file that opens again', async (t) => {
  const app = await openApp(t);
  await app.tap(PLUS);
  const changed = await degrees(app);
  const { text } = await app.handed(() => choose(app, 'save'));
  assert.equal(JSON.parse(text).edge.face_deg, changed);
});

test('keeps every finished gesture when the browser is killed', async (t) => {
  const site = await startSite(t);
  const profile = temporaryFolder(t);
  const first = await AppPage.open(await launch(t, profile), site.address);
  await first.tap(PLUS);
  await first.tap(PLUS);
  const kept = await degrees(first);
  killBrowser(profile);
  const second = await AppPage.open(await launch(t, profile), site.address);
  assert.equal(await degrees(second), kept);
});

test('reads the verdict out as text', async (t) => {
  const app = await openApp(t);
  const { verdict } = await app.state();
  await app.page.waitForFunction((word) => document.getElementById('verdict').textContent.startsWith(word), verdict);
});

test('says in plain words that there is no WebGL', async (t) => {
  const site = await startSite(t);
  const context = await freshContext(t);
  await context.addInitScript(() => {
    HTMLCanvasElement.prototype.getContext = () => null;
  });
  const page = await context.newPage();
  await page.goto(site.address);
  await page.getByRole('heading', { name: 'The app is not running' }).waitFor();
  assert.match(await page.locator('#stopped .what').innerText(), /WebGL/);
});

test('says that it stopped when a fault stops it, and gives the kept plan back as a file', async (t) => {
  const app = await openApp(t);
  await app.tap(PLUS);
  // A program of one instruction, "unreachable": the fault that a broken program raises.
  await app.page.evaluate(() => setTimeout(() => {
    const bytes = new Uint8Array([0, 97, 115, 109, 1, 0, 0, 0, 1, 4, 1, 96, 0, 0, 3, 2, 1, 0, 7, 5, 1, 1, 102, 0, 0, 10, 5, 1, 3, 0, 0, 11]);
    new WebAssembly.Instance(new WebAssembly.Module(bytes)).exports.f();
  }));
  await app.page.getByRole('heading', { name: 'The app is not running' }).waitFor();
  const { name } = await app.handed(() => app.page.locator('#rescue').tap());
  assert.equal(name, 'rescued-plan.json');
});

test('starts without the kept plan when asked to', async (t) => {
  const site = await startSite(t);
  const context = await freshContext(t);
  const first = await AppPage.open(context, site.address);
  const untouched = await degrees(first);
  await first.tap(PLUS);
  const second = await AppPage.open(context, `${site.address}?fresh`);
  assert.equal(await degrees(second), untouched);
});
