import { chromium } from 'playwright-core';
import { listen, siteServer } from '../../web/serve.mjs';
import { SITE } from './harness.mjs';
import { readFileSync, cpSync } from 'node:fs';
for (const f of ['sheet.js', 'sheet.css', 'page.css', 'page.js', 'page_words.js', 'share.js', 'read_code.js', 'qr.js']) cpSync('/work/wt-share/web/' + f, SITE + '/' + f);
import { rmSync } from 'node:fs'; for (const f of ['sheet.js', 'sheet.css', 'page.css']) for (const e of ['.gz', '.br']) rmSync(SITE + '/' + f + e, { force: true });
const server = siteServer(SITE); const address = await listen(server, 0);
const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu'] });
for (const n of process.argv.slice(2)) {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, serviceWorkers: 'block' });
  const page = await context.newPage(); page.on('pageerror', (e) => console.log(String(e)));
  await page.route('**/boot.js', (r) => r.fulfill({ contentType: 'text/javascript', body: '' }));
  await page.goto(address);
  const sheet = { ...JSON.parse(readFileSync(`/tmp/sc/${n}.sheet`, 'utf8').replaceAll(/(\d) deg\b/g, '$1°')), language: 'en', checking: false, codes: Array(n === 'stress' ? 3 : 1).fill('GUYW' + 'AB3$'.repeat(n === 'stress' ? 240 : 80)) };
  await page.evaluate(async (sheet) => { const { Page } = await import('./page.js'); const s = await import('./sheet.js'); await s.show(new Page(() => {}), () => sheet); }, sheet);
  for (const format of ['A4', 'Letter']) await page.pdf({ path: `/tmp/look/${n}-${format}.pdf`, format });
  await page.screenshot({ path: `/tmp/look/${n}-screen.png`, fullPage: false });
  await page.setViewportSize({ width: 390, height: 844 }); await page.screenshot({ path: `/tmp/look/${n}-phone.png` });
  await context.close();
}
await browser.close(); server.close();
