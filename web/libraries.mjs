// The libraries of the page, from node_modules into the site.

import { cpSync, mkdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));

/** Files that the page loads, by library. */
const FILES = { qr: ['index.js', 'decode.js'] };

export const packageOf = (name) => JSON.parse(readFileSync(join(here, 'node_modules', name, 'package.json'), 'utf8'));
export const licenceFile = (name, file) => join(here, 'node_modules', name, file);

export function copyLibraries(out) {
  for (const [name, files] of Object.entries(FILES)) {
    mkdirSync(join(out, 'lib', name), { recursive: true });
    for (const file of files) cpSync(join(here, 'node_modules', name, file), join(out, 'lib', name, file));
  }
}
