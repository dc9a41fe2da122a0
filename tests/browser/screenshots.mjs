// Makes pictures of every screen for people to look at:  node tests/browser/screenshots.mjs OUT_FOLDER [screen ...]
// The site must have been built (bash web/serve.sh or bash tests/run.sh). Nothing is asserted here.

import { mkdirSync } from 'node:fs';
import { join } from 'node:path';

import { AppPage, launch, SCREENS, startSite } from './harness.mjs';

const [out = 'build/screenshots', ...wanted] = process.argv.slice(2);
mkdirSync(out, { recursive: true });

const endings = [];
const t = { after: (act) => endings.unshift(act) };
const STEPS = ['Edge', 'Frame', 'Rope', 'Guys', 'Feet', 'Margins', 'Card'];

async function pictures(name, screen) {
  const site = await startSite(t);
  const context = await launch(t, undefined, { screen });
  const app = await AppPage.open(context, site.address);
  const shoot = async (what) => {
    await app.settled();
    await app.page.screenshot({ path: join(out, `${name}-${what}.png`) });
  };
  for (const step of STEPS) {
    await app.tap('menu');
    if (step === 'Edge') await shoot('menu');
    await app.tap(`step ${step}`);
    await shoot(step.toLowerCase());
  }
  await app.tap('next');
  await shoot('card-2');
  await app.tap('view');
  await shoot('above');
  await app.tap('view');
  await shoot('side');
  await app.tap('view');
  await app.tap('menu');
  await app.tap('new');
  await shoot('new');
  await app.tap('strip');
  await shoot('new-card');
  await app.tap('menu');
  await app.tap('step Edge');
  await app.tap('value edge.face_deg');
  await app.tap('key 9');
  await app.tap('key 9');
  await app.tap('key 9');
  await app.tap('key take');
  await shoot('keypad');
  await app.tap('key cancel');
  for (const theme of ['dim', 'night']) {
    await app.tap('menu');
    await app.tap('theme');
    await app.tap('example');
    await shoot(`${theme}-edge`);
    await app.tap('strip');
    await shoot(`${theme}-card`);
  }
}

const screens = { ...SCREENS, phoneAcross: { width: 844, height: 390, ratio: 3, touch: true } };
try {
  for (const [name, screen] of Object.entries(screens)) if (wanted.length === 0 || wanted.includes(name)) await pictures(name, screen);
} finally {
  for (const end of endings) await end();
}
