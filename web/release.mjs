// Puts the finished site together:
//   node web/release.mjs --program FOLDER --out FOLDER --rsvg PROGRAM --libraries FOLDER --version TEXT
// FOLDER of the program holds guywright.js and guywright.wasm. What a browser loads are the files of web/ except *.mjs
// and *.sh, the libraries of libraries.mjs, and about.json with versions and licences (parts.mjs; FOLDER of the libraries holds their sources); icons are drawn from assets/icons. The service worker gets the list of all files with their hashes.

import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';

import { minify } from 'terser';

import { copyLibraries } from './libraries.mjs';
import { aboutOf } from './parts.mjs';
import { guardsOf, PACKED_TYPES, TYPES } from './serve.mjs';

const GUARD = 'guard.js'; // the one script of the page that is no module

const here = dirname(fileURLToPath(import.meta.url));
const icons = join(here, '..', 'assets', 'icons');

function copyPages(out) {
  for (const name of readdirSync(here)) {
    if (!['.mjs', '.sh'].includes(extname(name)) && !['sw.js', 'package.json', 'package-lock.json', 'node_modules'].includes(name)) cpSync(join(here, name), join(out, name));
  }
}

function drawIcons(out, rsvg) {
  mkdirSync(join(out, 'icons'));
  cpSync(join(icons, 'icon.svg'), join(out, 'icons', 'icon.svg'));
  for (const size of [180, 192, 512]) {
    const file = join(out, 'icons', `icon-${size}.png`);
    execFileSync(rsvg, ['-w', String(size), '-h', String(size), '-o', file, join(icons, 'icon.svg')]);
  }
}

function filesBelow(folder, prefix = '') {
  return readdirSync(join(folder, prefix), { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? filesBelow(folder, `${prefix}${entry.name}/`) : [`${prefix}${entry.name}`]).sort();
}

function describe(out, path) {
  const body = readFileSync(join(out, path));
  return { path, type: TYPES[extname(path)], bytes: body.length, sha256: createHash('sha256').update(body).digest('base64') };
}

/** What the service worker is told of a release; it refuses a list that does not fit its name. */
function named(release) {
  const hash = createHash('sha256').update(JSON.stringify(release)).digest('hex');
  return { name: `app-${hash.slice(0, 12)}`, ...release };
}

/** The same script in fewer bytes: no comments, no blanks, short names inside it. */
const shrunk = async (source, module) => (await minify(source, { module, toplevel: true })).code;

async function shrinkScripts(out) {
  for (const path of filesBelow(out).filter((name) => extname(name) === '.js')) {
    const file = join(out, path);
    writeFileSync(file, await shrunk(readFileSync(file, 'utf8'), path !== GUARD));
  }
}

/** Names what the start needs, so that the browser asks for all of it at once and not for each when the one before it has come. */
function announceParts(out) {
  const parts = readdirSync(out).filter((name) => extname(name) === '.js' && name !== GUARD).sort();
  const links = [...parts.map((name) => `<link rel="modulepreload" href="${name}">`), '<link rel="preload" href="guywright.wasm" as="fetch" type="application/wasm" crossorigin>'];
  const page = join(out, 'index.html');
  writeFileSync(page, readFileSync(page, 'utf8').replace('</head>', () => `${links.join('\n')}\n</head>`));
}

async function writeServiceWorker(out, version) {
  const worker = await shrunk(readFileSync(join(here, 'sw.js'), 'utf8'), false);
  const files = filesBelow(out).map((path) => describe(out, path));
  const release = named({ version, files, headers: guardsOf(out) });
  // In a block: a worker that was cut off anywhere is no script, and not one that does nothing.
  writeFileSync(join(out, 'sw.js'), `{\nconst RELEASE = ${JSON.stringify(release)};\n${worker}\n}\n`);
  return release.name;
}

function pack(out) {
  for (const path of filesBelow(out)) {
    if (!PACKED_TYPES.includes(extname(path))) continue;
    const body = readFileSync(join(out, path));
    writeFileSync(join(out, `${path}.gz`), gzipSync(body, { level: 9 }));
    writeFileSync(join(out, `${path}.br`), brotliCompressSync(body, { params: { [constants.BROTLI_PARAM_SIZE_HINT]: body.length } }));
  }
}

const { values } = parseArgs({ options: { program: { type: 'string' }, out: { type: 'string' }, rsvg: { type: 'string' }, libraries: { type: 'string' }, version: { type: 'string' } } });
const part = `${values.out}.part`; // a server that is running never sees half a release
rmSync(part, { recursive: true, force: true });
mkdirSync(part, { recursive: true });
copyPages(part);
copyLibraries(part);
drawIcons(part, values.rsvg);
for (const name of ['guywright.js', 'guywright.wasm']) cpSync(join(values.program, name), join(part, name));
writeFileSync(join(part, 'about.json'), JSON.stringify(aboutOf({ root: join(here, '..'), ...values })));
await shrinkScripts(part);
announceParts(part);
const name = await writeServiceWorker(part, values.version);
pack(part);
rmSync(values.out, { recursive: true, force: true });
renameSync(part, values.out);
console.log(`site: ${values.out} (${name})`);
