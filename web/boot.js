// Loads the program, ties it to the page, and says in plain words when it cannot run.

import * as files from './files.js';
import * as keeping from './keeping.js';
import * as notice from './notice.js';
import * as offline from './offline.js';
import { passBytesOverHeap } from './heap.js';
import { Outside } from './outside.js';
import * as settings from './settings.js';
import { Pages } from './pages.js';
import * as textEntry from './text_entry.js';
import { say, speak } from './words.js';

const LONGEST_UNSEEN_MS = 1500; // what the store has not told by then comes after the first picture
const SHORTEST_UNSEEN_MS = 300; // and so long it has in any case: it was asked while the program loaded
const LONGEST_WAIT_MS = 5000; // for the plans kept

const canvas = document.getElementById('canvas');
let program;
const call = (name, result, types, values) => program.ccall(name, result, types, values);
const outside = new Outside(canvas, call);
const pages = new Pages({ call, open: openPlan, save: keeping.saveFile, download: files.download, blind: (on) => outside.blind(on), planId: keeping.planId, onClose: () => canvas.focus({ preventScroll: true }) });

const state = () => JSON.parse(program.ccall('guywright_state', 'string'));

/** `bytes` may hold anything: the program gets their number, too, and no zero byte hides the rest. */
function openPlan(bytes) {
  program.ccall('guywright_open_plan', null, ['array', 'number'], [bytes, bytes.length]);
}

// --- what the program asks of the page ---

const host = {
  ...outside.host,
  frameDrawn(verdictEnd) {
    document.getElementById('skeleton').hidden = true;
    outside.frameDrawn(verdictEnd);
  },
  ...keeping.host,
  save(json) {
    offline.workBegun();
    keeping.host.save(json);
  },
  download: keeping.saveFile,
  pickFile: () => files.pick(openPlan),
  showPage: (name) => pages.open(name),
  signaturesFell: (id) => pages.signaturesFell(id),
  editText(path, label, value) {
    const take = (text) => program.ccall('guywright_enter_text', 'string', ['string', 'string'], [path, text]);
    textEntry.ask(label, value, take, () => document.activeElement === document.body && canvas.focus({ preventScroll: true }));
  },
  keepSettings(chosen) {
    speak(chosen.language);
    settings.keep(chosen);
  },
  keepProgress: settings.keepProgress,
  stop: (why) => notice.stop(say('noPicture'), why),
};

// --- what the page tells the program ---

function tellInsets() {
  const probe = getComputedStyle(document.getElementById('insets'));
  const px = ['paddingTop', 'paddingRight', 'paddingBottom', 'paddingLeft'].map((side) => parseFloat(probe[side]) || 0);
  program.ccall('guywright_set_insets', null, ['number', 'number', 'number', 'number'], px);
}

function watchPixelRatio() {
  // The query holds for one ratio only: ask anew after each change.
  matchMedia(`(resolution: ${devicePixelRatio}dppx)`).addEventListener('change', () => {
    tellInsets();
    watchPixelRatio();
  }, { once: true });
}

function watchScreen() {
  new ResizeObserver(tellInsets).observe(canvas); // rotation, windows, bars of the browser that come and go
  addEventListener('resize', tellInsets); // also to the same size
  tellInsets(); // the observer's first word comes after the first picture
  watchPixelRatio();
  const stillness = matchMedia('(prefers-reduced-motion: reduce)');
  const tellStillness = () => program.ccall('guywright_set_reduced_motion', null, ['number'], [Number(stillness.matches)]);
  stillness.addEventListener('change', tellStillness);
  tellStillness();
  document.addEventListener('visibilitychange', () => {
    if (!document.hidden) program.ccall('guywright_wake');
  });
  canvas.addEventListener('pointerdown', () => canvas.focus({ preventScroll: true }));
}

// --- start ---

function stopOnFault(event) {
  const fault = event.error ?? event.reason;
  if (!(fault instanceof WebAssembly.RuntimeError)) return;
  notice.stop(say('ownFault'), String(fault.stack ?? fault));
}

async function load() {
  const { default: createGuywright } = await import('./guywright.js');
  return createGuywright({
    canvas,
    host,
    printErr: (line) => console.warn(line),
    onAbort: (why) => notice.stop(say('ownFault'), String(why)),
  });
}

async function rescue() {
  const text = await keeping.lastText();
  if (text !== undefined) files.download('rescued-plan.json', text);
}

function tellSettings({ language, units, theme }) {
  speak(language);
  program.ccall('guywright_set_settings', null, ['number', 'number', 'number'], [Number(language === 'fr'), Number(units === 'imperial'), Number(theme) || 0]);
}

function tellProgress(text) {
  const bytes = new TextEncoder().encode(text);
  program.ccall('guywright_set_progress', null, ['array', 'number'], [bytes, bytes.length]);
}

const after = (ms) => new Promise((resolve) => { setTimeout(resolve, ms); });

async function start() {
  speak(settings.usualFor(navigator.language ?? '').language); // until what was chosen has been read
  document.getElementById('rescue').addEventListener('click', rescue);
  if (window.top !== window) return notice.stop(say('framed')); // a page around it could put its own verdict over this one
  if (typeof WebAssembly !== 'object') return notice.stop(say('noWebAssembly'));
  addEventListener('error', stopOnFault);
  addEventListener('unhandledrejection', stopOnFault);
  const kept = settings.ask(after(LONGEST_UNSEEN_MS));
  let give;
  const opened = keeping.start(new Promise((resolve) => { give = resolve; }), new URLSearchParams(location.search).has('fresh'));
  try {
    program = await load();
    passBytesOverHeap(program);
  } catch (error) {
    return notice.stop(say('partMissing'), String(error));
  }
  await kept.settings(tellSettings);
  await kept.progress(tellProgress);
  watchScreen();
  outside.start();
  pages.start();
  give(program);
  await Promise.race([opened, after(Math.max(SHORTEST_UNSEEN_MS, LONGEST_UNSEEN_MS - performance.now()))]); // the plan in hand is the first that is seen, not an example and then it
  program.ccall('guywright_begin');
  await Promise.race([keeping.settled(), after(LONGEST_WAIT_MS)]); // a store that never answers must not cost the offline copy
  const saved = () => Promise.all([keeping.settled(), settings.settled(), pages.settled()]);
  // For tests and for the console; nothing in the app uses it.
  window.guywright = {
    state,
    plan: () => program.ccall('guywright_plan', 'string'),
    share: () => program.ccall('guywright_share', 'string'),
    sheet: () => program.ccall('guywright_sheet', 'string'),
    framesDrawn: () => program.ccall('guywright_frames_drawn', 'number'),
    isIdle: () => program.ccall('guywright_is_idle', 'number') === 1,
    isTold: () => outside.isTold,
    checkCopy: offline.check,
    second: () => program.ccall('guywright_second', 'string'),
    saved,
  };
  window.guywright.copyTold = offline.keepCopy(saved); // made or not, and a newer one offered or not
}

start();
