// Makes pictures of the app for people to look at; nothing is asserted:
//   node tests/browser/screenshots.mjs [OUT_FOLDER [screen ...]]      every screen unless some are named
// The site must have been built (bash web/serve.sh or bash tests/run.sh). RATIO=2 for sharp pictures, which take longer.

import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

import { AppPage, SCREENS, launch, startSite } from './harness.mjs';
import { choose, enterText, has, openCourse, openLesson, showPlans, throughPractice, typeNumber } from './steps.mjs';

const [out = 'build/screenshots', ...wanted] = process.argv.slice(2);
const ratio = Number(process.env.RATIO ?? 1);
const screens = { ...SCREENS, phoneAcross: { width: 844, height: 390, touch: true }, large: { width: 1920, height: 1080, touch: false } };
const STEPS = ['Edge', 'Frame', 'Rope', 'Guys', 'Feet', 'Margins', 'Card'];
mkdirSync(out, { recursive: true });

const endings = [];
const t = { after: (act) => endings.unshift(act) };

class Photographer {
  constructor(app, name) {
    Object.assign(this, { app, name });
  }

  async shoot(what) {
    await this.app.settled();
    await this.app.page.screenshot({ path: join(out, `${this.name}-${what}.png`) });
  }

  async tapAll(...ids) {
    for (const id of ids) await this.app.tap(id);
  }

  /** The first page of every step, and what few need of it. */
  async steps() {
    for (const step of STEPS) {
      await choose(this.app, `step ${step}`);
      await this.shoot(step.toLowerCase());
      if (!has(await this.app.state(), 'more')) continue;
      await this.app.tap('more');
      await this.shoot(`${step.toLowerCase()}-more`);
    }
    for (let page = 2; (await this.app.widget('next')).value !== 'off'; ++page) {
      await this.app.tap('next');
      await this.shoot(`card-${page}`);
    }
  }

  async views() {
    await this.app.tapAt(await this.app.pointOn('scene', 0.5, 0.3));
    await this.app.settled();
    for (const view of ['above', 'side', 'behind', 'forces', 'free']) {
      await this.app.tap(`view ${view}`);
      await this.shoot(`view-${view}`);
    }
    await this.app.tap('smaller');
  }

  async otherFrames() {
    for (const example of ['dam-crest', 'drain-shaft']) {
      await choose(this.app, `example ${example}`);
      await choose(this.app, 'step Frame');
      await this.shoot(`${example}-frame`);
      await this.app.tap('next');
      await this.shoot(`${example}-leg`);
      await this.app.tap('strip');
      await this.shoot(`${example}-card`);
    }
  }

  /** The list of plans, the keys for one, a name typed and refused, the order of guys. */
  async plans() {
    for (const example of ['drain-shaft', 'dam-crest']) {
      await choose(this.app, `example ${example}`);
      await this.app.tap('more edge.face_deg');
    }
    await showPlans(this.app);
    await this.tapAll('plan more 1', 'delete plan');
    await this.shoot('plans');
    await this.app.tap('plan more 0');
    await this.shoot('plan-keys');
    await this.app.tap('name plan');
    await this.shoot('name');
    await enterText(this.app, '');
    await this.shoot('name-refused');
    await this.app.page.keyboard.press('Escape');
    await this.tapAll('back to plans', 'close plans');
    await choose(this.app, 'step Guys');
    while (!has(await this.app.state(), 'move down guys 0')) await this.app.tap(has(await this.app.state(), 'more') ? 'more' : 'next');
    await this.shoot('guy-order');
    await choose(this.app, 'step Guys');
    while (!has(await this.app.state(), 'parts guys[0].strength_kN')) await this.app.tap(has(await this.app.state(), 'more') ? 'more' : 'next');
    await this.app.tap('parts guys[0].strength_kN');
    await this.shoot('standards');
    await this.app.tap('next');
    await this.shoot('standards-2');
  }

  /** NO-GO, nothing entered, a refused entry, a refused file, the focus of the keyboard. */
  async states() {
    await choose(this.app, 'example spillway-bench');
    await this.tapAll('value edge.face_deg', 'key 9', 'key 9', 'key 9', 'key take');
    await this.shoot('keypad');
    await this.app.tap('key cancel');
    await choose(this.app, 'step Guys');
    await this.tapAll('value guys[0].bearing_deg', 'key 9', 'key 0', 'key take', 'strip');
    await this.shoot('no-go-card');
    await choose(this.app, 'new');
    await this.shoot('new');
    await this.app.tap('strip');
    await this.shoot('new-card');
    await this.app.tap('menu');
    await this.shoot('menu');
    while (!has(await this.app.state(), 'open')) await this.app.tap('more menu');
    await this.app.openFile('open', { name: 'plan.json', mimeType: 'application/json', buffer: Buffer.from('{"format":"guywright-plan","version":1}') });
    await this.shoot('message');
    await this.app.tap('close message');
    for (let i = 0; i < 7; ++i) await this.app.page.keyboard.press('Tab');
    await this.shoot('focus');
    await choose(this.app, 'example spillway-bench');
  }

  async pageShot(what, back) {
    await this.app.page.waitForTimeout(800);
    await this.app.page.screenshot({ path: join(out, `${this.name}-${what}.png`) });
    await this.app.page.locator(back).click();
    await this.app.settled();
  }

  /** Text view, about, a reading from the device, the lock. */
  async besides() {
    await choose(this.app, 'text');
    await this.pageShot('text', '#text .back');
    await choose(this.app, 'about');
    await this.pageShot('about', '#about .back');
    await hold(this.app);
    await choose(this.app, 'step Guys');
    for (let i = 0; i < 20 && !has(await this.app.state(), 'take guys[0].inclination_deg'); ++i) await this.app.tap('next');
    await this.app.tapAt(await this.app.pointOn('take guys[0].inclination_deg'));
    await this.app.page.waitForTimeout(3500);
    await this.app.page.screenshot({ path: join(out, `${this.name}-reading.png`) });
    await this.app.tapAt(await this.app.pointOn('reading cancel'));
    await this.app.settled();
    await choose(this.app, 'lock');
    await this.shoot('lock');
    for (const id of ['lock 1', 'lock 2']) {
      await this.app.tapAt(await this.app.pointOn(id), 1600);
      await this.app.page.waitForTimeout(200);
    }
    await this.app.settled();
  }

  /** Every question, its first two pages; a page of an anchor found. */
  async advice() {
    await this.app.tap('menu');
    while (!has(await this.app.state(), 'open')) await this.app.tap('more menu');
    await this.app.openFile('open', toBeAdvised());
    await choose(this.app, 'advice');
    await this.shoot('advice');
    for (const question of ['Change', 'Ties', 'LineUp', 'Pretension', 'Order', 'Anchors', 'Directions']) {
      await choose(this.app, 'advice');
      while (!has(await this.app.state(), `ask ${question}`)) await this.app.tap('next');
      await this.app.tap(`ask ${question}`);
      await this.shoot(`advice-${question.toLowerCase()}`);
      if ((await this.app.widget('next')).value === 'off') continue;
      await this.app.tap('next');
      await this.shoot(`advice-${question.toLowerCase()}-2`);
    }
    await choose(this.app, 'advice');
    while (!has(await this.app.state(), 'ask Anchors')) await this.app.tap('next');
    await this.tapAll('ask Anchors', 'add anchor');
    await this.shoot('advice-anchor');
  }

  /** The list, every lesson with its question and after it, one at its goal. */
  async course() {
    await openCourse(this.app);
    await this.shoot('course');
    while (!has(await this.app.state(), 'lesson 1')) await this.app.tap('next');
    await this.app.tap('lesson 1');
    for (let lesson = 1; lesson <= 10; ++lesson) {
      await this.shoot(`lesson-${lesson}`);
      if (has(await this.app.state(), 'answer 0')) {
        await this.app.tap('answer 0');
        await this.shoot(`lesson-${lesson}-moving`);
      }
      while (!has(await this.app.state(), 'next lesson')) {
        await this.app.tap('next');
        await this.shoot(`lesson-${lesson}-page`);
      }
      if (lesson < 10) await this.app.tap('next lesson');
    }
    for (let key; (key = (await this.app.state()).widgets.find(({ id }) => /^(tie guy|take off)/.test(id)));) {
      await this.app.tap(key.id);
      await this.shoot(`lesson-10-${key.id.replaceAll(' ', '-')}`);
      if (key.id === 'take off') await this.app.tap('tie guy 3');
    }
    await openLesson(this.app, 1);
    await typeNumber(this.app, 'frame.lean_deg', '18');
    await this.shoot('lesson-1-reached');
    await choose(this.app, 'leave practice');
  }
}

/** A device held so, for the pictures of a reading: the key beside a slider comes with the first event. */
const hold = (app) => app.devtools.send('DeviceOrientation.setDeviceOrientationOverride', { alpha: 0, beta: 37, gamma: 3 });

/** A plan with something wrong and anchors found. */
const toBeAdvised = () => {
  const plan = JSON.parse(readFileSync(new URL('../../assets/examples/spillway-bench.json', import.meta.url), 'utf8'));
  plan.frame.lean_deg = 8;
  plan.candidate_anchors_m = [[-6, 1.5, 0.4], [-5, -3, 0], [0.6, 3.5, -1.2], [-4.5, 4, 0.2]];
  return { name: 'plan.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(plan)) };
};

async function pictures(name, screen) {
  const site = await startSite(t);
  const context = await launch(t, undefined, { screen: { ...screen, ratio } });
  const app = await AppPage.open(context, site.address);
  await app.page.waitForTimeout(6000); // until the word on the offline copy is gone
  for (const theme of ['sun', 'dim', 'night']) {
    const photographer = new Photographer(app, `${name}-${theme}`);
    await photographer.steps();
    await photographer.views();
    await photographer.otherFrames();
    await photographer.plans();
    await photographer.states();
    await photographer.besides();
    await photographer.advice();
    await throughPractice(app, (what) => photographer.shoot(`practice-${what}`));
    await photographer.course();
    await choose(app, 'theme');
    if (has(await app.state(), 'close menu')) await app.tap('close menu');
    else await choose(app, 'step Edge');
  }
}

try {
  for (const [name, screen] of Object.entries(screens)) if (wanted.length === 0 || wanted.includes(name)) await pictures(name, screen);
} finally {
  for (const end of endings) await end();
}
