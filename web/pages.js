// The pages over the drawing that the menu opens: the plan as a code, reading one, the rig sheet.

import { Page } from './page.js';
import { Reader } from './read_code.js';
import * as share from './share.js';
import * as sheet from './sheet.js';

const encode = (text) => new TextEncoder().encode(text);

/** `call(name, result, types, values)` calls the program; `open(bytes)` opens a plan, `save(title, text)` hands the person a file. */
export class Pages {
  #page;
  #call;
  #save;
  #reader;

  constructor({ call, open, save, onClose }) {
    this.#call = call;
    this.#save = save;
    this.#page = new Page(onClose);
    this.#reader = new Reader(this.#page, {
      readCodes: (texts) => this.#askWith('guywright_read_codes', encode(texts.join('\n'))),
      lookAt: (bytes) => this.#askWith('guywright_look_at', bytes),
      open: (text) => open(encode(text)),
    });
  }

  open(name) {
    if (name === 'share') share.show(this.#page, this.#ask('guywright_share'), this.#save);
    if (name === 'read') this.#reader.show(this.#askWith('guywright_read_codes', encode('')).language);
    if (name === 'sheet') sheet.show(this.#page, () => this.#ask('guywright_sheet'));
  }

  #ask(name) {
    return JSON.parse(this.#call(name, 'string'));
  }

  #askWith(name, bytes) {
    return JSON.parse(this.#call(name, 'string', ['array', 'number'], [bytes, bytes.length]));
  }
}
