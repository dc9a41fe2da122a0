import { chromium } from 'playwright-core';
import { listen, siteServer } from '../../web/serve.mjs';
import { SITE } from './harness.mjs';
import { writeFileSync } from 'node:fs';
const what = process.argv.slice(2);
const server = siteServer(SITE); const address = await listen(server, 0);
const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--use-gl=angle', '--use-angle=swiftshader', '--enable-unsafe-swiftshader'] });
const sizes = { phone: [390, 844], across: [844, 390], tablet: [800, 1280], desk: [1280, 800] };
const press = (page, id) => page.evaluate((id) => window.guywright.press?.(id), id);
for (const [name, [width, height]] of Object.entries(sizes)) {
  if (what.length && !what.includes(name)) continue;
  const context = await browser.newContext({ viewport: { width, height }, deviceScaleFactor: 1 });
  const page = await context.newPage(); page.on('console', (l) => console.log(name, l.text())); page.on('pageerror', (e) => console.log(name, String(e)));
  await page.goto(address); await page.waitForFunction(() => window.guywright?.framesDrawn() > 0); await page.waitForTimeout(1500);
  const key = async (id) => { await page.evaluate(() => document.querySelector('#to-text').click()); await page.waitForTimeout(300); await page.locator(`#text button[data-id="${id}"]`).click(); await page.waitForTimeout(700); };
  if (process.env.EX) await key('example ' + process.env.EX);
  if (process.env.NIGHT) { await key('theme'); await page.waitForTimeout(200); await page.locator(`#text button[data-id="theme"]`).click(); await page.waitForTimeout(600); }
  await page.waitForTimeout(1500);
  await page.locator('#text .back').click().catch(() => {});
  for (const id of ['share', 'read code', 'sheet']) {
    await key(id); await page.waitForTimeout(1200);
    await page.screenshot({ path: `/tmp/look/${name}-${id.replace(' ', '')}${process.env.NIGHT ? '-night' : ''}.png` });
    if (id === 'sheet' && name === 'desk') for (const format of ['A4', 'Letter']) await page.pdf({ path: `/tmp/look/${process.env.EX ?? 'first'}-${format}.pdf`, format, preferCSSPageSize: false });
    await page.locator('#page button[data-id="close page"]').click();
    await page.locator('#text .back').click().catch(() => {});
  }
  await context.close();
}
await browser.close(); server.close();
