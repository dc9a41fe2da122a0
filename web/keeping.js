// Ties the program to the plans that the browser keeps, and says in plain words when something cannot be kept.

import * as files from './files.js';
import * as notice from './notice.js';
import * as shelf from './shelf.js';
import { say } from './words.js';

const WORDS = { denied: 'denied', full: 'full', unreadable: 'unreadable', 'changed elsewhere': 'changedElsewhere' };

let program;

const encode = (text) => new TextEncoder().encode(text);
const withText = (name, answer, text, ...numbers) => {
  const bytes = encode(text);
  return program.ccall(name, answer, ['array', 'number', ...numbers.map(() => 'number')], [bytes, bytes.length, ...numbers.map(Number)]);
};

export const saveFile = (title, text) => files.download(files.fileName(title), text);

const planText = () => program.ccall('guywright_plan', 'string');
const savePlan = () => saveFile(JSON.parse(planText()).title, planText());

function tell(what, error) {
  const offersFile = what === 'denied' || what === 'full';
  const ok = { [say('ok')]: () => {} };
  notice.show(say(WORDS[what], { why: error?.message ?? error?.name }), offersFile ? { [say('savePlan')]: savePlan, ...ok } : ok);
}

let askedToPersist = false;

/** In the gesture that makes the first change: browsers grant this only then. */
function askToPersist() {
  if (askedToPersist) return;
  askedToPersist = true;
  navigator.storage?.persist?.().catch(() => {}); // the list says what came of it
}

/** What the program asks of the page concerning plans. */
export const host = {
  save(json) {
    askToPersist();
    shelf.save(JSON.parse(json));
  },
  shelf: (act, id) => shelf.act(act, id, saveFile),
};

/** Goes on with the plan last in hand, unless it is to be left alone, once the promised program is there. Resolves when the program has it. */
export function start(promisedProgram, anew) {
  document.addEventListener('visibilitychange', () => document.hidden || shelf.takeNewer());
  const shelfProgram = {
    takeInStep: (text, back) => withText('guywright_take_in_step', null, text, back), // the nearest to the plan first
    resume: (text, number, untouched) => withText('guywright_resume', 'number', text, number, untouched), // document; 0: unreadable
    canRead: (text) => withText('guywright_can_read', 'number', text) === 1,
    openCopy: (text) => withText('guywright_open_copy', null, text),
    beginNew: () => program.ccall('guywright_begin_new_plan'),
    setShelf: (list) => withText('guywright_set_shelf', null, JSON.stringify(list)),
  };
  const ready = promisedProgram.then((theProgram) => {
    program = theProgram;
    return shelfProgram;
  });
  return shelf.start(ready, tell, anew);
}

export const { lastText, planId, settled } = shelf;
