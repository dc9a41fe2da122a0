// Language, units and light: kept on this device beside the plans. Where none are kept, the browser's own language decides.

import { transact } from './store.js';

const KEY = 'settings';
const PRACTICE = 'practice'; // what was answered in practice: the program's own text
const LONGEST_WAIT_MS = 1500; // a store that does not answer must not keep the app from starting

let pending = Promise.resolve();

/** What somebody expects whose browser speaks `tag`. */
export function usualFor(tag) {
  return { language: /^fr\b/i.test(tag) ? 'fr' : 'en', units: /^en-us$/i.test(tag) ? 'imperial' : 'metric', theme: 0 };
}

async function kept(key) {
  const { result } = await transact('readonly', ({ settings }) => settings.get(key));
  return result;
}

/** Undefined where the store does not answer, or not in time: as on a first start. */
function keptInTime(key) {
  const nothing = new Promise((resolve) => { setTimeout(resolve, LONGEST_WAIT_MS); });
  return Promise.race([kept(key), nothing]).catch(() => undefined);
}

/** As they were chosen last on this device: { language, units, theme }. */
export async function settings() {
  return { ...usualFor(navigator.language ?? ''), ...(await keptInTime(KEY)) };
}

/** What was answered in practice on this device, as text; empty where there is nothing. */
export async function progress() {
  const found = await keptInTime(PRACTICE);
  return typeof found === 'string' ? found : '';
}

/** Where nothing can be kept it holds until the app closes; that is said of the plans already. */
function put(value, key) {
  pending = Promise.all([pending, transact('readwrite', ({ settings }) => settings.put(value, key)).catch(() => {})]);
}

export const keep = (chosen) => put(chosen, KEY);
export const keepProgress = (text) => put(text, PRACTICE);

/** Resolves when what was chosen last is on the disk, or could not be written. */
export const settled = () => pending;
