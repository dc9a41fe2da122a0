// The site as it is served: types, packing, policy, size, and nothing outside its folder.

import assert from 'node:assert/strict';
import { existsSync, readFileSync, readdirSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import { test } from 'node:test';
import { brotliDecompressSync, gunzipSync } from 'node:zlib';

import { SITE, copySite, releaseOf, startSite } from './harness.mjs';

/** A request with the path exactly as given: no client tidies it up on the way. */
function get(site, path, { headers = {}, method = 'GET' } = {}) {
  return new Promise((resolve, reject) => {
    request({ host: '127.0.0.1', port: site.port, path, method, headers }, (response) => {
      const parts = [];
      response.on('data', (part) => parts.push(part));
      response.on('end', () => resolve({ status: response.statusCode, headers: response.headers, body: Buffer.concat(parts) }));
    }).on('error', reject).end();
  });
}

test('every file has its exact type and is revalidated; page and service worker carry the policy', async (t) => {
  const site = await startSite(t);
  const types = { 'guywright.wasm': 'application/wasm', 'boot.js': 'text/javascript; charset=utf-8', 'index.html': 'text/html; charset=utf-8',
    'sw.js': 'text/javascript; charset=utf-8', 'style.css': 'text/css; charset=utf-8', 'manifest.webmanifest': 'application/manifest+json',
    'icons/icon-192.png': 'image/png', 'icons/icon.svg': 'image/svg+xml' };
  for (const [path, type] of Object.entries(types)) {
    const { status, headers } = await get(site, `/${path}`);
    assert.equal(status, 200);
    assert.equal(headers['content-type'], type);
    assert.equal(headers['cache-control'], 'no-cache');
    assert.equal(headers['x-content-type-options'], 'nosniff');
    assert.equal(headers['cross-origin-resource-policy'], 'same-origin');
    if (!/html$|^sw/.test(path)) continue;
    assert.equal(headers['referrer-policy'], 'no-referrer');
    assert.match(headers['permissions-policy'], /camera=\(self\).*geolocation=\(\).*microphone=\(\)/);
    const policy = headers['content-security-policy'];
    for (const part of ["object-src 'none'", "base-uri 'none'", "form-action 'none'", "require-trusted-types-for 'script'"]) assert.ok(policy.includes(part), part);
    assert.match(policy, /default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self';/);
    assert.match(policy, /connect-src 'self';.*frame-ancestors 'none'/);
    assert.doesNotMatch(policy, /unsafe-inline|'unsafe-eval'|\*/);
  }
});

test('packed files are sent to who takes them, and unpack to the plain file', async (t) => {
  const site = await startSite(t);
  const plain = readFileSync(join(SITE, 'guywright.js'));
  const br = await get(site, '/guywright.js', { headers: { 'Accept-Encoding': 'gzip, deflate, br' } });
  const gz = await get(site, '/guywright.js', { headers: { 'Accept-Encoding': 'gzip' } });
  const none = await get(site, '/guywright.js');
  assert.equal(br.headers['content-encoding'], 'br');
  assert.equal(gz.headers['content-encoding'], 'gzip');
  assert.equal(none.headers['content-encoding'], undefined);
  assert.ok(plain.equals(brotliDecompressSync(br.body)) && plain.equals(gunzipSync(gz.body)) && plain.equals(none.body));
  const unchanged = await get(site, '/guywright.js', { headers: { 'If-None-Match': none.headers.etag } });
  assert.equal(unchanged.status, 304);
  for (const name of ['etag', 'vary', 'cache-control']) assert.equal(unchanged.headers[name], none.headers[name]); // RFC 9110, 15.4.5
});

test('nothing outside the folder is served, by whatever spelling', async (t) => {
  const folder = copySite(t);
  writeFileSync(join(folder, '..', 'secret.json'), '{}');
  symlinkSync('../secret.json', join(folder, 'linked.json'));
  const site = await startSite(t, folder);
  const paths = ['/../secret.json', '/..%2fsecret.json', '/%2e%2e/secret.json', '/icons/../../secret.json', '/..\\secret.json', '//../secret.json',
    '/%00', '/secret.json%00.html', '/%', '/linked.json', '/icons', '/icons/', '/.', '/sw.js/', '/guywright.js.br', '/nothing.html'];
  for (const path of paths) assert.equal((await get(site, path)).status, 404, path);
  assert.equal((await get(site, '/', { method: 'POST' })).status, 405);
  const head = await get(site, '/', { method: 'HEAD' });
  assert.deepEqual([head.status, head.body.length], [200, 0]);
});

/** The namespace of SVG is a name, not an address. */
const SVG = 'http://www.w3.org/2000/svg';

test('the page holds no inline script, style or handler, and names no other host', () => {
  const page = readFileSync(join(SITE, 'index.html'), 'utf8');
  assert.doesNotMatch(page, /<script(?![^>]*\bsrc=)|<style|\sstyle=|\son[a-z]+=/i);
  for (const { path } of releaseOf(SITE).files.filter(({ path }) => /\.(html|js|css|webmanifest)$/.test(path) && path !== 'guywright.js')) {
    assert.doesNotMatch(readFileSync(join(SITE, path), 'utf8').replaceAll(SVG, ''), /https?:\/\//, path);
  }
  for (const path of ['guywright.js', 'lib/qr/index.js', 'lib/qr/decode.js']) assert.doesNotMatch(readFileSync(join(SITE, path), 'utf8'), /\beval\(|new Function\(/, path);
});

test('the list of the offline copy is the whole site', () => {
  const found = readdirSync(SITE, { recursive: true }).map(String);
  const served = found.filter((path) => statSync(join(SITE, path)).isFile() && !/\.(br|gz)$/.test(path) && path !== 'sw.js').sort();
  assert.deepEqual(releaseOf(SITE).files.map(({ path }) => path), served);
});

test('a first visit loads less than 700 kB, packed as browsers ask for it', () => {
  const sizeOf = (path, packed) => statSync(join(SITE, existsSync(join(SITE, path + packed)) ? path + packed : path)).size;
  const paths = [...releaseOf(SITE).files.map(({ path }) => path), 'sw.js'];
  const totalOf = (packed) => paths.reduce((sum, path) => sum + sizeOf(path, packed), 0);
  for (const path of paths) console.log(`${String(sizeOf(path, '.br')).padStart(8)} B  ${path}`);
  console.log(`${String(totalOf('.br')).padStart(8)} B  in all with brotli, of 700000; ${totalOf('.gz')} B with gzip`);
  assert.ok(totalOf('.br') < 700_000, `${totalOf('.br')} bytes`);
});

test('the offline copy takes less than 3 MB of the browser\'s storage', () => {
  const total = releaseOf(SITE).files.reduce((sum, { bytes }) => sum + bytes, 0);
  assert.ok(total < 3_000_000, `${total} bytes`);
});
