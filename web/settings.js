// Language, units and light: kept on this device beside the plans. Where none are kept, the browser's own language decides.

import { transact } from './store.js';

const KEY = 'settings';
const PRACTICE = 'practice'; // what was answered in practice: the program's own text

let pending = Promise.resolve();
const chosenHere = new Set(); // keys: what comes late from the store is older

/** What somebody expects whose browser speaks `tag`. */
export function usualFor(tag) {
  return { language: /^fr\b/i.test(tag) ? 'fr' : 'en', units: /^en-us$/i.test(tag) ? 'imperial' : 'metric', theme: 0 };
}

async function kept(key) {
  const { result } = await transact('readonly', ({ settings }) => settings.get(key));
  return result;
}

/** Tells what was found, or undefined where the store does not answer before the `end`, as on a first start; then again what comes after all. */
async function tellInTime(key, answer, end, tell) {
  const found = await Promise.race([answer, end]);
  tell(found);
  if (found === undefined) answer.then((late) => late !== undefined && !chosenHere.has(key) && tell(late));
}

/**
 * Asks the store at once; what it answers is waited for when it is wanted, until the promised `end`: a store that does not answer must not
 * keep the app from starting. `settings(tell)`: { language, units, theme } as chosen last on this device; `progress(tell)`: what was
 * answered in practice, as text, empty where there is nothing.
 */
export function ask(end) {
  const [chosen, answered] = [KEY, PRACTICE].map((key) => kept(key).catch(() => undefined));
  return {
    settings: (tell) => tellInTime(KEY, chosen, end, (found) => tell({ ...usualFor(navigator.language ?? ''), ...found })),
    progress: (tell) => tellInTime(PRACTICE, answered, end, (found) => tell(typeof found === 'string' ? found : '')),
  };
}

/** Where nothing can be kept it holds until the app closes; that is said of the plans already. */
function put(value, key) {
  chosenHere.add(key);
  const written = transact('readwrite', ({ settings }) => settings.put(value, key));
  pending = Promise.allSettled([pending, written]).then(() => {}); // and hold none of the answers, which hold their transactions
}

export const keep = (chosen) => put(chosen, KEY);
export const keepProgress = (text) => put(text, PRACTICE);

/** Resolves when what was chosen last is on the disk, or could not be written. */
export const settled = () => pending;
