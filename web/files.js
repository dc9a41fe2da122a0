// Plan files in and out.

import { show } from './notice.js';
import { say } from './words.js';

/** No plan comes near this; a larger file is something else, and is not even read. */
export const LARGEST_PLAN_BYTES = 256 * 1024;

const kB = (bytes) => Math.ceil(bytes / 1024);

async function read(file, open) {
  if (file.size > LARGEST_PLAN_BYTES) {
    show(say('fileTooLarge', { name: file.name, size: kB(file.size), most: kB(LARGEST_PLAN_BYTES) }));
    return;
  }
  try {
    open(new Uint8Array(await file.arrayBuffer()));
  } catch (error) {
    show(say('fileUnread', { name: file.name, why: error.message }));
  }
}

/** Lets the user choose a file and hands its bytes to `open`. */
export function pick(open) {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = '.json,application/json';
  input.id = 'file';
  input.hidden = true;
  document.getElementById('file')?.remove();
  document.body.append(input); // some browsers open no picker for an input outside the page
  const done = () => input.remove();
  input.addEventListener('cancel', done);
  input.addEventListener('change', () => {
    done();
    if (input.files.length > 0) read(input.files[0], open);
  });
  input.click();
}

/** "Spillway bench" -> "spillway-bench.guywright.json" */
export const fileName = (title) => `${title.toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '') || 'plan'}.guywright.json`;

/** Hands the user `text` as a file. */
export function download(name, text) {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000); // a slow device may still be reading it
}
