// The pages over the drawing that the menu opens: the plan as a code, reading one, the rig sheet, the second check, the log.

import { LARGEST_PLAN_BYTES } from './files.js';
import { Log } from './log.js';
import { clockOf } from './log_format.js';
import { LogPage } from './log_page.js';
import { Page } from './page.js';
import { Reader } from './read_code.js';
import { SecondCheck } from './second.js';
import * as share from './share.js';
import * as sheet from './sheet.js';

const encode = (text) => new TextEncoder().encode(text);

const LOG_FILE = 'guywright-log.json';

async function appVersion() {
  try {
    return (await (await fetch('about.json')).json()).app;
  } catch {
    return { version: '', build: '' }; // a copy that is not whole
  }
}

/**
 * `call(name, result, types, values)` calls the program; `open(bytes)` opens a plan, `save(title, text)` hands the person a plan file and `download(name, text)` any;
 * `blind(on)` keeps the plan's numbers out of the rest of the page; `planId()` is that of the plan in hand on the list of plans.
 */
export class Pages {
  #page;
  #call;
  #save;
  #reader;
  #log;
  #second;
  #logPage;
  #planId;

  constructor({ call, open, save, download, blind, planId, onClose }) {
    this.#call = call;
    this.#save = save;
    this.#page = new Page(onClose);
    this.#reader = new Reader(this.#page, {
      readCodes: (texts) => this.#askWith('guywright_read_codes', encode(texts.join('\n'))),
      lookAt: (bytes) => this.#askWith('guywright_look_at', bytes),
      open: (text) => open(encode(text)),
      second: () => this.open('second'),
    });
    this.#log = new Log({
      codeOf: (text) => (text.length > LARGEST_PLAN_BYTES ? '' : this.#callWith('guywright_code_of', encode(text))),
      stand: (entries) => this.#tellStanding(entries),
    });
    const saveLog = async () => download(LOG_FILE, await this.#log.exported(await appVersion()));
    this.#second = new SecondCheck(this.#page, {
      second: () => this.#ask('guywright_second'),
      entries: (compare, typed) => this.#askWith('guywright_second_entries', encode(JSON.stringify({ compare, typed }))),
      report: () => this.#ask('guywright_report'),
    }, this.#log, { blind, planId, app: appVersion, saveLog, openSheet: () => this.open('sheet'), openLog: () => this.open('log') });
    this.#logPage = new LogPage(this.#page, this.#log, { open: (text) => open(encode(text)), saveLog, saveText: download });
    this.#planId = planId;
  }

  open(name) {
    if (name === 'share') share.show(this.#page, this.#ask('guywright_share'), this.#save);
    if (name === 'read') this.#reader.show(this.#askWith('guywright_read_codes', encode('')).language);
    if (name === 'sheet') sheet.show(this.#page, () => this.#ask('guywright_sheet'), async () => (await this.#log.standingFor(this.#ask('guywright_second').text))?.entry, () => this.open('second'));
    if (name === 'second') this.#second.show();
    if (name === 'log') this.#logPage.show(this.#ask('guywright_second').language);
  }

  /** The program is there: tells it what is signed, now and on coming back from another window. */
  start() {
    document.addEventListener('visibilitychange', () => document.hidden || this.#log.refresh());
    return this.#log.refresh();
  }

  /** A change has ended the signatures of an entry of the log. */
  signaturesFell(id) {
    return this.#log.fall(id, this.#planId);
  }

  settled() {
    return this.#log.settled();
  }

  #tellStanding(entries) {
    const signed = entries.map(({ id, plan, signatures }) => ({ id, plan, people: signatures.map(({ name, role, time }) => ({ name, role, time: clockOf(time) })) }));
    this.#callWith('guywright_set_signatures', encode(JSON.stringify({ signed })), null);
  }

  #callWith(name, bytes, result = 'string') {
    return this.#call(name, result, ['array', 'number'], [bytes, bytes.length]);
  }

  #ask(name) {
    return JSON.parse(this.#call(name, 'string'));
  }

  #askWith(name, bytes) {
    return JSON.parse(this.#callWith(name, bytes));
  }
}
