// Every screen of practice on every screen, as in layout.test.mjs.

import { test } from 'node:test';

import { openApp } from './harness.mjs';
import { SIZES, assertUsable, coarse, throughPractice } from './steps.mjs';

for (const [name, size] of Object.entries(SIZES)) {
  test(`every screen of practice can be read and touched on a ${name} screen`, async (t) => {
    const screen = coarse(size);
    const app = await openApp(t, screen);
    await throughPractice(app, async (what) => assertUsable(await app.state(), screen, what));
  });
}
