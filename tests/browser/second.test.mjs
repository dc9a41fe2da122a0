// The second check: measured again blind, compared, signed by two, kept in a log that outlives versions.

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';

import { LOG_VERSION, entryFaults, readLog, timeOf, writeLog } from '../../web/log_format.js';
import { fill, wordsOf } from '../../web/words.js';
import * as second from '../../web/second_state.js';
import { AppPage, SCREENS, SITE, freshContext, startSite } from './harness.mjs';
import { asRead, asked, checked, choose, coarse, enterText, savedPlan, shownAt } from './steps.mjs';

const EN = wordsOf('en');
const SECONDS_A_TAP = 2, SECONDS_A_SIGN = 1; // what a gloved finger takes, by estimate
const MOST_SECONDS = 90;
const FACE_PLUS = 'more edge.face_deg';
const OLD_LOG = readFileSync(new URL('../logs/signed_by_version_1.json', import.meta.url), 'utf8');
const EXAMPLE = JSON.parse(readFileSync(new URL('../../assets/examples/spillway-bench.json', import.meta.url), 'utf8'));

/** The example with numbers that stand nowhere else on any page, each a little off what a second person reads. */
function oddPlan() {
  const plan = structuredClone(EXAMPLE);
  plan.title = 'Gate pier';
  plan.edge.face_deg += 0.37;
  plan.frame.foot_m[0][0] -= 0.0173;
  plan.frame.lean_deg += 0.37;
  plan.frame.lean_bearing_deg = 0.73;
  plan.ropes[0].load_kg += 0.73;
  plan.ropes[0].haul.bearing_deg += 0.37;
  plan.ropes[0].haul.distance_m += 0.0173;
  plan.ropes[0].haul.height_m += 0.0173;
  plan.guys.forEach((guy) => {
    guy.bearing_deg += 0.37;
    guy.inclination_deg += 0.37;
    guy.anchor_height_m += 0.0173;
    guy.pretension_kN += 0.0137;
  });
  return JSON.parse(JSON.stringify(plan), (_, value) => (typeof value === 'number' ? Math.round(value * 1e4) / 1e4 : value)); // no digits of the sums
}

const asFile = (name, content, mimeType = 'application/json') => ({ name, mimeType, buffer: Buffer.from(content) });

async function open(t, screen = SCREENS.phone, site = undefined) {
  const at = site ?? (await startSite(t));
  const context = await freshContext(t, coarse(screen));
  const app = await AppPage.open(context, at.address);
  return Object.assign(app, {
    site: at,
    context,
    key: (id) => app.page.locator(`#page button[data-id="${id}"]`),
    text: () => app.page.locator('#page').innerText(),
    says: (words) => app.page.waitForFunction((part) => document.getElementById('page').innerText.includes(part), words),
  });
}

async function openPlan(app, plan) {
  const [chooser] = await Promise.all([app.page.waitForEvent('filechooser'), choose(app, 'open')]);
  await chooser.setFiles(asFile('plan.json', JSON.stringify(plan)));
  await app.until((state) => state.title === plan.title, 'the plan of the file');
}

const startSecond = async (app) => {
  await checked(app);
  await choose(app, 'second');
  await app.key('compare').waitFor();
};

async function fillIn(app, plan, changed = {}) {
  for (const { path } of (await asked(app)).measurements) await app.page.locator(`#page input[data-path="${path}"]`).fill(changed[path] ?? asRead(shownAt(plan, path), path));
}

async function tickAll(app) {
  for (const tick of await app.page.locator('#page [role="checkbox"]').all()) await tick.click();
}

async function signBoth(app, names = ['Mara', 'Jon']) {
  for (const [i, part] of ['rigger', 'second'].entries()) {
    await app.page.locator(`#${part}-name`).fill(names[i]);
    await app.key(`sign as ${part}`).click();
  }
}

/** From the menu to both signatures. */
async function signThrough(app, plan) {
  await startSecond(app);
  await fillIn(app, plan);
  await app.key('compare').click();
  await app.key('go on').click();
  await tickAll(app);
  await signBoth(app);
  await app.says(EN.signedTitle);
}

const allOf = (app, table) => app.page.evaluate(async (name) => {
  await window.guywright.saved();
  const db = await new Promise((done) => { indexedDB.open('guywright log').onsuccess = (event) => done(event.target.result); });
  const all = db.transaction(name).objectStore(name).getAll();
  await new Promise((done) => { all.onsuccess = done; });
  db.close();
  return all.result;
}, table);

async function exportLog(app, id = 'export log') {
  return (await app.handed(() => app.key(id).click())).text;
}

// --- the officer's way ---

test('from the scan to both signatures in less than 90 seconds of gestures, blind, with the server stopped', async (t) => {
  const site = await startSite(t);
  const rigger = await open(t, SCREENS.phone, site);
  const officer = await open(t, SCREENS.phone, site); // not at once with the other: they share a browser, which the first one starts
  await Promise.all([rigger.copyReady(), officer.copyReady()]);
  await site.stop();
  await openPlan(rigger, oddPlan());
  const { check_code: code } = await checked(rigger);
  await choose(rigger, 'share');
  await rigger.page.locator('#page .qr').waitFor();
  await rigger.page.waitForFunction(() => document.getElementById('offline').hidden); // its message lies over the code for a while
  const photo = asFile('photo.png', await rigger.page.locator('#page .code').screenshot(), 'image/png');

  let taps = 0, signs = 0;
  const tapCanvas = officer.tap.bind(officer);
  officer.tap = (id) => (++taps, tapCanvas(id));
  const tap = (id) => (++taps, officer.key(id).tap());
  const type = (text) => ((signs += text.length), officer.page.keyboard.type(text));
  const enter = () => (++signs, officer.page.keyboard.press('Enter'));

  await choose(officer, 'read code');
  const [chooser] = await Promise.all([officer.page.waitForEvent('filechooser'), tap('choose file')]);
  ++taps; // in the system's own picker
  await chooser.setFiles(photo);
  await tap('second read');
  await officer.key('compare').waitFor();
  const { measurements, text } = await asked(officer);
  const plan = JSON.parse(text);
  assert.ok(measurements.length >= 5, `${measurements.length} measurements`);

  const firstNumbers = measurements.map(({ path }) => shownAt(plan, path));
  const blind = async () => {
    const dom = await officer.page.evaluate(() => document.documentElement.outerHTML + [...document.querySelectorAll('input')].map((input) => ` ${input.value}`).join(''));
    for (const number of firstNumbers) for (const sign of ['.', ',']) {
      const digits = String(Math.abs(Math.round(number * 1e6) / 1e6)).replace('.', sign);
      assert.ok(digits.length >= 4, `${digits} could stand on the page by accident`);
      assert.ok(!dom.includes(digits), `the page holds ${digits}, which the rigger has measured`);
    }
  };
  await officer.told(); // the text view would have come by now
  await blind();
  ++taps;
  await officer.page.locator('#second-0').tap();
  for (const [i, { path }] of measurements.entries()) {
    if (i > 0) await enter();
    await type(asRead(firstNumbers[i], path));
  }
  await blind();
  await tap('compare');
  await tap('go on');
  for (let i = 0; i < 7; ++i) for (const part of ['rigger', 'second']) await tap(`tick ${part} ${i}`);
  for (const [part, name] of [['rigger', 'Mara'], ['second', 'Jon']]) {
    const field = officer.page.locator(`#${part}-name`);
    if (part === 'rigger') await (++taps, field.tap());
    else assert.ok(await field.evaluate((input) => input === document.activeElement), 'the second name is waited for');
    await type(name);
    await tap(`sign as ${part}`);
  }
  await officer.says(EN.signedTitle);
  const seconds = SECONDS_A_TAP * taps + SECONDS_A_SIGN * signs;
  console.log(`scan to signature: ${taps} taps, ${signs} typed signs, ${seconds} s of gestures`);
  assert.ok(seconds < MOST_SECONDS, `${seconds} s`);
  assert.equal(await officer.page.locator('#page .signs').textContent(), code);
  const [{ entry, origin }] = await allOf(officer, 'entries');
  assert.equal(origin, 'here');
  assert.equal(entry.plan, text);
  assert.equal(entry.check_code, code);
  assert.equal(entry.report.check_code, code, 'the report of the engine goes with it');
  assert.deepEqual(entry.second.readings.map(({ path }) => path), measurements.map(({ path }) => path));
  assert.deepEqual(entry.signatures.map(({ part, name, role }) => [part, name, role]), [['rigger', 'Mara', 'rigger'], ['second', 'Jon', 'second person']]);
  const about = JSON.parse(readFileSync(`${SITE}/about.json`, 'utf8'));
  assert.deepEqual(entry.app, about.app);
  assert.deepEqual(officer.complaints.filter((line) => !/ERR_CONNECTION_REFUSED/.test(line)), []);
});

// --- entries ---

test('an entry that cannot be is told with field, value and range; what is typed outlives closing and a reload; comma and point are one', async (t) => {
  const app = await open(t);
  await openPlan(app, oddPlan());
  await startSecond(app);
  const { measurements } = await asked(app);
  const deg = measurements.find(({ unit }) => unit === '\u00B0');
  const field = (path) => app.page.locator(`#page input[data-path="${path}"]`);
  await app.key('compare').click();
  await app.says(fill(EN.notAll, { n: measurements.length }));
  await field(deg.path).fill('4000');
  await app.key('compare').click();
  await app.says(`${deg.label}: 4000 is not possible here. ${deg.allowed}.`);
  assert.equal(await field(deg.path).inputValue(), '4000', 'nothing typed is lost');
  await field(deg.path).fill('steep');
  await app.says(`${deg.label}: \u201Csteep\u201D is no number.`);
  await app.key('close page').click();
  assert.ok((await app.page.locator('#text').textContent()).length > 500, 'the text view is there again');
  await app.page.evaluate(() => window.guywright.saved());
  await app.page.reload();
  await app.ready();
  await startSecond(app);
  assert.equal(await field(deg.path).inputValue(), 'steep');
  const judged = (typed) => app.page.evaluate(([path, text]) => {
    document.querySelector(`#page input[data-path="${path}"]`).focus();
    const input = document.activeElement;
    input.value = text;
    input.dispatchEvent(new Event('input', { bubbles: true }));
    input.dispatchEvent(new Event('change', { bubbles: true }));
    return input.getAttribute('aria-invalid');
  }, [deg.path, typed]);
  for (const good of ['37,5', '37.5', ' 37.5 ', '+37.5']) assert.equal(await judged(good), 'false', good);
  for (const bad of ['3,7,5', '1e2', 'nan', 'inf', '0x20', '--3', '-']) assert.equal(await judged(bad), 'true', bad);
  const signed = measurements.find((each) => each.signed);
  if (signed) {
    await field(signed.path).fill('0.4');
    await app.key(`sign ${signed.path}`).click();
    assert.equal(await field(signed.path).inputValue(), '-0.4');
  }
  const small = await app.page.evaluate(() => [...document.querySelectorAll('#page button, #page input[type="text"]')].map((each) => [each.dataset.id ?? each.id, each.getBoundingClientRect().height]).filter(([, high]) => high < 72));
  assert.deepEqual(small, []);
});

test('measurements that disagree, and a verdict that is not GO, cannot be signed', async (t) => {
  const app = await open(t, SCREENS.tabletUpright);
  const plan = oddPlan();
  await openPlan(app, plan);
  await startSecond(app);
  const { measurements } = await asked(app);
  const { path, label } = measurements.find((each) => each.unit === '\u00B0' && each.path.endsWith('bearing_deg')) ?? measurements.find((each) => each.unit === '\u00B0');
  await fillIn(app, plan, { [path]: String(Math.round(shownAt(plan, path)) + 12) });
  await app.key('compare').click();
  await app.key('measure again').waitFor();
  assert.equal(await app.page.locator('#page .badge.apart').count(), 1);
  const row = await app.page.locator('#page tr', { has: app.page.locator('.badge.apart') }).innerText();
  for (const part of [label, EN.disagrees, '11.63']) assert.ok(row.includes(part), `${part} in ${row}`);
  assert.match(await app.text(), /Measure these again together/);
  assert.equal(await app.key('go on').count(), 0);
  const load = measurements.find((each) => each.path.endsWith('load_kg'));
  if (load) {
    await app.key('measure again').click();
    await fillIn(app, plan, { [load.path]: '900' });
    await app.key('compare').click();
    await app.key('measure again').waitFor();
    assert.equal(await app.page.locator('#page .verdict').textContent(), 'NO-GO');
    assert.equal(await app.key('go on').count(), 0);
  }
  await app.key('measure again').click();
  await fillIn(app, plan);
  await app.key('compare').click();
  await app.key('go on').click();
  await app.page.locator('#rigger-name').fill('Mara');
  await app.key('sign as rigger').click();
  await app.says(fill(EN.notSignedList, { n: 14 }));
  await tickAll(app);
  await app.key('tick second 3').click();
  await app.key('sign as rigger').click();
  await app.says(fill(EN.notSignedList, { n: 1 }));
  await app.key('tick second 3').click();
  await app.key('sign as second').click();
  await app.says(EN.notSignedName);
  await app.key('sign as rigger').click();
  await app.page.locator('#second-name').fill(' mara ');
  await app.key('sign as second').click();
  await app.says(fill(EN.notSignedSame, { name: 'Mara' }));
  await app.key('tick rigger 0').click();
  assert.equal(await app.key('take back rigger').count(), 0, 'whoever had signed had signed for a whole list');
  assert.deepEqual(await allOf(app, 'entries'), []);
});

// --- what signatures hold for ---

test('signatures stand on card, sheet and page, and fall away with any change; undo does not bring them back', async (t) => {
  const app = await open(t, SCREENS.tabletAcross);
  await openPlan(app, oddPlan());
  await signThrough(app, oddPlan());
  const cardText = async () => {
    await app.told();
    return app.page.locator('#text').textContent();
  };
  await app.key('sheet of signed').click();
  await app.key('print').waitFor();
  assert.match(await app.page.locator('#page .signatures').innerText(), /Mara, rigger, \d{4}-\d\d-\d\d \d\d:\d\d[^]*Jon, second person/);
  assert.equal(await app.page.locator('#page .box:not(:empty)').count(), 14);
  await app.key('close page').click();
  assert.match(await cardText(), /Signed: Mara, rigger/);
  const signedPlan = await savedPlan(app);
  await choose(app, 'example drain-shaft'); // another plan is no change of this one
  await choose(app, 'plans');
  await app.page.evaluate(() => window.guywright.saved());
  await app.settled();
  await app.tap((await app.state()).widgets.find(({ label }) => label === 'Gate pier').id);
  await app.until((state) => state.title === 'Gate pier', 'the signed plan');
  await checked(app);
  assert.match(await cardText(), /Signed: Mara, rigger/);
  await choose(app, 'name plan');
  await enterText(app, 'Gate pier, left');
  await app.tap('close menu');
  await checked(app);
  assert.doesNotMatch(await cardText(), /Signed:/);
  await choose(app, 'second');
  await app.key('compare').waitFor();
  assert.match(await app.text(), /Signatures fell away: Mara, Jon had signed on/);
  await app.key('close page').click();
  await app.tap('undo');
  await checked(app);
  assert.equal(await savedPlan(app), signedPlan, 'the very plan again');
  assert.doesNotMatch(await cardText(), /Signed:/);
  await app.page.reload();
  await app.ready();
  await choose(app, 'second');
  await app.key('compare').waitFor();
  assert.match(await app.text(), /Signatures fell away: Mara, Jon/);
  await app.key('close page').click();
  await choose(app, 'sheet');
  await app.key('second of sheet').waitFor();
  assert.equal(await app.page.locator('#page .box:not(:empty)').count(), 0);
  const [{ entry }] = await allOf(app, 'entries');
  assert.match(entry.fell_away.time, /^\d{4}-/, 'the entry stays and says so');
});

test('a change while the log cannot be read ends the signatures all the same, and is written when it can be', async (t) => {
  const app = await open(t);
  await openPlan(app, oddPlan());
  await signThrough(app, oddPlan());
  await app.key('close page').click();
  const signedPlan = await savedPlan(app);
  await app.page.evaluate(() => {
    const { transaction } = IDBDatabase.prototype;
    window.mendLog = () => { IDBDatabase.prototype.transaction = transaction; };
    IDBDatabase.prototype.transaction = function broken(...how) {
      if (this.name === 'guywright log') throw new DOMException('broken', 'UnknownError');
      return transaction.apply(this, how);
    };
  });
  await choose(app, 'name plan');
  await enterText(app, 'Gate pier, left');
  await app.tap('close menu');
  await app.tap('undo');
  await checked(app);
  assert.equal(await savedPlan(app), signedPlan, 'the very plan again');
  await app.page.evaluate(() => {
    window.mendLog();
    document.dispatchEvent(new Event('visibilitychange')); // as on coming back to the window
  });
  assert.match((await allOf(app, 'entries'))[0].entry.fell_away.time, /^\d{4}-/);
  await app.told();
  assert.doesNotMatch(await app.page.locator('#text').textContent(), /Signed:/);
  await choose(app, 'second');
  await app.key('compare').waitFor();
  assert.match(await app.text(), /Signatures fell away: Mara, Jon had signed on/);
});

test('a list that got too old while it was open is shown unticked, with what is to do', async (t) => {
  const app = await open(t);
  await openPlan(app, oddPlan());
  await startSecond(app);
  await fillIn(app, oddPlan());
  await app.key('compare').click();
  await app.key('go on').click();
  await tickAll(app);
  await app.page.locator('#rigger-name').fill('Mara');
  await app.page.evaluate((later) => {
    const now = Date.now;
    Date.now = () => now() + later;
  }, second.TICKS_HOLD_MS);
  await app.key('sign as rigger').click();
  await app.says(fill(EN.notSignedList, { n: 14 }));
  assert.equal(await app.page.locator('#page [role="checkbox"][aria-checked="true"]').count(), 0);
  assert.equal(await app.page.locator('#rigger-name').inputValue(), 'Mara', 'nothing typed is lost');
  await tickAll(app);
  await signBoth(app);
  await app.says(EN.signedTitle);
});

// --- the log ---

test('the log goes out as one file and into a fresh profile; damaged entries are set aside and never lost', async (t) => {
  const app = await open(t);
  await openPlan(app, oddPlan());
  await signThrough(app, oddPlan());
  await app.page.evaluate(async () => {
    const db = await new Promise((done) => { indexedDB.open('guywright log').onsuccess = (event) => done(event.target.result); });
    const entries = db.transaction('entries', 'readwrite').objectStore('entries');
    const get = entries.getAll();
    await new Promise((done) => { get.onsuccess = done; });
    const [{ entry }] = get.result;
    entries.put({ entry: { ...entry, title: 'Bent', plan: entry.plan.replace('Gate', 'Late') }, origin: 'here' }, 'bent');
    entries.put('torn page', 'torn');
    await new Promise((done) => { entries.transaction.oncomplete = done; });
    db.close();
  });
  await app.key('open log').click();
  await app.says(fill(EN.logCount, { n: 3 }));
  assert.equal((await app.text()).split(EN.stateDamaged).length - 1, 2);
  const file = await exportLog(app);
  const { format, version, entries, set_aside: setAside, app: by } = JSON.parse(file);
  assert.deepEqual([format, version, entries.length], ['guywright-log', LOG_VERSION, 1]);
  assert.equal(setAside.length, 2);
  assert.ok(setAside.includes('torn page'));
  assert.match(by.version, /\d/);
  await app.key('entry bent').click();
  await app.says('entry.check_code is');
  const saved = await app.handed(() => app.key('save found').click());
  assert.equal(JSON.parse(saved.text).title, 'Bent');

  const other = await open(t, SCREENS.desktop, app.site);
  await choose(other, 'log');
  await other.says(EN.logEmpty);
  await other.page.locator('#log-file').setInputFiles(asFile('log.json', file));
  await other.says('"log.json": entries read: 1; here already: 0; damaged and set aside: 2.');
  await other.page.locator('#log-file').setInputFiles(asFile('log.json', file));
  await other.says('"log.json": entries read: 0; here already: 3; damaged and set aside: 0.');
  assert.deepEqual((await allOf(other, 'entries')).find(({ entry }) => entry?.title === 'Gate pier').entry, entries[0]); // the bent one has its id, too
  await other.key(`entry ${entries[0].id}`).click();
  for (const words of ['Mara, rigger', 'Jon, second person', entries[0].check_code, entries[0].preload[0].item, entries[0].second.readings[0].label, EN.stateFile]) await other.says(words);
  await other.key('open its plan').click();
  await other.until((state) => state.title === 'Gate pier', 'the plan of the entry');
  await checked(other);
  assert.equal(await savedPlan(other), entries[0].plan);
  await choose(other, 'second');
  await other.key('compare').waitFor(); // a record from a file signs nothing here

  await other.key('close page').click();
  await choose(other, 'log');
  const refused = [['{"format":"guywright-log","version":9,"entries":[]}', 'is a log of version 9'], ['{"format":"guywright-plan","version":1}', 'format is "guywright-plan"; allowed: guywright-log'],
    ['{', 'it is not JSON'], ['{"format":"guywright-log","version":"1"}', 'version is "1"'], ['{"format":"guywright-log","version":1}', 'entries is -']];
  for (const [content, words] of refused) {
    await other.page.locator('#log-file').setInputFiles(asFile('log.json', content));
    await other.says(words);
  }
  assert.equal((await allOf(other, 'entries')).length, 3, 'nothing was changed');
});

test('where nothing can be kept it is said in words, and the log can be saved from memory', async (t) => {
  const site = await startSite(t);
  const app = await open(t, SCREENS.phone, site);
  await openPlan(app, oddPlan());
  await savedPlan(app);
  for (const [error, words] of [['QuotaExceededError', EN.notKeptFull], ['SecurityError', EN.notKeptDenied]]) {
    await app.page.evaluate((name) => {
      window.realPut ??= IDBObjectStore.prototype.put;
      IDBObjectStore.prototype.put = function put(value, key) {
        if (['entries', 'drafts'].includes(this.name)) throw new DOMException('not here', name);
        return window.realPut.call(this, value, key);
      };
    }, error);
    await startSecond(app);
    await fillIn(app, oddPlan());
    await app.key('compare').click();
    await app.key('go on').click();
    await tickAll(app);
    await signBoth(app);
    await app.says(words);
    assert.ok(JSON.parse(await exportLog(app, 'save log')).entries.length >= 1);
    await app.key('close page').click();
    await app.tap(FACE_PLUS); // for another round
  }
  await app.page.evaluate(() => { IDBObjectStore.prototype.put = window.realPut; });
  assert.equal((await allOf(app, 'entries')).length, 0);
  await choose(app, 'log');
  await app.says(EN.logNotKept);
  await app.key('close page').click();
  await startSecond(app);
  await app.page.locator('#second-0').fill('1');
  assert.equal((await allOf(app, 'entries')).length, 2, 'tried again with the next that is written');
});

// --- without a browser ---

const codeOf = () => JSON.parse(OLD_LOG).entries[0].check_code;

test('a log of version 1 is read by this version', () => {
  const read = readLog(OLD_LOG, codeOf);
  assert.deepEqual(read.faults, []);
  assert.equal(read.entries.length, 1);
  const [entry] = read.entries;
  assert.equal(entry.title, 'Gate pier');
  assert.equal(JSON.parse(entry.plan).format, 'guywright-plan');
  assert.equal(entry.second.verdict, 'GO');
  assert.deepEqual(entry.signatures.map(({ name }) => name), ['Mara', 'Jon']);
  assert.equal(entry.preload.length, 7);
  const again = readLog(writeLog({ entries: read.entries, setAside: [], app: entry.app, written: timeOf(new Date()) }), codeOf);
  assert.deepEqual(again.entries, read.entries);
});

test('every fault of an entry is told by its place', () => {
  const [good] = JSON.parse(OLD_LOG).entries;
  const spoilt = (spoil) => {
    const entry = structuredClone(good);
    spoil(entry);
    return entryFaults(entry, codeOf).map(({ path, allowed }) => `${path} ${allowed}`);
  };
  assert.deepEqual(spoilt(() => {}), []);
  assert.deepEqual(spoilt((e) => { e.signatures[1].name = ' '; e.second.readings[0].first = null; }), ['entry.second.readings[0].first number', 'entry.signatures[1].name filledText']);
  assert.deepEqual(spoilt((e) => { e.signatures.pop(); }), ['entry.signatures bothParts']);
  assert.deepEqual(spoilt((e) => { e.check_code = 'ABCDEF'; }), ['entry.check_code ownCode']);
  assert.deepEqual(spoilt((e) => { e.check_code = 'ABC0EF'; }), ['entry.check_code code']);
  assert.deepEqual(spoilt((e) => { e.fell_away = { time: 'noon' }; }), ['entry.fell_away.time time']);
  assert.deepEqual(spoilt((e) => { e.preload = {}; delete e.app; }), ['entry.preload list', 'entry.app object']);
  for (const nothing of [undefined, null, 7, 'x', []]) assert.equal(entryFaults(nothing, codeOf).length, 1);
  for (const { allowed } of [{ allowed: 'bothParts' }, { allowed: 'ownCode' }, { allowed: 'list' }, { allowed: 'object' }]) assert.ok(EN[`kind_${allowed}`]);
});

test('a list gone through too long ago has to be gone through again, and a changed entry ends a signature', () => {
  const at = Date.parse('2031-04-05T16:00:00Z');
  let draft = second.freshDraft('plan');
  for (let i = 0; i < 7; ++i) for (const part of ['rigger', 'second']) draft = second.withTick(draft, part, i, true, at);
  draft = second.withSignature(second.withPerson(draft, 'rigger', 'name', ' Mara '), 'rigger', { rigger: 'rigger', second: 'officer' }, timeOf(new Date(at)));
  assert.equal(draft.signatures[0].name, 'Mara');
  assert.equal(second.unticked(second.resumed(draft, 'plan', at + second.TICKS_HOLD_MS - 1), 7), 0);
  assert.equal(second.resumed(draft, 'plan', at + 1).signatures.length, 1);
  assert.equal(second.unticked(second.resumed(draft, 'plan', at + second.TICKS_HOLD_MS), 7), 14);
  assert.deepEqual(second.resumed(draft, 'plan', at + second.TICKS_HOLD_MS).signatures, []);
  assert.deepEqual(second.resumed(draft, 'plan', at - 1).signatures, [], 'a clock put back proves nothing');
  assert.deepEqual(second.withEntry(draft, 'a', '1').signatures, []);
  assert.deepEqual(second.withTick(draft, 'rigger', 0, false, at).signatures, []);
  const compared = { may_be_signed: true, agrees: true, verdict: { text: 'GO' } };
  assert.equal(second.whyNoSignature({ draft, compared, items: 7, part: 'rigger' }), undefined);
  for (const [agrees, key] of [[false, 'notSignedApart'], [true, 'notSignedVerdict']]) assert.equal(second.whyNoSignature({ draft, compared: { ...compared, agrees, may_be_signed: false }, items: 7, part: 'rigger' }).key, key);
});
