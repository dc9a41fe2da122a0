// The libraries of the page, from node_modules into the site, without their comments: those are half of what a browser would load.

import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const ACORN = '/usr/share/nodejs/acorn'; // Debian's, which comes with Emscripten

/** Files that the page loads, by library. */
const FILES = { qr: ['index.js', 'decode.js'] };

/** `source` as it was, without comments, blank lines and the blanks that begin a line. Text in quotes over several lines would not survive that: refused. */
export function withoutComments(source) {
  const acorn = createRequire(import.meta.url)(ACORN);
  const comments = [];
  const tokens = [];
  acorn.parse(source, { ecmaVersion: 'latest', sourceType: 'module', onComment: comments, onToken: tokens });
  if (tokens.some(({ type, value }) => type.label === 'template' && value.includes('\n'))) throw new Error('a text over several lines: its blanks must stay');
  let out = '', at = 0;
  for (const { start, end } of comments) {
    out += source.slice(at, start);
    at = end;
  }
  return (out + source.slice(at)).replace(/[ \t]+$/gm, '').replace(/^\s+/gm, '');
}

export const packageOf = (name) => JSON.parse(readFileSync(join(here, 'node_modules', name, 'package.json'), 'utf8'));
export const licenceFile = (name, file) => join(here, 'node_modules', name, file);

export function copyLibraries(out) {
  for (const [name, files] of Object.entries(FILES)) {
    mkdirSync(join(out, 'lib', name), { recursive: true });
    for (const file of files) writeFileSync(join(out, 'lib', name, file), withoutComments(readFileSync(join(here, 'node_modules', name, file), 'utf8')));
  }
}
