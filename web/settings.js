// Language, units and light: kept on this device beside the plans. Where none are kept, the browser's own language decides.

import { transact } from './store.js';

const KEY = 'settings';
const LONGEST_WAIT_MS = 1500; // a store that does not answer must not keep the app from starting

let pending = Promise.resolve();

/** What somebody expects whose browser speaks `tag`. */
export function usualFor(tag) {
  return { language: /^fr\b/i.test(tag) ? 'fr' : 'en', units: /^en-us$/i.test(tag) ? 'imperial' : 'metric', theme: 0 };
}

async function kept() {
  const { result } = await transact('readonly', ({ settings }) => settings.get(KEY));
  return result;
}

/** As they were chosen last on this device: { language, units, theme }. */
export async function settings() {
  const nothing = new Promise((resolve) => { setTimeout(resolve, LONGEST_WAIT_MS); });
  const found = await Promise.race([kept(), nothing]).catch(() => undefined); // denied: as on a first start
  return { ...usualFor(navigator.language ?? ''), ...found };
}

/** Where nothing can be kept they hold until the app closes; that is said of the plans already. */
export function keep(chosen) {
  pending = transact('readwrite', ({ settings }) => settings.put(chosen, KEY)).catch(() => {});
}

/** Resolves when what was chosen last is on the disk, or could not be written. */
export const settled = () => pending;
