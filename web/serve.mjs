// Serves a finished site on this machine only:  node web/serve.mjs FOLDER
// The port is $PORT, or 8080 and the next free one after it. Prints the address as its last line.

import { createReadStream, existsSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, resolve, sep } from 'node:path';
import { pathToFileURL } from 'node:url';

const HOST = '127.0.0.1';
const FIRST_PORT = 8080;
const PORTS_TO_TRY = 50;

/** Exact, without parameters where a browser insists on it (wasm). */
export const TYPES = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json',
};
/** Types that are stored packed beside the plain file. */
export const PACKED_TYPES = ['.css', '.html', '.js', '.json', '.svg', '.wasm', '.webmanifest'];

/** What the app may ask the device for, each in a gesture of its user, and what it has no use for. A name that some browsers do not know would fill their console. */
const ASKED_FOR = ['accelerometer', 'camera', 'gyroscope', 'magnetometer', 'screen-wake-lock'];
const GIVEN_UP = ['clipboard-read', 'display-capture', 'encrypted-media', 'geolocation', 'hid', 'idle-detection', 'microphone', 'midi', 'payment',
  'picture-in-picture', 'publickey-credentials-get', 'serial', 'sync-xhr', 'usb', 'xr-spatial-tracking'];
const PERMISSIONS = [...ASKED_FOR.map((name) => `${name}=(self)`), ...GIVEN_UP.map((name) => `${name}=()`)].join(', ');

/** The site's Content-Security-Policy has one source, its page; the header adds what a page cannot say. */
function policyOf(root) {
  const stated = /http-equiv="Content-Security-Policy" content="([^"]+)"/.exec(readFileSync(join(root, 'index.html'), 'utf8'));
  if (!stated) throw new Error('index.html states no Content-Security-Policy');
  return `${stated[1]}; frame-ancestors 'none'`;
}

const PLAIN_GUARDS = { 'Cross-Origin-Resource-Policy': 'same-origin', 'X-Content-Type-Options': 'nosniff' };

/** Files that rule over others; to each of the rest the guards would add more than many of them hold. */
const GUARDED = /(\.html|\bsw\.js)$/;

/** What the page of the site in `root` is sent with, by this server and from the offline copy. */
export const guardsOf = (root) => ({
  ...PLAIN_GUARDS,
  'Content-Security-Policy': policyOf(root),
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Permissions-Policy': PERMISSIONS,
  'Referrer-Policy': 'no-referrer',
});

/** The file that a request path names, or null when it is none of the site's. */
function fileFor(root, target) {
  let path;
  try {
    path = decodeURIComponent(target.split(/[?#]/)[0]);
  } catch {
    return null;
  }
  if (path.includes('\0') || path.includes('\\')) return null;
  const file = resolve(join(root, path.endsWith('/') ? `${path}index.html` : path));
  if (!file.startsWith(root + sep) || !(extname(file) in TYPES) || !existsSync(file)) return null;
  const real = realpathSync(file);
  return real.startsWith(root + sep) && statSync(real).isFile() ? real : null;
}

/** The packed neighbour that the browser takes: [file, encoding]. */
function packedFor(file, accepted) {
  const offers = (accepted ?? '').split(',').map((offer) => offer.trim().split(';')[0]);
  for (const [encoding, ending] of [['br', '.br'], ['gzip', '.gz']]) {
    if (offers.includes(encoding) && existsSync(file + ending)) return [file + ending, encoding];
  }
  return [file, null];
}

function headersFor(root, file, sent, encoding) {
  const { size, mtimeMs } = statSync(sent);
  return {
    'Content-Type': TYPES[extname(file)],
    'Content-Length': size,
    // The service worker keeps the copy; between it and this server nothing may go stale.
    'Cache-Control': 'no-cache',
    ETag: `"${size.toString(16)}-${Math.round(mtimeMs).toString(16)}"`,
    Vary: 'Accept-Encoding',
    ...(GUARDED.test(file) ? guardsOf(root) : PLAIN_GUARDS),
    ...(encoding && { 'Content-Encoding': encoding }),
  };
}

/** What goes with "not modified": the browser has the rest, and every file of the copy is asked for twice at the first visit. */
const unchangedOf = ({ ETag, Vary, 'Cache-Control': cache }) => ({ ETag, Vary, 'Cache-Control': cache });

function refuse(response, status, text) {
  response.writeHead(status, { 'Content-Type': 'text/plain; charset=utf-8', 'Content-Security-Policy': "default-src 'none'; frame-ancestors 'none'", 'X-Content-Type-Options': 'nosniff' });
  response.end(`${text}\n`);
}

function answer(root, request, response) {
  if (!['GET', 'HEAD'].includes(request.method)) return refuse(response, 405, 'GET or HEAD only');
  const file = fileFor(root, request.url);
  if (!file) return refuse(response, 404, 'no such file');
  const [sent, encoding] = packedFor(file, request.headers['accept-encoding']);
  const headers = headersFor(root, file, sent, encoding);
  if (request.headers['if-none-match'] === headers.ETag) return response.writeHead(304, unchangedOf(headers)).end();
  response.writeHead(200, headers);
  if (request.method === 'HEAD') return response.end();
  return createReadStream(sent).on('error', () => response.destroy()).pipe(response);
}

/** A server for the folder `root`, not yet listening. */
export function siteServer(root) {
  const whole = realpathSync(root);
  return createServer((request, response) => answer(whole, request, response));
}

/** Starts listening; rejects when the port is taken. Resolves with the address. */
export function listen(server, port) {
  return new Promise((resolved, rejected) => {
    server.once('error', rejected);
    server.listen(port, HOST, () => {
      server.off('error', rejected);
      resolved(`http://localhost:${server.address().port}/`);
    });
  });
}

async function listenOnFreePort(server) {
  if (process.env.PORT) return listen(server, Number(process.env.PORT));
  for (let port = FIRST_PORT; port < FIRST_PORT + PORTS_TO_TRY; ++port) {
    try {
      return await listen(server, port);
    } catch (error) {
      if (error.code !== 'EADDRINUSE') throw error;
    }
  }
  throw new Error(`ports ${FIRST_PORT} to ${FIRST_PORT + PORTS_TO_TRY - 1} are all taken: choose one with PORT=`);
}

async function main(root) {
  try {
    const address = await listenOnFreePort(siteServer(root));
    console.log('Serving on this machine only. Stop with Ctrl+C. Open in a browser:');
    console.log(address);
  } catch (error) {
    console.error(`Not serving: ${error.message}`);
    process.exit(1);
  }
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) main(process.argv[2] ?? '.');
