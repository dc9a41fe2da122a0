// Makes pictures of the app for people to look at; nothing is asserted:
//   node tests/browser/screenshots.mjs [OUT_FOLDER [screen, light, language or part ...]]
// All of a kind unless some of it are named; in English unless French is. One part is made in a minute:
//   node tests/browser/screenshots.mjs build/screenshots phone night pages
// The site must have been built (bash web/serve.sh or bash tests/run.sh). RATIO=2 for sharp pictures, which take longer.

import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

import { AppPage, SCREENS, launch, startSite } from './harness.mjs';
import { asRead, asked, checked, choose, has, nextTo, openCourse, openLesson, shownAt, showPlans, throughPractice, typeNumber } from './steps.mjs';

const screens = { ...SCREENS, phoneAcross: { width: 844, height: 390, touch: true }, large: { width: 1920, height: 1080, touch: false } };
const KINDS = {
  screen: Object.keys(screens),
  light: ['sun', 'dim', 'night'], // as the key of the menu goes through them
  language: ['english', 'french'],
  part: ['pages', 'steps', 'views', 'otherFrames', 'plans', 'states', 'besides', 'advice', 'practice', 'course'],
};
const STEPS = ['Edge', 'Frame', 'Rope', 'Guys', 'Feet', 'Margins', 'Card'];

const [out = 'build/screenshots', ...named] = process.argv.slice(2);
const unknown = named.filter((each) => !Object.values(KINDS).flat().includes(each));
if (unknown.length > 0) throw new Error(`unknown: ${unknown.join(', ')}. There are ${Object.values(KINDS).flat().join(', ')}`);
const wanted = (kind) => {
  const chosen = KINDS[kind].filter((each) => named.includes(each));
  return chosen.length > 0 ? chosen : kind === 'language' ? ['english'] : KINDS[kind];
};
const ratio = Number(process.env.RATIO ?? 1);
mkdirSync(out, { recursive: true });

const endings = [];
const t = { after: (act) => endings.unshift(act) };

class Photographer {
  constructor(app, name) {
    Object.assign(this, { app, name, turned: 0 });
  }

  async shoot(what) {
    await this.app.settled();
    await this.app.page.screenshot({ path: join(out, `${this.name}-${what}.png`) });
  }

  /** From the example as it comes, whatever the part before has left. */
  async begin(light) {
    await choose(this.app, 'example spillway-bench');
    await choose(this.app, 'theme');
    for (let presses = (KINDS.light.indexOf(light) - 1 - this.turned + 6) % 3; presses > 0; --presses) await this.app.tap('theme');
    this.turned = KINDS.light.indexOf(light);
    await this.app.tap('close menu');
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
    await this.app.page.locator('#entry-text').fill('');
    await this.app.page.locator('#entry button[type="submit"]').click();
    await this.app.settled();
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
  }

  /** A page over the drawing, from its top and as far down as it goes. */
  async pageShot(what, root = '#page') {
    await this.app.page.waitForTimeout(800);
    const steps = await this.app.page.locator(root).evaluate((page) => {
      page.scrollTop = 0;
      return Math.ceil(page.scrollHeight / page.clientHeight - 0.05);
    });
    for (let step = 0; step < Math.min(steps, MOST_PIECES); ++step) {
      await this.app.page.locator(root).evaluate((page, at) => { page.scrollTop = at * 0.8 * page.clientHeight; }, step);
      await this.app.page.screenshot({ path: join(out, `${this.name}-${what}${step > 0 ? `-${step + 1}` : ''}.png`) });
    }
  }

  async close(back) {
    await this.app.page.locator(back).click();
    await this.app.settled();
  }

  key(id) {
    return this.app.page.locator(`#page button[data-id="${id}"]`);
  }

  /** The pages over the drawing. */
  async pages() {
    for (const [id, ready] of Object.entries({ share: '.qr', 'read code': 'button[data-id="camera"]', sheet: 'button[data-id="print"]' })) {
      await checked(this.app);
      await choose(this.app, id);
      await this.app.page.locator(`#page ${ready}`).first().waitFor();
      await this.pageShot(id.replace(' ', '-'));
      if (id === 'sheet') await this.enlargedDrawing();
      await this.close('#page button[data-id="close page"]');
    }
    await this.secondCheck();
    await choose(this.app, 'log');
    await this.key('import log').waitFor();
    await this.pageShot('log');
    await this.app.page.locator('#page .entries button').first().click();
    await this.pageShot('log-entry');
    await this.close('#page button[data-id="close page"]');
  }

  async enlargedDrawing() {
    await this.key('enlarge 1').click();
    await this.pageShot('sheet-enlarged', '#enlarged');
    await this.key('close drawing').click();
  }

  /** Blind, compared with one reading apart, in order, signed. */
  async secondCheck() {
    const { page } = this.app;
    await choose(this.app, 'second');
    await this.key('compare').waitFor();
    await this.pageShot('second');
    const plan = JSON.parse(await page.evaluate(() => window.guywright.plan()));
    const fields = (await asked(this.app)).measurements.map(({ path }) => [path, asRead(shownAt(plan, path), path)]);
    const enter = ([path, value]) => page.locator(`#page input[data-path="${path}"]`).fill(value);
    for (const field of fields) await enter(field);
    await enter([fields[0][0], String(Number(fields[0][1]) + 9)]);
    await this.key('compare').click();
    await this.pageShot('second-apart');
    await this.key('measure again').click();
    await enter(fields[0]);
    await this.key('compare').click();
    await this.pageShot('second-compared');
    await this.key('go on').click();
    for (const tick of await page.locator('#page [role="checkbox"]').all()) await tick.click();
    await this.pageShot('second-signing');
    for (const [part, name] of [['rigger', 'Mara'], ['second', 'Jon']]) {
      await page.locator(`#${part}-name`).fill(name);
      await this.key(`sign as ${part}`).click();
    }
    await this.pageShot('second-signed');
    await this.close('#page button[data-id="close page"]');
  }

  /** Text view, about, a reading from the device, the lock. */
  async besides() {
    await choose(this.app, 'text');
    await this.pageShot('text', '#text');
    await this.close('#text .back');
    await choose(this.app, 'about');
    await this.pageShot('about', '#about');
    await this.close('#about .back');
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

  async practice() {
    await throughPractice(this.app, (what) => this.shoot(`practice-${what}`));
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
    for (const id of ['tie guy 0', 'take off', 'tie guy 3']) {
      // a small screen has the ties on several pages
      for (let page = 0; page < 3 && !has(await this.app.state(), id); ++page) await this.app.tap(has(await this.app.state(), 'next') ? 'next' : 'back');
      await this.app.tap(id);
      await this.shoot(`lesson-10-${id.replaceAll(' ', '-')}`);
    }
    await openLesson(this.app, 1);
    await typeNumber(this.app, 'frame.lean_deg', '18');
    await this.shoot('lesson-1-reached');
    await choose(this.app, 'leave practice');
  }
}

const MOST_PIECES = 4; // of a long page

/** A device held so, for the pictures of a reading: the key beside a slider comes with the first event. */
const hold = (app) => app.devtools.send('DeviceOrientation.setDeviceOrientationOverride', { alpha: 0, beta: 37, gamma: 3 });

/** A plan with something wrong and anchors found. */
const toBeAdvised = () => {
  const plan = JSON.parse(readFileSync(new URL('../../assets/examples/spillway-bench.json', import.meta.url), 'utf8'));
  plan.frame.lean_deg = 8;
  plan.candidate_anchors_m = [[-6, 1.5, 0.4], [-5, -3, 0], [0.6, 3.5, -1.2], [-4.5, 4, 0.2]];
  return { name: 'plan.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(plan)) };
};

/** One window after another, each in one screen and language. */
async function pictures(name, language) {
  const site = await startSite(t);
  const context = await launch(t, undefined, { screen: { ...screens[name], ratio }, options: { locale: language === 'french' ? 'fr-FR' : 'en-GB' } });
  const app = await AppPage.open(context, site.address);
  await app.page.waitForTimeout(6000); // until the word on the offline copy is gone
  const photographer = new Photographer(app, '');
  for (const light of wanted('light')) {
    photographer.name = [name, light, ...(language === 'french' ? [language] : [])].join('-');
    for (const part of wanted('part')) {
      await photographer.begin(light);
      await photographer[part]();
    }
  }
}

try {
  for (const language of wanted('language')) for (const name of wanted('screen')) await pictures(name, language);
} finally {
  for (const end of endings) await end();
}
