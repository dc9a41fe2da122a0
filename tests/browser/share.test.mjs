// A plan goes to another device without a network: as a code that its camera or a picture brings over, as a file. And onto paper.

import assert from 'node:assert/strict';
import { readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';

import { LANGUAGES, fill, wordsOf } from '../../web/words.js';
import { crc32 } from './crc32.mjs';
import { AppPage, SCREENS, SITE, freshContext, launch, onlyInChromium, startSite, temporaryFolder } from './harness.mjs';
import { checked, choose, coarse, savedPlan, severalCodes, showPlans } from './steps.mjs';

const EXAMPLES = new URL('../../assets/examples/', import.meta.url);
const EN = wordsOf('en');
const example = (name) => JSON.parse(readFileSync(new URL(`${name}.json`, EXAMPLES), 'utf8'));
const MOST_BYTES_OF_HUGE_FILE = 100 * 1024 * 1024;
const SIGNS = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ$*-.:';
const MARK = 'GUYW';

/** Six guys and two ropes, with numbers as a tape and a compass give them. */
function sixGuys() {
  const plan = example('spillway-bench');
  const [rope] = plan.ropes, [guy] = plan.guys;
  plan.title = 'Second bay';
  plan.ropes = ['main', 'belay'].map((name) => ({ ...rope, name, share: 0.5 }));
  plan.guys = [150, 180, 210, 285, 310, 75].map((bearing_deg, i) => ({ ...guy, name: `guy ${i + 1}`, bearing_deg, inclination_deg: 28.5 + i, pretension_kN: 0.25 + i / 100 }));
  return plan;
}

const asFile = (name, content, mimeType = 'application/json') => ({ name, mimeType, buffer: Buffer.from(content) });
const planFile = (plan) => asFile('plan.json', JSON.stringify(plan));

async function openPages(t, context, address) {
  const app = await AppPage.open(context, address);
  return Object.assign(app, {
    key: (id) => app.page.locator(`#page button[data-id="${id}"]`),
    message: () => app.page.locator('#page .message').textContent(),
  });
}

async function openPlanFile(app, plan) {
  const [chooser] = await Promise.all([app.page.waitForEvent('filechooser'), choose(app, 'open')]);
  await chooser.setFiles(planFile(plan));
  await app.until((state) => state.title === plan.title, 'the plan of the file');
}

/** Pictures of all codes of the plan in hand, in the order in which they are shown. */
async function codePictures(app) {
  await choose(app, 'share');
  await app.page.locator('#page .qr').waitFor();
  if (await app.key('turn codes').isVisible()) await app.key('turn codes').click(); // stands still
  const place = () => app.page.locator('#page .place').textContent();
  const pictures = new Map();
  for (let i = 0; i < 20 && !pictures.has(await place()); ++i) {
    pictures.set(await place(), await app.page.locator('#page .code').screenshot({ caret: 'initial' }));
    if (pictures.size > 1 || (await app.key('next code').isVisible())) await app.key('next code').click();
  }
  return [...pictures.values()];
}

async function give(app, file) {
  await app.page.locator('#code-file').setInputFiles(file);
}

const said = (app, words) => app.page.waitForFunction((part) => document.querySelector('#page .message')?.textContent.includes(part), words);

/** The largest run of bytes that `text` stands for, and back: what a stranger with the same rules would do. */
function bytesOf(text) {
  const out = [];
  for (let i = MARK.length; i < text.length; i += 3) {
    const group = [...text.slice(i, i + 3)].reduceRight((sum, sign) => sum * SIGNS.length + SIGNS.indexOf(sign), 0);
    if (i + 3 <= text.length) out.push(group >> 8);
    out.push(group & 255);
  }
  return out;
}
function textOf(bytes) {
  let out = MARK;
  for (let i = 0; i < bytes.length; i += 2) {
    const pair = i + 1 < bytes.length;
    for (let v = pair ? bytes[i] * 256 + bytes[i + 1] : bytes[i], n = pair ? 3 : 2; n > 0; --n, v = Math.floor(v / SIGNS.length)) out += SIGNS[v % SIGNS.length];
  }
  return out;
}
const crcBytes = (bytes) => [24, 16, 8, 0].map((shift) => (crc32(bytes) >>> shift) & 255);

test('a plan with six guys and two ropes goes over in one code, with the server stopped, and is the same byte for byte', async (t) => {
  const site = await startSite(t);
  const [from, to] = [await openPages(t, await freshContext(t, coarse(SCREENS.phone)), site.address), await openPages(t, await freshContext(t, coarse(SCREENS.phone)), site.address)];
  await Promise.all([from.copyReady(), to.copyReady()]);
  await site.stop();
  await openPlanFile(from, sixGuys());
  const plan = await savedPlan(from);
  const pictures = await codePictures(from);
  assert.equal(pictures.length, 1);
  const version = Number(await from.page.locator('#page .qr').getAttribute('data-version'));
  assert.ok(version <= 20, `QR version ${version}`);
  console.log(`six guys, two ropes: QR version ${version}`);
  const code = await from.page.locator('#page .signs').textContent();
  const before = await savedPlan(to);
  await choose(to, 'read code');
  await give(to, asFile('photo.png', pictures[0], 'image/png'));
  await to.key('open read').waitFor();
  assert.equal(await to.page.locator('#page .signs').textContent(), code, 'the check code to compare');
  assert.equal(await savedPlan(to), before, 'nothing is opened before the person says so');
  await to.key('open read').click();
  await to.until((state) => state.title === 'Second bay', 'the plan that was read');
  assert.equal(await savedPlan(to), plan);
  assert.equal((await checked(to)).check_code, code);
  assert.deepEqual([...from.complaints, ...to.complaints].filter((line) => !/ERR_CONNECTION_REFUSED/.test(line)), []);
});

test('the plan in hand stays on the list, and several codes are read in any order', onlyInChromium('to touch a window behind another'), async (t) => {
  const site = await startSite(t);
  const app = await openPages(t, await freshContext(t, coarse(SCREENS.tabletAcross)), site.address);
  await openPlanFile(app, sixGuys());
  const mine = await savedPlan(app);
  const other = await openPages(t, await freshContext(t, coarse(SCREENS.desktop)), site.address);
  await openPlanFile(other, severalCodes());
  const theirs = await savedPlan(other);
  const pictures = await codePictures(other);
  assert.ok(pictures.length > 1, `${pictures.length} codes`);
  await choose(app, 'read code');
  for (const picture of pictures.slice(1).reverse()) {
    await give(app, asFile('photo.png', picture, 'image/png'));
    await said(app, 'codes read');
  }
  assert.match(await app.message(), /Missing: 1\./);
  await give(app, asFile('photo.png', pictures[0], 'image/png'));
  await app.key('open read').click();
  await app.until((state) => state.title === 'Long note', 'the plan that was read');
  assert.equal(await savedPlan(app), theirs);
  const list = await showPlans(app);
  assert.deepEqual(list.map(({ label }) => label), ['Long note', 'Second bay']);
  await app.tap('plan 1');
  await app.until((state) => state.title === 'Second bay', 'the plan that was in hand');
  assert.equal(await savedPlan(app), mine);
});

test('what cannot be used is said in plain words and changes nothing', async (t) => {
  const site = await startSite(t);
  const app = await openPages(t, await freshContext(t, coarse(SCREENS.phone)), site.address);
  const before = await savedPlan(app);
  const drawn = async (text) => {
    const handle = await app.page.evaluateHandle(async (words) => {
      const { draw } = await import('./qr.js');
      const box = document.createElement('div');
      box.id = 'drawn';
      box.className = 'code';
      box.append(await draw(words, 'a code'));
      document.getElementById('page').querySelector('.body').append(box);
      return box;
    }, text);
    await handle.asElement().scrollIntoViewIfNeeded();
    const picture = await handle.asElement().screenshot({ caret: 'initial' });
    await app.page.evaluate(() => document.getElementById('drawn').remove());
    return asFile('photo.png', picture, 'image/png');
  };
  await choose(app, 'read code');
  const text = await app.page.evaluate(() => JSON.parse(window.guywright.share()).codes[0]);
  const newer = bytesOf(text).slice(0, -4).with?.(0, 2) ?? [2, ...bytesOf(text).slice(1, -4)];
  assert.equal(textOf(bytesOf(text)), text, 'the rules of this test are those of the code');
  const folder = temporaryFolder(t);
  const huge = (name) => {
    writeFileSync(join(folder, name), '{');
    truncateSync(join(folder, name), MOST_BYTES_OF_HUGE_FILE);
    return join(folder, name);
  };
  const cases = [
    [await drawn('HELLO'), 'no code of a plan'],
    [await drawn(text.slice(0, -1)), 'damaged or cut off'],
    [await drawn(textOf([...newer, ...crcBytes(newer)])), 'newer version'],
    [asFile('blank.svg', '<svg xmlns="http://www.w3.org/2000/svg" width="300" height="300"><rect width="300" height="300" fill="#888"/></svg>', 'image/svg+xml'), /cannot be read as a picture|No code was found/],
    [asFile('torn.png', 'this is no picture', 'image/png'), 'cannot be read as a picture'],
    [huge('plan.json'), 'is 100 MB. A plan file is at most 256 kB'],
    [huge('photo.png'), 'is 100 MB. A picture is at most 40 MB'],
    [asFile('other.json', '{"format":"guywright-plan","version":9}'), 'This file cannot be used'],
    [asFile('list.json', '[1,2,3]'), 'This file cannot be used'],
    [asFile('codes.txt', text.slice(0, -1), 'text/plain'), 'damaged or cut off'],
  ];
  for (const [file, words] of cases) {
    await app.page.evaluate(() => { document.querySelector('#page .message').textContent = ''; });
    await give(app, file);
    await app.page.waitForFunction(() => document.querySelector('#page .message').textContent !== '');
    assert.match(await app.message(), words instanceof RegExp ? words : new RegExp(words));
    assert.match(await app.message(), /Nothing was opened|Your plan is as it was/);
    assert.equal(await app.page.evaluate(() => window.guywright.plan()), before);
  }
  await give(app, planFile(sixGuys())); // and a good one still goes through
  await app.key('open read').waitFor();
  await app.page.keyboard.press('Escape');
  assert.equal(await savedPlan(app), before, 'looked at and not opened');
});

test('without the library of codes it is said so, and file and rig sheet are there all the same', async (t) => {
  const site = await startSite(t);
  for (const part of ['index', 'decode']) site.answers.set(`/lib/qr/${part}.js`, (_, response) => response.writeHead(404).end());
  const app = await openPages(t, await freshContext(t, coarse(SCREENS.phone)), site.address);
  await choose(app, 'share');
  await app.key('save file').waitFor();
  assert.equal(await app.message(), EN.noCodes);
  assert.equal(await app.key('next code').count(), 0);
  await app.key('close page').click();
  await choose(app, 'sheet');
  await app.key('print').waitFor();
  assert.equal(await app.page.locator('#page .status').textContent(), EN.noCodes);
  assert.match(await app.page.locator('#page .paper').innerText(), /Anchors/);
  await app.key('close page').click();
  await choose(app, 'read code');
  await give(app, asFile('photo.png', readFileSync(join(SITE, 'icons', 'icon-192.png')), 'image/png'));
  await app.page.waitForFunction((text) => document.querySelector('#page .message').textContent === text, EN.noCodes);
});

/** A film for Chromium's make-believe camera: each code for a second. */
async function film(app, folder) {
  const wide = 1280, high = 960, each = 10;
  const modules = await app.page.evaluate(async () => {
    const { default: encodeQR } = await import('./lib/qr/index.js');
    return JSON.parse(window.guywright.share()).codes.map((text) => encodeQR(text, 'raw', { ecc: 'medium', encoding: 'alphanumeric', border: 4 }));
  });
  const frames = modules.map((rows) => {
    const size = Math.floor(high * 0.9 / rows.length), left = Math.floor((wide - size * rows.length) / 2), top = Math.floor((high - size * rows.length) / 2);
    const light = Buffer.alloc(wide * high, 120);
    rows.forEach((row, y) => row.forEach((dark, x) => {
      for (let line = 0; line < size; ++line) light.fill(dark ? 30 : 220, (top + y * size + line) * wide + left + x * size, (top + y * size + line) * wide + left + (x + 1) * size);
    }));
    return Buffer.concat([Buffer.from('FRAME\n'), light, Buffer.alloc(wide * high / 2, 128)]);
  });
  const path = join(folder, 'camera.y4m');
  writeFileSync(path, Buffer.concat([Buffer.from(`YUV4MPEG2 W${wide} H${high} F10:1 Ip A1:1 C420mpeg2\n`), ...frames.flatMap((frame) => Array(each).fill(frame))]));
  return path;
}

test('the camera reads codes one after the other', onlyInChromium('what the camera sees'), async (t) => {
  const site = await startSite(t);
  const from = await openPages(t, await freshContext(t, coarse(SCREENS.desktop)), site.address);
  await openPlanFile(from, severalCodes());
  const plan = await savedPlan(from);
  const camera = await film(from, temporaryFolder(t));
  const context = await launch(t, temporaryFolder(t), { screen: coarse(SCREENS.phone),
    flags: ['--use-fake-ui-for-media-stream', '--use-fake-device-for-media-stream', `--use-file-for-fake-video-capture=${camera}`] });
  const to = await openPages(t, context, site.address);
  await choose(to, 'read code');
  await to.key('camera').click();
  await to.key('open read').waitFor();
  assert.equal(await to.page.evaluate(() => document.querySelector('#page video')?.srcObject ?? null), null, 'the camera is let go');
  await to.key('open read').click();
  await to.until((state) => state.title === 'Long note', 'the plan before the camera');
  assert.equal(await savedPlan(to), plan);
});

test('a camera that is refused: the way by a picture is told', async (t) => {
  const site = await startSite(t);
  const context = await freshContext(t, coarse(SCREENS.phone));
  const app = await openPages(t, context, site.address);
  await choose(app, 'read code');
  await app.page.evaluate(() => { navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException('Permission denied', 'NotAllowedError')); });
  await app.key('camera').click();
  await said(app, wordsOf('en').cameraDenied);
  assert.ok(await app.key('choose file').isVisible());
  await app.page.evaluate(() => { navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException('Requested device not found', 'NotFoundError')); });
  await app.key('camera').click();
  await said(app, 'Requested device not found');
});

test('the code is black on white in every light, its keys fit a glove, and sharing a file is offered only where it works', async (t) => {
  const site = await startSite(t);
  const app = await openPages(t, await freshContext(t, coarse(SCREENS.phone)), site.address);
  await checked(app);
  await choose(app, 'theme');
  await app.tap('theme');
  await app.tap('close menu');
  await choose(app, 'share');
  await app.page.locator('#page .qr').waitFor();
  const look = await app.page.evaluate(() => {
    const style = (selector, name) => getComputedStyle(document.querySelector(selector))[name];
    const box = document.querySelector('#page .qr').getBoundingClientRect();
    return { paper: style('#page .code', 'backgroundColor'), rect: style('#page .qr rect', 'fill'), ink: style('#page .qr path', 'fill'), page: style('#page', 'backgroundColor'),
      wide: box.width, keys: [...document.querySelectorAll('#page button')].map((key) => key.getBoundingClientRect().height), shares: document.querySelector('[data-id="share file"]') !== null };
  });
  assert.deepEqual([look.paper, look.rect, look.ink], ['rgb(255, 255, 255)', 'rgb(255, 255, 255)', 'rgb(0, 0, 0)']);
  assert.notEqual(look.page, 'rgb(255, 255, 255)', 'the page around it is that of the night');
  assert.ok(look.wide > 300, `${look.wide} px`);
  assert.ok(look.keys.every((high) => high >= 72), `${look.keys}`);
  assert.equal(look.shares, false);
  await app.key('close page').click();
  await app.page.evaluate(() => {
    navigator.canShare = ({ files }) => files[0].type === 'text/plain'; // as browsers that hand on no JSON
    navigator.share = async ({ files: [file] }) => { window.handedOn = [file.name, await file.text()]; };
  });
  await choose(app, 'share');
  await app.key('share file').click();
  await app.page.waitForFunction(() => window.handedOn);
  const [name, content] = await app.page.evaluate(() => window.handedOn);
  assert.equal(name, 'spillway-bench-inspection.guywright.txt');
  assert.equal(JSON.stringify(JSON.parse(content)), await savedPlan(app));
});

const pagesOf = (pdf) => pdf.toString('latin1').match(/\/Type \/Page\b/g).length;

test('the rig sheet holds what the engine says, prints on A4 and Letter, and asks nothing of anybody', onlyInChromium('to print'), async (t) => {
  const site = await startSite(t);
  const app = await openPages(t, await freshContext(t, coarse(SCREENS.desktop)), site.address);
  await app.copyReady();
  await site.stop();
  const { check_code: code } = await checked(app);
  await choose(app, 'sheet');
  await app.key('print').waitFor();
  const sheet = await app.page.evaluate(() => JSON.parse(window.guywright.sheet()));
  const shown = (await app.page.locator('#page .paper').textContent()).replaceAll('\u00A0', ' ');
  const texts = (part) => (typeof part === 'string' ? [part] : Object.entries(part ?? {}).filter(([key]) => !['kind', 'codes'].includes(key)).flatMap(([, each]) => texts(each)));
  const wanted = [sheet.title, sheet.verdict, code, sheet.governs, ...sheet.drawings.flatMap(({ title, texts: labels }) => [title, ...texts(labels)]), ...texts(sheet.sections), ...sheet.notes];
  assert.ok(wanted.length > 150, `${wanted.length} texts`);
  for (const text of wanted) assert.ok(shown.includes(text), `not on the sheet: ${text}`);
  assert.equal(sheet.check_code, code);
  assert.equal(await app.page.locator('#page .box').count(), 14);
  assert.equal(await app.page.locator('#page .signature').count(), 2);
  const mm = await app.page.evaluate(() => {
    const width = document.querySelector('#page figure svg').getAttribute('width');
    return [width, document.querySelector('#page figure svg').getAttribute('viewBox')];
  });
  assert.deepEqual(mm, ['102mm', '0 0 102 92']);
  for (const format of ['A4', 'Letter']) {
    const pdf = await app.page.pdf({ format });
    assert.ok(pagesOf(pdf) >= 2 && pagesOf(pdf) <= 5, `${format}: ${pagesOf(pdf)} pages`);
  }
  await app.page.emulateMedia({ media: 'print' });
  await app.page.setViewportSize({ width: 703, height: 1000 }); // A4 between its margins
  const paper = await app.page.evaluate(() => ({
    wide: document.documentElement.scrollWidth,
    drawn: document.querySelector('#page figure svg').getBoundingClientRect().width,
    keys: [...document.querySelectorAll('button, canvas')].filter((each) => each.getClientRects().length > 0).length,
    head: document.querySelector('#page .running').textContent,
  }));
  assert.ok(paper.wide <= 703, `${paper.wide} px wide`);
  assert.ok(Math.abs(paper.drawn - 102 / 25.4 * 96) < 0.5, `${paper.drawn} px: not to scale`);
  assert.equal(paper.keys, 0, 'no key is printed');
  assert.match(paper.head, new RegExp(code));
  await app.page.emulateMedia({ media: null });
  await app.page.evaluate(() => { window.print = () => { window.printed = true; }; });
  await app.key('print').click();
  assert.equal(await app.page.evaluate(() => window.printed), true);
  assert.deepEqual(app.requests.filter((address) => !address.startsWith(site.address) && !/^(blob|data):/.test(address)), []);
});

test('a drawing of the rig sheet fits a phone, and a tap shows it with letters that can be read; Escape leads back to the sheet', async (t) => {
  const site = await startSite(t);
  const app = await openPages(t, await freshContext(t, coarse(SCREENS.phone)), site.address);
  await checked(app);
  await choose(app, 'sheet');
  await app.key('print').waitFor();
  const { drawings: [{ letter_mm: letter, size_mm: [wide] }] } = await app.page.evaluate(() => JSON.parse(window.guywright.sheet()));
  const widthOf = (selector) => app.page.locator(selector).first().evaluate((svg) => svg.getBoundingClientRect().width);
  assert.ok((await widthOf('#page figure svg')) <= SCREENS.phone.width);
  await app.key('enlarge 1').click();
  const letters = (await widthOf('#enlarged svg')) * letter / wide;
  assert.ok(letters >= 18, `${letters} px`);
  await app.page.keyboard.press('Escape');
  await app.page.locator('#enlarged').waitFor({ state: 'detached' });
  assert.ok(await app.key('print').isVisible());
  await app.key('enlarge 2').click();
  await app.key('close drawing').click();
  await app.page.locator('#enlarged').waitFor({ state: 'detached' });
});

test('the words of the pages are there in every language, with the same places to fill in', () => {
  const marks = (text) => [...text.matchAll(/\{\w+\}/g)].map(([mark]) => mark).sort();
  for (const language of LANGUAGES) {
    const words = wordsOf(language);
    assert.deepEqual(Object.keys(words), Object.keys(wordsOf('en')), language);
    for (const [key, text] of Object.entries(words)) {
      assert.ok(text.length > 0, `${language}.${key}`);
      assert.deepEqual(marks(text), marks(wordsOf('en')[key]), `${language}.${key}`);
    }
  }
  assert.equal(fill('{a} of {b}, {c}', { a: 1, b: 2 }), '1 of 2, {c}');
  for (const [key, text] of Object.entries(wordsOf('fr'))) assert.doesNotMatch(text, /[^\u00A0][:;?!»](?!\d)|«[^\u00A0]| ["\u201C]/u, `fr.${key} lets a sign begin a line`);
});
