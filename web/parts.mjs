// What the app is made of, for its own page: the versions, and the licence of every part that ships, read at build time
// from the packages that were used. Nothing of it is typed in here.

import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

import { licenceFile, packageOf } from './libraries.mjs';

const DIGITS_OF_BUILD = 12;

function read(path) {
  const text = readFileSync(path, 'utf8').trim();
  if (!text) throw new Error(`${path} is empty: the licence of a part that ships must stand there`);
  return text;
}

/** The only piece of `text` that `pattern` finds. */
function piece(text, pattern, where) {
  const found = pattern.exec(text);
  if (!found) throw new Error(`${where} holds no ${pattern}: where is its licence?`);
  return found[1].trim();
}

const debianVersion = (name) => execFileSync('dpkg-query', ['-W', '-f', '${Version}', name], { encoding: 'utf8' });
const debianCopyright = (name) => `/usr/share/doc/${name}/copyright`;

/** Takes the stars and strokes of a comment away. */
const bare = (comment) => comment.replace(/^[ \t]*(\/\*+|\*+\/|\*|\/\/)?[ \t]?/gm, '').trim();

function debianPart(name, shown, what) {
  return { name: shown, version: debianVersion(name), what, licence: read(debianCopyright(name)) };
}

/** Of a Debian copyright file with sections: those about `wanted` files, and the licences that they name. */
export function sectionsAbout(text, wanted) {
  const sections = text.split(/\n\s*\n/);
  const filesOf = (section) => (/^Files:((?:.*\n?)(?:[ \t]+.*\n?)*)/.exec(section)?.[1] ?? '').split(/\s+/).filter(Boolean);
  const about = sections.filter((section) => filesOf(section).some(wanted));
  const named = new Set(about.flatMap((section) => (/^License:[ \t]*(.*)$/m.exec(section)?.[1] ?? '').split(/[ ,]+(?:and|or)[ ,]+|[ ,]+/)).map((name) => name.split('~')[0]));
  const texts = sections.filter((section) => /^License:/.test(section) && named.has(/^License:[ \t]*([^\s~]*)/.exec(section)[1]));
  return [...about, ...texts].join('\n\n');
}

/** C library, C++ library and the script around the program. Of the package's list, what it says of tests and tools is left out. */
function emscriptenPart() {
  const ships = (path) => path === '*' || /^(src|system)\//.test(path);
  const licence = sectionsAbout(read(debianCopyright('emscripten')), ships);
  if (!/musl/.test(licence) || !/LLVM/i.test(licence)) throw new Error('the copyright file of emscripten does not name musl and LLVM any more');
  return { name: 'Emscripten with musl, libc++ and compiler-rt', version: debianVersion('emscripten'), what: 'C and C++ libraries, script around the program', licence };
}

function sourceParts(libraries) {
  const imgui = (file) => join(libraries, 'imgui', file), sdl = (file) => join(libraries, 'SDL2', file);
  const drawing = read(imgui('imgui_draw.cpp')), letters = read(imgui('imstb_truetype.h')), sun = read(sdl('src/libm/e_log.c')), sort = read(sdl('src/stdlib/SDL_qsort.c'));
  return [
    { name: 'Dear ImGui', version: piece(read(imgui('imgui.h')), /#define IMGUI_VERSION\s+"([^"]+)"/, 'imgui.h'), what: 'keys and sliders', licence: read(imgui('LICENSE.txt')) },
    { name: 'stb_truetype', version: piece(letters, /stb_truetype\.h - v([\d.]+)/, 'imstb_truetype.h'), what: 'drawing of letters, in Dear ImGui', licence: piece(letters, /(This software is available under 2 licenses[^]*?)\*\/\s*$/, 'imstb_truetype.h') },
    { name: 'ProggyClean', version: '', what: 'font inside Dear ImGui, not shown', licence: bare(piece(drawing, /\n(\/\/ ProggyClean\.ttf\n(?:\/\/ .*\n)+?)\/\/-/, 'imgui_draw.cpp')) },
    { name: 'SDL', version: piece(read(sdl('VERSION.txt')), /(\d+\.\d+\.\d+)/, 'VERSION.txt'), what: 'window, touch and keys', licence: read(sdl('LICENSE.txt')) },
    { name: 'fdlibm', version: '', what: 'mathematics, in SDL', licence: bare(piece(sun, /^(\/\*[^]*?\*\/)/, 'e_log.c')) },
    { name: 'qsort', version: '', what: 'sorting, in SDL', licence: bare(piece(sort, /((?:\/\* ?|\n)?[^\n]*Copyright \(c\)[^]*?\*\/)/, 'SDL_qsort.c')) },
  ];
}

const npmPart = (name, file, what) => ({ name, version: packageOf(name).version, what, licence: read(licenceFile(name, file)) });

function hashOf(files) {
  const hash = createHash('sha256');
  for (const file of files) hash.update(readFileSync(file));
  return hash.digest('hex').slice(0, DIGITS_OF_BUILD);
}

function engineFiles(root) {
  return readdirSync(join(root, 'engine'), { recursive: true }).map(String).filter((path) => path.endsWith('.hpp')).sort().map((path) => join(root, 'engine', path));
}

/** What web/about.js shows. */
export function aboutOf({ root, libraries, program, version }) {
  const plan = piece(read(join(root, 'engine/codec/plan_keys.hpp')), /k_plan_version = (\d+)/, 'plan_keys.hpp');
  return {
    app: { version, build: hashOf(['guywright.js', 'guywright.wasm'].map((name) => join(program, name))) },
    engine: { version, build: hashOf(engineFiles(root)) },
    plan: Number(plan),
    parts: [
      ...sourceParts(libraries),
      debianPart('nlohmann-json3-dev', 'JSON for Modern C++', 'reading and writing of plan files'),
      debianPart('libglm-dev', 'GLM', 'vectors'),
      debianPart('fonts-b612', 'B612', 'the letters on screen'),
      npmPart('qr', 'LICENSE-MIT', 'making and reading of QR codes'),
      emscriptenPart(),
    ],
  };
}
